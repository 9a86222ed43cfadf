//! How long a hot tyre takes from one temperature to another in air, radiating and giving heat to still air or wind.
//!
//! The bar is thin: its core is never more than some 6 K hotter than its face, so it has one temperature (Biot's number
//! below 0.02). Then cooling depends on nothing but that temperature, and time is a sum over it: no steps of time are needed.

use super::air::carries;
use super::sum;
use super::tyre::HotTyre;
use crate::material::steel::DENSITY;
use crate::quantity::End;

/// Stefan and Boltzmann's constant in W/(m² K⁴): CODATA 2018.
const RADIATES: f64 = 5.670_374_419e-8;

/// How close to the air's own temperature cooling is followed, in K: the last of it has no end.
pub(super) const NEAREST: f64 = 5.0;

/// One way a tyre may cool, in plain numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cooling {
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

impl Cooling {
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
