//! The figures that stand at their places on the drawing of a wheel: what was measured above nought, and
//! what the hand found not to be tight.

use super::super::answer::{answered, crack};
use super::super::style::Style;
use crate::daybook::{EntryId, VehicleView};
use crate::quantity::Length;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::survey::{Answer, Play, Question, Ring};
use crate::wheel::{Place, Position};

/// The figures of one wheel at one examination, each as short as it can be; of several questions at one
/// place each has its own.
#[must_use]
pub fn figures(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    style: Style,
) -> Vec<(Place, String)> {
    let readings = vehicle.readings(visit).into_iter();
    let here = readings.filter(|(_, reading)| reading.slot.position == position);
    let mut figures: Vec<(Place, String)> = Vec::new();
    for (_, reading) in here {
        let (place, question) = (reading.slot.place, reading.slot.question);
        let Some(said) = short(question, &reading.answer, style) else {
            continue;
        };
        match figures.iter_mut().find(|(at, _)| *at == place) {
            Some((_, all)) => {
                all.push_str(", ");
                all.push_str(&said);
            }
            None => figures.push((place, said)),
        }
    }
    figures
}

fn short(question: Question, answer: &Answer, style: Style) -> Option<String> {
    // Beside a gap a thickness would read as one.
    if question.places() == crate::survey::Places::Whole || question == Question::TyreLeft {
        return None;
    }
    Some(match answer {
        Answer::Length(measured) if measured.value() > millimetres(0.0) => {
            style.read(question, measured.value())
        }
        Answer::Play(Play::Tight) | Answer::Ring(Ring::Rings) => return None,
        Answer::Crack(found) => crack(*found, style).split([' ', ',']).next()?.to_owned(),
        Answer::Yes if question == Question::SpokeBroken => "broken".to_owned(),
        Answer::Over(_) | Answer::Play(_) | Answer::Ring(_) | Answer::Share(_) => {
            answered(question, answer, style)
        }
        Answer::NotThere => answered(question, answer, style),
        _ => return None,
    })
}

/// What the hatching and the circles of a drawing stand for.
pub const LEGEND: &str = "Dots: a note. Slanting lines: light work only. Lattice: keep empty. Solid: not on this wheel. The circle on a part carries the mark of the same grade.";

/// The greatest wheel that is drawn at one to ten: with its numbers it still fits the width of A4.
const AT_TEN: f64 = 1380.0;

/// To which scale a wheel of this height is drawn, and that in words.
#[must_use]
pub fn drawn_at(height: Option<Length>) -> (Option<u16>, String) {
    let Some(height) = height else {
        return (
            None,
            "Not to scale: the height of the wheel has not been said. Seen from its face, clockwise from the mark.".to_owned(),
        );
    };
    let scale = if to_paper_mm(height) > AT_TEN { 20 } else { 10 };
    (
        Some(scale),
        format!(
            "Height over the rim 1:{scale} where it is printed at full size; what lies within is not to scale. Seen from its face, clockwise from the mark."
        ),
    )
}
