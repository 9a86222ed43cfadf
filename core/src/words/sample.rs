//! Entries, a wheel and a style for the tests of these words. Names and places are invented.

use super::Style;
pub(super) use crate::daybook::sample::id;
use crate::daybook::{Entry, Kind, Says, Stamp, sample};
use crate::quantity::format::{FeelerStyle, Fraction, LengthStyle};
use crate::quantity::length::millimetres;
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Crack, Pad, Play, Question, Reading, Ring, Slot};
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
pub(super) fn answers() -> [Answer; 17] {
    [
        mm(0.5),
        Answer::Over(millimetres(5.0)),
        Answer::Play(Play::Tight),
        Answer::Play(Play::JustMoves),
        Answer::Play(Play::Loose),
        Answer::Ring(Ring::Rings),
        Answer::Ring(Ring::Dull),
        Answer::Ring(Ring::Dead),
        Answer::Crack(Crack::Hairline),
        Answer::Crack(Crack::Open),
        Answer::Crack(Crack::Across),
        Answer::Share(Percent::from_paper(12.5).unwrap()),
        Answer::Yes,
        Answer::No,
        Answer::CannotSee,
        Answer::NotThere,
        Answer::NothingFound,
    ]
}

/// Those of them that are given by the keys of a question.
pub(super) fn answers_to(question: Question) -> impl Iterator<Item = Answer> {
    let pad = question.pad();
    answers().into_iter().filter(move |answer| match answer {
        Answer::Length(_) => matches!(pad, Pad::Gauge(_) | Pad::Size(_) | Pad::Verdict(_)),
        Answer::Over(_) => matches!(pad, Pad::Gauge(_)),
        Answer::Play(_) => matches!(pad, Pad::Verdict(_) | Pad::Fastening),
        Answer::Ring(_) => pad == Pad::Ring,
        Answer::Crack(_) => pad == Pad::Crack,
        Answer::Share(_) => pad == Pad::Share,
        Answer::Yes | Answer::No => pad == Pad::YesNo,
        Answer::CannotSee | Answer::NotThere | Answer::NothingFound => true,
    })
}

/// American words in inches and thou.
pub(super) fn american() -> Style {
    Style::american(LengthStyle::Inches(Fraction::Sixteenths), FeelerStyle::Thou)
}

/// An entry of this number; its id follows from the number alone, and number 0 begins the vehicle.
pub(super) fn entry(n: u64, kind: Kind, slot: &str, says: Says) -> Entry {
    Entry {
        by: "Ada Field".to_owned(),
        device: "phone".to_owned(),
        at: Stamp::read("2026-11-05T09:03:00+01:00").unwrap(),
        ..sample::entry(n, kind, slot, says)
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
