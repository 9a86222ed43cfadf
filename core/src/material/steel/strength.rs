//! What is left of the strength of steel when it is hot, and how it gives: EN 1993-1-2:2005, 3.2.1 and table 3.1.

use crate::quantity::force::{Stress, in_megapascals, megapascals};
use crate::quantity::temperature::{TemperatureRange, in_celsius};
use crate::quantity::{Refusal, Strain, Temperature};

/// How stiff cold steel is, in MPa: EN 1993-1-1:2005, 3.2.6(1).
pub const MODULUS: f64 = 210_000.0;

/// The greatest strength at yield for which the curve is used, in MPa: S460, EN 1993-1-2:2005, 1.1.2(6).
const STRONGEST: f64 = 460.0;

/// What is left at some temperature of what steel has when cold, each a part of one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// Of the strength at yield, taken at a strain of 2 %.
    pub strength: f64,
    /// Of it up to where the steel springs back.
    pub springs_back: f64,
    /// Of the stiffness.
    pub stiffness: f64,
}

const NOTHING: Kept = row(0.0, 0.0, 0.0);

const fn row(strength: f64, springs_back: f64, stiffness: f64) -> Kept {
    Kept {
        strength,
        springs_back,
        stiffness,
    }
}

/// Table 3.1, one row for every 100 °C from 0 to 1200; its first row, at 20 °C, is the same as at 100.
const TABLE: [Kept; 13] = [
    row(1.0, 1.0, 1.0),
    row(1.0, 1.0, 1.0),
    row(1.0, 0.807, 0.9),
    row(1.0, 0.613, 0.8),
    row(1.0, 0.42, 0.7),
    row(0.78, 0.36, 0.6),
    row(0.47, 0.18, 0.31),
    row(0.23, 0.075, 0.13),
    row(0.11, 0.05, 0.09),
    row(0.06, 0.0375, 0.0675),
    row(0.04, 0.025, 0.045),
    row(0.02, 0.0125, 0.0225),
    NOTHING,
];

/// What is left at this temperature, between the rows of the table by a straight line, as the standard asks.
///
/// # Errors
///
/// [`Refusal`] where it is colder than −40 °C or hotter than 1200 °C.
pub fn kept(at: Temperature) -> Result<Kept, Refusal> {
    Ok(kept_at(in_celsius(TemperatureRange::Iron.check(at)?)))
}

/// The stress in steel of this strength at yield, strained by so much at this temperature: table 3.1 with figure 3.1,
/// without strain hardening. In compression it is the same with its sign changed.
///
/// # Errors
///
/// [`Refusal`] where the temperature is beyond the table.
pub fn stress(at: Temperature, strain: Strain, yields_at: Stress) -> Result<Stress, Refusal> {
    let kept = kept(at)?;
    let yields_at = in_megapascals(yields_at).clamp(0.0, STRONGEST);
    let strain = strain.of_one();
    let carried = carried(kept, strain.abs(), yields_at);
    Ok(megapascals(if strain < 0.0 { -carried } else { carried }))
}

/// The table at °C.
pub(crate) fn kept_at(c: f64) -> Kept {
    let hundreds = (c / 100.0).clamp(0.0, 12.0);
    let below = hundreds as usize;
    let [Some(low), high] = [below, below + 1].map(|at| TABLE.get(at)) else {
        return NOTHING;
    };
    let (high, part) = (high.unwrap_or(low), hundreds - below as f64);
    let between = |low: f64, high: f64| low + part * (high - low);
    Kept {
        strength: between(low.strength, high.strength),
        springs_back: between(low.springs_back, high.springs_back),
        stiffness: between(low.stiffness, high.stiffness),
    }
}

/// The stress in MPa at a strain of nought or more, for a strength at yield in MPa.
pub(crate) fn carried(kept: Kept, strain: f64, yields_at: f64) -> f64 {
    let (f_y, f_p) = (kept.strength * yields_at, kept.springs_back * yields_at);
    let e = kept.stiffness * MODULUS;
    if e <= 0.0 {
        return 0.0;
    }
    let to_2 = 0.02 - f_p / e;
    match strain {
        it if it <= f_p / e => it * e,
        it if it < 0.02 => f_p + on_the_ellipse(to_2, 0.02 - it, e, f_y - f_p),
        it if it <= 0.15 => f_y,
        it if it < 0.2 => f_y * (0.2 - it) / 0.05,
        _ => 0.0,
    }
}

/// How far over the proportional limit the ellipse lies, in MPa: `to_2` is the strain from that limit to 2 %, `left` what
/// is left to 2 %, `e` the stiffness and `over` the strength above the limit, both in MPa.
fn on_the_ellipse(to_2: f64, left: f64, e: f64, over: f64) -> f64 {
    let c = over * over / (to_2 * e - 2.0 * over);
    let a2 = to_2 * (to_2 + c / e);
    let b2 = c * to_2 * e + c * c;
    (b2 / a2 * (a2 - left * left).max(0.0)).sqrt() - c
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::temperature::celsius;

    fn at(c: f64, strain: f64) -> f64 {
        let s235 = megapascals(235.0);
        in_megapascals(stress(celsius(c), Strain::of(strain), s235).unwrap())
    }

    #[test]
    fn cold_steel_springs_and_then_gives() {
        assert!((at(20.0, 0.0005) - 105.0).abs() < 1e-9);
        assert!((at(20.0, 0.01) - 235.0).abs() < 1e-9);
        assert!((at(20.0, 0.175) - 117.5).abs() < 1e-9);
        assert_eq!(at(20.0, 0.2), 0.0);
        assert_eq!(at(20.0, -0.0005), -at(20.0, 0.0005));
    }

    #[test]
    fn nothing_is_left_at_the_end_of_the_table() {
        assert_eq!(at(1200.0, 0.01), 0.0);
        assert_eq!(kept(celsius(1200.0)), Ok(NOTHING));
        assert!(kept(celsius(1201.0)).is_err());
    }

    proptest! {
        #[test]
        fn what_is_left_only_falls(c in -40.0_f64..1200.0, more in 0.0..100.0) {
            let (cool, hot) = (kept_at(c), kept_at(f64::min(c + more, 1200.0)));
            prop_assert!(hot.strength <= cool.strength && hot.springs_back <= cool.springs_back);
            prop_assert!(hot.stiffness <= cool.stiffness && hot.strength >= 0.0);
        }

        #[test]
        fn stress_is_finite_within_the_strength_and_rises_to_2_percent(
            c in -40.0..1200.0, strain in 0.0_f64..0.02, more in 0.0..0.01, f_y in 0.0..600.0
        ) {
            let of = |strain: f64| {
                in_megapascals(stress(celsius(c), Strain::of(strain), megapascals(f_y)).unwrap())
            };
            let (one, two) = (of(strain), of(f64::min(strain + more, 0.02)));
            prop_assert!(one.is_finite() && one >= 0.0);
            prop_assert!(two <= kept_at(c).strength * f_y.min(STRONGEST) + 1e-9);
            prop_assert!(two >= one - 1e-9, "{} {}", one, two);
        }

        #[test]
        fn any_strain_gives_a_number(c in -40.0..=1200.0, strain in -1e6..1e6) {
            prop_assert!(at(c, strain).is_finite());
        }
    }
}
