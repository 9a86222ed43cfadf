//! The grip as it comes, from the moment a hot tyre touches the sole until it is cold.
//!
//! Hot iron is soft: where the wheel holds it back while it shrinks, it stretches for good. What it holds in the end is
//! hardly less for that, because it is strong again long before it is cold; what is lost is draw. Creep above 400 °C, heat
//! that is uneven round the hoop, and charring of the sole are left out.

use super::assumed::Corner;
use super::build::Build;
use super::fit::Fitting;
use super::refusal::FitRefusal;
use super::springs::Springs;
use super::stiffness::Stiffness;
use crate::material::Iron;
use crate::material::steel::strength::{MODULUS, carried, kept_at};
use crate::quantity::force::newtons;
use crate::quantity::length::millimetres;
use crate::quantity::temperature::celsius;
use crate::quantity::{End, Force, Length, Temperature};

/// Cooling is followed from 750 °C, past which iron grows no more, to 20 °C, in steps of 10 °C.
pub const STEPS: usize = 74;
const HOTTEST: f64 = 750.0;
const STEP: f64 = 10.0;

/// The grip through cooling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooled {
    /// The grip at each temperature, the hottest first.
    pub grip: [(Temperature, Force); STEPS],
    /// How much longer round the tyre has become for good.
    pub stretched: Length,
}

impl Cooled {
    /// The grip when it is cold.
    #[must_use]
    pub fn cold(&self) -> Force {
        let [.., (_, cold)] = self.grip;
        cold
    }
}

/// One tyre on one wheel while it cools; parts of one, newtons and millimetres.
struct Cooling {
    springs: Springs,
    section: f64,
    radius: f64,
    yields: f64,
    iron: Iron,
    modulus: f64,
    /// How much longer the tyre has become for good, as a part of one.
    longer: f64,
}

impl Cooling {
    /// What the tyre pulls at this temperature when the sole has moved in so far, and how much longer it would then be for
    /// good: EN 1993-1-2, figure 3.1, from where it was stretched to before.
    fn pulls(&self, c: f64, moved: f64) -> (f64, f64) {
        let kept = kept_at(c);
        let grown = self.iron.grown(c, End::Middle);
        let strain = (self.springs.tyre.short - moved) / self.radius - grown;
        let stiffness = kept.stiffness * self.modulus;
        if strain <= self.longer || stiffness <= 0.0 {
            return (0.0, self.longer);
        }
        let stress = (stiffness * (strain - self.longer)).min(carried(
            kept,
            strain * self.modulus / MODULUS,
            self.yields,
        ));
        let longer = self.longer.max(strain - stress / stiffness);
        (stress * self.section, longer)
    }

    fn pushes(&self, moved: f64) -> f64 {
        self.springs.rim.push(moved) + self.springs.spokes.push(moved)
    }

    /// Cools to this temperature, and tells the grip there.
    fn to(&mut self, c: f64) -> f64 {
        let (mut low, mut high) = (0.0, self.springs.tyre.short);
        // A pull that falls and a push that rises meet once: 40 halvings leave less than a millionth of a millimetre.
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            if self.pushes(middle) < self.pulls(c, middle).0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        let (pull, longer) = self.pulls(c, low);
        self.longer = longer;
        pull
    }
}

/// The grip through cooling at one corner of what is assumed. Both irons are taken to soften as steel does.
///
/// # Errors
///
/// Whatever [`Build::check`] and [`Fitting::check`] refuse.
pub fn cooled(build: &Build, fitting: &Fitting, corner: &Corner) -> Result<Cooled, FitRefusal> {
    build.check()?;
    fitting.check(build)?;
    let wheel = Stiffness::of(build, corner, fitting.moisture, fitting.moisture);
    let springs = wheel.springs(fitting, corner);
    let mut cooling = Cooling {
        springs,
        section: wheel.iron,
        radius: springs.tyre.gives * wheel.modulus * wheel.iron,
        yields: wheel.yields / wheel.iron,
        iron: build.iron,
        modulus: wheel.modulus,
        longer: 0.0,
    };
    let grip = std::array::from_fn(|step| {
        let c = HOTTEST - STEP * step as f64;
        (celsius(c), newtons(cooling.to(c)))
    });
    let round = cooling.radius * std::f64::consts::TAU;
    let stretched = millimetres(cooling.longer * round);
    Ok(Cooled { grip, stretched })
}
