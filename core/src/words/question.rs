//! What each question is called and how it is asked.

use super::style::Style;
use crate::survey::{Group, Question, Stage};

/// The short label of a question, without an article: `tyre gap`.
#[must_use]
pub fn short(question: Question, style: Style) -> String {
    style.fill(label(question))
}

fn label(question: Question) -> &'static str {
    match question {
        Question::FirstKeeper => "keeper, first look",
        Question::FirstTyre => "{tyre}, first look",
        Question::FirstSpokes => "spokes, first look",
        Question::FirstDish => "dish, first look",
        Question::FirstJoints => "joints, first look",
        Question::FirstNave => "{nave}, first look",
        Question::FirstRot => "rot, first look",
        Question::KeeperPresent => "keeper there",
        Question::KeeperRight => "keeper the right part",
        Question::KeeperSecured => "keeper secured",
        Question::KeeperWorn => "{linch_pin} wear",
        Question::TyreRing => "ring of the {tyre}",
        Question::TyreGap => "{tyre} gap",
        Question::TyreShifts => "{tyre} shifts",
        Question::TyreOffCentre => "{tyre} off-{centre}",
        Question::TyreCracked => "{tyre} cracked",
        Question::TyreLeft => "{tyre} thickness left",
        Question::Strake => "strake holds",
        Question::StrakeCracked => "strake cracked",
        Question::JointGap => "joint gap",
        Question::JointBelly => "joint gap at the {belly}",
        Question::FelloeStep => "{felloe} step",
        Question::CrackFelloe => "{felloe} cracks",
        Question::RotFelloe => "{felloe} rot",
        Question::Moisture => "{felloe} moisture",
        Question::SpokeFoot => "spoke {foot}",
        Question::SpokeRimEnd => "spoke rim end",
        Question::SpokeBroken => "spoke broken",
        Question::StandOff => "shoulder stand-off",
        Question::TongueProud => "{tongue} proud",
        Question::CrackSpoke => "spoke cracks",
        Question::RotSpoke => "spoke rot",
        Question::Bonds => "{bond}s",
        Question::CrackNave => "{nave} cracks",
        Question::RotNave => "{nave} rot",
        Question::BoxMoves => "{wheel_box} moves",
        Question::Dish => "dish",
        Question::DishGives => "dish gives",
        Question::RunOut => "run-out",
        Question::OutOfRound => "out of round",
        Question::EndPlay => "{end_play}",
        Question::Binds => "binds",
        Question::Shake => "shake at the rim",
    }
}

/// The question as it is asked at one place.
#[must_use]
pub fn asks(question: Question, style: Style) -> String {
    style.fill(sentence(question))
}

fn sentence(question: Question) -> &'static str {
    match question {
        Question::FirstKeeper => "Is what keeps the wheel on there, and the right part?",
        Question::FirstTyre => "Is the {tyre} on and central?",
        Question::FirstSpokes => "Is every spoke whole?",
        Question::FirstDish => "Is the dish the right way, looked at from behind?",
        Question::FirstJoints => "Are the joints shut, so that there is none you can see into?",
        Question::FirstNave => "Is the {nave} whole at the {bond}s?",
        Question::FirstRot => "Is it free of rot and worm where it has stood?",
        Question::KeeperPresent => "Is what keeps the wheel on its arm there?",
        Question::KeeperRight => "Is it the right part, and not a nail or a bolt in its stead?",
        Question::KeeperSecured => "Is it secured, so that it cannot work out?",
        Question::KeeperWorn => "How much of the {linch_pin} is worn away where it is thinnest?",
        Question::TyreRing => "How does the {tyre} answer the hammer?",
        Question::TyreGap => "How wide is the gap between {tyre} and {felloe}?",
        Question::TyreShifts => "Does the {tyre} shift on the rim when pushed by hand?",
        Question::TyreOffCentre => "Is the {tyre} off-{centre} by over a quarter of its width?",
        Question::TyreCracked => "Is the {tyre} cracked through?",
        Question::TyreLeft => "How thick is the iron still?",
        Question::Strake => "Does the strake over this joint hold?",
        Question::StrakeCracked => "Is the strake over this joint cracked?",
        Question::JointGap => "How far does the joint stand open at the {sole}?",
        Question::JointBelly => "How far does the joint stand open at the {belly}?",
        Question::FelloeStep => "How high is the step between the two {felloe}s?",
        Question::CrackFelloe => "Is there a crack or shake in the {felloe}?",
        Question::RotFelloe => "How deep does the point go into soft wood?",
        Question::Moisture => "How moist is the {felloe}?",
        Question::SpokeFoot => "Does the {foot} move in the {nave}?",
        Question::SpokeRimEnd => "Does the {tongue} move in the {felloe}?",
        Question::SpokeBroken => "Is the spoke broken?",
        Question::StandOff => "How far does the spoke's shoulder stand off the {felloe}?",
        Question::TongueProud => "Does the {tongue} stand proud of the {sole}?",
        Question::CrackSpoke => "Is there a crack or shake in the spoke?",
        Question::RotSpoke => "How deep does the point go into soft wood?",
        Question::Bonds => "Do the {bond}s on the {nave} hold?",
        Question::CrackNave => "Is there a crack or shake in the {nave}?",
        Question::RotNave => "How deep does the point go into soft wood?",
        Question::BoxMoves => "Does the {wheel_box} move in the {nave}?",
        Question::Dish => "How much dish has the wheel?",
        Question::DishGives => "Does the rim give in and out by hand?",
        Question::RunOut => "How far does the rim wander in and out in one turn?",
        Question::OutOfRound => "How far does the rim rise and fall in one turn?",
        Question::EndPlay => "How far does the wheel slide along its arm?",
        Question::Binds => "Lifted, does it bind, so that one finger will not turn it?",
        Question::Shake => "How far does the rim move between two hands?",
    }
}

/// What a group of questions is called.
#[must_use]
pub fn group(group: Group, style: Style) -> String {
    style.fill(match group {
        Group::FirstLook => "first look",
        Group::Keeper => "what keeps it on",
        Group::Tyre => "{tyre}",
        Group::Rim => "rim",
        Group::Spokes => "spokes",
        Group::Nave => "{nave}",
        Group::Whole => "whole wheel",
    })
}

/// What a stage of the work is called.
#[must_use]
pub fn stage(stage: Stage, style: Style) -> String {
    style.fill(match stage {
        Stage::OnTheArm => "on its arm",
        Stage::OffTheArm => "off its arm",
        Stage::TyreOff => "{tyre} off",
        Stage::AfterTyring => "after {tyring}",
    })
}

#[cfg(test)]
mod tests {
    use super::{asks, group, short, stage};
    use crate::survey::{Group, Question, Stage};
    use crate::words::sample::{american, style};

    #[test]
    fn an_american_is_asked_in_american_words() {
        let british = ["tyre", "nave", "waggon", "sole"];
        for question in Question::all() {
            let asked = format!(
                "{} {}",
                short(question, american()),
                asks(question, american())
            );
            assert!(!british.iter().any(|word| asked.contains(word)), "{asked}");
        }
        insta::assert_snapshot!(asks(Question::TyreGap, american()), @"How wide is the gap between tire and felloe?");
    }

    #[test]
    fn every_question_has_a_label_and_is_asked() {
        let row = |question| format!("{}: {}", short(question, style()), asks(question, style()));
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        keeper, first look: Is what keeps the wheel on there, and the right part?
        tyre, first look: Is the tyre on and central?
        spokes, first look: Is every spoke whole?
        dish, first look: Is the dish the right way, looked at from behind?
        joints, first look: Are the joints shut, so that there is none you can see into?
        nave, first look: Is the nave whole at the bonds?
        rot, first look: Is it free of rot and worm where it has stood?
        keeper there: Is what keeps the wheel on its arm there?
        keeper the right part: Is it the right part, and not a nail or a bolt in its stead?
        keeper secured: Is it secured, so that it cannot work out?
        linch pin wear: How much of the linch pin is worn away where it is thinnest?
        ring of the tyre: How does the tyre answer the hammer?
        tyre gap: How wide is the gap between tyre and felloe?
        tyre shifts: Does the tyre shift on the rim when pushed by hand?
        tyre off-centre: Is the tyre off-centre by over a quarter of its width?
        tyre cracked: Is the tyre cracked through?
        tyre thickness left: How thick is the iron still?
        strake holds: Does the strake over this joint hold?
        strake cracked: Is the strake over this joint cracked?
        joint gap: How far does the joint stand open at the sole?
        joint gap at the belly: How far does the joint stand open at the belly?
        felloe step: How high is the step between the two felloes?
        felloe cracks: Is there a crack or shake in the felloe?
        felloe rot: How deep does the point go into soft wood?
        felloe moisture: How moist is the felloe?
        spoke foot: Does the foot move in the nave?
        spoke rim end: Does the tongue move in the felloe?
        spoke broken: Is the spoke broken?
        shoulder stand-off: How far does the spoke's shoulder stand off the felloe?
        tongue proud: Does the tongue stand proud of the sole?
        spoke cracks: Is there a crack or shake in the spoke?
        spoke rot: How deep does the point go into soft wood?
        bonds: Do the bonds on the nave hold?
        nave cracks: Is there a crack or shake in the nave?
        nave rot: How deep does the point go into soft wood?
        box moves: Does the box move in the nave?
        dish: How much dish has the wheel?
        dish gives: Does the rim give in and out by hand?
        run-out: How far does the rim wander in and out in one turn?
        out of round: How far does the rim rise and fall in one turn?
        end play: How far does the wheel slide along its arm?
        binds: Lifted, does it bind, so that one finger will not turn it?
        shake at the rim: How far does the rim move between two hands?
        ");
    }

    #[test]
    fn every_group_and_every_stage_has_a_name() {
        insta::assert_snapshot!(Group::ALL.map(|it| group(it, style())).join(", "), @"first look, what keeps it on, tyre, rim, spokes, nave, whole wheel");
        insta::assert_snapshot!(Stage::ALL.map(|it| stage(it, style())).join(", "), @"on its arm, off its arm, tyre off, after tyring");
    }
}
