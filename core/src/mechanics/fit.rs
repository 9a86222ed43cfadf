//! One wheel under its tyre, cold: how far the sole moves in, and what pulls and pushes then.

use std::f64::consts::TAU;

use super::assumed::{Assumption, Corner};
use super::build::Build;
use super::gives::Pressed;
use super::refusal::FitRefusal;
use super::springs::{Ring, Springs, Wood};
use super::stiffness::{Stiffness, mm};
use crate::material::MoistureContent;
use crate::quantity::circumference::Draw;
use crate::quantity::force::newtons;
use crate::quantity::length::millimetres;
use crate::quantity::{Band, Force, Length, LengthRange};

/// How much of the measured gaps really shuts: ends that are not square leave some open (assumed).
const SHUTS: Band<f64> = Band::new(0.8, 1.0, 1.0);
/// The most draw that is reckoned with, as a part of the round: twice what red heat opens a tyre by.
const MOST_DRAW: f64 = 0.022;

/// The most draw that is reckoned with on this wheel.
pub(super) fn most_draw(build: &Build) -> Draw {
    let by_heat = build.across.round().0 * MOST_DRAW;
    Draw(by_heat.min(LengthRange::Draw.max()))
}

/// How a tyre is fitted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitting {
    /// How much smaller round the tyre is than the wheel, both cold.
    pub draw: Draw,
    /// How far off the draw may be.
    pub doubt: Length,
    /// All joint gaps at the sole added up.
    pub joints: Length,
    /// How far the shoulders stand off the felloes.
    pub stand_off: Length,
    /// Moisture of the timber when the tyre goes on.
    pub moisture: MoistureContent,
}

/// One wheel under its tyre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Pull in the tyre.
    pub grip: Force,
    /// Thrust in the rim.
    pub rim: Force,
    /// Push of one spoke on the rim, towards the sole.
    pub spoke: Force,
    /// How far the sole has moved in; where the tyre is slack, as far as it would go to lie on it.
    pub moved: Length,
    /// How much longer round the tyre is than the wheel; nothing while it grips.
    pub slack: Length,
    /// How far the spokes stand off while the tyre grips; nothing while they bear.
    pub off: Length,
    /// How much further the rim stands out than before; negative when back-dished.
    pub dish: Length,
    /// How much longer round the tyre has become for good.
    pub stretched: Length,
    /// How far the shoulders of the spokes have sunk in for good, at both ends together.
    pub sunk: Length,
    /// The push from the side that would put the wheel through the flat and inside out; nothing where it comes back.
    pub folds_at: Option<Force>,
    /// How near each part is to giving.
    pub pressed: Pressed,
}

impl Fitting {
    /// Gives the fitting back when it can be reckoned on this wheel.
    ///
    /// # Errors
    ///
    /// A tyre not smaller than the wheel, too much draw, joints wider than the draw, or a size out of its range.
    pub fn check(&self, build: &Build) -> Result<&Fitting, FitRefusal> {
        LengthRange::JointSum.check(self.joints)?;
        LengthRange::StandOff.check(self.stand_off)?;
        LengthRange::General.check(self.doubt)?;
        let most = most_draw(build);
        let draw = self.draw;
        if draw > most {
            Err(FitRefusal::DrawTooGreat { draw, most })
        } else if draw.0.is_nan() || draw.0 <= millimetres(0.0) {
            Err(FitRefusal::TyreNotSmaller(draw))
        } else if self.joints >= draw.0 {
            let joints = self.joints;
            Err(FitRefusal::JointsWiderThanDraw { joints, draw })
        } else {
            Ok(self)
        }
    }
}

impl Stiffness {
    /// The wheel with a tyre on it that has been drawn so, before anything has given way; gaps in millimetres.
    pub(super) fn springs(&self, fitting: &Fitting, corner: &Corner) -> Springs {
        let short = mm(fitting.draw.0) / TAU;
        let hoop = self.spokes;
        let joints = mm(fitting.joints) * SHUTS.at(corner.of(Assumption::Joints)) / TAU;
        let middle = self.radius - short + self.half_tyre;
        Springs {
            tyre: Ring {
                short,
                gives: middle / (self.modulus * self.iron),
                yields: self.yields,
            },
            rim: Wood {
                gap: joints,
                stiffness: self.rim,
                bears: self.ends,
                softer: self.softer,
                set: 0.0,
            },
            spokes: Wood {
                gap: mm(fitting.stand_off),
                stiffness: hoop * self.inward(),
                // A push along a leaning spoke stands to that on the rim as the cosine to one.
                bears: hoop * self.spoke_bears() / self.cosine,
                softer: self.softer,
                set: 0.0,
            },
        }
    }

    /// What the balance comes to.
    pub(super) fn fit(&self, springs: &Springs) -> Fit {
        let moved = springs.balance();
        let after = springs.after(moved);
        let (pull, rim) = (springs.tyre.pull(moved), springs.rim.push(moved));
        let spoke = springs.spokes.push(moved) / self.spokes;
        let past = moved - springs.spokes.gap;
        let first = springs.rim.met().min(springs.spokes.met());
        Fit {
            grip: newtons(pull),
            rim: newtons(rim),
            spoke: newtons(spoke),
            moved: millimetres(moved),
            slack: millimetres((first - springs.tyre.short).max(0.0) * TAU),
            off: millimetres((springs.spokes.met() - moved).max(0.0)),
            dish: millimetres(self.goes_out(past, spoke)),
            stretched: millimetres(springs.tyre.stretched(moved) * TAU),
            sunk: millimetres(after.spokes.set),
            folds_at: self.folds_at().map(newtons),
            pressed: self.pressed(pull, rim, spoke),
        }
    }

    fn pressed(&self, pull: f64, rim: f64, spoke: f64) -> Pressed {
        let along = spoke * self.cosine;
        let [nave, felloe, body] = self.seats;
        Pressed([
            pull / self.yields,
            along / nave,
            along / felloe,
            along / body,
            rim / self.ends,
            pull / self.sole,
            self.bends(spoke) / self.foot,
        ])
    }
}

/// The wheel under its tyre at one corner of what is assumed.
///
/// # Errors
///
/// Whatever [`Build::check`] and [`Fitting::check`] refuse.
pub fn fit(build: &Build, fitting: &Fitting, corner: &Corner) -> Result<Fit, FitRefusal> {
    build.check()?;
    fitting.check(build)?;
    Ok(fit_checked(build, fitting, corner))
}

/// The same where both have been checked.
pub(super) fn fit_checked(build: &Build, fitting: &Fitting, corner: &Corner) -> Fit {
    let wheel = Stiffness::of(build, corner, fitting.moisture, fitting.moisture);
    wheel.fit(&wheel.springs(fitting, corner))
}
