//! The geometry of a drawn wheel: seen from the face, the mark at the top, clockwise, about (0, 0).

use std::f64::consts::TAU;

use cartside_core::quantity::decimal;

/// A point so far round from the mark, in turns, and so far out.
pub fn point(turn: f64, out: f64) -> (f64, f64) {
    let (sin, cos) = sin_cos(turn * TAU);
    (out * sin, -out * cos)
}

/// The browser's own functions: Rust's, with their tables, would add 4 kB to the download.
#[cfg(target_arch = "wasm32")]
fn sin_cos(angle: f64) -> (f64, f64) {
    (js_sys::Math::sin(angle), js_sys::Math::cos(angle))
}

#[cfg(not(target_arch = "wasm32"))]
fn sin_cos(angle: f64) -> (f64, f64) {
    angle.sin_cos()
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
    let [ax, ay, bx, by, cx, cy, dx, dy] =
        [ax, ay, bx, by, cx, cy, dx, dy].map(|value| decimal(value, 2));
    let (inner, outer) = (decimal(inner, 2), decimal(outer, 2));
    format!(
        "M{ax} {ay}A{outer} {outer} 0 {large} 1 {bx} {by}L{cx} {cy}A{inner} {inner} 0 {large} 0 {dx} {dy}z"
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
