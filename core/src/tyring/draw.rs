//! The draw: the wheel's round less the tyre's, what of it the joints take before anything grips, and whether the felloes
//! can come home on the spokes at all.

use std::f64::consts::TAU;

use super::doubt::Doubt;
use super::refusal::Refusal;
use super::round::Round;
use crate::quantity::circumference::Draw;
use crate::quantity::length::millimetres;
use crate::quantity::{Length, LengthRange, Measured};

/// A draw with its doubt; below nought while the tyre is the larger.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawTaken {
    /// The draw.
    pub draw: Draw,
    /// How far the truth may lie from it.
    pub doubt: Doubt,
}

impl DrawTaken {
    /// The draw of this tyre on this wheel, both taken on the same line.
    ///
    /// # Errors
    ///
    /// [`Refusal::OtherLine`].
    pub fn of(wheel: &Round, tyre: &Round) -> Result<DrawTaken, Refusal> {
        if wheel.line != tyre.line {
            return Err(Refusal::OtherLine {
                wheel: wheel.line,
                tyre: tyre.line,
            });
        }
        Ok(DrawTaken {
            draw: wheel.round - tyre.round,
            doubt: wheel.doubt_of_less(tyre),
        })
    }

    /// The draw, where there is one.
    ///
    /// # Errors
    ///
    /// [`Refusal::TyreLarger`] where the tyre is as large as the wheel or larger.
    pub fn drawing(&self) -> Result<Draw, Refusal> {
        drawing(self.draw)
    }
}

/// The draw, where there is one and not more than any wheel bears.
///
/// # Errors
///
/// [`Refusal::TyreLarger`] or [`Refusal::Given`].
pub fn drawing(draw: Draw) -> Result<Draw, Refusal> {
    if draw.0 <= millimetres(0.0) {
        return Err(Refusal::TyreLarger { by: -draw.0 });
    }
    LengthRange::Draw.check(draw.0)?;
    Ok(draw)
}

/// Lengths one after the other: their sum, and their doubts one upon the other, since feelers err all one way.
///
/// # Errors
///
/// [`Refusal::Given`] where the sum is not finite.
pub fn together(gaps: &[Measured]) -> Result<Measured, Refusal> {
    let (mut sum, mut doubt) = (millimetres(0.0), millimetres(0.0));
    for gap in gaps {
        sum += gap.value();
        doubt += gap.doubt();
    }
    Ok(Measured::new(sum, doubt)?)
}

/// The open joints of a rim, each sum round the sole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joints {
    as_they_stand: Measured,
    cramped: Option<Measured>,
}

/// What is left of a draw to grip with once the joints have closed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nip {
    /// What must close: the joints as they stand.
    pub to_close: Length,
    /// That part of it which a cramp did not close, and which closes only against the spokes; `None` if not tried.
    pub against_the_spokes: Option<Length>,
    /// What is left once all is shut.
    pub left: Draw,
    /// The least and the most that can be left, by the doubt of the gaps alone.
    pub between: (Draw, Draw),
}

impl Joints {
    /// The joints as they stand and, if that was tried, with the rim drawn together by a cramp.
    ///
    /// # Errors
    ///
    /// [`Refusal::CrampedWider`], or [`Refusal::Given`] for sums no wheel has.
    pub fn of(as_they_stand: Measured, cramped: Option<Measured>) -> Result<Joints, Refusal> {
        LengthRange::General.check(as_they_stand.value())?;
        LengthRange::General.check(as_they_stand.at_most())?;
        if let Some(cramped) = cramped {
            LengthRange::General.check(cramped.value())?;
            if cramped.at_least() > as_they_stand.at_most() {
                return Err(Refusal::CrampedWider {
                    as_they_stand: as_they_stand.value(),
                    cramped: cramped.value(),
                });
            }
        }
        Ok(Joints {
            as_they_stand,
            cramped,
        })
    }

    /// The nip that this draw leaves once they are shut.
    ///
    /// # Errors
    ///
    /// [`Refusal::TyreLarger`], [`Refusal::Given`], or [`Refusal::JointsWider`] where nothing is left.
    pub fn nip(&self, draw: Draw) -> Result<Nip, Refusal> {
        let draw = drawing(draw)?;
        let (to_close, doubt) = (self.as_they_stand.value(), self.as_they_stand.doubt());
        let left = draw.0 - to_close;
        if left <= millimetres(0.0) {
            return Err(Refusal::JointsWider {
                draw: draw.0,
                joints: to_close,
            });
        }
        Ok(Nip {
            to_close,
            against_the_spokes: self.cramped.map(Measured::value),
            left: Draw(left),
            between: (Draw(left - doubt), Draw(left + doubt)),
        })
    }
}

/// Whether the felloes come home on the shoulders of the spokes before their joints are shut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seating {
    /// They do, and so much of the joints is left when they have.
    Free {
        /// What is left round the sole.
        spare: Length,
    },
    /// It lies within the doubt of what was measured.
    Near {
        /// By how much a joint should be eased to be sure of it.
        ease: Length,
    },
    /// They do not: the wheel is felloe-bound.
    Bound {
        /// By how much a joint must be eased at the least.
        ease: Length,
    },
}

/// The sum that tells a felloe-bound wheel: to come in by the stand-off all round, the rim must get 2π times as much
/// shorter, and only its open joints let it. Where stand-offs differ their mean counts, since each spoke's stretch of rim
/// comes in by its own.
///
/// # Errors
///
/// [`Refusal::NoStandOffs`] where no stand-off was measured.
pub fn seating(joints: &Joints, stand_offs: &[Measured]) -> Result<Seating, Refusal> {
    if stand_offs.is_empty() {
        return Err(Refusal::NoStandOffs);
    }
    let mean = together(stand_offs)?;
    let turn = TAU / stand_offs.len() as f64;
    let (needed, needed_within) = (mean.value() * turn, mean.doubt() * turn);
    let open = joints.as_they_stand;
    let (short, doubt) = (needed - open.value(), needed_within + open.doubt());
    Ok(if short > doubt {
        Seating::Bound { ease: short }
    } else if short > -doubt && needed > millimetres(0.0) {
        Seating::Near {
            ease: short + doubt,
        }
    } else {
        Seating::Free { spare: -short }
    })
}

#[cfg(test)]
mod tests;
