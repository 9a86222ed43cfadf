//! What the examiner decides of one wheel at one examination, and signs.

use super::stamp::Day;
use crate::survey::Standing;
use crate::wheel::{Part, Place, Position};

/// The field of a slot that decisions stand under.
const FIELD: &str = "decision";

/// A signed standing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// The wheel.
    pub position: Position,
    /// The standing decided on.
    pub standing: Standing,
    /// The standing that was proposed when it was decided.
    pub proposed: Standing,
    /// Why; may be empty where the decision is no kinder than what was proposed.
    pub reason: String,
    /// The day by which to look again, if one is set.
    pub look_again: Option<Day>,
    /// The name it is signed with.
    pub signed: String,
}

impl Decision {
    /// The slot of decisions on the wheel at this position: `near/whole/decision`.
    pub fn slot(position: Position) -> String {
        format!("{}/{FIELD}", Part::At(position, Place::Whole).code())
    }

    /// The wheel that decisions of this slot are about.
    pub fn position(slot: &str) -> Option<Position> {
        let (part, field) = slot.rsplit_once('/')?;
        match Part::from_code(part)? {
            Part::At(position, Place::Whole) if field == FIELD => Some(position),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Decision;
    use crate::wheel::Position;

    #[test]
    fn a_slot_leads_back_to_its_wheel() {
        for position in Position::ALL {
            assert_eq!(
                Decision::position(&Decision::slot(position)),
                Some(position)
            );
        }
        assert_eq!(Decision::slot(Position::Near), "near/whole/decision");
    }

    #[test]
    fn only_a_whole_wheel_is_decided_on() {
        for slot in [
            "near/decision",
            "near/nave/decision",
            "vehicle/decision",
            "near/whole",
            "near/whole/decisions",
            "decision",
            "",
        ] {
            assert_eq!(Decision::position(slot), None, "{slot}");
        }
    }
}
