//! What a tyre is of, and how far its sources lie apart: mild steel by the standard, wrought iron by what was tested and
//! printed, and iron that nobody has told apart by both.

use crate::quantity::force::megapascals;
use crate::quantity::temperature::{TemperatureRange, celsius, in_celsius};
use crate::quantity::{Band, End, Refusal, Strain, Stress, Temperature};

use super::steel::elongation::{self, MOST_GROWN, NoFurther};
use super::steel::heat;

/// The iron of a tyre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Iron {
    /// Mild steel.
    Steel,
    /// Wrought iron.
    Wrought,
    /// One of the two, not told apart.
    NotKnown,
}

impl Iron {
    /// The word that stands for it on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Iron::Steel => "steel",
            Iron::Wrought => "wrought",
            Iron::NotKnown => "not-known",
        }
    }

    /// The iron a word stands for.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Iron> {
        Iron::ALL.into_iter().find(|it| it.code() == code)
    }
}

/// EN 1993-1-2:2005, 3.4.1.1: the mean from 20 to 100 °C, 12.48 millionths for each kelvin, beside which the coefficients
/// of the handbooks are held.
const STANDARD: f64 = 12.48;

/// The least coefficient printed for mild steel from 0 to 100 °C: AISI 1020, annealed, 11.7 millionths
/// (amesweb.info, "Linear Thermal Expansion Coefficient of Steel"). None printed is above the standard's.
const STEEL_LEAST: f64 = 11.7 / STANDARD;

/// The coefficients printed for wrought iron: 6.48 millionths for each °F (W. H. Dooley, *Applied Science for Metal
/// Workers*, § 109) and 7.4 (wisetool.com, "Coefficient of Thermal Expansion"). Its curve against temperature was not
/// found printed, so the standard's is taken, made less and more by these.
const WROUGHT_LEAST: f64 = 6.48 * 1.8 / STANDARD;
const WROUGHT_MOST: f64 = 7.4 * 1.8 / STANDARD;

/// Where iron without carbon changes its structure and shrinks is 912 °C; up to here in °C it only grows, and no further
/// growth is counted (pure iron: ASM Handbook, vol. 3, Fe–C diagram).
const WROUGHT_GROWS_TO: f64 = 900.0;

impl Iron {
    /// Every sort.
    pub const ALL: [Iron; 3] = [Iron::Steel, Iron::Wrought, Iron::NotKnown];

    /// How much longer it is at this temperature than at 20 °C, at this end of what the sources say.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where it is colder than −40 °C or hotter than 1200 °C.
    pub fn elongation(self, at: Temperature, end: End) -> Result<Strain, Refusal> {
        let c = in_celsius(TemperatureRange::Iron.check(at)?);
        Ok(Strain::of(self.grown(c, end)))
    }

    /// The lowest temperature at which it is this much longer than at 20 °C, at this end of what the sources say: the low
    /// end grows least and so must be hottest.
    ///
    /// # Errors
    ///
    /// [`NoFurther`] where no temperature worth a fire gives it.
    pub fn temperature_for(self, strain: Strain, end: End) -> Result<Temperature, NoFurther> {
        let (given, most) = (strain.of_one(), self.most_grown(end));
        let least = self.grown(TemperatureRange::Iron.ends().0, end);
        if !(given >= least && given <= most) {
            let most = Strain::of(most);
            return Err(NoFurther {
                given: strain,
                most,
            });
        }
        Ok(celsius(elongation::reached(given / self.parts(end))))
    }

    /// The most it can be longer by a heat that is worth the fire: a part of one.
    #[must_use]
    pub fn most_grown(self, end: End) -> f64 {
        match self.grows_like(end) {
            Iron::Wrought => self.grown(WROUGHT_GROWS_TO, end),
            _ => MOST_GROWN * self.parts(end),
        }
    }

    /// Where it begins to stretch for good when cold.
    ///
    /// Steel: S235, S275 and S355 up to 40 mm thick, since nobody knows which a tyre is of (EN 1993-1-1:2005, table 3.1).
    /// Wrought iron: 20 000 lb/in², where annealed bars of the nineteenth century began to stretch; 30 000, the mean of bars
    /// from bridges; and 33 300, the mean of those printed in the nineteenth century (the last two: *Evaluation and Repair of
    /// Wrought Iron and Steel Structures in Indiana*, Purdue University, pp. 137–139).
    #[must_use]
    pub const fn yield_strength(self) -> Band<Stress> {
        match self {
            Iron::Steel => band(235.0, 275.0, 355.0),
            Iron::Wrought => band(138.0, 207.0, 230.0),
            Iron::NotKnown => band(138.0, 235.0, 355.0),
        }
    }

    /// How stiff it is when cold. Steel: EN 1993-1-1:2005, 3.2.6. Wrought iron: 27 900 000 lb/in², the mean of bars from
    /// bridges (the same, p. 139).
    #[must_use]
    pub const fn modulus(self) -> Band<Stress> {
        match self {
            Iron::Steel => band(210e3, 210e3, 210e3),
            Iron::Wrought => band(192e3, 192e3, 192e3),
            Iron::NotKnown => band(192e3, 210e3, 210e3),
        }
    }

    /// Specific heat in J/(kg K) from °C, at this end. The low end is without the peak at 735 °C: the standard has it in
    /// heating, and in cooling that heat comes out later, or not at all if the iron never got so hot.
    pub(crate) fn taken_up(self, c: f64, end: End) -> f64 {
        match (self, end) {
            (Iron::Wrought, _) => without_carbon(c),
            (_, End::Low) => heat::taken_up(c).min(without_carbon(c)),
            _ => heat::taken_up(c),
        }
    }

    /// Whose curve it follows up to the most that is worth a fire.
    fn grows_like(self, end: End) -> Iron {
        match (self, end) {
            (Iron::NotKnown, End::High) => Iron::Wrought,
            (Iron::NotKnown, _) => Iron::Steel,
            _ => self,
        }
    }

    /// Its growth beside the standard's.
    fn parts(self, end: End) -> f64 {
        match (self, end) {
            (Iron::Steel, End::Low) => STEEL_LEAST,
            (_, End::Low) => WROUGHT_LEAST,
            (Iron::Steel, _) | (_, End::Middle) => 1.0,
            (_, End::High) => WROUGHT_MOST,
        }
    }

    /// Parts of one from °C.
    pub(crate) fn grown(self, c: f64, end: End) -> f64 {
        let steel = elongation::grown(c) * Iron::Steel.parts(end);
        let wrought = elongation::rising(c.min(WROUGHT_GROWS_TO)) * Iron::Wrought.parts(end);
        match (self, end) {
            // Below 20 °C it is shorter, and least and most would change places.
            _ if c < 20.0 => elongation::rising(c) * self.parts(end),
            (Iron::Wrought, _) => wrought,
            (Iron::NotKnown, End::Low) => steel.min(wrought),
            (Iron::NotKnown, End::High) => steel.max(wrought),
            _ => steel,
        }
    }
}

const fn band(low: f64, middle: f64, high: f64) -> Band<Stress> {
    Band {
        low: megapascals(low),
        middle: megapascals(middle),
        high: megapascals(high),
    }
}

/// Specific heat of iron without carbon in J/(kg K) from °C: the Shomate equation of the NIST Chemistry WebBook, SRD 69,
/// "Iron", solid (after M. W. Chase, *NIST-JANAF Thermochemical Tables*, 4th ed., 1998), and its molar mass of 55.845 g.
fn without_carbon(c: f64) -> f64 {
    let t = (c + 273.15) / 1000.0;
    let [a, b, c, d, e] = match t {
        _ if t < 0.7 => [18.428_68, 24.643_01, -8.913_720, 9.664_706, -0.012_643],
        _ if t < 1.042 => [-57_767.65, 137_919.7, -122_773.2, 38_682.42, 3_993.080],
        _ if t < 1.1 => [-325.885_9, 28.928_76, 0.0, 0.0, 411.962_9],
        _ => [-776.738_7, 919.400_5, -383.718_4, 57.081_48, 242.136_9],
    };
    (a + t * (b + t * (c + t * d)) + e / (t * t)) * (1000.0 / 55.845)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn any_iron() -> impl Strategy<Value = Iron> {
        proptest::sample::select(&Iron::ALL[..])
    }

    fn any_end() -> impl Strategy<Value = End> {
        proptest::sample::select(&End::ALL[..])
    }

    #[test]
    fn wrought_iron_grows_on_where_steel_stops() {
        let at = |iron: Iron, c| iron.elongation(celsius(c), End::Middle).unwrap();
        assert_eq!(at(Iron::Steel, 850.0), at(Iron::Steel, 760.0));
        assert!(at(Iron::Wrought, 850.0) > at(Iron::Wrought, 760.0));
        assert_eq!(at(Iron::Wrought, 950.0), at(Iron::Wrought, 900.0));
    }

    #[test]
    fn what_is_not_known_is_as_wide_as_both() {
        for c in [100.0, 500.0, 740.0, 900.0, 1150.0] {
            let of = |iron: Iron, end| iron.elongation(celsius(c), end).unwrap();
            for iron in [Iron::Steel, Iron::Wrought] {
                assert!(of(Iron::NotKnown, End::Low) <= of(iron, End::Low), "{c}");
                assert!(of(Iron::NotKnown, End::High) >= of(iron, End::High), "{c}");
            }
        }
    }

    #[test]
    fn a_band_stands_in_order() {
        for iron in Iron::ALL {
            for band in [iron.yield_strength(), iron.modulus()] {
                assert!(band.low <= band.middle && band.middle <= band.high);
            }
        }
    }

    /// The branches meet: NIST prints them so that they do, within one part in fifty at the Curie point.
    #[test]
    fn the_heat_of_iron_without_carbon_has_no_gaps() {
        for (c, apart) in [(426.85, 0.01), (768.85, 0.02), (826.85, 0.01)] {
            let (before, after) = (without_carbon(c - 1e-6), without_carbon(c + 1e-6));
            assert!(
                (before / after - 1.0).abs() < apart,
                "{c}: {before} {after}"
            );
        }
    }

    proptest! {
        #[test]
        fn hotter_is_never_smaller(
            iron in any_iron(), end in any_end(), c in -40.0..1200.0, more in 0.0..300.0
        ) {
            let at = |c: f64| iron.elongation(celsius(c.min(1200.0)), end).unwrap();
            prop_assert!(at(c + more) >= at(c));
        }

        #[test]
        fn more_growth_never_asks_for_less_heat(
            iron in any_iron(), end in any_end(), strain in 0.0..0.02, more in 0.0..0.01
        ) {
            let at = |strain| iron.temperature_for(Strain::of(strain), end);
            match (at(strain), at(strain + more)) {
                (Ok(less), Ok(more)) => prop_assert!(more >= less),
                (Err(_), Ok(_)) => prop_assert!(false, "less is refused"),
                _ => {}
            }
        }

        #[test]
        fn the_inverse_leads_back(iron in any_iron(), end in any_end(), c in -40.0..745.0) {
            let strain = iron.elongation(celsius(c), end).unwrap();
            let back = in_celsius(iron.temperature_for(strain, end).unwrap());
            prop_assert!((back - c).abs() < 1e-6);
        }

        #[test]
        fn the_low_end_grows_least(iron in any_iron(), c in 20.0..1200.0) {
            let [low, middle, high] = End::ALL.map(|end| iron.grown(c, end));
            prop_assert!(low <= middle && middle <= high);
            prop_assert!(End::ALL.iter().all(|end| iron.taken_up(c, *end).is_finite()));
        }
    }
}
