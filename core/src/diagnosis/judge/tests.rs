//! The evaluator against the table of limits: thresholds, counts, what is missing, causes and cures,
//! and laws that hold for any readings.

mod counts;
mod cured;
mod laws;
mod missing;
mod thresholds;

use super::{Beside, Judgement, judge};
use crate::daybook::{Digest, EntryId};
use crate::diagnosis::{Finding, Grade, Limit, Taken, house_limits};
use crate::quantity::length::millimetres;
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Crack, Pad, Play, Question, Reading, Ring, Slot};
use crate::wheel::{Felloes, Place, Position, Size, Tyre, Wheel};

/// One answer to one question at one place.
type Given = (Question, Place, Answer);

/// A hoop-tyred wheel with two spokes to each felloe.
fn wheel(spokes: u16) -> Wheel {
    Wheel {
        tyre: Some(Tyre::Hoop),
        ..Wheel::of(Felloes::even(spokes, spokes / 2).unwrap())
    }
}

fn id(n: usize) -> EntryId {
    Digest::of(&n.to_le_bytes())
}

/// The readings as entries; the id of each is that of its number in the list.
fn taken(given: &[Given]) -> Vec<Taken> {
    given
        .iter()
        .enumerate()
        .map(|(n, (question, place, answer))| Taken {
            entry: id(n),
            reading: Reading {
                slot: Slot {
                    position: Position::Near,
                    place: *place,
                    question: *question,
                },
                answer: *answer,
                written: String::new(),
            },
        })
        .collect()
}

fn judged(wheel: &Wheel, given: &[Given]) -> Judgement {
    judge(wheel, &taken(given), &house_limits(), &Beside::default())
}

/// The finding on one row, if there is one.
fn found(judgement: &Judgement, question: Question) -> Option<&Finding> {
    let mut of_row = judgement
        .findings
        .iter()
        .filter(|finding| finding.question == question);
    let first = of_row.next();
    assert_eq!(of_row.next(), None, "a row has one finding at most");
    first
}

fn grade(wheel: &Wheel, given: &[Given], question: Question) -> Option<Grade> {
    found(&judged(wheel, given), question).map(|finding| finding.grade)
}

fn mm(value: f64) -> Answer {
    Answer::Length(Measured::new(millimetres(value), millimetres(0.25)).unwrap())
}

/// The same answer at several spokes.
fn spokes(question: Question, numbers: &[u16], answer: Answer) -> Vec<Given> {
    numbers
        .iter()
        .map(|n| (question, Place::Spoke(*n), answer))
        .collect()
}

fn loose() -> Answer {
    Answer::Play(Play::Loose)
}

/// The dish and the thickness that a sound wheel of these tests has.
const DISH: f64 = 36.0;
const THICKNESS: f64 = 16.0;

/// The wheel with its sizes as built.
fn sized(wheel: Wheel) -> Wheel {
    let sizes = wheel.sizes.with(Size::Dish, Some(millimetres(DISH)));
    let sizes = sizes.with(Size::TyreThickness, Some(millimetres(THICKNESS)));
    Wheel { sizes, ..wheel }
}

fn straked(spokes: u16) -> Wheel {
    Wheel {
        tyre: Some(Tyre::Strakes),
        ..wheel(spokes)
    }
}

fn share(percent: f64) -> Answer {
    Answer::Share(Percent::from_paper(percent).unwrap())
}

/// The answer that finds nothing wrong, as it is given most often.
fn clean(question: Question) -> Answer {
    match question.pad() {
        Pad::YesNo if question.sound_is_yes() => Answer::Yes,
        Pad::YesNo => Answer::No,
        Pad::Gauge(_) => mm(0.0),
        Pad::Size(_) => match question {
            Question::Dish => mm(DISH),
            Question::TyreLeft => mm(THICKNESS),
            _ => mm(0.0),
        },
        Pad::Verdict(_) | Pad::Fastening => Answer::Play(Play::Tight),
        Pad::Ring => Answer::Ring(Ring::Rings),
        Pad::Crack => Answer::NothingFound,
        Pad::Share if question == Question::Moisture => share(14.0),
        Pad::Share => share(0.0),
    }
}

/// Every question answered at every place it is put to, nothing wrong.
fn all_clean(wheel: &Wheel) -> Vec<Given> {
    Question::all()
        .filter(|question| question.asked_of(wheel))
        .flat_map(|question| {
            question
                .places_on(wheel)
                .into_iter()
                .map(move |place| (question, place, clean(question)))
        })
        .collect()
}
