//! What drying explains of each slack that can be measured, by its own path.
//!
//! In a rim whose joints are shut, felloes stand against each other by the outer edges of their ends. Those corners
//! stay where they are unless the felloes grow shorter along their grain, and that is little: drying does not loosen
//! a tyre there. What it does is to flatten each felloe (its depth shrinks), so that joints open at the belly, the
//! middle of a sawn felloe falls away from the tyre, and the shoulders of the spokes stand off. In a rim whose joints
//! are open nothing holds the felloes out, and the tyre slackens by all that the wheel loses across, until they shut.

use std::f64::consts::FRAC_PI_2;

use super::assumed::{Assumption, Corner};
use super::build::Build;
use super::moved::{Damp, Lost};
use super::season::round;
use super::stiffness::{half_felloe, mm};
use crate::material::MoistureContent;
use crate::quantity::circumference::Diameter;
use crate::quantity::length::millimetres;
use crate::quantity::sine::sine;
use crate::quantity::{Band, End, Length};
use crate::wheel::Rim;

/// How wide a tongue is, as a part of the spoke's width (house: no source).
const TONGUE: f64 = 0.6;

/// A slack that can be measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Slack {
    /// The tyre, round, where all joints are shut.
    TyreShut,
    /// The tyre, round, where joints stand open.
    TyreOpen,
    /// Daylight under the tyre at the middle of a felloe, while it lies on at the joints.
    UnderFelloe,
    /// A joint at the sole.
    Joint,
    /// A joint at the belly.
    Belly,
    /// Between a spoke's shoulder and its felloe.
    StandOff,
    /// Of a foot in the nave, along the nave.
    Foot,
    /// Of a tongue in its felloe, along the rim.
    Tongue,
}

impl Slack {
    /// Every slack.
    pub const ALL: [Slack; 8] = [
        Slack::TyreShut,
        Slack::TyreOpen,
        Slack::UnderFelloe,
        Slack::Joint,
        Slack::Belly,
        Slack::StandOff,
        Slack::Foot,
        Slack::Tongue,
    ];
}

/// The most of this slack that drying between two moistures explains, with its band; nothing where the wheel has not
/// dried. All of it supposes that everything was tight and unstressed before, so it is never too little.
#[must_use]
pub fn explains(build: &Build, slack: Slack, from: Damp, to: Damp) -> Band<Length> {
    let at = |level| {
        let corner = Corner::default().with(Assumption::Shrinkage, level);
        let lost = Lost::of(build, &corner, from, to);
        millimetres(explained(build, slack, &lost).max(0.0))
    };
    let mut band = Band::certain(at(End::Middle));
    band.take(at(End::Low));
    band.take(at(End::High));
    band
}

/// From how moist a rim that was tyred dry under a roof may have dried, in percent; and how dry it can be where nobody has
/// measured it (common practice, no source).
const DRIED_FROM: f64 = 20.0;
const DRIEST: MoistureContent = MoistureContent::of_table(6.0);
/// The most that wood loses along its grain from 30 % to bone dry, but for reaction wood: *Wood Handbook*, p. 4-5.
const ALONG: f64 = 0.002;

/// The most that a feeler finds between tyre and sole over a joint, all joints being shut, in a rim of any timber that has
/// dried to this moisture: all of the slack on one side. More than that is not of drying.
#[must_use]
pub fn over_a_joint(across: Diameter, dried_to: Option<MoistureContent>) -> Length {
    let to = dried_to.unwrap_or(DRIEST).percent();
    across.0 * (ALONG * (DRIED_FROM - to).max(0.0) / 30.0)
}

fn explained(build: &Build, slack: Slack, lost: &Lost) -> f64 {
    let radius = mm(build.across.0) / 2.0;
    let half = half_felloe(build);
    // A bent felloe's grain follows the rim: its ends keep their angle to the grain, and it flattens evenly.
    let sawn = build.rim == Rim::Sawn;
    match slack {
        Slack::TyreShut => mm(round(radius * lost.along)),
        Slack::TyreOpen => mm(round(lost.on_spokes())),
        Slack::UnderFelloe if sawn && half < 1.6 => {
            lost.across * radius * (1.0 - sine(FRAC_PI_2 - half))
        }
        Slack::UnderFelloe => 0.0,
        Slack::Joint => 2.0 * half * radius * lost.along,
        Slack::Belly if sawn => {
            (lost.depth * sine(2.0 * half)).max(0.0) + 2.0 * half * radius * lost.along
        }
        Slack::Belly => 2.0 * half * lost.depth,
        Slack::StandOff => lost.on_spokes() - radius * lost.along,
        Slack::Foot => (lost.spoke_across - lost.nave_along) * mm(build.spoke_depth),
        Slack::Tongue => (lost.spoke_across - lost.along) * TONGUE * mm(build.spoke_width),
    }
}
