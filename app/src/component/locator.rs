//! A small wheel that shows where the place in hand is: how far round from the mark, seen from the face.

use cartside_core::quantity::decimal;
use cartside_core::wheel::{Place, Wheel};

use crate::component::round::{degrees, point};
use crate::component::wheel_drawing::spoke_turns;
use crate::markup::{Piece, sheet};

/// Where a place is on a wheel.
pub fn locator(wheel: &Wheel, place: Place) -> Piece {
    let joints = (1..=wheel.felloes.felloes()).filter_map(|n| wheel.turn(Place::Joint(n)));
    let spokes = spoke_turns(wheel).into_iter();
    let lines: Vec<Piece> = spokes
        .map(|turn| line("M0 -16V-78", turn))
        .chain(joints.map(|turn| line("M0 -80V-98", degrees(turn))))
        .collect();
    sheet!(
        "<svg class=locator viewBox=\"-120 -120 240 240\" aria-hidden=true>\
         <circle class=thin r=98/><circle class=thin r=80/><circle class=thin r=16/>{}\
         <path class=the-mark d=\"M0 -101l-9 -15h18z\"/>{}</svg>",
        lines,
        here(wheel, place)
    )
}

/// A line at the top, turned so many degrees.
fn line(path: &'static str, turn: f64) -> Piece {
    sheet!(
        "svg:<path class=thin d={} transform=rotate({})/>",
        path,
        decimal(turn, 2)
    )
}

fn here(wheel: &Wheel, place: Place) -> Option<Piece> {
    let turn = wheel.turn(place)?;
    Some(match place {
        Place::Spoke(_) => {
            let turn = format!("rotate({})", decimal(degrees(turn), 2));
            sheet!("svg:<path class=here d=\"M0 -16V-80\" transform={}/>", turn)
        }
        _ => {
            let (x, y) = point(turn, 93.0);
            let (x, y) = (decimal(x, 1), decimal(y, 1));
            sheet!("svg:<circle class=here cx={} cy={} r=15/>", x, y)
        }
    })
}
