//! The heat that a tyre takes up, and the wood for it on an open fire.

use uom::si::energy::joule;
use uom::si::f64::{Energy, Mass};
use uom::si::mass::kilogram;

use super::sum;
use super::tyre::HotTyre;
use crate::material::steel::DENSITY;
use crate::quantity::temperature::{TemperatureRange, in_celsius};
use crate::quantity::{Band, End, Percent, Temperature};
use crate::tyring::refusal::Refusal;

/// The heat of dry wood in MJ/kg, 18.5 to 19, and what its water takes away to boil, 2.44 MJ/kg: V. Francescato and others,
/// *Wood Fuels Handbook*, AIEL, 2008.
const DRY_WOOD: Band<f64> = Band {
    low: 18.5,
    middle: 18.75,
    high: 19.0,
};
const WATER: f64 = 2.44;

/// What of a fire's heat gets into the tyre: house, common practice, no source. Open fires and stoves for cooking are put at
/// 0.05 to 0.25.
const INTO_THE_TYRE: Band<f64> = Band {
    low: 0.05,
    middle: 0.10,
    high: 0.15,
};

/// Wood of more water than this in all its weight hardly burns.
const WETTEST: f64 = 0.6;

/// How much water is in firewood, by which of two reckonings: 20 % of all is 25 % of the dry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FuelMoisture {
    /// Water in all the wood's weight, as dealers in firewood say it.
    OfAll(Percent),
    /// Water beside the wood's dry weight, as a meter for timber shows it.
    OfDry(Percent),
}

impl FuelMoisture {
    /// Water as a part of all the wood's weight.
    #[must_use]
    pub fn of_all(self) -> f64 {
        match self {
            FuelMoisture::OfAll(share) => share.of_one(),
            FuelMoisture::OfDry(share) => share.of_one() / (1.0 + share.of_one()),
        }
    }
}

/// The mass of a tyre: its density by the section and the round through the middle of its thickness.
#[must_use]
pub fn mass(tyre: &HotTyre) -> Mass {
    let [inside, width, thickness] = tyre.in_mm();
    let through_the_middle = inside + std::f64::consts::PI * thickness;
    Mass::new::<kilogram>(DENSITY * width * thickness * through_the_middle * 1e-9)
}

/// The heat that it takes up from 20 °C to this temperature; low without the change of structure at 735 °C.
///
/// # Errors
///
/// [`Refusal`] where the temperature is beyond the curves.
pub fn heat(tyre: &HotTyre, to: Temperature) -> Result<Band<Energy>, Refusal> {
    let c = in_celsius(TemperatureRange::Iron.check(to)?);
    let kilograms = mass(tyre).get::<kilogram>();
    let each = End::ALL.map(|end| {
        let joules = sum::over(20.0, c, &|c| tyre.iron.taken_up(c, end)) * kilograms;
        Energy::new::<joule>(joules)
    });
    let [low, middle, high] = each;
    Ok(Band { low, middle, high })
}

/// The wood to heat it on an open fire, one tyre alone; several in one fire take less than as many fires.
///
/// # Errors
///
/// [`Refusal::TooWet`], or [`Refusal`] where the temperature is beyond the curves.
pub fn wood(
    tyre: &HotTyre,
    to: Temperature,
    moisture: FuelMoisture,
) -> Result<Band<Mass>, Refusal> {
    let water = moisture.of_all();
    if water > WETTEST {
        return Err(Refusal::TooWet { given: moisture });
    }
    let heat = heat(tyre, to)?;
    let needed = |heat: Energy, end: End| {
        let each = (DRY_WOOD.at(end) * (1.0 - water) - WATER * water) * 1e6;
        Mass::new::<kilogram>(heat.get::<joule>() / (each * INTO_THE_TYRE.at(end)))
    };
    Ok(Band {
        low: needed(heat.low, End::High),
        middle: needed(heat.middle, End::Middle),
        high: needed(heat.high, End::Low),
    })
}

#[cfg(test)]
mod tests;
