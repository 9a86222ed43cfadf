//! How long there is from the fire to the moment the tyre touches, after it has been carried: what is counted on is the low
//! end, in wind.

use uom::si::f64::{Time, Velocity};
use uom::si::time::second;

use super::cooling::{Cooling, wind as blows};
use super::drop::Over;
use super::tyre::HotTyre;
use crate::quantity::temperature::{TemperatureRange, celsius, in_celsius};
use crate::quantity::{Band, End, Temperature};
use crate::tyring::refusal::Refusal;

/// Below so many seconds it is not to be tried: house, common practice, no source.
pub const LEAST: f64 = 60.0;

/// The longest carry that is counted, in seconds.
const LONGEST_CARRY: f64 = 600.0;

/// The wind of the low end where none was said, in m/s: a gentle breeze is 3.4 to 5.5 (WMO-No. 306, code table 1100,
/// Beaufort 3).
const BREEZE: f64 = 5.0;

/// How well iron from a fire radiates. High: EN 1993-1-2:2005, 2.2(2), 0.7. Middle: oxidised, 200 to 600 °C, 0.80. Low:
/// oxidised strongly, 500 °C, 0.98 (both the tables of FLIR's user's manuals, after M. A. Bramson, *Infrared Radiation*).
/// The better it radiates, the sooner it is cold.
const EMISSIVITY: Band<f64> = Band {
    low: 0.98,
    middle: 0.80,
    high: 0.70,
};

/// Where and how the tyre is carried.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carry {
    air: f64,
    wind: Option<f64>,
    seconds: f64,
}

impl Carry {
    /// Through air of this temperature and wind, if that was said, for so long.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where one of them cannot be so.
    pub fn of(air: Temperature, wind: Option<Velocity>, takes: Time) -> Result<Carry, Refusal> {
        let air = in_celsius(TemperatureRange::Air.check(air)?);
        let wind = wind.map(blows).transpose()?;
        let seconds = takes.get::<second>();
        if !(0.0..=LONGEST_CARRY).contains(&seconds) {
            return Err(Refusal::Carry {
                given: seconds,
                most: LONGEST_CARRY,
            });
        }
        Ok(Carry { air, wind, seconds })
    }
}

/// Whether there is time enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// There is.
    Enough,
    /// There is not a minute: do not try.
    DoNotTry,
}

/// The working time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// From out of the fire to the first touch.
    pub until_it_touches: Band<Time>,
    /// The temperature of the first touch; `None` where no heat makes the tyre large enough.
    pub touches_at: Option<Temperature>,
    /// What of the low end is left once the tyre has been carried; nought at the least.
    pub left: Time,
    /// Whether that is enough.
    pub verdict: Verdict,
    /// How hot the tyre must leave the fire to be, after the carry and at the low end, still as hot as it is to be dropped
    /// on; `None` where it cannot.
    pub leave_the_fire_at: Option<Temperature>,
}

/// One way of cooling: the low end soonest, in wind and radiating well, the high end in still air and covered by the wheel.
fn cooling(tyre: &HotTyre, carry: &Carry, end: End) -> Cooling {
    let wind = carry.wind.unwrap_or(BREEZE);
    Cooling {
        tyre: *tyre,
        heat: end,
        emissivity: EMISSIVITY.at(end),
        air: carry.air,
        wind: match end {
            End::Low => wind,
            End::Middle => wind / 2.0,
            End::High => 0.0,
        },
        covered: end == End::High,
    }
}

/// The working time of a tyre that leaves the fire at this temperature.
///
/// # Errors
///
/// [`Refusal`] where nothing draws or the temperature is beyond the curves.
pub fn window(
    tyre: &HotTyre,
    over: &Over,
    carry: &Carry,
    leaves_at: Temperature,
) -> Result<Window, Refusal> {
    let from = in_celsius(TemperatureRange::Iron.check(leaves_at)?);
    let mut times = [0.0; 3];
    for (time, end) in times.iter_mut().zip(End::ALL) {
        if let Some(touches) = over.touches(tyre, end)? {
            *time = cooling(tyre, carry, end).takes(from, in_celsius(touches));
        }
    }
    let [low, middle, high] = times.map(Time::new::<second>);
    let left = (times[0] - carry.seconds).max(0.0);
    let low_end = cooling(tyre, carry, End::Low);
    let drop_on = over.drop_on(tyre).ok().and_then(|it| it.if_it_grows_least);
    Ok(Window {
        until_it_touches: Band { low, middle, high },
        touches_at: over.touches(tyre, End::Middle)?,
        left: Time::new::<second>(left),
        verdict: if left < LEAST {
            Verdict::DoNotTry
        } else {
            Verdict::Enough
        },
        leave_the_fire_at: drop_on
            .map(|at| low_end.before(in_celsius(at), carry.seconds))
            .filter(|c| *c < 1200.0)
            .map(celsius),
    })
}

/// The tyre's way from one temperature to another in so many points, for a plot: seconds since it left the fire and °C. At
/// most 200 points.
///
/// # Errors
///
/// [`Refusal`] where a temperature is beyond the curves.
pub fn curve(
    tyre: &HotTyre,
    carry: &Carry,
    (from, to): (Temperature, Temperature),
    end: End,
    points: u8,
) -> Result<Vec<(Time, Temperature)>, Refusal> {
    let [from, to] = [from, to].map(|at| TemperatureRange::Iron.check(at).map(in_celsius));
    let (from, to) = (from?, to?);
    let (way, pieces) = (
        cooling(tyre, carry, end),
        f64::from(points.clamp(2, 200) - 1),
    );
    let (mut seconds, mut last) = (0.0, from);
    let points = (0..points.clamp(2, 200)).map(|n| {
        let c = from + (to - from) * f64::from(n) / pieces;
        seconds += way.takes(last, c);
        last = c;
        (Time::new::<second>(seconds), celsius(c))
    });
    Ok(points.collect())
}

#[cfg(test)]
mod tests;
