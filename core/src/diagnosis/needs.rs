//! Which needs a wheel has, and which questions meet each.

use crate::survey::{Need, Question};
use crate::wheel::Wheel;

/// What must be recorded of this wheel before it is judged: what none of its questions is asked of
/// is not needed, such as a ring where there is no hoop.
pub fn needs(wheel: &Wheel) -> impl Iterator<Item = Need> {
    Need::ALL.into_iter().filter(|need| {
        questions(*need)
            .iter()
            .any(|question| question.asked_of(wheel))
    })
}

/// The questions that meet a need.
pub fn questions(need: Need) -> &'static [Question] {
    match need {
        Need::Keeper => &[
            Question::KeeperPresent,
            Question::KeeperRight,
            Question::KeeperSecured,
        ],
        Need::Ring => &[Question::TyreRing],
        Need::Joints => &[Question::JointGap],
        Need::SpokeFeet => &[Question::SpokeFoot],
        Need::SpokeRimEnds => &[Question::SpokeRimEnd],
        Need::SpokesWhole => &[Question::SpokeBroken],
        Need::TyreGap => &[Question::TyreGap],
        Need::Strakes => &[Question::Strake, Question::StrakeCracked],
        Need::Dish => &[Question::Dish],
        Need::EndPlayAndShake => &[Question::EndPlay, Question::Shake],
        Need::Rot => &[Question::RotFelloe, Question::RotSpoke, Question::RotNave],
        Need::NaveAndBonds => &[Question::Bonds, Question::CrackNave],
    }
}
