//! Causes and cures of what was found, and what stands in a cure's way.

use std::collections::HashSet;

use super::*;
use crate::diagnosis::Measure;
use crate::diagnosis::cause::likely;
use crate::diagnosis::cure::weighed;
use crate::diagnosis::{
    Cause, Cure, InTheWay, Origin, Test, Told, before_a_draw, causes, cures, in_the_way,
};
use crate::survey::Group;
use crate::wheel::Sizes;

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
        assert_eq!(likely(&finding).is_empty(), first, "{finding:?}");
        assert_eq!(weighed(&finding).is_empty(), first, "{finding:?}");
    }
}

#[test]
fn every_cause_and_every_cure_is_one_of_some_finding_and_none_stands_twice() {
    let mut named = (HashSet::new(), HashSet::new());
    for finding in findings() {
        let (caused, cured) = (likely(&finding), weighed(&finding));
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
    assert!(!likely(&run_out).contains(&Cause::ArmBent));
}

/// What a hoop that is loose is never cured by.
#[test]
fn nails_and_bolts_are_no_cure_for_a_loose_hoop() {
    for question in [Question::TyreGap, Question::TyreRing, Question::TyreShifts] {
        let cures = weighed(&finding(question, Test::Any));
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
    let back = |built: f64| {
        let sizes = Sizes::default().with(Size::Dish, Some(millimetres(built)));
        let wheel = Wheel { sizes, ..wheel(12) };
        let mut given = clean.clone();
        given.retain(|one| one.0 != Question::Dish);
        given.push((Question::Dish, Place::Whole, mm(-20.0)));
        before_a_draw(&judged(&wheel, &given))
    };
    assert_eq!(back(36.0), [InTheWay::DishReversed]);
    assert_eq!(back(-20.0), []);
    let off = add(Question::StandOff, Place::Spoke(3), mm(2.0));
    assert_eq!(ways(&off), [InTheWay::FelloeBound]);
    let nothing = in_the_way(Cure::ContractTyre, &judged(&wheel(12), &[]));
    assert_eq!(nothing, [InTheWay::FeetNotLooked, InTheWay::DishUnknown]);
}

/// What the readings say of this cause of the finding on this row.
fn said(judgement: &Judgement, question: Question, cause: Cause) -> Option<Told> {
    let finding = found(judgement, question).unwrap();
    let causes = causes(finding, judgement);
    causes.iter().find(|it| it.0 == cause).map(|it| it.1)
}

/// A wheel all clean but for these, which stand in the place of what was clean there.
fn but(given: &[Given]) -> Judgement {
    let kept = |one: &Given| given.iter().all(|it| (it.0, it.1) != (one.0, one.1));
    let clean = all_clean(&sized(wheel(12)));
    let all: Vec<Given> = clean
        .into_iter()
        .filter(kept)
        .chain(given.iter().copied())
        .collect();
    judged(&sized(wheel(12)), &all)
}

#[test]
fn a_loose_foot_in_a_rim_whose_shoulders_are_home_is_not_felloe_bound() {
    let foot = (Question::SpokeFoot, Place::Spoke(3), loose());
    let judgement = but(&[foot, (Question::JointGap, Place::Joint(3), mm(2.0))]);
    let finding = found(&judgement, Question::SpokeFoot).unwrap();
    let told = causes(finding, &judgement);
    assert_eq!(told.first(), Some(&(Cause::RunLoose, Told::Silent)));
    assert_eq!(
        said(&judgement, Question::SpokeFoot, Cause::FelloeBound),
        Some(Told::Against)
    );
    assert_eq!(
        cures(finding, &judgement),
        [Cure::ReseatFeet, Cure::NewSpoke, Cure::NewNave]
    );
}

#[test]
fn tongues_that_were_all_found_below_carry_no_tyre() {
    let gap = (Question::TyreGap, Place::Between(1), mm(3.0));
    let proud = |given: &[Given]| {
        let judgement = but(given);
        let finding = found(&judgement, Question::TyreGap).unwrap();
        (
            said(&judgement, Question::TyreGap, Cause::ProudTongues).unwrap(),
            cures(finding, &judgement).contains(&Cure::TonguesBelow),
        )
    };
    assert_eq!(proud(&[gap]), (Told::Against, false));
    let unseen = (Question::TongueProud, Place::Spoke(4), Answer::CannotSee);
    assert_eq!(proud(&[gap, unseen]), (Told::Silent, true));
    let yes = (Question::TongueProud, Place::Spoke(4), Answer::Yes);
    assert_eq!(proud(&[gap, yes]), (Told::For, true));
}

#[test]
fn worn_iron_and_a_dry_rim_are_weighed_by_what_was_measured() {
    let gap = (Question::TyreGap, Place::Between(1), mm(3.0));
    let places = || Question::TyreLeft.places_on(&wheel(12)).into_iter();
    let iron = |left| {
        let rows = places().map(|place| (Question::TyreLeft, place, mm(left)));
        let judgement = but(&[vec![gap], rows.collect()].concat());
        said(&judgement, Question::TyreGap, Cause::TyreStretched).unwrap()
    };
    assert_eq!(iron(THICKNESS * 0.9), Told::Against);
    assert_eq!(iron(THICKNESS * 0.8), Told::Silent);
    assert_eq!(iron(THICKNESS * 0.4), Told::For);
    let wood = |percent| {
        let rows = (1..=6).map(|n| (Question::Moisture, Place::Felloe(n), share(percent)));
        let judgement = but(&[vec![gap], rows.collect()].concat());
        said(&judgement, Question::TyreGap, Cause::DryRim).unwrap()
    };
    assert_eq!(wood(14.0), Told::Against);
    assert_eq!(wood(13.0), Told::Silent);
    assert_eq!(wood(9.0), Told::For);
}

/// Shut joints hold the rim out, and a felloe hardly shrinks along its grain: on a wheel of 1275 mm drying from 20 to 11 %
/// makes a gap of 0.77 mm over a joint at the most. It may make more in the middle of a felloe.
#[test]
fn on_a_shut_rim_drying_does_not_explain_a_slack_tyre() {
    let sizes = sized(wheel(12))
        .sizes
        .with(Size::Height, Some(millimetres(1275.0)));
    let wheel = Wheel { sizes, ..wheel(12) };
    let dry = |given: &[Given]| {
        let moist = (1..=6).map(|n| (Question::Moisture, Place::Felloe(n), share(11.0)));
        let given: Vec<Given> = given.iter().copied().chain(moist).collect();
        let kept = |one: &Given| given.iter().all(|it| (it.0, it.1) != (one.0, one.1));
        let clean = all_clean(&wheel).into_iter().filter(kept);
        let all: Vec<Given> = clean.chain(given.iter().copied()).collect();
        said(&judged(&wheel, &all), Question::TyreGap, Cause::DryRim).unwrap()
    };
    let gap = |spoke, gap| (Question::TyreGap, Place::Between(spoke), mm(gap));
    assert_eq!(dry(&[gap(4, 3.0)]), Told::Against);
    assert_eq!(dry(&[gap(12, 3.0)]), Told::Against);
    assert_eq!(dry(&[gap(4, 0.8)]), Told::Against);
    assert_eq!(dry(&[gap(4, 0.75)]), Told::Silent);
    assert_eq!(dry(&[gap(1, 3.0)]), Told::Silent);
    let open = (Question::JointGap, Place::Joint(2), mm(2.0));
    assert_eq!(dry(&[gap(4, 3.0), open]), Told::Silent);
    let unseen = (Question::JointGap, Place::Joint(2), Answer::CannotSee);
    assert_eq!(dry(&[gap(4, 3.0), unseen]), Told::Silent);
    // Open at the belly and shut at the sole is the very sign of a rim that has dried, and still not of a slack tyre.
    let belly = (Question::JointBelly, Place::Joint(2), mm(2.0));
    assert_eq!(dry(&[gap(4, 3.0), belly]), Told::Against);
    assert_eq!(dry(&[gap(1, 3.0), belly]), Told::For);
}

#[test]
fn a_cracked_tyre_is_renewed_however_thick_it_is() {
    let judgement = but(&[(Question::TyreCracked, Place::Whole, Answer::Yes)]);
    let finding = found(&judgement, Question::TyreCracked).unwrap();
    assert_eq!(cures(finding, &judgement), [Cure::NewTyre]);
}
