//! Laws that hold for any readings of a wheel.

use proptest::prelude::*;

use super::*;
use crate::diagnosis::{Missing, Standing, questions};
use crate::survey::Places;

const SPOKES: u16 = 12;

/// Places a question can be put to on the wheel of these tests: few spokes on both sides of the
/// mark, so that they often stand side by side and are often read twice.
fn places(question: Question) -> Vec<Place> {
    match question.places() {
        Places::RoundTheTyre => [1, 4, 10, 12]
            .into_iter()
            .flat_map(|n| [Place::Spoke(n), Place::Between(n)])
            .collect(),
        Places::Spokes => [1, 2, 10, 12].into_iter().map(Place::Spoke).collect(),
        Places::Joints | Places::Whole => question.places_on(&wheel(SPOKES)),
    }
}

/// Answers to a question from clean to bad: none is kinder than the one before it.
fn ladders(question: Question) -> Vec<Vec<Answer>> {
    let lengths = || {
        let mut ladder = vec![Answer::NothingFound];
        let steps = [
            0.0, 0.01, 0.2, 0.49, 0.5, 0.7, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0,
        ];
        ladder.extend(steps.map(mm));
        ladder.push(Answer::Over(millimetres(10.0)));
        ladder
    };
    let verdicts = || {
        let mut ladder = vec![Answer::NothingFound];
        ladder.extend(Play::ALL.map(Answer::Play));
        ladder
    };
    match question {
        Question::TyreGap | Question::JointGap | Question::FelloeStep => vec![lengths()],
        Question::SpokeFoot | Question::SpokeRimEnd => vec![lengths(), verdicts()],
        Question::KeeperPresent | Question::KeeperRight | Question::KeeperSecured => {
            vec![vec![Answer::Yes, Answer::No]]
        }
        Question::TyreShifts | Question::SpokeBroken => vec![vec![Answer::No, Answer::Yes]],
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
fn readings() -> impl Strategy<Value = Vec<Given>> {
    let all = all_clean(&wheel(SPOKES));
    (
        proptest::collection::vec(any_reading(), 0..12),
        proptest::collection::vec(0..all.len(), 0..6),
    )
        .prop_map(move |(more, left_out)| {
            let rest = all.iter().enumerate();
            let rest = rest.filter(|(at, _)| !left_out.contains(at));
            rest.map(|(_, given)| *given).chain(more).collect()
        })
}

/// Needs without a question are always missing and would hide the kinder standings.
fn proposed(judgement: Judgement) -> Standing {
    let asked = |missing: &Missing| !questions(missing.need).is_empty();
    Judgement {
        missing: judgement.missing.into_iter().filter(asked).collect(),
        ..judgement
    }
    .proposed()
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
        (given, shuffled) in readings().prop_flat_map(|given| {
            let taken = taken(&given);
            (Just(taken.clone()), Just(taken).prop_shuffle())
        })
    ) {
        let limits = house_limits();
        prop_assert_eq!(
            judge(&wheel(SPOKES), &given, &limits),
            judge(&wheel(SPOKES), &shuffled, &limits)
        );
    }

    #[test]
    fn a_worse_reading_is_never_kinder(given in readings(), (kind, worse) in kind_and_worse()) {
        let with = |one: Given| {
            let mut given = given.clone();
            given.push(one);
            judged(&wheel(SPOKES), &given)
        };
        let (kinder, harsher) = (with(kind), with(worse));
        prop_assert!(harsher.so_far() >= kinder.so_far());
        prop_assert!(proposed(harsher) >= proposed(kinder));
    }

    #[test]
    fn a_clean_reading_left_out_is_never_kinder(given in readings(), at in any::<prop::sample::Index>()) {
        let at = at.index(given.len());
        prop_assume!(is_clean(&given[at]));
        let mut rest = given.clone();
        rest.remove(at);
        let (with, without) = (judged(&wheel(SPOKES), &given), judged(&wheel(SPOKES), &rest));
        prop_assert!(without.so_far() >= with.so_far());
        prop_assert!(proposed(without) >= proposed(with));
    }

    #[test]
    fn one_more_reading_never_hides_what_was_found(given in readings(), more in any_reading()) {
        // A gap under the tyre is counted against the places looked at, which one more changes.
        prop_assume!(more.0 != Question::TyreGap);
        let mut with = given.clone();
        with.push(more);
        prop_assert!(judged(&wheel(SPOKES), &with).so_far() >= judged(&wheel(SPOKES), &given).so_far());
    }

    #[test]
    fn another_mark_changes_no_grade(given in readings(), felloes in 1_u16..6) {
        let other: Vec<Given> = given.iter().map(|one| turned(*one, felloes)).collect();
        let (here, there) = (judged(&wheel(SPOKES), &given), judged(&wheel(SPOKES), &other));
        prop_assert_eq!(grades(&here), grades(&there));
        prop_assert_eq!(proposed(here), proposed(there));
    }

    #[test]
    fn every_finding_rests_on_entries(given in readings()) {
        for finding in judged(&wheel(SPOKES), &given).findings {
            prop_assert!(!finding.entries.is_empty(), "{:?}", finding);
            prop_assert!(!finding.places.is_empty(), "{:?}", finding);
        }
    }
}
