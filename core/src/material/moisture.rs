//! Moisture of wood as a share of its dry weight, and what it comes to in air of one humidity and
//! temperature.
//!
//! Meters for timber and the handbooks count water against the *dry* weight of the wood; firewood is
//! sold by its share of the *wet* weight, so that 20 % wet is 25 % dry. Here it is always the dry.
//!
//! A share of a whole is not a moisture:
//!
//! ```
//! use cartside_core::{material::MoistureContent, quantity::Percent};
//! let humidity: Percent = Percent::whole(65);
//! ```
//! ```compile_fail,E0308
//! use cartside_core::{material::MoistureContent, quantity::Percent};
//! let humidity: MoistureContent = Percent::whole(65);
//! ```

use crate::quantity::temperature::in_celsius;
use crate::quantity::{Percent, Temperature};

/// The wettest wood that is spoken of, in percent of its dry weight: past it a meter tells nothing.
const WETTEST: f64 = 60.0;
/// The dampest air for which the equation was held against the table it was made for, in percent.
const DAMPEST: f64 = 95.0;
/// The coldest and the warmest air of that table, in °C: 30 to 200 °F.
const COLDEST: f64 = -1.2;
const WARMEST: f64 = 93.4;

/// Water in wood, in percent of the weight of the dry wood; from nothing to 60 %.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct MoistureContent(f64);

/// Why a moisture is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MoistureRefusal {
    /// So many percent of the dry weight are no moisture a wheel can have; infinite and no number among them.
    NoMoisture(f64),
    /// The air is damper than the equation is good for.
    TooDamp(Percent),
    /// The air is colder or warmer than the equation is good for, in °C.
    OutOfRange(f64),
}

impl MoistureContent {
    /// The wettest that is taken.
    pub const WETTEST: MoistureContent = MoistureContent(WETTEST);

    /// So many percent of the dry weight.
    ///
    /// # Errors
    ///
    /// [`MoistureRefusal::NoMoisture`] below nothing, above 60 %, or where it is no number.
    pub fn from_percent(v: f64) -> Result<MoistureContent, MoistureRefusal> {
        if (0.0..=WETTEST).contains(&v) {
            Ok(MoistureContent(v))
        } else {
            Err(MoistureRefusal::NoMoisture(v))
        }
    }

    /// The moisture that a share stands for, as it is read off a meter.
    ///
    /// # Errors
    ///
    /// [`MoistureRefusal::NoMoisture`] above 60 %.
    pub fn from_share(share: Percent) -> Result<MoistureContent, MoistureRefusal> {
        MoistureContent::from_percent(share.to_paper())
    }

    /// In percent of the dry weight.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0
    }

    /// So many points more or less, kept between nothing and 60 %: a door for what is reckoned.
    #[must_use]
    pub fn shifted(self, points: f64) -> MoistureContent {
        MoistureContent((self.0 + points).clamp(0.0, WETTEST))
    }

    /// So many percent, kept between nothing and 60 %: a door for tables of constants.
    #[must_use]
    pub(crate) const fn of_table(percent: f64) -> MoistureContent {
        MoistureContent(percent)
    }
}

/// What the moisture of wood comes to if it stays in such air: *Wood Handbook* (Forest Products
/// Laboratory, FPL-GTR-190, 2010), equation 4-5, with temperature in °C and humidity as a part of one.
/// It is a mean of species, and wood that dries towards it stays one or two points above it (from memory).
///
/// # Errors
///
/// [`MoistureRefusal::TooDamp`] above 95 % and [`MoistureRefusal::OutOfRange`] outside 30 to 200 °F
/// (−1 to 93 °C): the cells of Table 4-2 that it is held against end there.
pub fn equilibrium(
    humidity: Percent,
    air: Temperature,
) -> Result<MoistureContent, MoistureRefusal> {
    let t = in_celsius(air);
    if humidity.to_paper() > DAMPEST {
        return Err(MoistureRefusal::TooDamp(humidity));
    }
    if !(COLDEST..=WARMEST).contains(&t) {
        return Err(MoistureRefusal::OutOfRange(t));
    }
    let w = 349.0 + (1.29 + 0.0135 * t) * t;
    let kh = (0.805 + (0.000_736 - 0.000_002_73 * t) * t) * humidity.of_one();
    let k1 = 6.27 - (0.009_38 + 0.000_303 * t) * t;
    let k2 = 1.91 + (0.0407 - 0.000_293 * t) * t;
    let (one, two) = (k1 * kh, k1 * k2 * kh * kh);
    let percent = 1800.0 / w * (kh / (1.0 - kh) + (one + 2.0 * two) / (1.0 + one + two));
    Ok(MoistureContent(percent))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::temperature::celsius;

    #[test]
    fn what_no_wheel_can_hold_is_refused() {
        for v in [-0.01, 60.01, 200.0, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(
                MoistureContent::from_percent(v),
                Err(MoistureRefusal::NoMoisture(v))
            );
        }
        assert!(MoistureContent::from_percent(f64::NAN).is_err());
        assert!(MoistureContent::from_share(Percent::whole(100)).is_err());
        assert_eq!(
            MoistureContent::from_share(Percent::whole(16)).map(MoistureContent::percent),
            Ok(16.0)
        );
    }

    #[test]
    fn air_outside_the_table_is_refused() {
        let of = |humidity, t| equilibrium(Percent::whole(humidity), celsius(t));
        assert_eq!(
            of(96, 20.0),
            Err(MoistureRefusal::TooDamp(Percent::whole(96)))
        );
        for t in [-2.0, 94.0, -273.15, -300.0] {
            assert!(
                matches!(of(50, t), Err(MoistureRefusal::OutOfRange(_))),
                "{t}"
            );
        }
        assert!(of(50, f64::NAN).is_err());
    }

    proptest! {
        #[test]
        fn damper_air_never_leaves_drier_wood(less in 0.0..95.0_f64, more in 0.0..95.0_f64, t in -1.0..93.0_f64) {
            let of = |h| equilibrium(Percent::from_paper(h).unwrap(), celsius(t)).unwrap();
            let (less, more) = (less.min(more), less.max(more));
            prop_assert!(of(less) <= of(more));
            prop_assert!((0.0..30.0).contains(&of(more).percent()));
        }
    }
}
