//! Why a fit is not reckoned: what was given and what is allowed. Nothing was changed.

use crate::material::moisture::MoistureRefusal;
use crate::quantity::circumference::Draw;
use crate::quantity::{Length, Refusal};

/// Why a fit is not reckoned.
#[derive(Clone, Debug, PartialEq)]
pub enum FitRefusal {
    /// A size is out of its range.
    Size(Refusal),
    /// So many spokes were given; a wheel has 3 to 64.
    Spokes(u16),
    /// So many felloes were given; a rim has 1 to 32.
    Felloes(u16),
    /// Nave and felloes leave this much for the spokes between them, and less than nothing is possible.
    NoRoom(Length),
    /// The dish is more than the spokes are long.
    DishBeyondSpokes {
        /// The dish that was given.
        dish: Length,
        /// How long the spokes are.
        spokes: Length,
    },
    /// The tyre is as large as the wheel or larger, so nothing holds it.
    TyreNotSmaller(Draw),
    /// The draw is more than a tyre can be opened by heat.
    DrawTooGreat {
        /// The draw that was given.
        draw: Draw,
        /// The most that is reckoned with.
        most: Draw,
    },
    /// The joints take up the whole draw and more, so the rim never shuts.
    JointsWiderThanDraw {
        /// All joint gaps added up.
        joints: Length,
        /// The draw that was given.
        draw: Draw,
    },
    /// The moisture is not one that wood can have, or is not known of this air.
    Moisture(MoistureRefusal),
}

impl From<Refusal> for FitRefusal {
    fn from(refusal: Refusal) -> FitRefusal {
        FitRefusal::Size(refusal)
    }
}

impl From<MoistureRefusal> for FitRefusal {
    fn from(refusal: MoistureRefusal) -> FitRefusal {
        FitRefusal::Moisture(refusal)
    }
}
