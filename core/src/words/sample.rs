//! Entries, a wheel and a style for the tests of these words. Names and places are invented.

use super::Style;
use crate::daybook::{Digest, Entry, EntryId, Kind, Says, Stamp};
use crate::quantity::Measured;
use crate::quantity::format::{FeelerStyle, Fraction, LengthStyle};
use crate::quantity::length::millimetres;
use crate::survey::{Answer, Play, Question, Reading, Slot};
use crate::wheel::{Felloes, Place, Position, Tyre, Wheel};

/// Millimetres.
pub(super) fn style() -> Style {
    Style::default()
}

/// Inches and thou.
pub(super) fn inches() -> Style {
    Style::british(LengthStyle::Inches(Fraction::Sixteenths), FeelerStyle::Thou)
}

/// Twelve spokes, six felloes, a hoop.
pub(super) fn wheel() -> Wheel {
    Wheel {
        tyre: Some(Tyre::Hoop),
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    }
}

/// A gap with the doubt of a gauge.
pub(super) fn mm(value: f64) -> Answer {
    Answer::Length(Measured::new(millimetres(value), millimetres(0.25)).unwrap())
}

/// One of each sort of answer.
pub(super) fn answers() -> [Answer; 10] {
    [
        mm(0.5),
        Answer::Over(millimetres(5.0)),
        Answer::Play(Play::Tight),
        Answer::Play(Play::JustMoves),
        Answer::Play(Play::Loose),
        Answer::Yes,
        Answer::No,
        Answer::CannotSee,
        Answer::NotThere,
        Answer::NothingFound,
    ]
}

/// The id of an entry of this number.
pub(super) fn id(n: u64) -> EntryId {
    Digest::of(&n.to_le_bytes())
}

/// An entry of this number; its id follows from the number alone, and number 0 begins the vehicle.
pub(super) fn entry(n: u64, kind: Kind, slot: &str, says: Says) -> Entry {
    Entry {
        id: id(n),
        vehicle: (n != 0).then(|| id(0)),
        visit: None,
        described_by: None,
        kind,
        slot: slot.to_owned(),
        says,
        by: "Ada Field".to_owned(),
        device: "phone".to_owned(),
        at: Stamp::read("2026-11-05T09:03:00+01:00").unwrap(),
        n,
        replaces: Vec::new(),
        unread_fields: 0,
    }
}

/// An entry that answers a question about the near wheel.
pub(super) fn reading(n: u64, question: Question, place: Place, answer: Answer) -> Entry {
    let slot = Slot {
        position: Position::Near,
        place,
        question,
    };
    let says = Says::Reading(Reading {
        slot,
        answer,
        written: String::new(),
    });
    entry(n, Kind::Reading, &slot.code(), says)
}
