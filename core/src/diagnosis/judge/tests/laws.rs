//! Laws that hold for any readings of a wheel.

use proptest::prelude::*;

use super::*;
use crate::diagnosis::cause::likely;
use crate::diagnosis::cure::weighed;
use crate::diagnosis::{Cause, Cure, causes, cures};
use crate::survey::{Group, Places};
use crate::wheel::Keeper;

const SPOKES: u16 = 12;

/// A wheel with a hoop and one with strakes, sizes said: between them every question is asked.
fn wheels() -> [Wheel; 2] {
    [sized(wheel(SPOKES)), sized(straked(SPOKES))]
}

/// The other wheel of the axle, dished as this one was built.
fn beside() -> Beside {
    let mut dish = taken(&[(Question::Dish, Place::Whole, mm(DISH))]);
    for other in &mut dish {
        other.entry = id(usize::MAX);
    }
    Beside {
        dish,
        ..Beside::default()
    }
}

fn judged_all(wheel: &Wheel, given: &[Given]) -> Judgement {
    judge(wheel, &taken(given), &house_limits(), &beside())
}

/// Places a question can be put to on the wheel of these tests: few spokes on both sides of the
/// mark, so that they often stand side by side and are often read twice.
fn places(question: Question) -> Vec<Place> {
    match question.places() {
        Places::RoundTheTyre => [1, 4, 10, 12]
            .into_iter()
            .flat_map(|n| [Place::Spoke(n), Place::Between(n)])
            .collect(),
        Places::Spokes => [1, 2, 10, 12].into_iter().map(Place::Spoke).collect(),
        _ => question.places_on(&wheel(SPOKES)),
    }
}

/// Answers to a question from clean to bad: none is kinder than the one before it.
fn ladders(question: Question) -> Vec<Vec<Answer>> {
    let lengths = |steps: &[f64]| steps.iter().map(|step| mm(*step)).collect::<Vec<_>>();
    let shares = |steps: &[f64]| steps.iter().map(|step| share(*step)).collect::<Vec<_>>();
    let worse = || {
        let mut ladder = vec![Answer::NothingFound];
        ladder.extend(lengths(&[
            0.0, 0.01, 0.2, 0.49, 0.5, 0.7, 1.0, 1.5, 2.0, 3.0, 5.0, 6.0, 10.0,
        ]));
        ladder.push(Answer::Over(millimetres(10.0)));
        ladder
    };
    match question.pad() {
        Pad::Gauge(_) => vec![worse()],
        Pad::Size(_) => match question {
            Question::Dish => vec![
                lengths(&[36.0, 31.0, 24.0, 12.0, 0.0, -4.75, -5.25, -30.0]),
                lengths(&[36.0, 41.0, 53.99, 54.0, 90.0]),
            ],
            Question::TyreLeft => {
                vec![lengths(&[16.0, 12.01, 12.0, 8.0, 7.99, 5.0, 4.99, 4.0])]
            }
            _ => {
                let mut ladder = worse();
                ladder.extend(lengths(&[12.0, 13.01, 20.0, 25.0, 30.0, 31.0]));
                vec![ladder]
            }
        },
        Pad::Verdict(_) => {
            let mut verdicts = vec![Answer::NothingFound];
            verdicts.extend(Play::ALL.map(Answer::Play));
            vec![worse(), verdicts]
        }
        Pad::Fastening => {
            let mut held = Play::ALL.map(Answer::Play).to_vec();
            held.push(Answer::NotThere);
            vec![held]
        }
        Pad::Ring => vec![Ring::ALL.map(Answer::Ring).to_vec()],
        Pad::Crack => {
            let mut cracks = vec![Answer::NothingFound];
            cracks.extend(Crack::ALL.map(Answer::Crack));
            vec![cracks]
        }
        Pad::Share if question == Question::Moisture => vec![
            shares(&[14.0, 17.99, 18.0, 40.0]),
            shares(&[14.0, 10.01, 10.0, 0.0]),
        ],
        Pad::Share => vec![shares(&[0.0, 9.99, 10.0, 25.0, 49.99, 50.0, 100.0])],
        Pad::YesNo if question.sound_is_yes() => vec![vec![Answer::Yes, Answer::No]],
        Pad::YesNo => vec![vec![Answer::No, Answer::Yes]],
    }
}

/// A reading and one that is as bad or worse at the same place.
fn kind_and_worse() -> impl Strategy<Value = (Given, Given)> {
    let rows: Vec<(Question, Vec<Answer>)> = Question::all()
        .flat_map(|question| {
            ladders(question)
                .into_iter()
                .map(move |ladder| (question, ladder))
        })
        .collect();
    proptest::sample::select(rows).prop_flat_map(|(question, ladder)| {
        let steps = ladder.len();
        (
            proptest::sample::select(places(question)),
            0..steps,
            0..steps,
        )
            .prop_map(move |(place, one, other)| {
                let (kind, worse) = (one.min(other), one.max(other));
                (
                    (question, place, ladder[kind]),
                    (question, place, ladder[worse]),
                )
            })
    })
}

fn any_reading() -> impl Strategy<Value = Given> {
    (kind_and_worse(), 0_u8..12).prop_map(|((_, given), odd)| match odd {
        0 => (given.0, given.1, Answer::CannotSee),
        1 => (given.0, given.1, Answer::NotThere),
        _ => given,
    })
}

/// A wheel fully looked at, some of it left out, and some readings of any sort beside it.
fn readings() -> impl Strategy<Value = (Wheel, Vec<Given>)> {
    proptest::sample::select(wheels().to_vec()).prop_flat_map(|wheel| {
        let all = all_clean(&wheel);
        (
            Just(wheel),
            proptest::collection::vec(any_reading(), 0..12),
            proptest::collection::vec(0..all.len(), 0..6),
        )
            .prop_map(move |(wheel, more, left_out)| {
                let rest = all.iter().enumerate();
                let rest = rest.filter(|(at, _)| !left_out.contains(at));
                let given = rest.map(|(_, given)| *given).chain(more).collect();
                (wheel, given)
            })
    })
}

fn is_clean(given: &Given) -> bool {
    ladders(given.0)
        .iter()
        .any(|ladder| ladder.first() == Some(&given.2))
        || given.2 == clean(given.0)
}

/// The same reading on a wheel whose mark is so many felloes further on.
fn turned((question, place, answer): Given, felloes: u16) -> Given {
    let on = |n: u16, by: u16, of: u16| (n - 1 + by) % of + 1;
    let place = match place {
        Place::Whole | Place::Nave => place,
        Place::Spoke(n) => Place::Spoke(on(n, 2 * felloes, SPOKES)),
        Place::Between(n) => Place::Between(on(n, 2 * felloes, SPOKES)),
        Place::Joint(n) => Place::Joint(on(n, felloes, SPOKES / 2)),
        Place::Felloe(n) => Place::Felloe(on(n, felloes, SPOKES / 2)),
    };
    (question, place, answer)
}

fn grades(judgement: &Judgement) -> Vec<(Question, Grade)> {
    judgement
        .findings
        .iter()
        .map(|finding| (finding.question, finding.grade))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

    #[test]
    fn the_order_of_readings_changes_nothing(
        (wheel, given, shuffled) in readings().prop_flat_map(|(wheel, given)| {
            let taken = taken(&given);
            (Just(wheel), Just(taken.clone()), Just(taken).prop_shuffle())
        })
    ) {
        let limits = house_limits();
        prop_assert_eq!(
            judge(&wheel, &given, &limits, &beside()),
            judge(&wheel, &shuffled, &limits, &beside())
        );
    }

    #[test]
    fn a_worse_reading_is_never_kinder((wheel, given) in readings(), (kind, worse) in kind_and_worse()) {
        let with = |one: Given| {
            let mut given = given.clone();
            given.push(one);
            judged_all(&wheel, &given)
        };
        let (kinder, harsher) = (with(kind), with(worse));
        prop_assert!(harsher.so_far() >= kinder.so_far());
        prop_assert!(harsher.proposed() >= kinder.proposed());
    }

    #[test]
    fn a_clean_reading_left_out_is_never_kinder((wheel, given) in readings(), at in any::<prop::sample::Index>()) {
        let at = at.index(given.len());
        prop_assume!(is_clean(&given[at]));
        let mut rest = given.clone();
        rest.remove(at);
        let (with, without) = (judged_all(&wheel, &given), judged_all(&wheel, &rest));
        prop_assert!(without.so_far() >= with.so_far());
        prop_assert!(without.proposed() >= with.proposed());
    }

    #[test]
    fn one_more_reading_never_hides_what_was_found((wheel, given) in readings(), more in any_reading()) {
        // A gap under the tyre and a dead sound are counted against the places looked at, which one
        // more changes.
        prop_assume!(!matches!(more.0, Question::TyreGap | Question::TyreRing));
        let mut with = given.clone();
        with.push(more);
        prop_assert!(judged_all(&wheel, &with).so_far() >= judged_all(&wheel, &given).so_far());
    }

    #[test]
    fn another_mark_changes_no_grade((wheel, given) in readings(), felloes in 1_u16..6) {
        let other: Vec<Given> = given.iter().map(|one| turned(*one, felloes)).collect();
        let (here, there) = (judged_all(&wheel, &given), judged_all(&wheel, &other));
        prop_assert_eq!(grades(&here), grades(&there));
        prop_assert_eq!(here.proposed(), there.proposed());
    }

    #[test]
    fn every_finding_rests_on_entries((wheel, given) in readings()) {
        for finding in judged_all(&wheel, &given).findings {
            prop_assert!(!finding.entries.is_empty(), "{:?}", finding);
            prop_assert!(!finding.places.is_empty(), "{:?}", finding);
        }
    }

    #[test]
    fn the_readings_order_causes_and_drop_cures_and_add_none((wheel, given) in readings()) {
        let judgement = judged_all(&wheel, &given);
        let open = given.iter().any(|(question, _, answer)| {
            *question == Question::JointGap
                && answer.length().is_some_and(|gap| gap > millimetres(0.0))
        });
        for finding in &judgement.findings {
            let told = causes(finding, &judgement);
            prop_assert!(told.is_sorted_by_key(|(_, told)| *told));
            let mut named: Vec<Cause> = told.iter().map(|(cause, _)| *cause).collect();
            let mut all = likely(finding).to_vec();
            for causes in [&mut named, &mut all] {
                causes.sort_by_key(|cause| format!("{cause:?}"));
            }
            prop_assert_eq!(named, all);
            let left = cures(finding, &judgement);
            let first = finding.question.group() == Group::FirstLook;
            prop_assert_eq!(left.is_empty(), first, "{:?}", finding);
            prop_assert!(left.iter().all(|cure| weighed(finding).contains(cure)));
            let bound = judgement.bound() || !open;
            prop_assert!(bound || !left.contains(&Cure::EaseJoint), "{:?}", finding);
        }
    }

    /// What has not been said of a wheel may be so: a keeper that is known is never judged harsher
    /// than one that is not.
    #[test]
    fn a_keeper_that_is_not_said_is_never_kinder(
        (wheel, given) in readings(),
        keeper in proptest::sample::select(&Keeper::ALL[..]),
    ) {
        let said = Wheel { keeper: Some(keeper), ..wheel.clone() };
        prop_assert!(judged_all(&wheel, &given).so_far() >= judged_all(&said, &given).so_far());
    }
}

#[test]
fn between_them_these_wheels_are_asked_everything() {
    for question in Question::all() {
        assert!(
            wheels().iter().any(|wheel| question.asked_of(wheel)),
            "{question:?}"
        );
        for ladder in ladders(question) {
            assert!(is_clean(&(question, Place::Whole, ladder[0])));
        }
    }
}
