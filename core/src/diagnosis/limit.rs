//! The limits: at what reading a wheel gets which grade, and whose limit that is. No published wear
//! limit is known for any of these rows; they are common practice, no source, and the shop's own.

use super::standing::Grade;
use crate::quantity::{Length, Percent};
use crate::survey::{Crack, Play, Question, Ring};
use crate::wheel::Keeper;

/// Where a limit comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Origin {
    /// A published source.
    Published(&'static str),
    /// A rule of the trade with its source.
    Trade(&'static str),
    /// As the table comes; common practice, no source.
    House,
    /// Set by this shop in the place of what comes.
    Shop,
}

/// What must hold for a limit to be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Test {
    /// Any gap or play at all, at any place: a length above nought.
    Any,
    /// This much or more at any one place.
    Anywhere(Length),
    /// Less than this at any one place.
    Under(Length),
    /// More than this, on a wheel kept on by one of these or by what has not been said.
    MoreThan {
        /// How much.
        than: Length,
        /// The keepers it is for.
        on: &'static [Keeper],
    },
    /// A third of the part or more at any one place; of a part whose depth has not been said, a
    /// third of the least it can be.
    AThird,
    /// This share or more at any one place.
    ShareAtLeast(Percent),
    /// The lower share or less, or the higher or more, at any one place.
    ShareOutside(Percent, Percent),
    /// This share or less of the tyre's thickness as new, where that has been said.
    ShareOfNew(Percent),
    /// So many thirds or more of the dish as built lost, and 5 mm or more.
    DishLost(u8),
    /// Dish grown by half of the dish as built or more, and by 5 mm or more.
    DishGrown,
    /// Dish 5 mm or more the wrong way beyond doubt, in a wheel built with dish.
    DishReversed,
    /// Dish differs by this much or more from that of the other wheel of the axle.
    PairDiffers(Length),
    /// This much or more at so many places, which are also a quarter of those looked at.
    AtPlacesAndAQuarter {
        /// How much.
        each: Length,
        /// At how many places at least.
        places: usize,
    },
    /// The lengths of all places come to this much or more.
    Sum(Length),
    /// The hand's verdict is this or worse at any place. A measure that refines a verdict replaces
    /// it; one that stands beside it does not soften it.
    Felt(Play),
    /// The sound is this or worse at any place.
    Sounds(Ring),
    /// The sound is dead at every place round the tyre, four at least.
    DeadAllRound,
    /// A crack that is this or worse at any place.
    Cracked(Crack),
    /// A crack that is this or worse, with a bond that is loose or missing.
    CrackedWithLooseBond(Crack),
    /// The part is not there.
    NotThere,
    /// The bad answer, at so many places or more.
    Answered(usize),
    /// Two spokes side by side each reach this row's limit of *light work only*.
    Neighbours,
    /// A quarter of the spokes each reach this row's limit of *light work only*.
    AQuarter,
    /// A broken or missing spoke stands beside one that is loose at foot or rim end.
    BesideALooseOne,
    /// The joints come together before the spokes' shoulders are home: all joint gaps at the sole
    /// come to less than 2π times the mean stand-off, every joint and every spoke measured with the
    /// tyre on.
    FelloeBound,
}

/// One limit: one way for one row of readings to reach one grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The readings it judges.
    pub question: Question,
    /// The grade it gives.
    pub grade: Grade,
    /// When it is reached.
    pub test: Test,
    /// Whose it is.
    pub origin: Origin,
}
