//! Causes and cures of what was found, and what stands in a cure's way.

use std::collections::HashSet;

use super::*;
use crate::diagnosis::Measure;
use crate::diagnosis::{Cause, Cure, InTheWay, Origin, Test, causes, cures, in_the_way};
use crate::survey::Group;

fn finding(question: Question, test: Test) -> Finding {
    let grade = Grade::Note;
    Finding {
        question,
        grade,
        limit: Limit {
            question,
            grade,
            test,
            origin: Origin::House,
        },
        places: Vec::new(),
        measure: Measure::Said,
        entries: Vec::new(),
        not_looked: Vec::new(),
    }
}

fn findings() -> impl Iterator<Item = Finding> {
    let limits = house_limits().into_iter();
    limits.map(|limit| finding(limit.question, limit.test))
}

/// The first look is closed by looking closely, everything else by a cure.
#[test]
fn every_finding_has_a_cause_and_a_cure_but_those_of_the_first_look() {
    for finding in findings() {
        let first = finding.question.group() == Group::FirstLook;
        assert_eq!(causes(&finding).is_empty(), first, "{finding:?}");
        assert_eq!(cures(&finding).is_empty(), first, "{finding:?}");
    }
}

#[test]
fn every_cause_and_every_cure_is_one_of_some_finding_and_none_stands_twice() {
    let mut named = (HashSet::new(), HashSet::new());
    for finding in findings() {
        let (caused, cured) = (causes(&finding), cures(&finding));
        assert_eq!(caused.iter().collect::<HashSet<_>>().len(), caused.len());
        assert_eq!(cured.iter().collect::<HashSet<_>>().len(), cured.len());
        named.0.extend(caused);
        named.1.extend(cured);
    }
    assert_eq!(named.0, Cause::ALL.into());
    assert_eq!(named.1, Cure::ALL.into());
}

#[test]
fn run_out_is_never_laid_to_a_bent_arm() {
    let run_out = finding(Question::RunOut, Test::Any);
    assert!(!causes(&run_out).contains(&Cause::ArmBent));
}

/// What a hoop that is loose is never cured by.
#[test]
fn nails_and_bolts_are_no_cure_for_a_loose_hoop() {
    for question in [Question::TyreGap, Question::TyreRing, Question::TyreShifts] {
        let cures = cures(&finding(question, Test::Any));
        assert!(!cures.contains(&Cure::RenewStrake) && !cures.contains(&Cure::PlateFelloe));
    }
}

#[test]
fn no_draw_is_advised_while_something_stands_in_its_way() {
    let clean = all_clean(&wheel(12));
    let ways = |change: &dyn Fn(&mut Vec<Given>)| {
        let mut given = clean.clone();
        change(&mut given);
        let judgement = judged(&wheel(12), &given);
        for cure in Cure::ALL.into_iter().filter(|cure| !cure.draws()) {
            assert_eq!(in_the_way(cure, &judgement), []);
        }
        let ways = in_the_way(Cure::ContractTyre, &judgement);
        assert_eq!(in_the_way(Cure::NewTyre, &judgement), ways);
        ways
    };
    let add = |question, place, answer| {
        move |given: &mut Vec<Given>| given.push((question, place, answer))
    };
    let drop = |question| move |given: &mut Vec<Given>| given.retain(|one| one.0 != question);
    assert_eq!(ways(&|_| ()), []);
    let foot = add(Question::SpokeFoot, Place::Spoke(3), loose());
    assert_eq!(ways(&foot), [InTheWay::LooseFeet]);
    assert_eq!(ways(&drop(Question::SpokeFoot)), [InTheWay::FeetNotLooked]);
    let proud = add(Question::TongueProud, Place::Spoke(3), Answer::Yes);
    assert_eq!(ways(&proud), [InTheWay::ProudTongues]);
    assert_eq!(ways(&drop(Question::Dish)), [InTheWay::DishUnknown]);
    let off = add(Question::StandOff, Place::Spoke(3), mm(2.0));
    assert_eq!(ways(&off), [InTheWay::FelloeBound]);
    let nothing = in_the_way(Cure::ContractTyre, &judged(&wheel(12), &[]));
    assert_eq!(nothing, [InTheWay::FeetNotLooked, InTheWay::DishUnknown]);
}
