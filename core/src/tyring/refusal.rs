//! Why something of the tyring sheet cannot be said: each with what was given, so that a sentence can be made of it.

use super::hot::fire::FuelMoisture;
use super::round::Line;
use crate::quantity::{self, Length, Strain};

/// Why it cannot be said; nothing that was written down is changed by it.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// A length, a temperature or a share lies outside what it may be.
    Given(quantity::Refusal),
    /// No run was given.
    NoRuns,
    /// More runs than are counted.
    TooManyRuns {
        /// How many were given.
        given: usize,
        /// How many are counted.
        allowed: usize,
    },
    /// What is left over after the whole turns is more than one turn.
    PastATurn {
        /// What is left over.
        past: Length,
        /// The traveller's own round.
        turn: Length,
    },
    /// Two runs lie half a turn or more apart: a turn was miscounted.
    Miscounted {
        /// How far they lie apart.
        apart: Length,
        /// The traveller's own round.
        turn: Length,
    },
    /// Wheel and tyre were run on different lines, which on a coned sole have different rounds.
    OtherLine {
        /// The line of the wheel.
        wheel: Line,
        /// The line of the tyre.
        tyre: Line,
    },
    /// The tyre is larger round than the wheel, or as large: nothing draws.
    TyreLarger {
        /// By how much it is larger.
        by: Length,
    },
    /// The rim has wider joints cramped than as it stands.
    CrampedWider {
        /// The joints as they stand.
        as_they_stand: Length,
        /// The joints with the rim cramped.
        cramped: Length,
    },
    /// No stand-off was measured.
    NoStandOffs,
    /// The tyre is already as small as is wanted, or smaller: it must be stretched, not cut.
    TyreSmaller {
        /// By how much it is smaller.
        by: Length,
    },
    /// Too few jobs of the shop's own to learn from.
    FewJobs {
        /// How many there are.
        given: usize,
        /// How many there must be.
        fewest: usize,
    },
    /// Feet or tongues of the wheel were not looked at.
    NotLooked,
    /// A foot is loose in the nave.
    LooseFeet,
    /// A tongue stands proud of the sole.
    ProudTongues,
    /// The dish of the wheel is not known.
    DishUnknown,
    /// The wheel is dished the other way than it was built.
    DishedBackwards,
    /// The joints are wider together than the draw, so that they cannot all close.
    JointsWider {
        /// The draw.
        draw: Length,
        /// The joints together.
        joints: Length,
    },
    /// The wind lies outside what a tyre is put on in, in m/s.
    Wind {
        /// What was given.
        given: f64,
        /// The most there may be.
        most: f64,
    },
    /// The carry lies outside what is counted, in seconds.
    Carry {
        /// What was given.
        given: f64,
        /// The most it may be.
        most: f64,
    },
    /// The firewood is too wet to burn.
    TooWet {
        /// What was given.
        given: FuelMoisture,
    },
    /// No heat worth a fire makes the iron as large as it must be.
    NoFurther {
        /// How much it must grow, as a part of its length.
        needed: Strain,
        /// How much it can.
        most: Strain,
    },
}

impl From<quantity::Refusal> for Refusal {
    fn from(refusal: quantity::Refusal) -> Refusal {
        Refusal::Given(refusal)
    }
}
