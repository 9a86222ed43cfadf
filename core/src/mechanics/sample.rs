//! A wheel and a fitting for the tests of this room and of the words about it.

use super::{Build, Feet, Fitting};
use crate::material::{Iron, MoistureContent, Species};
use crate::quantity::circumference::{Diameter, Draw};
use crate::quantity::length::millimetres;
use crate::wheel::Rim;

/// A cart wheel of 1350 mm: twelve oak spokes in an elm nave, six ash felloes.
pub(crate) fn cart() -> Build {
    Build {
        across: Diameter(millimetres(1350.0)),
        dish: millimetres(38.0),
        tyre_width: millimetres(60.0),
        tyre_thickness: millimetres(16.0),
        felloe_depth: millimetres(90.0),
        felloe_width: millimetres(64.0),
        spoke_depth: millimetres(65.0),
        spoke_width: millimetres(45.0),
        nave: Diameter(millimetres(300.0)),
        spokes: 12,
        felloes: 6,
        rim: Rim::Sawn,
        feet: Feet::Sound,
        iron: Iron::Steel,
        nave_timber: Species::AmericanElm.into(),
        spoke_timber: Species::WhiteOak.into(),
        felloe_timber: Species::WhiteAsh.into(),
    }
}

/// A tyre on it, at 14 %.
pub(crate) fn fitting(draw: f64, joints: f64) -> Fitting {
    Fitting {
        draw: Draw(millimetres(draw)),
        doubt: millimetres(2.7),
        joints: millimetres(joints),
        stand_off: millimetres(0.0),
        moisture: MoistureContent::from_percent(14.0).unwrap(),
    }
}
