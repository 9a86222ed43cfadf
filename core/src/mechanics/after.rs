//! What is left of a grip as the wood gives way in time, and how much shrinkage empties it.

use std::f64::consts::TAU;

use super::assumed::Corner;
use super::build::Build;
use super::fit::Fitting;
use super::refusal::FitRefusal;
use super::stiffness::Stiffness;
use crate::quantity::length::millimetres;
use crate::quantity::{Band, Length};

/// How much further wood gives in years than at once, as a part of what it gave at once: the *Wood Handbook*,
/// chapter 5, has about as much again after some years, more across the grain and where moisture comes and goes.
const CREEP: Band<f64> = Band::new(0.5, 1.0, 2.0);

/// What time takes from a grip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct After {
    /// What is left after years, as a part of the grip when new.
    pub left: Band<f64>,
    /// How much the round of the wheel may shrink before the tyre is slack.
    pub reserve: Length,
    /// How much of that the iron holds; wood holds the rest, and loses it in time.
    pub in_iron: Length,
}

/// What time takes from a grip, with the middle of all that is assumed.
///
/// # Errors
///
/// Whatever [`Build::check`] and [`Fitting::check`] refuse.
pub fn after(build: &Build, fitting: &Fitting) -> Result<After, FitRefusal> {
    build.check()?;
    fitting.check(build)?;
    let corner = Corner::default();
    let wheel = Stiffness::of(build, &corner, fitting.moisture, fitting.moisture);
    let springs = wheel.springs(fitting, &corner);
    let moved = springs.balance();
    let springs = springs.after(moved);
    let pull = springs.tyre.pull(moved);
    // What pushes now lets go along its straight part.
    let pushing = |wood: &super::springs::Wood| {
        if wood.push(moved) > 0.0 {
            wood.stiffness
        } else {
            0.0
        }
    };
    let wood = pushing(&springs.rim) + pushing(&springs.spokes);
    let (iron, wood) = (
        springs.tyre.gives,
        if wood > 0.0 { 1.0 / wood } else { 0.0 },
    );
    let left = |creep: f64| (iron + wood) / (iron + (1.0 + creep) * wood);
    Ok(After {
        left: Band::new(left(CREEP.high), left(CREEP.middle), left(CREEP.low)),
        reserve: millimetres(pull * (iron + wood) * TAU),
        in_iron: millimetres(pull * iron * TAU),
    })
}
