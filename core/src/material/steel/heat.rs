//! What steel takes up of heat and how it hands it on: EN 1993-1-2:2005, 3.2.2 and 3.4.1.

use uom::si::f64::{MassDensity, SpecificHeatCapacity, ThermalConductivity};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;

use crate::quantity::temperature::{TemperatureRange, in_celsius};
use crate::quantity::{Refusal, Temperature};

/// The mass of steel in kg/m³, the same at every temperature: EN 1993-1-2:2005, 3.2.2(1).
pub const DENSITY: f64 = 7850.0;

/// The mass of steel: see [`DENSITY`].
#[must_use]
pub fn density() -> MassDensity {
    MassDensity::new::<kilogram_per_cubic_meter>(DENSITY)
}

/// The heat that a kilogram takes up for each kelvin, EN 1993-1-2:2005, 3.4.1.2, with its peak at 735 °C.
///
/// # Errors
///
/// [`Refusal`] where it is colder than −40 °C or hotter than 1200 °C.
pub fn specific_heat(at: Temperature) -> Result<SpecificHeatCapacity, Refusal> {
    let c = in_celsius(TemperatureRange::Iron.check(at)?);
    Ok(SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(
        taken_up(c),
    ))
}

/// How well steel conducts heat, EN 1993-1-2:2005, 3.4.1.3.
///
/// # Errors
///
/// [`Refusal`] where it is colder than −40 °C or hotter than 1200 °C.
pub fn conductivity(at: Temperature) -> Result<ThermalConductivity, Refusal> {
    let c = in_celsius(TemperatureRange::Iron.check(at)?);
    let conducts = if c < 800.0 { 54.0 - 3.33e-2 * c } else { 27.3 };
    Ok(ThermalConductivity::new::<watt_per_meter_kelvin>(conducts))
}

/// Specific heat in J/(kg K) from °C.
pub(crate) fn taken_up(c: f64) -> f64 {
    if c < 600.0 {
        425.0 + c * (7.73e-1 + c * (-1.69e-3 + c * 2.22e-6))
    } else if c < 735.0 {
        666.0 + 13_002.0 / (738.0 - c)
    } else if c < 900.0 {
        545.0 + 17_820.0 / (c - 731.0)
    } else {
        650.0
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::temperature::celsius;

    #[test]
    fn the_peak_is_5_000_at_735() {
        assert!((taken_up(734.999_999) - 5000.0).abs() < 0.1);
        assert!((taken_up(735.0) - 5000.0).abs() < 1e-9);
    }

    #[test]
    fn beyond_the_curves_is_refused() {
        for c in [-40.1, 1200.1, f64::NAN] {
            assert!(specific_heat(celsius(c)).is_err() && conductivity(celsius(c)).is_err());
        }
    }

    proptest! {
        #[test]
        fn heat_and_conductivity_are_finite_and_more_than_nought(c in -40.0..=1200.0) {
            let at = celsius(c);
            let (heat, conducts) = (specific_heat(at).unwrap().value, conductivity(at).unwrap().value);
            prop_assert!((350.0..=5000.001).contains(&heat), "{}", heat);
            prop_assert!((27.0..=56.0).contains(&conducts), "{}", conducts);
        }
    }
}
