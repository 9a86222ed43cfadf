//! Temperatures, what they may be, and the doors through which plain numbers become one.
//!
//! A temperature is a place on the scale; a rise is how far two of them lie apart:
//!
//! ```
//! use cartside_core::quantity::temperature::{Temperature, TemperatureRise, celsius, kelvins};
//! let hot: Temperature = celsius(20.0) + kelvins(30.0);
//! ```
//! ```compile_fail,E0277
//! use cartside_core::quantity::temperature::{Temperature, TemperatureRise, celsius, kelvins};
//! let hot: Temperature = celsius(20.0) + celsius(30.0);
//! ```

pub mod spelling;

use std::marker::PhantomData;

use uom::si::temperature_interval::kelvin as kelvin_of_rise;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::refusal::Refusal;

/// A temperature on any scale.
pub type Temperature = uom::si::f64::ThermodynamicTemperature;

/// How much hotter one thing is than another.
pub type TemperatureRise = uom::si::f64::TemperatureInterval;

/// 0 °C in kelvins (BIPM, *SI Brochure*, 9th ed., 2.3.1).
pub const ICE_K: f64 = 273.15;

/// What a length of iron or a draw is said at: 20 °C (ISO 1:2022).
pub const COLD: Temperature = celsius(20.0);

/// A temperature from degrees Celsius: a door for tables of constants.
#[must_use]
pub const fn celsius(v: f64) -> Temperature {
    Temperature {
        dimension: PhantomData,
        units: PhantomData,
        value: v + ICE_K,
    }
}

/// The temperature in degrees Celsius: a door for a published formula.
#[must_use]
pub fn in_celsius(temperature: Temperature) -> f64 {
    temperature.get::<degree_celsius>()
}

/// A rise of so many kelvins: a door for tables of constants.
#[must_use]
pub const fn kelvins(v: f64) -> TemperatureRise {
    TemperatureRise {
        dimension: PhantomData,
        units: PhantomData,
        value: v,
    }
}

/// How many kelvins `to` lies above `from`; below nought when it lies below.
#[must_use]
pub fn rise(from: Temperature, to: Temperature) -> TemperatureRise {
    TemperatureRise::new::<kelvin_of_rise>(in_celsius(to) - in_celsius(from))
}

/// Which temperature is meant, and so what it may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TemperatureRange {
    /// Of the air about the wheel, −40 to 60 °C.
    Air,
    /// Of iron as it is measured, −40 to 150 °C: hotter, no tape or traveller is put to it.
    Measured,
    /// Of iron in or out of the fire, −40 to 1200 °C, where the published curves end.
    Iron,
}

impl TemperatureRange {
    /// The least and the most, in °C. Common practice, no source, but for the end of the curves.
    #[must_use]
    pub const fn ends(self) -> (f64, f64) {
        match self {
            TemperatureRange::Air => (-40.0, 60.0),
            TemperatureRange::Measured => (-40.0, 150.0),
            TemperatureRange::Iron => (-40.0, 1200.0),
        }
    }

    /// Gives `temperature` back when it lies in the range.
    ///
    /// # Errors
    ///
    /// [`Refusal::NotFinite`], [`Refusal::BelowAbsoluteZero`] or [`Refusal::Temperature`].
    pub fn check(self, temperature: Temperature) -> Result<Temperature, Refusal> {
        let (least, most) = self.ends();
        let given = in_celsius(temperature);
        // A millionth to either side: a scale turned into another and back is still the end.
        if !given.is_finite() {
            Err(Refusal::NotFinite)
        } else if given < -ICE_K - 1e-6 {
            Err(Refusal::BelowAbsoluteZero { given: temperature })
        } else if (least - 1e-6..=most + 1e-6).contains(&given) {
            Ok(temperature)
        } else {
            Err(Refusal::Temperature {
                range: self,
                given: temperature,
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::thermodynamic_temperature::degree_fahrenheit;

    use super::*;

    /// Water boils at 212 °F and 100 °C, and the scales meet at −40 (NIST Special Publication 811, 2008, B.8).
    #[test]
    fn the_scales_meet_where_they_should() {
        for (c, f) in [(100.0, 212.0), (-40.0, -40.0), (0.0, 32.0)] {
            let in_fahrenheit = celsius(c).get::<degree_fahrenheit>();
            assert!((in_fahrenheit - f).abs() < 1e-9, "{in_fahrenheit}");
        }
        assert!((rise(celsius(20.0), celsius(50.0)).value - 30.0).abs() < 1e-12);
    }

    #[test]
    fn what_is_no_temperature_is_refused() {
        insta::assert_snapshot!(TemperatureRange::Iron.check(celsius(-273.2)).unwrap_err(), @"The temperature was given as −273.2 °C, and nothing is colder than −273.15 °C; nothing was changed.");
        insta::assert_snapshot!(TemperatureRange::Air.check(celsius(61.0)).unwrap_err(), @"The temperature of the air was given as 61 °C, and it may be from −40 °C to 60 °C; nothing was changed.");
        insta::assert_snapshot!(TemperatureRange::Measured.check(celsius(400.0)).unwrap_err(), @"The temperature of the iron as it is measured was given as 400 °C, and it may be from −40 °C to 150 °C; nothing was changed.");
        insta::assert_snapshot!(TemperatureRange::Iron.check(celsius(1201.0)).unwrap_err(), @"The temperature of the iron was given as 1201 °C, and it may be from −40 °C to 1200 °C; nothing was changed.");
        assert_eq!(
            TemperatureRange::Air.check(celsius(f64::NAN)),
            Err(Refusal::NotFinite)
        );
    }

    proptest! {
        #[test]
        fn a_temperature_comes_through_its_doors(v in -273.15..1200.0) {
            prop_assert!((in_celsius(celsius(v)) - v).abs() < 1e-9);
            prop_assert!((in_celsius(celsius(0.0) + kelvins(v)) - v).abs() < 1e-9);
        }
    }
}
