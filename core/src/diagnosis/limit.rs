//! The limits: at what reading a wheel gets which grade, and whose limit that is. No published wear
//! limit is known for any of these rows; they are common practice, no source, and the shop's own.

use super::standing::Grade;
use crate::quantity::Length;
use crate::quantity::length::millimetres;
use crate::survey::{Play, Question};

/// Where a limit comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Origin {
    /// A published source.
    Published(&'static str),
    /// A rule of the trade with its source.
    Trade(&'static str),
    /// The shop's own; common practice, no source.
    House,
}

/// What must hold for a limit to be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Test {
    /// Any gap or play at all, at any place: a length above nought.
    Any,
    /// This much or more at any one place.
    Anywhere(Length),
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
    /// The bad answer, at so many places or more.
    Answered(usize),
    /// Two spokes side by side each reach this row's limit of *light work only*.
    Neighbours,
    /// A quarter of the spokes each reach this row's limit of *light work only*.
    AQuarter,
    /// A broken or missing spoke stands beside one that is loose at foot or rim end.
    BesideALooseOne,
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

/// The shop's limits as they come: common practice, no source.
pub fn house_limits() -> Vec<Limit> {
    use Grade::{KeepEmpty, LightWorkOnly, NotOnThisWheel, Note};
    use Question::{
        FelloeStep, JointGap, KeeperPresent, KeeperRight, KeeperSecured, SpokeBroken, SpokeFoot,
        SpokeRimEnd, TyreGap, TyreShifts,
    };
    let mm = millimetres;
    [
        (KeeperPresent, NotOnThisWheel, Test::Answered(1)),
        (KeeperRight, NotOnThisWheel, Test::Answered(1)),
        (KeeperSecured, NotOnThisWheel, Test::Answered(1)),
        (TyreGap, Note, Test::Any),
        (
            TyreGap,
            LightWorkOnly,
            Test::AtPlacesAndAQuarter {
                each: mm(0.5),
                places: 2,
            },
        ),
        (TyreGap, LightWorkOnly, Test::Anywhere(mm(1.0))),
        (TyreGap, KeepEmpty, Test::Anywhere(mm(3.0))),
        (TyreShifts, KeepEmpty, Test::Answered(1)),
        (JointGap, Note, Test::Any),
        (JointGap, LightWorkOnly, Test::Sum(mm(2.0))),
        (JointGap, KeepEmpty, Test::Sum(mm(10.0))),
        (FelloeStep, KeepEmpty, Test::Anywhere(mm(3.0))),
        (SpokeFoot, LightWorkOnly, Test::Felt(Play::JustMoves)),
        (SpokeFoot, LightWorkOnly, Test::Any),
        (SpokeFoot, KeepEmpty, Test::Anywhere(mm(1.5))),
        (SpokeFoot, KeepEmpty, Test::Neighbours),
        (SpokeFoot, KeepEmpty, Test::AQuarter),
        (SpokeRimEnd, Note, Test::Anywhere(mm(0.5))),
        (SpokeRimEnd, Note, Test::Felt(Play::JustMoves)),
        (SpokeRimEnd, LightWorkOnly, Test::Anywhere(mm(2.0))),
        (SpokeRimEnd, LightWorkOnly, Test::Felt(Play::Loose)),
        (SpokeRimEnd, KeepEmpty, Test::Anywhere(mm(5.0))),
        (SpokeRimEnd, KeepEmpty, Test::Neighbours),
        (SpokeRimEnd, KeepEmpty, Test::AQuarter),
        (SpokeBroken, KeepEmpty, Test::Answered(1)),
        (SpokeBroken, NotOnThisWheel, Test::Answered(2)),
        (SpokeBroken, NotOnThisWheel, Test::BesideALooseOne),
    ]
    .into_iter()
    .map(|(question, grade, test)| Limit {
        question,
        grade,
        test,
        origin: Origin::House,
    })
    .collect()
}
