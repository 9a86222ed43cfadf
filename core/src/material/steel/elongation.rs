//! How much longer hot steel is than at 20 °C, and how hot it is for that: EN 1993-1-2:2005, 3.4.1.1.

use crate::quantity::temperature::{TemperatureRange, celsius, in_celsius};
use crate::quantity::{Refusal, Strain, Temperature};

/// The elongation on the flat between 750 and 860 °C, the most that is worth a fire: a part of one.
pub const MOST_GROWN: f64 = 1.1e-2;

/// Where the flat ends and steel grows again, in °C.
const GROWS_AGAIN: f64 = 860.0;

/// No temperature worth a fire makes the iron this much longer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NoFurther {
    /// The elongation that was asked for.
    pub given: Strain,
    /// The most that is to be had.
    pub most: Strain,
}

/// How much longer steel is at this temperature than at 20 °C; shorter, below nought, when it is colder.
///
/// The standard jumps down by 0.0000084 at 750 °C, from its rising branch to its flat one. Here the rising branch stops
/// where it meets the flat, 0.3 K earlier, so that hotter is never smaller.
///
/// # Errors
///
/// [`Refusal`] where it is colder than −40 °C or hotter than 1200 °C.
pub fn elongation(at: Temperature) -> Result<Strain, Refusal> {
    let c = in_celsius(TemperatureRange::Iron.check(at)?);
    Ok(Strain::of(grown(c)))
}

/// The lowest temperature at which steel is this much longer than at 20 °C.
///
/// # Errors
///
/// [`NoFurther`] beyond [`MOST_GROWN`], which only a heat over 860 °C would give, and for less than −40 °C gives.
pub fn temperature_for(strain: Strain) -> Result<Temperature, NoFurther> {
    let given = strain.of_one();
    if given >= rising(TemperatureRange::Iron.ends().0) && given <= MOST_GROWN {
        Ok(celsius(reached(given)))
    } else {
        Err(NoFurther {
            given: strain,
            most: Strain::of(MOST_GROWN),
        })
    }
}

/// The branch from 20 to 750 °C: parts of one from °C.
pub(crate) fn rising(c: f64) -> f64 {
    1.2e-5 * c + 0.4e-8 * c * c - 2.416e-4
}

/// The root of the rising branch: °C from parts of one.
pub(crate) fn reached(strain: f64) -> f64 {
    (-1.2e-5 + (1.44e-10 + 1.6e-8 * (strain + 2.416e-4)).sqrt()) / 0.8e-8
}

/// All three branches: parts of one from °C.
pub(crate) fn grown(c: f64) -> f64 {
    if c <= GROWS_AGAIN {
        rising(c).min(MOST_GROWN)
    } else {
        2e-5 * c - 6.2e-3
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn at(c: f64) -> f64 {
        elongation(celsius(c)).unwrap().of_one()
    }

    #[test]
    fn the_flat_begins_where_the_rising_branch_meets_it() {
        let meets = in_celsius(temperature_for(Strain::of(MOST_GROWN)).unwrap());
        assert!((749.5..750.0).contains(&meets), "{meets}");
        assert!((at(meets) - MOST_GROWN).abs() < 1e-15);
        assert_eq!(at(750.0), MOST_GROWN);
        assert!((at(860.0) - at(860.001)).abs() < 1e-6);
    }

    #[test]
    fn more_than_the_flat_is_not_to_be_had() {
        for strain in [0.011_000_1, 0.05, f64::INFINITY, f64::NAN, -0.01] {
            assert!(temperature_for(Strain::of(strain)).is_err(), "{strain}");
        }
        for c in [-41.0, 1200.1, f64::NAN, -300.0] {
            assert!(elongation(celsius(c)).is_err(), "{c}");
        }
    }

    proptest! {
        #[test]
        fn hotter_is_never_smaller(c in -40.0_f64..1200.0, more in 0.0..200.0) {
            let hotter = f64::min(c + more, 1200.0);
            prop_assert!(at(hotter) >= at(c));
        }

        #[test]
        fn the_inverse_leads_back(c in -40.0..749.0) {
            let back = temperature_for(Strain::of(at(c))).unwrap();
            prop_assert!((in_celsius(back) - c).abs() < 1e-6);
        }
    }
}
