//! A small wheel that shows where the place in hand is: how far round from the mark, seen from the face.

use cartside_core::wheel::{Place, Wheel};

use crate::component::round::{degrees, point};
use crate::component::wheel_drawing::spoke_turns;
use crate::markup::{Tag, drawn};

/// Where a place is on a wheel.
pub fn locator(wheel: &Wheel, place: Place) -> Tag {
    let joints = (1..=wheel.felloes.felloes())
        .filter_map(|n| wheel.turn(Place::Joint(n)))
        .map(degrees);
    let ring = |radius| drawn("circle").class("thin").number("r", radius);
    drawn("svg")
        .class("locator")
        .set("viewBox", "-120 -120 240 240")
        .set("aria-hidden", "true")
        .each([98.0, 80.0, 16.0].map(ring))
        .each(
            spoke_turns(wheel)
                .into_iter()
                .map(|turn| line("M0 -16V-78", turn)),
        )
        .each(joints.map(|turn| line("M0 -80V-98", turn)))
        .put(
            drawn("path")
                .class("the-mark")
                .set("d", "M0 -101l-9 -15h18z"),
        )
        .put(here(wheel, place))
}

/// A line at the top, turned so many degrees.
fn line(path: &'static str, turn: f64) -> Tag {
    drawn("path")
        .class("thin")
        .set("d", path)
        .set("transform", format!("rotate({turn:.2})"))
}

fn here(wheel: &Wheel, place: Place) -> Option<Tag> {
    let turn = wheel.turn(place)?;
    Some(match place {
        Place::Spoke(_) => drawn("path")
            .class("here")
            .set("d", "M0 -16V-80")
            .set("transform", format!("rotate({:.2})", degrees(turn))),
        _ => {
            let (x, y) = point(turn, 93.0);
            drawn("circle")
                .class("here")
                .set("cx", format!("{x:.1}"))
                .set("cy", format!("{y:.1}"))
                .set("r", "15")
        }
    })
}
