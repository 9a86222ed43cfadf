//! The sine of an angle: the library's takes angles of any size, with tables that the download would carry.

use std::f64::consts::PI;

/// How many terms of the series are added up: what is left out of a quarter turn is below 1e-17.
const TERMS: u32 = 11;

/// The sine of an angle in radians, within 1e-15 for angles of a few turns.
#[must_use]
pub fn sine(angle: f64) -> f64 {
    let halves = (angle / PI).round_ties_even();
    let rest = angle - halves * PI;
    let (mut term, mut sum) = (rest, rest);
    for n in 1..TERMS {
        term *= -rest * rest / f64::from(2 * n * (2 * n + 1));
        sum += term;
    }
    if halves as i64 % 2 == 0 { sum } else { -sum }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::sine;

    proptest! {
        #[test]
        fn it_is_the_sine(angle in -7.0..7.0_f64) {
            prop_assert!((sine(angle) - angle.sin()).abs() < 2e-15);
        }
    }
}
