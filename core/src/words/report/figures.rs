//! The figures that stand at their places on the drawing of a wheel: what was measured above nought, and
//! what the hand found not to be tight.

use super::super::answer::{answered, crack};
use super::super::style::Style;
use crate::daybook::{EntryId, VehicleView};
use crate::quantity::length::millimetres;
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
    if question.places() == crate::survey::Places::Whole {
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
