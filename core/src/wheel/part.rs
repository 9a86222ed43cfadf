//! Places on a wheel. Felloes run clockwise from the mark, seen from the face (the side away from
//! the cart); spokes run on through. Joint 1 is the mark; felloe *n* lies between joint *n* and the
//! next. A place is never a clock hour, because the wheel turns.

use super::position::Position;

/// A place on one wheel; numbers start at 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// The wheel as a whole.
    Whole,
    /// The nave, its bonds and its box.
    Nave,
    /// The spoke of this number, or the tyre straight over it.
    Spoke(u16),
    /// Half-way between the spoke of this number and the next one round.
    Between(u16),
    /// The felloe joint of this number; 1 is the mark.
    Joint(u16),
    /// The felloe of this number.
    Felloe(u16),
}

impl Place {
    /// The word that stands for this place in a slot and in the address of a page.
    pub fn code(self) -> String {
        match self {
            Place::Whole => "whole".to_owned(),
            Place::Nave => "nave".to_owned(),
            Place::Spoke(n) => format!("spoke-{n}"),
            Place::Between(n) => format!("between-{n}"),
            Place::Joint(n) => format!("joint-{n}"),
            Place::Felloe(n) => format!("felloe-{n}"),
        }
    }

    /// The place a code stands for; `None` unless the code is exactly what [`Place::code`] writes.
    pub fn from_code(code: &str) -> Option<Place> {
        let place = match code.split_once('-') {
            None if code == "whole" => Place::Whole,
            None if code == "nave" => Place::Nave,
            Some(("spoke", n)) => Place::Spoke(n.parse().ok()?),
            Some(("between", n)) => Place::Between(n.parse().ok()?),
            Some(("joint", n)) => Place::Joint(n.parse().ok()?),
            Some(("felloe", n)) => Place::Felloe(n.parse().ok()?),
            _ => return None,
        };
        (place.code() == code && place.number() != Some(0)).then_some(place)
    }

    /// The number of the part, where it has one.
    pub fn number(self) -> Option<u16> {
        match self {
            Place::Whole | Place::Nave => None,
            Place::Spoke(n) | Place::Between(n) | Place::Joint(n) | Place::Felloe(n) => Some(n),
        }
    }
}

/// What an entry is about: the vehicle as a whole, or a place on one of its wheels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The vehicle as a whole.
    Vehicle,
    /// A place on the wheel at this position.
    At(Position, Place),
}

impl Part {
    /// The words that stand for this part in a slot: `vehicle`, or `near/spoke-3`.
    pub fn code(self) -> String {
        match self {
            Part::Vehicle => "vehicle".to_owned(),
            Part::At(position, place) => format!("{}/{}", position.code(), place.code()),
        }
    }

    /// The part that these words stand for.
    pub fn from_code(code: &str) -> Option<Part> {
        if code == "vehicle" {
            return Some(Part::Vehicle);
        }
        let (position, place) = code.split_once('/')?;
        Some(Part::At(
            Position::from_code(position)?,
            Place::from_code(place)?,
        ))
    }

    /// The wheel it belongs to, if it is on one.
    pub fn position(self) -> Option<Position> {
        match self {
            Part::Vehicle => None,
            Part::At(position, _) => Some(position),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Part, Place};
    use crate::wheel::position::Position;

    #[test]
    fn a_code_leads_back_to_its_part() {
        let places = [
            Place::Whole,
            Place::Nave,
            Place::Spoke(12),
            Place::Between(1),
            Place::Joint(6),
            Place::Felloe(65535),
        ];
        for place in places {
            let part = Part::At(Position::NearHind, place);
            assert_eq!(Part::from_code(&part.code()), Some(part));
        }
        assert_eq!(Part::from_code("vehicle"), Some(Part::Vehicle));
    }

    #[test]
    fn only_the_one_spelling_is_read() {
        for code in [
            "near/spoke-0",
            "near/spoke-03",
            "near/spoke-+3",
            "near/spoke-65536",
            "near/spoke",
            "near",
            "near/",
            "",
            "near/hub",
        ] {
            assert_eq!(Part::from_code(code), None, "{code}");
        }
    }
}
