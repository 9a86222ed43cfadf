//! How stiff and how strong the parts of one wheel are, for one corner of what is assumed; newtons and millimetres.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use uom::si::length::millimeter;

use super::assumed::{Assumption, Corner};
use super::build::{Build, Feet};
use crate::material::MoistureContent;
use crate::material::timber::{drier_is_stronger, hankinson, sin_squared};
use crate::quantity::force::in_megapascals;
use crate::quantity::sine::sine;
use crate::quantity::{Band, Length};
use crate::wheel::Rim;

/// How much of a spoke's section bears at its shoulder on the felloe and on the nave: what tongue and foot leave of
/// it (house: common practice, no source).
const SHOULDERS: [Band<f64>; 2] = [Band::new(0.4, 0.535, 0.65), Band::new(0.33, 0.444, 0.56)];
/// A shoulder bears more than its area, because the wood beside it helps: EN 1995-1-1, 6.1.5, has factors of 1 to 1.75
/// (from memory).
const HELPED: Band<f64> = Band::new(1.0, 1.5, 1.75);
/// How steeply pressure spreads under a shoulder, from elastic sheets reckoned part by part: a depth `d` under a
/// shoulder `s` across gives as much as `d s / (s + 0.58 d)` pressed evenly.
const SPREADS: f64 = 0.58;
/// How much of the nave's radius is wood between the spoke and the box (house: no source).
const NAVE_WOOD: f64 = 0.7;
/// What crushed wood takes on, as a part of what it did before (assumed).
const CRUSHED: Band<f64> = Band::new(0.03, 0.1, 0.2);
/// How far the felloes of one rim stray together from the mean of their kind (assumed: single pieces stray by 22 %, *Wood
/// Handbook*, Table 5-6, and there are about six).
const STIFF: Band<f64> = Band::new(0.9, 1.0, 1.1);
/// How firmly feet hold a spoke upright, as a part of one that is held at its foot alone; a rim that keeps the outer
/// end from turning makes it four (assumed).
const SOUND: Band<f64> = Band::new(0.5, 1.0, 4.0);
const SLACK: Band<f64> = Band::new(0.01, 0.1, 0.5);
/// How thick the foot is in its mortise, as a part of the spoke's width: 25/32 in of a spoke of about 1¾ in; M. T.
/// Richardson (comp.), *Practical Carriage Building*, vol. 1, 1891.
const FOOT: f64 = 0.42;

/// One wheel in newtons and millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stiffness {
    /// Radius of the sole.
    pub(super) radius: f64,
    /// Section of the tyre.
    pub(super) iron: f64,
    /// Pull at which the tyre stretches for good.
    pub(super) yields: f64,
    /// Modulus of the tyre.
    pub(super) modulus: f64,
    /// Half the thickness of the tyre.
    pub(super) half_tyre: f64,
    /// Push of the rim for each millimetre.
    pub(super) rim: f64,
    /// Thrust that crushes the felloes' ends.
    pub(super) ends: f64,
    /// Pull of the tyre that crushes the sole.
    pub(super) sole: f64,
    /// How many spokes, over 2 π.
    pub(super) spokes: f64,
    /// Push of one spoke along itself for each millimetre.
    pub(super) spoke: f64,
    /// Pushes along a spoke that crush its seat on the nave, its seat on the felloe, and itself.
    pub(super) seats: [f64; 3],
    /// Push of one spoke sideways for each millimetre.
    pub(super) sideways: f64,
    /// Bending moment that its foot bears, half of what breaks it.
    pub(super) foot: f64,
    /// What crushed wood takes on, as a part of what it did before.
    pub(super) softer: f64,
    /// Length of a spoke and how far it leans, as sine and cosine.
    pub(super) length: f64,
    /// Sine of the lean, negative when back-dished.
    pub(super) sine: f64,
    /// Cosine of the lean.
    pub(super) cosine: f64,
    /// Share of the rim's length that shrinks as wood does across its grain.
    pub(super) short_grain: f64,
}

/// A length in millimetres: the door.
pub(super) fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// How deep wood that is pressed evenly would have to be to give as much as under a shoulder.
#[must_use]
pub fn bedding(depth: f64, shoulder: f64) -> f64 {
    depth * shoulder / (shoulder + SPREADS * depth)
}

/// Half of what one felloe spans, in radians.
pub(super) fn half_felloe(build: &Build) -> f64 {
    PI / f64::from(build.felloes)
}

/// The mean of the sine squared of the angle between grain and rim, over a felloe sawn from straight wood.
pub(super) fn short_grain(build: &Build) -> f64 {
    match build.rim {
        Rim::Bent => 0.0,
        Rim::Sawn => {
            let half = half_felloe(build);
            0.5 - sine(2.0 * half) / (4.0 * half)
        }
    }
}

impl Stiffness {
    /// The wheel at this corner of what is assumed, with rim and spokes of one moisture and the nave of another.
    pub(super) fn of(
        build: &Build,
        corner: &Corner,
        rim: MoistureContent,
        nave: MoistureContent,
    ) -> Stiffness {
        let radius = mm(build.across.0) / 2.0;
        let (thick, width) = (mm(build.tyre_thickness), mm(build.tyre_width));
        let iron = thick * width;
        let length = mm(build.spoke_length());
        let sine = mm(build.dish) / length;
        let mut wheel = Stiffness {
            radius,
            iron,
            yields: iron
                * in_megapascals(build.iron.yield_strength().at(corner.of(Assumption::Iron))),
            modulus: in_megapascals(build.iron.modulus().middle),
            half_tyre: thick / 2.0,
            rim: 0.0,
            ends: 0.0,
            sole: 0.0,
            spokes: f64::from(build.spokes) / TAU,
            spoke: 0.0,
            seats: [0.0; 3],
            sideways: 0.0,
            foot: 0.0,
            softer: CRUSHED.at(corner.of(Assumption::Crushed)),
            length,
            sine,
            cosine: (1.0 - sine * sine).sqrt(),
            short_grain: short_grain(build),
        };
        wheel.with_rim(build, corner, rim);
        wheel.with_spokes(build, corner, [nave, rim]);
        wheel
    }

    fn with_rim(&mut self, build: &Build, corner: &Corner, moisture: MoistureContent) {
        let timber = build.felloe_timber;
        let (depth, width) = (mm(build.felloe_depth), mm(build.felloe_width));
        let level = corner.of(Assumption::RimStiffness);
        let along = timber.modulus().middle * STIFF.at(level);
        let across = along * timber.across().at(level);
        let mean = 1.0 / ((1.0 - self.short_grain) / along + self.short_grain / across);
        let middle = (self.radius - depth / 2.0) / (mean * depth * width);
        // The felloes are pressed thinner too: a ring of wood reckoned part by part gives a third of its depth more.
        let thinner = depth / (3.0 * self.radius * width * across);
        self.rim = 1.0 / (middle + thinner);
        let stronger = drier_is_stronger(moisture);
        let strength = corner.of(Assumption::RimStrength);
        let (along, side) = (
            timber.crushing().at(strength),
            timber.side_grain().at(strength),
        );
        let steep = match build.rim {
            Rim::Bent => 0.0,
            Rim::Sawn => sin_squared(half_felloe(build).min(FRAC_PI_2)),
        };
        self.ends = stronger * hankinson(along, side, steep) * depth * width;
        let tread = width.min(mm(build.tyre_width));
        self.sole = stronger * timber.side_grain().middle * self.radius * tread;
    }

    fn with_spokes(&mut self, build: &Build, corner: &Corner, [nave, rim]: [MoistureContent; 2]) {
        let (depth, width) = (mm(build.spoke_depth), mm(build.spoke_width));
        let section = depth * width;
        let level = corner.of(Assumption::Seats);
        let [on_felloe, on_nave] = SHOULDERS.map(|share| section * share.at(level));
        let (spoke, felloe, hub) = (build.spoke_timber, build.felloe_timber, build.nave_timber);
        let grain = corner.of(Assumption::NaveGrain);
        let felloe_across = felloe.modulus().middle * felloe.across().middle;
        let hub_across = hub.modulus().middle * hub.across().at(grain);
        let hub_depth = NAVE_WOOD * mm(build.nave.0) / 2.0;
        let gives = self.length / (spoke.modulus().middle * section)
            + bedding(mm(build.felloe_depth), width) / (felloe_across * on_felloe)
            + bedding(hub_depth, width) / (hub_across * on_nave);
        self.spoke = 1.0 / gives;
        let helped = HELPED.at(level);
        let (wet_nave, wet_rim) = (drier_is_stronger(nave), drier_is_stronger(rim));
        self.seats = [
            wet_nave * hub.side_grain().at(grain) * helped * on_nave,
            wet_rim * felloe.side_grain().middle * helped * on_felloe,
            wet_rim * spoke.crushing().middle * section,
        ];
        let firm = match build.feet {
            Feet::Sound => SOUND,
            Feet::Slack => SLACK,
        };
        let upright = 0.25 * spoke.modulus().middle * section * depth * depth;
        self.sideways = firm.at(corner.of(Assumption::Feet)) * upright
            / (self.length * self.length * self.length);
        self.foot = 0.5 * spoke.bending().middle * FOOT * section * depth / 6.0;
    }

    /// The push along a spoke that crushes what is weakest in its way.
    pub(super) fn spoke_bears(&self) -> f64 {
        let [nave, felloe, spoke] = self.seats;
        nave.min(felloe).min(spoke)
    }
}
