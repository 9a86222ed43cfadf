//! Marks on a picture: lines, rings and numbered pins drawn over it. Places are in thousandths of the picture's width
//! and height, from its upper left corner, so that they hold whatever size it is shown in; its bytes stay as they were.

use super::digest::Digest;

/// The far edge of a picture, in thousandths.
pub const EDGE: u16 = 1000;
/// The most marks this version writes on one picture. More of them are read.
pub const MOST_MARKS: usize = 40;
/// The most points this version writes in one line. More of them are read.
pub const MOST_POINTS: usize = 64;
/// The most characters this version writes beside a pin. More of them are read.
pub const LONGEST_BESIDE: usize = 200;
/// A point that stands no further out from the line between its neighbours is left out: in tenths of a thousandth.
const UNSEEN: u32 = 25;

/// A place on a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// From the left edge, in thousandths of the width; at most [`EDGE`].
    pub x: u16,
    /// From the upper edge, in thousandths of the height; at most [`EDGE`].
    pub y: u16,
}

impl Spot {
    /// A place so far across and down; what lies outside is brought to the edge.
    pub fn at(x: i32, y: i32) -> Spot {
        let within = |n: i32| n.clamp(0, i32::from(EDGE)) as u16;
        Spot {
            x: within(x),
            y: within(y),
        }
    }

    /// The place so much further across and down, brought to the edge.
    #[must_use]
    pub fn moved(self, across: i32, down: i32) -> Spot {
        Spot::at(i32::from(self.x) + across, i32::from(self.y) + down)
    }
}

/// One mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A line through these places, two or more.
    Line(Vec<Spot>),
    /// A ring that fills the box between two opposite corners.
    Ring(Spot, Spot),
    /// A pin, numbered by its order among the pins of its picture, with a remark that may be empty.
    Pin(Spot, String),
}

/// What is drawn over one picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marks {
    /// Digest of the picture's bytes.
    pub picture: Digest,
    /// The marks, in the order they were drawn.
    pub all: Vec<Mark>,
}

impl Mark {
    /// What a finger drew, as a line; `None` if it did not go anywhere.
    pub fn line(drawn: Vec<Spot>) -> Option<Mark> {
        let line = simplified(drawn);
        let first = line.first()?;
        let went = line.iter().any(|spot| spot != first);
        went.then_some(Mark::Line(line))
    }

    /// The ring round all that a finger drew, whether it went round a thing or across it; `None` if it did not go
    /// anywhere.
    pub fn ring(drawn: &[Spot]) -> Option<Mark> {
        let xs = || drawn.iter().map(|spot| spot.x);
        let ys = || drawn.iter().map(|spot| spot.y);
        let first = Spot {
            x: xs().min()?,
            y: ys().min()?,
        };
        let last = Spot {
            x: xs().max()?,
            y: ys().max()?,
        };
        (first != last).then_some(Mark::Ring(first, last))
    }
}

/// The line without the points that do not bend it to be seen, and with at most [`MOST_POINTS`]: again and again the
/// one is left out that stands out least from the line between its neighbours. The ends stay.
pub fn simplified(mut line: Vec<Spot>) -> Vec<Spot> {
    loop {
        let least = line
            .windows(3)
            .enumerate()
            .filter_map(|(at, near)| match near {
                [one, two, three] => Some((stands_out(*one, *two, *three), at + 1)),
                _ => None,
            })
            .min();
        match least {
            Some((out, at)) if out <= UNSEEN || line.len() > MOST_POINTS => {
                line.remove(at);
            }
            _ => return line,
        }
    }
}

/// How far the second stands out from the line between the others, in tenths of a thousandth.
fn stands_out(one: Spot, two: Spot, three: Spot) -> u32 {
    let far = |to: Spot| {
        (
            i32::from(to.x) - i32::from(one.x),
            i32::from(to.y) - i32::from(one.y),
        )
    };
    let ((ax, ay), (bx, by)) = (far(two), far(three));
    let long = |x: i32, y: i32| (100 * (x * x + y * y)).unsigned_abs().isqrt();
    match ax * bx + ay * by {
        before if before <= 0 => long(ax, ay),
        behind if behind >= bx * bx + by * by => long(ax - bx, ay - by),
        _ => 100 * (ax * by - ay * bx).unsigned_abs() / long(bx, by).max(1),
    }
}

#[cfg(test)]
mod tests {
    use super::{EDGE, MOST_POINTS, Mark, Spot, simplified};
    use proptest::prelude::*;

    fn spots(all: &[(i32, i32)]) -> Vec<Spot> {
        all.iter().map(|(x, y)| Spot::at(*x, *y)).collect()
    }

    #[test]
    fn what_lies_outside_is_brought_to_the_edge() {
        assert_eq!(Spot::at(-7, 1200), Spot { x: 0, y: EDGE });
        assert_eq!(Spot::at(990, 5).moved(20, -20), Spot { x: EDGE, y: 0 });
    }

    #[test]
    fn a_straight_line_keeps_its_ends_and_a_corner_stays() {
        let straight: Vec<Spot> = (0..=500).map(|n| Spot::at(n, n)).collect();
        assert_eq!(simplified(straight), spots(&[(0, 0), (500, 500)]));
        let corner = spots(&[
            (0, 0),
            (100, 2),
            (200, 0),
            (203, 100),
            (200, 200),
            (201, 300),
        ]);
        assert_eq!(
            simplified(corner),
            spots(&[(0, 0), (200, 0), (203, 100), (201, 300)])
        );
    }

    #[test]
    fn a_way_there_and_back_keeps_its_far_end() {
        let there = (0..=100).chain((0..=100).rev());
        let there_and_back = there.map(|n| Spot::at(5 * n, 0)).collect();
        assert_eq!(
            simplified(there_and_back),
            spots(&[(0, 0), (500, 0), (0, 0)])
        );
    }

    #[test]
    fn a_tap_is_no_line_and_no_ring() {
        let tap = spots(&[(5, 5), (5, 5), (5, 5)]);
        assert_eq!(Mark::ring(&tap), None);
        assert_eq!(Mark::line(tap), None);
        assert_eq!((Mark::line(vec![]), Mark::ring(&[])), (None, None));
    }

    #[test]
    fn a_ring_is_the_same_drawn_round_or_across() {
        let round = spots(&[(300, 100), (500, 300), (300, 500), (100, 300), (290, 100)]);
        let across = spots(&[(500, 100), (300, 250), (100, 500)]);
        let ring = Some(Mark::Ring(Spot::at(100, 100), Spot::at(500, 500)));
        assert_eq!(Mark::ring(&round), ring);
        assert_eq!(Mark::ring(&across), ring);
    }

    proptest! {
        #[test]
        fn a_long_line_comes_down_to_what_is_written(
            drawn in proptest::collection::vec((0..=1000_i32, 0..=1000_i32), 2..400),
        ) {
            let drawn = spots(&drawn);
            let line = simplified(drawn.clone());
            prop_assert!((2..=MOST_POINTS).contains(&line.len()));
            prop_assert_eq!((line.first(), line.last()), (drawn.first(), drawn.last()));
            let mut left = drawn.iter();
            prop_assert!(line.iter().all(|spot| left.any(|it| it == spot)), "in order");
            prop_assert_eq!(simplified(line.clone()), line);
        }
    }
}
