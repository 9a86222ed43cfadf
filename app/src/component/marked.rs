//! What is drawn over a picture: chalk with an iron edge, which holds on light and dark, as many of the screen's pixels
//! wide in whatever size the picture is shown.

use cartside_core::daybook::marks::EDGE;
use cartside_core::daybook::{Mark, Spot};
use cartside_core::words;

use crate::markup::{Piece, sheet};

/// Nearer to the upper edge than this, in thousandths, a pin's number stands below its place.
const NO_ROOM_ABOVE: u16 = 120;

/// The marks as they lie over a picture that fills its place.
pub fn drawn(marks: &[Mark]) -> Piece {
    let lines: String = marks.iter().map(line).collect();
    let mut number = 0;
    let pins = marks.iter().filter_map(|mark| match mark {
        Mark::Pin(spot, _) => {
            number += 1;
            Some(pin(*spot, number))
        }
        _ => None,
    });
    let pins: Vec<Piece> = pins.collect();
    sheet!(
        "<svg class=marks aria-hidden=true data-marks={}><svg viewBox=\"0 0 1000 1000\" preserveAspectRatio=none>\
         <path class=edge d={}/><path class=chalk d={}/></svg>{}</svg>",
        marks.len().to_string(),
        lines.clone(),
        lines,
        pins
    )
}

/// Every mark told in words, for whoever does not see it and to be read beside the picture; nothing of none.
pub fn told(marks: &[Mark]) -> Option<Piece> {
    let each = words::marks::each(marks).into_iter();
    let each = each.map(|said| sheet!("<li>{}</li>", words::capital(&said)));
    let each: Vec<Piece> = each.collect();
    (!marks.is_empty()).then(|| sheet!("<ul class=marks-told aria-label=Marks>{}</ul>", each))
}

/// A cross where the keys have come to.
pub fn cross(spot: Spot) -> Piece {
    sheet!(
        "<svg class=marks aria-hidden=true><svg x={} y={}><path class=edge d=\"M-14 0H14M0 -14V14\"/>\
         <path class=chalk d=\"M-14 0H14M0 -14V14\"/></svg></svg>",
        percent(spot.x),
        percent(spot.y)
    )
}

/// The path of a line or ring; nothing of a pin.
fn line(mark: &Mark) -> String {
    match mark {
        Mark::Line(line) => {
            let spots: Vec<String> = line.iter().map(|it| format!("{} {}", it.x, it.y)).collect();
            format!("M{}", spots.join("L"))
        }
        Mark::Ring(one, other) => {
            let (left, top) = (one.x.min(other.x), one.y.min(other.y));
            let (wide, high) = (one.x.abs_diff(other.x), one.y.abs_diff(other.y));
            let (across, down) = (half(wide), half(high));
            format!(
                "M{left} {}a{across} {down} 0 1 1 {wide} 0a{across} {down} 0 1 1 -{wide} 0z",
                half(2 * top + high)
            )
        }
        Mark::Pin(..) => String::new(),
    }
}

/// Half of a number, with its half.
fn half(n: u16) -> String {
    format!("{}{}", n / 2, if n % 2 == 1 { ".5" } else { "" })
}

/// A pin: its point at the place, its number on a plate at the other end.
fn pin(spot: Spot, number: usize) -> Piece {
    let (plate, text) = if spot.y < NO_ROOM_ABOVE {
        ("M0 0V14H7l7 7v13l-7 7h-14l-7 -7v-13l7 -7h7z", "28")
    } else {
        ("M0 0V-14H7l7 -7v-13l-7 -7h-14l-7 7v13l7 7h7z", "-27")
    };
    sheet!(
        "svg:<svg class=pin x={} y={}><path class=edge d={}/><path class=plate d={}/><text y={}>{}</text></svg>",
        percent(spot.x),
        percent(spot.y),
        plate,
        plate,
        text,
        number.to_string()
    )
}

/// Thousandths as percent.
fn percent(n: u16) -> String {
    let n = n.min(EDGE);
    format!("{}.{}%", n / 10, n % 10)
}
