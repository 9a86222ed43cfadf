//! A reading: one answer to one question at one place, as it was taken.

use super::answer::Answer;
use super::question::Question;
use crate::wheel::{Part, Place, Position};

/// Which question was put to which place of which wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Slot {
    /// The wheel.
    pub position: Position,
    /// The place on it.
    pub place: Place,
    /// The question.
    pub question: Question,
}

impl Slot {
    /// The words that stand for this slot on paper: `near/spoke-3/spoke-foot`.
    pub fn code(self) -> String {
        format!("{}/{}", self.part().code(), self.question.code())
    }

    /// The slot these words stand for; `None` for a question or a place this version does not know,
    /// and for a question that is not put to such a place.
    pub fn from_code(code: &str) -> Option<Slot> {
        let (part, question) = code.rsplit_once('/')?;
        let question = Question::from_code(question)?;
        match Part::from_code(part)? {
            Part::At(position, place) if question.fits(place) => Some(Slot {
                position,
                place,
                question,
            }),
            _ => None,
        }
    }

    /// The part of the vehicle it is about.
    pub fn part(self) -> Part {
        Part::At(self.position, self.place)
    }
}

/// One answer, with the words it was typed in.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Question, place and wheel.
    pub slot: Slot,
    /// What was answered.
    pub answer: Answer,
    /// What was typed or tapped, as it stood on the key or in the field; empty if nothing was.
    pub written: String,
}

#[cfg(test)]
mod tests {
    use super::Slot;
    use crate::survey::question::Question;
    use crate::wheel::{Place, Position};

    #[test]
    fn a_code_leads_back_to_its_slot() {
        let slot = Slot {
            position: Position::Near,
            place: Place::Spoke(3),
            question: Question::SpokeFoot,
        };
        assert_eq!(slot.code(), "near/spoke-3/spoke-foot");
        assert_eq!(Slot::from_code(&slot.code()), Some(slot));
    }

    #[test]
    fn a_question_put_to_the_wrong_sort_of_place_is_not_read() {
        for code in [
            "near/joint-3/spoke-foot",
            "vehicle/spoke-foot",
            "near/spoke-3/unheard-of",
            "spoke-foot",
            "",
        ] {
            assert_eq!(Slot::from_code(code), None, "{code}");
        }
    }
}
