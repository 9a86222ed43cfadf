//! What a wheel loses and gains as its timber dries and swells; millimetres, positive where it shrinks.

use super::assumed::{Assumption, Corner};
use super::build::Build;
use super::springs::Springs;
use super::stiffness::{mm, short_grain};
use crate::material::MoistureContent;

/// Moisture of a wheel: its nave, thick and slow, and its rim with the spokes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Damp {
    /// Of the nave.
    pub nave: MoistureContent,
    /// Of felloes and spokes.
    pub rim: MoistureContent,
}

impl Damp {
    /// All of one moisture.
    #[must_use]
    pub fn even(moisture: MoistureContent) -> Damp {
        Damp {
            nave: moisture,
            rim: moisture,
        }
    }
}

/// What parts have lost between two moistures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lost {
    /// Half the nave, where the spokes enter it.
    pub(super) nave: f64,
    /// A spoke's length.
    pub(super) spoke: f64,
    /// A felloe's depth.
    pub(super) depth: f64,
    /// Length along the grain, as a part of it.
    pub(super) along: f64,
    /// Size across the grain of a felloe, as a part of it.
    pub(super) across: f64,
    /// Size across the grain of a spoke, as a part of it.
    pub(super) spoke_across: f64,
    /// Length of the nave along its grain, as a part of it.
    pub(super) nave_along: f64,
}

impl Lost {
    /// What this wheel has lost.
    pub(super) fn of(build: &Build, corner: &Corner, from: Damp, to: Damp) -> Lost {
        let level = corner.of(Assumption::Shrinkage);
        let nave = build.nave_timber.species;
        let (spoke, felloe) = (build.spoke_timber.species, build.felloe_timber.species);
        let across = -felloe.across(level).between(from.rim, to.rim).of_one();
        let half_nave = mm(build.nave.0) / 2.0;
        Lost {
            nave: -nave.across(level).between(from.nave, to.nave).of_one() * half_nave,
            spoke: -spoke.along(level).between(from.rim, to.rim).of_one()
                * mm(build.spoke_length()),
            depth: across * mm(build.felloe_depth),
            along: -felloe.along(level).between(from.rim, to.rim).of_one(),
            across,
            spoke_across: -spoke.across(level).between(from.rim, to.rim).of_one(),
            nave_along: -nave.along(level).between(from.nave, to.nave).of_one(),
        }
    }

    /// How far in the sole would stand if it lay on the spokes: nave, spoke and felloe have each lost theirs.
    pub(super) fn on_spokes(&self) -> f64 {
        self.nave + self.spoke + self.depth
    }

    /// How far in the sole stands as a ring whose joints are shut over their whole faces. A felloe that was sawn from
    /// straight wood runs partly across its grain at its ends, and loses there as wood does across it.
    pub(super) fn as_ring(&self, build: &Build) -> f64 {
        let short = short_grain(build);
        let arc = self.along * (1.0 - short) + self.across * short;
        arc * (mm(build.across.0) - mm(build.felloe_depth)) / 2.0 + self.depth / 2.0
    }

    /// The same springs after these losses.
    pub(super) fn moves(&self, build: &Build, mut springs: Springs) -> Springs {
        springs.spokes.gap += self.on_spokes();
        springs.rim.gap += self.as_ring(build);
        springs
    }
}
