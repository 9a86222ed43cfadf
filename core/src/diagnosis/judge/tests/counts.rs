//! Counts and neighbours, what a finding rests on, and several answers at one place.

use super::*;
use crate::diagnosis::{Measure, Standing, Test};
use crate::quantity::length::to_paper_mm;
use crate::wheel::Sizes;
use Grade::{KeepEmpty, LightWorkOnly, NotOnThisWheel};

/// The first `count` spokes of which no two stand side by side.
fn apart(count: u16) -> Vec<u16> {
    (0..count).map(|n| 1 + 2 * n).collect()
}

/// A quarter of 10 is 2½, of 12 is 3, of 14 is 3½, of 16 is 4.
#[test]
fn a_quarter_of_the_spokes_is_counted_on_the_whole_wheel() {
    for question in [Question::SpokeFoot, Question::SpokeRimEnd] {
        for (of, quarter) in [(10, 3), (12, 3), (14, 4), (16, 4)] {
            let under = spokes(question, &apart(quarter - 1), loose());
            let at = spokes(question, &apart(quarter), loose());
            assert_eq!(grade(&wheel(of), &under, question), Some(LightWorkOnly));
            assert_eq!(grade(&wheel(of), &at, question), Some(KeepEmpty), "{of}");
        }
    }
}

#[test]
fn neighbours_are_found_over_the_mark() {
    for of in [10, 12, 14, 16] {
        for question in [Question::SpokeFoot, Question::SpokeRimEnd] {
            let judgement = judged(&wheel(of), &spokes(question, &[of, 1], loose()));
            let finding = found(&judgement, question).unwrap();
            assert_eq!(finding.grade, KeepEmpty);
            assert_eq!(finding.places, [Place::Spoke(1), Place::Spoke(of)]);
            assert_eq!(
                finding.measure,
                Measure::Places {
                    reach: 2,
                    of: 2,
                    greatest: None
                }
            );
        }
    }
}

/// The rim end's note at ½ mm does not make it loose.
#[test]
fn spokes_below_light_work_only_are_no_loose_neighbours() {
    let question = Question::SpokeRimEnd;
    for (value, expect) in [(1.99, Grade::Note), (2.0, KeepEmpty)] {
        let given = spokes(question, &[6, 7], mm(value));
        assert_eq!(grade(&wheel(12), &given, question), Some(expect));
    }
}

#[test]
fn a_foot_and_a_rim_end_are_counted_apart() {
    let given = [
        (Question::SpokeFoot, Place::Spoke(3), loose()),
        (Question::SpokeRimEnd, Place::Spoke(4), loose()),
    ];
    let judgement = judged(&wheel(12), &given);
    assert_eq!(judgement.so_far(), Some(Standing::LightWorkOnly));
    assert_eq!(judgement.findings.len(), 2);
}

#[test]
fn a_spoke_that_is_not_there_is_as_good_as_broken() {
    for (question, answer) in [
        (Question::SpokeFoot, Answer::NotThere),
        (Question::SpokeRimEnd, Answer::NotThere),
        (Question::SpokeBroken, Answer::NotThere),
        (Question::StandOff, Answer::NotThere),
        (Question::RotSpoke, Answer::NotThere),
    ] {
        let judgement = judged(&wheel(12), &[(question, Place::Spoke(7), answer)]);
        let finding = found(&judgement, Question::SpokeBroken).unwrap();
        assert_eq!(finding.grade, KeepEmpty, "{question:?}");
        assert_eq!(finding.places, [Place::Spoke(7)]);
        assert_eq!(finding.entries, [id(0)], "{question:?}");
    }
}

#[test]
fn a_broken_spoke_beside_a_loose_one_rests_on_both() {
    let given = [
        (Question::SpokeBroken, Place::Spoke(12), Answer::Yes),
        (Question::SpokeFoot, Place::Spoke(1), loose()),
        (Question::SpokeFoot, Place::Spoke(6), loose()),
    ];
    let judgement = judged(&wheel(12), &given);
    let finding = found(&judgement, Question::SpokeBroken).unwrap();
    assert_eq!(finding.grade, NotOnThisWheel);
    assert_eq!(finding.places, [Place::Spoke(12)]);
    let mut both = [id(0), id(1)];
    both.sort_unstable();
    assert_eq!(finding.entries, both);
}

#[test]
fn a_keeper_that_is_not_there_cannot_be_right_or_secured() {
    for question in [
        Question::KeeperPresent,
        Question::KeeperRight,
        Question::KeeperSecured,
    ] {
        let given = [(question, Place::Whole, Answer::NotThere)];
        assert_eq!(grade(&wheel(12), &given, question), Some(NotOnThisWheel));
    }
}

#[test]
fn of_two_readings_of_one_slot_the_worse_counts() {
    let slots = [
        (
            Question::TyreGap,
            Place::Between(2),
            mm(0.0),
            mm(3.0),
            KeepEmpty,
        ),
        (
            Question::SpokeFoot,
            Place::Spoke(2),
            mm(0.0),
            loose(),
            LightWorkOnly,
        ),
        (
            Question::SpokeFoot,
            Place::Spoke(2),
            mm(0.1),
            mm(1.5),
            KeepEmpty,
        ),
        (
            Question::SpokeRimEnd,
            Place::Spoke(2),
            mm(0.0),
            loose(),
            LightWorkOnly,
        ),
        (
            Question::SpokeRimEnd,
            Place::Spoke(2),
            mm(1.0),
            loose(),
            LightWorkOnly,
        ),
        (
            Question::SpokeRimEnd,
            Place::Spoke(2),
            Answer::NothingFound,
            loose(),
            LightWorkOnly,
        ),
        (
            Question::KeeperSecured,
            Place::Whole,
            Answer::Yes,
            Answer::No,
            NotOnThisWheel,
        ),
        (
            Question::SpokeBroken,
            Place::Spoke(2),
            Answer::No,
            Answer::Yes,
            KeepEmpty,
        ),
    ];
    for (question, place, kind, harsh, expect) in slots {
        let given = [(question, place, kind), (question, place, harsh)];
        let judgement = judged(&wheel(12), &given);
        let finding = found(&judgement, question).unwrap();
        assert_eq!(finding.grade, expect, "{given:?}");
        assert_eq!(finding.entries.len(), 2, "both sides are named");
    }
}

/// Two readings of one place are one place.
#[test]
fn a_place_read_twice_is_counted_once() {
    let gap = (Question::TyreGap, Place::Between(1), mm(0.5));
    assert_eq!(
        grade(&wheel(12), &[gap, gap], Question::TyreGap),
        Some(Grade::Note)
    );
    let joint = (Question::JointGap, Place::Joint(1), mm(1.5));
    assert_eq!(
        grade(&wheel(12), &[joint, joint], Question::JointGap),
        Some(Grade::Note)
    );
}

#[test]
fn findings_stand_worst_first_and_the_worst_proposes() {
    let given = [
        (Question::TyreGap, Place::Between(1), mm(0.25)),
        (Question::SpokeFoot, Place::Spoke(1), loose()),
        (Question::KeeperSecured, Place::Whole, Answer::No),
    ];
    let judgement = judged(&wheel(12), &given);
    let grades: Vec<Grade> = judgement.findings.iter().map(|found| found.grade).collect();
    assert_eq!(grades, [NotOnThisWheel, LightWorkOnly, Grade::Note]);
    assert_eq!(judgement.proposed(), Standing::NotOnThisWheel);
}

#[test]
fn a_finding_rests_on_the_readings_that_reach_its_limit() {
    let given = [
        (Question::TyreGap, Place::Between(1), mm(3.0)),
        (Question::TyreGap, Place::Between(4), mm(2.99)),
        (Question::TyreGap, Place::Spoke(8), mm(5.0)),
    ];
    let judgement = judged(&wheel(12), &given);
    let finding = found(&judgement, Question::TyreGap).unwrap();
    assert_eq!(finding.places, [Place::Spoke(8), Place::Between(1)]);
    assert_eq!(finding.measure, Measure::Greatest(millimetres(5.0)));
    let mut entries = [id(0), id(2)];
    entries.sort_unstable();
    assert_eq!(finding.entries, entries);
    assert_eq!(finding.not_looked, [Place::Between(7)]);
}

#[test]
fn a_felt_and_a_measured_spoke_are_both_named() {
    let given = [
        (
            Question::SpokeFoot,
            Place::Spoke(3),
            Answer::Play(Play::Loose),
        ),
        (Question::SpokeFoot, Place::Spoke(8), mm(0.5)),
    ];
    let judgement = judged(&wheel(12), &given);
    let findings = judgement.findings.iter();
    let places: Vec<Place> = findings
        .flat_map(|finding| finding.places.clone())
        .collect();
    assert_eq!(places, [Place::Spoke(3), Place::Spoke(8)]);
}

#[test]
fn a_limit_that_names_no_further_place_is_left_out() {
    let given = [
        (Question::TyreGap, Place::Between(1), mm(0.5)),
        (Question::TyreGap, Place::Between(4), mm(1.0)),
    ];
    assert_eq!(judged(&wheel(12), &given).findings.len(), 1);
}

#[test]
fn a_strake_that_is_not_there_is_missing_whatever_was_asked() {
    for question in [Question::Strake, Question::StrakeCracked] {
        let judgement = judged(
            &straked(12),
            &[(question, Place::Joint(4), Answer::NotThere)],
        );
        let finding = found(&judgement, Question::Strake).unwrap();
        assert_eq!(
            (finding.grade, &finding.places[..]),
            (KeepEmpty, &[Place::Joint(4)][..])
        );
        assert_eq!(finding.entries, [id(0)]);
    }
}

#[test]
fn a_split_nave_with_a_loose_bond_rests_on_both() {
    let given = [
        (
            Question::CrackNave,
            Place::Nave,
            Answer::Crack(Crack::Across),
        ),
        (Question::Bonds, Place::Nave, loose()),
    ];
    let judgement = judged(&wheel(12), &given);
    let finding = found(&judgement, Question::CrackNave).unwrap();
    assert_eq!(finding.grade, KeepEmpty);
    let mut both = [id(0), id(1)];
    both.sort_unstable();
    assert_eq!(finding.entries, both);
}

/// Stand-off of every spoke and gap of every joint, in mm.
fn bound(off: f64, gap: f64) -> Vec<Given> {
    let spokes = (1..=12).map(|n| (Question::StandOff, Place::Spoke(n), mm(off)));
    let joints = (1..=6).map(|n| (Question::JointGap, Place::Joint(n), mm(gap)));
    spokes.chain(joints).collect()
}

fn ease(given: &[Given]) -> Option<f64> {
    let judgement = judged(&wheel(12), given);
    let finding = found(&judgement, Question::StandOff)?;
    assert_eq!(finding.grade, Grade::Note);
    match finding.measure {
        Measure::Ease(length) => Some((to_paper_mm(length) * 10.0).round() / 10.0),
        _ => None,
    }
}

/// 2 mm off all round with the joints shut is 2 × 2 × 3.1416 = 12.6 mm.
#[test]
fn a_rim_is_bound_when_its_joints_are_less_than_its_shoulders_need() {
    assert_eq!(ease(&bound(2.0, 0.0)), Some(12.6));
    assert_eq!(ease(&bound(2.0, 1.0)), Some(6.6));
    assert_eq!(ease(&bound(2.0, 2.09)), Some(0.0));
    assert_eq!(ease(&bound(2.0, 2.1)), None);
    assert_eq!(ease(&bound(0.0, 0.0)), None);
    let half: Vec<Given> = bound(4.0, 0.0)
        .into_iter()
        .map(|(question, place, answer)| match place {
            Place::Spoke(n) if n % 2 == 0 => (question, place, Answer::NothingFound),
            _ => (question, place, answer),
        })
        .collect();
    assert_eq!(ease(&half), Some(12.6), "the mean counts");
    let judgement = judged(&wheel(12), &half);
    let finding = found(&judgement, Question::StandOff).unwrap();
    assert_eq!(finding.places.len(), 6, "home is not off");
    assert_eq!(
        finding.entries.len(),
        18,
        "it rests on every spoke and joint"
    );
}

#[test]
fn a_rim_is_not_called_bound_before_every_spoke_and_joint_is_measured() {
    for at in 0..18 {
        for odd in [None, Some(Answer::CannotSee), Some(Answer::NotThere)] {
            let mut given = bound(2.0, 0.0);
            match odd {
                None => drop(given.remove(at)),
                Some(answer) => given[at].2 = answer,
            }
            assert_eq!(ease(&given), None, "{at} {odd:?}");
        }
    }
}

#[test]
fn of_two_readings_the_rim_is_bound_by_the_worse() {
    let mut given = bound(2.0, 3.0);
    assert_eq!(ease(&given), None);
    given.extend(bound(2.0, 0.0));
    assert_eq!(ease(&given), Some(12.6));
}

fn pair(own: f64, others: &[f64]) -> Option<Finding> {
    let mut dish: Vec<Taken> = others
        .iter()
        .flat_map(|other| taken(&[(Question::Dish, Place::Whole, mm(*other))]))
        .collect();
    for (n, other) in dish.iter_mut().enumerate() {
        other.entry = id(100 + n);
    }
    let own = taken(&[(Question::Dish, Place::Whole, mm(own))]);
    let judgement = judge(
        &wheel(12),
        &own,
        &house_limits(),
        &Beside {
            dish,
            ..Beside::default()
        },
    );
    found(&judgement, Question::Dish).cloned()
}

/// Whether the pair rule is laid on a wheel that was built and is dished so, beside such another.
fn laid(own: (f64, f64), other: (f64, f64)) -> bool {
    let wheel = Wheel {
        sizes: Sizes::default().with(Size::Dish, Some(millimetres(own.0))),
        ..wheel(12)
    };
    let mut dish = taken(&[(Question::Dish, Place::Whole, mm(other.1))]);
    for other in &mut dish {
        other.entry = id(100);
    }
    let beside = Beside {
        dish,
        built: Some(millimetres(other.0)),
        ..Beside::default()
    };
    let own = taken(&[(Question::Dish, Place::Whole, mm(own.1))]);
    let judgement = judge(&wheel, &own, &house_limits(), &beside);
    let mut findings = judgement.findings.iter();
    findings.any(|finding| matches!(finding.limit.test, Test::PairDiffers(_)))
}

#[test]
fn a_pair_that_differs_is_laid_on_the_wheel_that_has_left_its_dish_as_built() {
    assert!(!laid((36.0, 36.0), (36.0, 28.0)));
    assert!(laid((36.0, 28.0), (36.0, 36.0)));
    assert!(laid((36.0, 32.0), (36.0, 40.0)), "both have left it alike");
    assert!(laid((36.0, 36.0), (30.0, 30.0)), "they were built so");
}

fn by(finding: &Finding) -> f64 {
    match finding.measure {
        Measure::By(length) | Measure::Apart { by: length, .. } => to_paper_mm(length),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_pair_that_differs_is_noted_and_rests_on_both_wheels() {
    for (own, other) in [(30.0, 35.0), (30.0, 25.0), (30.0, -30.0)] {
        let finding = pair(own, &[other]).unwrap();
        assert_eq!(finding.grade, Grade::Note);
        assert_eq!(by(&finding), (own - other).abs());
        let mut both = [id(0), id(100)];
        both.sort_unstable();
        assert_eq!(finding.entries, both);
    }
    for others in [&[][..], &[30.0], &[34.99, 25.01]] {
        assert_eq!(pair(30.0, others), None, "{others:?}");
    }
    let finding = pair(30.0, &[36.0, 34.0, 20.0]).unwrap();
    assert_eq!(by(&finding), 10.0);
    assert!(finding.entries.contains(&id(102)));
}

/// Four places all dead; a fifth that rings clears nothing but that.
#[test]
fn a_tyre_is_dead_all_round_when_no_place_answers() {
    let ring = |n, ring| (Question::TyreRing, Place::Between(n), Answer::Ring(ring));
    let dead: Vec<Given> = [1, 4, 7].map(|n| ring(n, Ring::Dead)).to_vec();
    let with = |more| {
        let mut given = dead.clone();
        given.push(more);
        grade(&wheel(12), &given, Question::TyreRing)
    };
    assert_eq!(
        grade(&wheel(12), &dead, Question::TyreRing),
        Some(Grade::Note)
    );
    assert_eq!(with(ring(10, Ring::Dead)), Some(KeepEmpty));
    assert_eq!(with(ring(10, Ring::Dull)), Some(Grade::Note));
    assert_eq!(with(ring(10, Ring::Rings)), Some(Grade::Note));
    let unseen = (Question::TyreRing, Place::Between(10), Answer::CannotSee);
    assert_eq!(with(unseen), Some(Grade::Note));
}

#[test]
fn a_pin_that_is_not_there_to_be_measured_is_not_there() {
    let given = [(Question::KeeperWorn, Place::Whole, Answer::NotThere)];
    let judgement = judged(&wheel(12), &given);
    let finding = found(&judgement, Question::KeeperPresent).unwrap();
    assert_eq!(
        (finding.grade, &finding.entries[..]),
        (NotOnThisWheel, &[id(0)][..])
    );
}
