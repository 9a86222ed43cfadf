//! Which needs a wheel has, and which questions meet each.

use crate::survey::{Need, Question};
use crate::wheel::Wheel;

/// What must be recorded of this wheel before it is judged: a gap under the tyre only where the
/// tyre is, or may be, a hoop.
pub fn needs(wheel: &Wheel) -> impl Iterator<Item = Need> {
    Need::ALL
        .into_iter()
        .filter(|need| *need != Need::TyreGap || Question::TyreGap.asked_of(wheel))
}

/// The questions that meet a need; a need without one can only be missing.
pub fn questions(need: Need) -> &'static [Question] {
    match need {
        Need::Keeper => &[
            Question::KeeperPresent,
            Question::KeeperRight,
            Question::KeeperSecured,
        ],
        Need::Joints => &[Question::JointGap],
        Need::SpokeFeet => &[Question::SpokeFoot],
        Need::SpokeRimEnds => &[Question::SpokeRimEnd],
        Need::SpokesWhole => &[Question::SpokeBroken],
        Need::TyreGap => &[Question::TyreGap],
        Need::Ring | Need::Dish | Need::EndPlayAndShake | Need::Rot | Need::NaveAndBonds => &[],
    }
}
