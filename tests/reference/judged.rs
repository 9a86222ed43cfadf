//! A wheel of twelve spokes with readings typed as at the cart, put before the house limits.

use cartside_core::daybook::Digest;
use cartside_core::diagnosis::{Beside, Finding, Taken, house_limits, judge};
use cartside_core::quantity::length::millimetres;
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::quantity::{Measured, Percent};
use cartside_core::survey::{Answer, Question, Reading, Slot};
use cartside_core::wheel::{Felloes, Place, Position, Tyre, Wheel};

/// Twelve spokes in six felloes under a hoop.
pub fn wheel() -> Wheel {
    Wheel {
        tyre: Some(Tyre::Hoop),
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    }
}

/// A length as it is typed, taken without doubt.
pub fn length(text: &str, range: LengthRange) -> Answer {
    let value = parse(text, range, BareUnit::Millimetre).unwrap();
    Answer::Length(Measured::new(value, millimetres(0.0)).unwrap())
}

/// A share as it is typed.
pub fn share(text: &str) -> Answer {
    Answer::Share(Percent::parse(text).unwrap())
}

/// What the house limits find in these readings, worst first.
pub fn findings(wheel: &Wheel, readings: &[(Question, Place, Answer)]) -> Vec<Finding> {
    let taken = |(at, (question, place, answer)): (usize, &(Question, Place, Answer))| Taken {
        entry: Digest::of(&at.to_le_bytes()),
        reading: Reading {
            slot: Slot {
                position: Position::Near,
                place: *place,
                question: *question,
            },
            answer: *answer,
            written: String::new(),
        },
    };
    let taken: Vec<Taken> = readings.iter().enumerate().map(taken).collect();
    judge(wheel, &taken, &house_limits(), &Beside::default()).findings
}
