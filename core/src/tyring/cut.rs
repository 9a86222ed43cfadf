//! What to take out of a tyre: the piece to cut, the weld's own loss, and what is left for a second time.
//!
//! A cut that proves too short costs a new piece welded in, so the first one counts on the most that a weld has taken.

use super::doubt::Doubt;
use super::draw::drawing;
use super::refusal::Refusal;
use crate::quantity::circumference::{Circumference, Draw};
use crate::quantity::length::{inches, millimetres, to_paper_mm};
use crate::quantity::{Length, LengthRange};

/// The fewest jobs from which a shop's own loss is learnt.
pub const FEWEST_JOBS: usize = 3;

/// The most that a weld can lose or gain, in mm, for a job to be believed: house, common practice, no source.
const BELIEVED: f64 = 60.0;

/// One tyre that was cut and welded, as the shop wrote it down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Job {
    /// Its round before.
    pub before: Circumference,
    /// The piece that was cut out.
    pub cut: Length,
    /// Its round after, cold.
    pub after: Circumference,
}

/// What a weld takes of the round beyond the piece cut out: by upsetting, scarf and burning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeldLoss {
    /// The least it takes.
    pub least: Length,
    /// The most.
    pub most: Length,
    /// How many of the shop's own jobs it is learnt from; `None` of what is printed.
    pub jobs: Option<usize>,
}

/// A printed loss.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrintedLoss {
    /// The least and the most, in sixteenths of an inch.
    sixteenths: (u8, u8),
    /// Who prints it.
    pub source: &'static str,
}

/// What is printed of the loss.
pub const PRINTED: [PrintedLoss; 4] = [
    PrintedLoss {
        sixteenths: (4, 4),
        source: "J. G. Holmström, Modern Blacksmithing, 1901: his draw of ½ in less the ¼ in that he cuts for",
    },
    PrintedLoss {
        sixteenths: (4, 8),
        source: "Wagon and carriage tires, an American smith's manual (freeblacksmith.com): its draw less what it cuts for",
    },
    PrintedLoss {
        sixteenths: (10, 10),
        source: "P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, Tyring Cart Wheels: about ⅝ in",
    },
    PrintedLoss {
        sixteenths: (6, 6),
        source: "T. F. Googerty, Hand Forging and Wrought-Iron, p. 69: ⅜ in, a ring of 10 in and 1 in iron",
    },
];

/// How much longer a tyre reads while its weld is still hot: ⅛ in (P. N. Hasluck, the same).
#[must_use]
pub fn hot_weld_reads_long() -> Length {
    inches(0.125)
}

impl Job {
    /// What its weld took beside the piece that was cut out.
    #[must_use]
    pub fn lost(&self) -> Length {
        self.before.0 - self.after.0 - self.cut
    }

    /// Whether its three numbers can be so; what is learnt leaves out a job of which they cannot.
    #[must_use]
    pub fn is_believed(&self) -> bool {
        to_paper_mm(self.lost()).abs() <= BELIEVED && self.cut >= millimetres(0.0)
    }
}

impl PrintedLoss {
    /// The least and the most.
    #[must_use]
    pub fn between(&self) -> (Length, Length) {
        let of = |sixteenths| inches(f64::from(sixteenths) / 16.0);
        (of(self.sixteenths.0), of(self.sixteenths.1))
    }
}

impl WeldLoss {
    /// From the least to the most that is printed, for a shop that has not written down jobs enough of its own.
    #[must_use]
    pub fn printed() -> WeldLoss {
        WeldLoss {
            least: inches(4.0 / 16.0),
            most: inches(10.0 / 16.0),
            jobs: None,
        }
    }

    /// From the shop's own jobs: their mean, and to either side what the next one will lie within 95 times in 100
    /// (JCGM 100:2008, 4.2 and G.3, for one more of the same).
    ///
    /// # Errors
    ///
    /// [`Refusal::FewJobs`], where those that are believed are too few.
    pub fn learnt(jobs: &[Job]) -> Result<WeldLoss, Refusal> {
        let believed = jobs.iter().filter(|job| job.is_believed());
        let count = believed.clone().count();
        if count < FEWEST_JOBS {
            return Err(Refusal::FewJobs {
                given: count,
                fewest: FEWEST_JOBS,
            });
        }
        let (mut sum, mut squares) = (0.0, 0.0);
        for job in believed {
            let loss = to_paper_mm(job.lost());
            sum += loss;
            squares += loss * loss;
        }
        let mean = sum / count as f64;
        let scatter = ((squares - sum * mean) / (count - 1) as f64).max(0.0);
        let next = Doubt::of_one_more(scatter, count).to_either_side();
        Ok(WeldLoss {
            least: millimetres(mean) - next,
            most: millimetres(mean) + next,
            jobs: Some(count),
        })
    }
}

/// How a tyre is made as much smaller as it should be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// By upsetting alone: a weld might take more than is wanted.
    Upset,
    /// By cutting out this piece and welding.
    Cut {
        /// The piece.
        piece: Length,
        /// The most that will then be left to take off, which is again for [`to_take_out`] to say how; the least is nought.
        left: Length,
    },
}

/// What must come off a tyre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TakeOut {
    /// The round that the tyre should have, cold.
    pub wanted: Circumference,
    /// How much smaller that is than now.
    pub off: Length,
    /// How.
    pub way: Way,
}

/// What must come off a tyre of this round to have the draw that is wanted on this wheel.
///
/// # Errors
///
/// [`Refusal::TyreSmaller`] where it is as small already, [`Refusal`] for a draw or a round that cannot be.
pub fn to_take_out(
    wheel: Circumference,
    tyre: Circumference,
    draw: Draw,
    loss: &WeldLoss,
) -> Result<TakeOut, Refusal> {
    for round in [wheel, tyre] {
        LengthRange::Round.check(round.0)?;
    }
    let wanted = wheel - drawing(draw)?;
    LengthRange::Round.check(wanted.0)?;
    let off = tyre.0 - wanted.0;
    if off <= millimetres(0.0) {
        return Err(Refusal::TyreSmaller { by: -off });
    }
    let way = if off <= loss.most {
        Way::Upset
    } else {
        Way::Cut {
            piece: off - loss.most,
            left: loss.most - loss.least,
        }
    };
    Ok(TakeOut { wanted, off, way })
}

/// The round that a wheel loses when its sole is charred so deep all round: 2π times the depth.
///
/// # Errors
///
/// [`Refusal::Given`] for a depth that no sole is charred to.
pub fn lost_to_char(depth: Length) -> Result<Length, Refusal> {
    Ok(LengthRange::FeelerGap.check(depth)? * std::f64::consts::TAU)
}

/// How oval a wheel or a tyre is: its widest less its narrowest across.
///
/// # Errors
///
/// [`Refusal::Given`] where the narrowest is the wider, or one of them no wheel has.
pub fn oval(widest: Length, narrowest: Length) -> Result<Length, Refusal> {
    for across in [widest, narrowest] {
        LengthRange::WheelDiameter.check(across)?;
    }
    Ok(LengthRange::OutOfRound.check(widest - narrowest)?)
}

#[cfg(test)]
mod tests;
