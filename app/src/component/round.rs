//! The geometry of a drawn wheel: seen from the face, the mark at the top, clockwise, about (0, 0).

use std::f64::consts::TAU;

/// A point so far round from the mark, in turns, and so far out.
pub fn point(turn: f64, out: f64) -> (f64, f64) {
    let angle = turn * TAU;
    (out * angle.sin(), -out * angle.cos())
}

/// How far a shape drawn at the top is turned to stand there, in degrees.
pub fn degrees(turn: f64) -> f64 {
    turn * 360.0
}

/// The path of a length of ring from one turn to another, between two radii.
pub fn sector(from: f64, to: f64, inner: f64, outer: f64) -> String {
    let large = u8::from(to - from > 0.5);
    let ((ax, ay), (bx, by)) = (point(from, outer), point(to, outer));
    let ((cx, cy), (dx, dy)) = (point(to, inner), point(from, inner));
    format!(
        "M{ax:.2} {ay:.2}A{outer} {outer} 0 {large} 1 {bx:.2} {by:.2}L{cx:.2} {cy:.2}A{inner} {inner} 0 {large} 0 {dx:.2} {dy:.2}z"
    )
}

#[cfg(test)]
mod tests {
    use super::{point, sector};

    fn near(one: (f64, f64), other: (f64, f64)) -> bool {
        (one.0 - other.0).abs() < 1e-9 && (one.1 - other.1).abs() < 1e-9
    }

    #[test]
    fn the_mark_is_at_the_top_and_a_quarter_turn_is_to_the_right() {
        // On a screen y grows downwards: up is negative.
        assert!(near(point(0.0, 10.0), (0.0, -10.0)));
        assert!(near(point(0.25, 10.0), (10.0, 0.0)));
        assert!(near(point(0.5, 10.0), (0.0, 10.0)));
    }

    #[test]
    fn a_length_of_more_than_half_the_ring_goes_the_long_way() {
        assert!(sector(0.0, 0.75, 5.0, 10.0).contains("A10 10 0 1 1"));
        assert!(sector(0.0, 0.25, 5.0, 10.0).contains("A10 10 0 0 1"));
    }
}
