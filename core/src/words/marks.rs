//! What is drawn over a picture, told in words to whoever does not see it: each mark, where it lies, and what is written
//! beside it.

use crate::daybook::marks::EDGE;
use crate::daybook::{Mark, Spot};

/// What a sort of mark is called, and how it is drawn by a finger and by keys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tool {
    /// A line.
    Line,
    /// A ring.
    Ring,
    /// A numbered pin.
    Pin,
}

impl Tool {
    /// Every tool, in the order they are offered.
    pub const ALL: [Tool; 3] = [Tool::Line, Tool::Ring, Tool::Pin];

    /// What it is called, in small letters.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Tool::Line => "line",
            Tool::Ring => "ring",
            Tool::Pin => "pin",
        }
    }

    /// How it is drawn.
    #[must_use]
    pub fn how(self) -> &'static str {
        match self {
            Tool::Line => {
                "Draw along it with a finger. By keys: Enter where the line begins, arrows, Enter where it ends."
            }
            Tool::Ring => {
                "Draw round it or across it with a finger. By keys: Enter at one corner, arrows, Enter at the other."
            }
            Tool::Pin => "Tap the place. By keys: arrows to the place, then Enter.",
        }
    }
}

/// Where a place lies: `upper left`, `middle`.
#[must_use]
pub fn place(spot: Spot) -> &'static str {
    const PLACES: [[&str; 3]; 3] = [
        ["upper left", "upper middle", "upper right"],
        ["middle left", "middle", "middle right"],
        ["lower left", "lower middle", "lower right"],
    ];
    let third = |n: u16| usize::from(n) * 3 / (usize::from(EDGE) + 1);
    let row = PLACES.get(third(spot.y));
    row.and_then(|row| row.get(third(spot.x)))
        .copied()
        .unwrap_or("middle")
}

/// Each mark in words, in the order they were drawn: `pin 1, upper left: “crack begins here”`.
#[must_use]
pub fn each(marks: &[Mark]) -> Vec<String> {
    let mut pins = 0_usize;
    let each = marks.iter().map(|mark| match mark {
        Mark::Line(line) => from_to(line),
        Mark::Ring(one, other) => format!("ring, {}", place(between(*one, *other))),
        Mark::Pin(spot, text) => {
            pins += 1;
            let beside = match text.as_str() {
                "" => String::new(),
                text => format!(": “{text}”"),
            };
            format!("pin {pins}, {}{beside}", place(*spot))
        }
    });
    each.collect()
}

fn from_to(line: &[Spot]) -> String {
    let ends = line.first().zip(line.last());
    match ends.map(|(first, last)| (place(*first), place(*last))) {
        Some((first, last)) if first != last => format!("line from {first} to {last}"),
        Some((at, _)) => format!("line, {at}"),
        None => "line".to_owned(),
    }
}

fn between(one: Spot, other: Spot) -> Spot {
    Spot {
        x: one.x.midpoint(other.x),
        y: one.y.midpoint(other.y),
    }
}

/// All marks in one line.
#[must_use]
pub fn told(marks: &[Mark]) -> String {
    if marks.is_empty() {
        return "no marks".to_owned();
    }
    each(marks).join("; ")
}

#[cfg(test)]
mod tests {
    use super::{each, place, told};
    use crate::daybook::{Mark, Spot};

    fn at(x: i32, y: i32) -> Spot {
        Spot::at(x, y)
    }

    #[test]
    fn every_ninth_of_a_picture_has_its_name() {
        let all = [0, 500, 1000].map(|y| [0, 500, 1000].map(|x| place(at(x, y))).join(", "));
        insta::assert_snapshot!(all.join("\n"), @r"
        upper left, upper middle, upper right
        middle left, middle, middle right
        lower left, lower middle, lower right
        ");
        assert_eq!(
            (place(at(333, 333)), place(at(334, 334))),
            ("upper left", "middle")
        );
    }

    #[test]
    fn marks_are_told_in_their_order_and_pins_by_number() {
        let marks = [
            Mark::Pin(at(100, 200), "crack begins here".to_owned()),
            Mark::Ring(at(400, 300), at(600, 900)),
            Mark::Line(vec![at(0, 900), at(300, 600), at(900, 100)]),
            Mark::Line(vec![at(10, 10), at(100, 100)]),
            Mark::Pin(at(900, 900), String::new()),
        ];
        insta::assert_snapshot!(each(&marks).join("\n"), @r"
        pin 1, upper left: “crack begins here”
        ring, middle
        line from lower left to upper right
        line, upper left
        pin 2, lower right
        ");
        assert_eq!(told(&[]), "no marks");
        assert_eq!(
            told(&marks[3..]),
            "line, upper left; pin 1, lower right",
            "numbered among those told"
        );
    }
}
