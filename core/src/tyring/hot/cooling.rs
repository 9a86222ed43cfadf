//! How long a hot tyre takes from one temperature to another in air, radiating and giving heat to still air or wind.
//!
//! The bar is thin: its core is never more than some 6 K hotter than its face, so it has one temperature (Biot's number
//! below 0.02). Then cooling depends on nothing but that temperature, and time is a sum over it: no steps of time are needed.

use uom::si::f64::{HeatTransfer, Ratio, Time, Velocity};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::time::second;
use uom::si::velocity::meter_per_second;

use super::air::carries;
use super::sum;
use super::tyre::HotTyre;
use crate::material::steel::DENSITY;
use crate::quantity::temperature::{TemperatureRange, in_celsius};
use crate::quantity::{End, Temperature};
use crate::tyring::refusal::Refusal;

/// Stefan and Boltzmann's constant in W/(m² K⁴): CODATA 2018.
const RADIATES: f64 = 5.670_374_419e-8;

/// How close to the air's own temperature cooling is followed, in K: the last of it has no end.
pub(super) const NEAREST: f64 = 5.0;

/// The strongest wind that is counted, in m/s.
pub(crate) const STRONGEST_WIND: f64 = 20.0;

/// One way a tyre may cool.
#[derive(Clone, Copy, Debug)]
pub struct Cooling {
    /// The tyre.
    pub(crate) tyre: HotTyre,
    /// Which end of its specific heat is taken.
    pub(crate) heat: End,
    /// How well it radiates: a part of one.
    pub(crate) emissivity: f64,
    /// The air in °C.
    pub(crate) air: f64,
    /// The wind in m/s.
    pub(crate) wind: f64,
    /// Whether its inside face is covered by the wheel.
    pub(crate) covered: bool,
}

/// The wind in m/s, where a tyre is put on in it.
///
/// # Errors
///
/// [`Refusal::Wind`].
pub(super) fn wind(wind: Velocity) -> Result<f64, Refusal> {
    let given = wind.get::<meter_per_second>();
    if (0.0..=STRONGEST_WIND).contains(&given) {
        Ok(given)
    } else {
        Err(Refusal::Wind {
            given,
            most: STRONGEST_WIND,
        })
    }
}

impl Cooling {
    /// A tyre with this end of its specific heat, radiating so well, in air of this temperature and wind, its inside face
    /// covered by the wheel or bare.
    ///
    /// # Errors
    ///
    /// [`Refusal`] for air or wind that cannot be; how well it radiates is kept between nought and one.
    pub fn of(
        tyre: HotTyre,
        heat: End,
        emissivity: Ratio,
        (air, blows): (Temperature, Velocity),
        covered: bool,
    ) -> Result<Cooling, Refusal> {
        Ok(Cooling {
            tyre,
            heat,
            emissivity: f64::from(emissivity).clamp(0.0, 1.0),
            air: in_celsius(TemperatureRange::Air.check(air)?),
            wind: wind(blows)?,
            covered,
        })
    }

    /// The time from one temperature down to another; no longer than to 5 K above the air, the last of which has no end.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where a temperature is beyond the curves.
    pub fn time(&self, from: Temperature, to: Temperature) -> Result<Time, Refusal> {
        let [from, to] = [from, to].map(|at| TemperatureRange::Iron.check(at).map(in_celsius));
        Ok(Time::new::<second>(self.takes(from?, to?)))
    }

    /// How fast the air, and nothing else, carries heat off it at this temperature.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where the temperature is beyond the curves.
    pub fn carried_off(&self, at: Temperature) -> Result<HeatTransfer, Refusal> {
        let hot = in_celsius(TemperatureRange::Iron.check(at)?);
        let [_, width, thickness] = self.tyre.in_mm();
        let carried = carries(hot, self.air, width, thickness, self.wind);
        Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(carried))
    }

    /// The heat that leaves each m² of bare iron at `c` °C, in W.
    pub(crate) fn leaves(&self, c: f64) -> f64 {
        let [_, width, thickness] = self.tyre.in_mm();
        let fourth = |c: f64| {
            let k = (c + 273.15) * (c + 273.15);
            k * k
        };
        let radiates = self.emissivity * RADIATES * (fourth(c) - fourth(self.air));
        radiates + carries(c, self.air, width, thickness, self.wind) * (c - self.air)
    }

    /// The bare face of each m³ of iron, in m².
    pub(crate) fn bare(&self) -> f64 {
        let [_, width, thickness] = self.tyre.in_mm();
        let round = 2.0 * (width + thickness) - if self.covered { width } else { 0.0 };
        round / (width * thickness) * 1000.0
    }

    /// Seconds for each kelvin of cooling at `c` °C.
    fn lingers(&self, c: f64) -> f64 {
        DENSITY * self.tyre.iron.taken_up(c, self.heat) / (self.bare() * self.leaves(c))
    }

    /// Seconds from `from` down to `to` °C; no longer than to [`NEAREST`] above the air.
    pub(crate) fn takes(&self, from: f64, to: f64) -> f64 {
        sum::over(to.max(self.air + NEAREST), from, &|c| self.lingers(c))
    }

    /// The temperature that it has `seconds` before it is at `to` °C, at most 1200.
    pub(crate) fn before(&self, to: f64, seconds: f64) -> f64 {
        let (mut low, mut high) = (to, 1200.0);
        if self.takes(high, to) <= seconds {
            return high;
        }
        // To a hundredth of a kelvin in seventeen halvings.
        for _ in 0..17 {
            let middle = (low + high) / 2.0;
            if self.takes(middle, to) < seconds {
                low = middle;
            } else {
                high = middle;
            }
        }
        high
    }
}

#[cfg(test)]
mod tests;
