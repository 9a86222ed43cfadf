//! What is missing, what does not count as looking, and what is listed elsewhere.

use super::*;
use crate::diagnosis::{Standing, questions};
use crate::survey::Need;

fn needs_missing(judgement: &Judgement) -> Vec<Need> {
    judgement
        .missing
        .iter()
        .map(|missing| missing.need)
        .collect()
}

fn places_missing(judgement: &Judgement, need: Need) -> Vec<Place> {
    judgement
        .missing
        .iter()
        .find(|missing| missing.need == need)
        .map(|missing| missing.places.clone())
        .unwrap_or_default()
}

/// What a wheel with a hoop needs.
fn of_a_hoop() -> Vec<Need> {
    let mut needs = Need::ALL.to_vec();
    needs.retain(|need| *need != Need::Strakes);
    needs
}

#[test]
fn of_a_wheel_nobody_looked_at_everything_is_missing() {
    let judgement = judged(&wheel(12), &[]);
    assert_eq!(needs_missing(&judgement), of_a_hoop());
    assert_eq!(judgement.so_far(), None);
    assert_eq!(judgement.proposed(), Standing::NotJudged);
    assert_eq!(
        places_missing(&judgement, Need::SpokeFeet),
        (1..=12).map(Place::Spoke).collect::<Vec<_>>()
    );
    assert_eq!(
        places_missing(&judgement, Need::Joints),
        (1..=6).map(Place::Joint).collect::<Vec<_>>()
    );
    assert_eq!(places_missing(&judgement, Need::TyreGap).len(), 4);
    assert_eq!(places_missing(&judgement, Need::Keeper), []);
}

#[test]
fn of_a_wheel_fully_looked_at_nothing_is_missing() {
    for wheel in [wheel(12), straked(12)] {
        let judgement = judged(&wheel, &all_clean(&wheel));
        assert_eq!(needs_missing(&judgement), []);
        assert_eq!(judgement.findings, []);
        assert_eq!(judgement.proposed(), Standing::NoFaultFound);
    }
}

#[test]
fn every_need_is_met_by_questions_asked_of_some_wheel() {
    for need in Need::ALL {
        let asked = |wheel: &Wheel| questions(need).iter().all(|it| it.asked_of(wheel));
        assert!(asked(&wheel(12)) || asked(&straked(12)), "{need:?}");
        assert!(!questions(need).is_empty(), "{need:?}");
    }
}

/// Each reading of a full set is needed, but for the rows no need asks for.
#[test]
fn one_reading_left_out_is_missed_at_its_place() {
    for wheel in [wheel(12), straked(12)] {
        let all = all_clean(&wheel);
        for (at, (question, place, _)) in all.iter().enumerate() {
            let mut rest = all.clone();
            rest.remove(at);
            let judgement = judged(&wheel, &rest);
            let of_need = Need::ALL
                .into_iter()
                .find(|need| questions(*need).contains(question));
            assert_eq!(
                needs_missing(&judgement),
                of_need.into_iter().collect::<Vec<_>>()
            );
            if let Some(need) = of_need.filter(|_| *place != Place::Whole) {
                assert_eq!(places_missing(&judgement, need), [*place]);
            }
        }
    }
}

#[test]
fn what_was_not_seen_was_not_looked_at() {
    let mut given = all_clean(&wheel(12));
    for (question, place, answer) in &mut given {
        if (*question, *place) == (Question::SpokeFoot, Place::Spoke(5)) {
            *answer = Answer::CannotSee;
        }
    }
    let judgement = judged(&wheel(12), &given);
    assert_eq!(
        places_missing(&judgement, Need::SpokeFeet),
        [Place::Spoke(5)]
    );
    given.push((Question::SpokeFoot, Place::Spoke(5), Answer::NothingFound));
    assert_eq!(
        places_missing(&judged(&wheel(12), &given), Need::SpokeFeet),
        []
    );
}

/// A file may hold any answer to any question; one that does not answer it is no look.
#[test]
fn an_answer_that_does_not_fit_its_question_was_not_looked_at() {
    let misfits = [
        (Question::KeeperPresent, Answer::Play(Play::Tight)),
        (Question::KeeperPresent, mm(0.0)),
        (Question::KeeperPresent, Answer::NothingFound),
        (Question::KeeperSecured, Answer::NothingFound),
        (Question::JointGap, Answer::No),
        (Question::JointGap, Answer::Play(Play::Tight)),
        (Question::SpokeFoot, Answer::No),
        (Question::SpokeRimEnd, Answer::Yes),
        (Question::SpokeBroken, mm(0.0)),
        (Question::SpokeBroken, Answer::Play(Play::Tight)),
        (Question::JointGap, Answer::NotThere),
        (Question::TyreGap, Answer::Ring(Ring::Rings)),
        (Question::TyreRing, Answer::NothingFound),
        (Question::TyreRing, Answer::Yes),
        (Question::TyreRing, Answer::NotThere),
        (Question::Dish, Answer::NothingFound),
        (Question::Dish, Answer::NotThere),
        (Question::Dish, Answer::Yes),
        (Question::EndPlay, Answer::No),
        (Question::Shake, share(0.0)),
        (Question::RotFelloe, Answer::No),
        (Question::RotFelloe, Answer::NotThere),
        (Question::RotNave, Answer::Crack(Crack::Hairline)),
        (Question::Bonds, Answer::NothingFound),
        (Question::Bonds, Answer::Yes),
        (Question::CrackNave, Answer::No),
        (Question::CrackNave, mm(0.0)),
    ];
    for (misfit, wrong) in misfits {
        let mut given = all_clean(&wheel(12));
        for (question, _, answer) in &mut given {
            if *question == misfit {
                *answer = wrong;
            }
        }
        let judgement = judged(&wheel(12), &given);
        let need = Need::ALL
            .into_iter()
            .find(|need| questions(*need).contains(&misfit))
            .unwrap();
        assert!(
            needs_missing(&judgement).contains(&need),
            "{misfit:?} {wrong:?}"
        );
    }
}

#[test]
fn any_four_places_round_the_tyre_will_do() {
    let mut given: Vec<Given> = [2, 5, 8]
        .map(|n| (Question::TyreGap, Place::Between(n), mm(0.0)))
        .to_vec();
    let judgement = judged(&wheel(12), &given);
    assert_eq!(places_missing(&judgement, Need::TyreGap).len(), 1);
    given.push((Question::TyreGap, Place::Spoke(11), mm(0.0)));
    assert!(!needs_missing(&judged(&wheel(12), &given)).contains(&Need::TyreGap));
}

#[test]
fn what_is_found_outweighs_what_is_missing_only_when_it_is_worse() {
    let foot = |value| [(Question::SpokeFoot, Place::Spoke(1), mm(value))];
    let mild = judged(&wheel(12), &foot(0.5));
    assert_eq!(mild.so_far(), Some(Standing::LightWorkOnly));
    assert_eq!(mild.proposed(), Standing::NotJudged);
    let grave = judged(&wheel(12), &foot(1.5));
    assert_eq!(grave.proposed(), Standing::KeepEmpty);
}

/// A part that is not there is looked at where its absence is judged.
#[test]
fn a_part_that_is_not_there_was_looked_at_where_it_is_judged_gone() {
    let mut given = all_clean(&wheel(12));
    for (question, place, answer) in &mut given {
        if question.fits(Place::Spoke(5)) && *place == Place::Spoke(5) {
            *answer = Answer::NotThere;
        }
    }
    let judgement = judged(&wheel(12), &given);
    assert_eq!(needs_missing(&judgement), []);
    assert_eq!(judgement.proposed(), Standing::KeepEmpty);
}

#[test]
fn a_reading_on_a_part_the_wheel_has_not_is_listed_elsewhere() {
    let given = [
        (Question::SpokeBroken, Place::Spoke(13), Answer::Yes),
        (Question::SpokeFoot, Place::Spoke(13), mm(5.0)),
        (Question::JointGap, Place::Joint(7), mm(50.0)),
        (Question::TyreGap, Place::Between(13), mm(50.0)),
        (
            Question::SpokeFoot,
            Place::Spoke(1),
            Answer::Play(Play::Tight),
        ),
    ];
    let judgement = judged(&wheel(12), &given);
    assert_eq!(judgement.findings, []);
    let mut elsewhere: Vec<EntryId> = (0..4).map(id).collect();
    elsewhere.sort_unstable();
    assert_eq!(judgement.elsewhere, elsewhere);
}

#[test]
fn a_wheel_without_a_hoop_is_not_asked_for_ring_or_gap() {
    for (tyre, strakes) in [
        (Tyre::Strakes, true),
        (Tyre::Rubber, false),
        (Tyre::Bare, false),
    ] {
        let wheel = Wheel {
            tyre: Some(tyre),
            ..wheel(12)
        };
        let given = [
            (Question::TyreGap, Place::Between(1), mm(9.0)),
            (Question::TyreShifts, Place::Whole, Answer::Yes),
            (
                Question::TyreRing,
                Place::Spoke(1),
                Answer::Ring(Ring::Dead),
            ),
            (Question::TyreLeft, Place::Spoke(1), mm(1.0)),
        ];
        let judgement = judged(&wheel, &given);
        assert_eq!(judgement.findings, []);
        assert_eq!(judgement.elsewhere.len(), 4);
        let mut expect = of_a_hoop();
        expect.retain(|need| !matches!(need, Need::TyreGap | Need::Ring));
        if strakes {
            expect.insert(5, Need::Strakes);
        }
        assert_eq!(needs_missing(&judgement), expect);
    }
}

#[test]
fn a_tyre_not_yet_named_is_asked_for_its_gap() {
    let wheel = Wheel {
        tyre: None,
        ..wheel(12)
    };
    assert!(needs_missing(&judged(&wheel, &[])).contains(&Need::TyreGap));
}

/// People are never carried on a wheel that is for light work only: it is to be kept empty for them.
#[test]
fn for_people_light_work_only_is_keep_empty() {
    let wheel = wheel(12);
    let mut given = all_clean(&wheel);
    let proposes = |given: &[Given], people| {
        let beside = Beside {
            people,
            ..Beside::default()
        };
        judge(&wheel, &taken(given), &house_limits(), &beside).proposed()
    };
    let each = |given: &[Given]| [false, true].map(|people| proposes(given, people));
    assert_eq!(each(&given), [Standing::NoFaultFound; 2]);
    assert_eq!(each(&[]), [Standing::NotJudged; 2]);
    given.retain(|(question, place, _)| {
        (*question, *place) != (Question::SpokeFoot, Place::Spoke(3))
    });
    given.push((Question::SpokeFoot, Place::Spoke(3), loose()));
    assert_eq!(each(&given), [Standing::LightWorkOnly, Standing::KeepEmpty]);
}
