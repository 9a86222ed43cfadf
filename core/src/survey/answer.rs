//! What can be answered to a question. Skipping is not an answer; *can't see*, *not there* and
//! *looked, nothing found* are.

use crate::quantity::{Length, Measured, Percent};

/// How a joint of wood behaves under the hand, from sound to bad.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Play {
    /// Nothing can be felt or seen.
    Tight,
    /// It can be felt or seen to move, too little to measure.
    JustMoves,
    /// It moves enough to measure.
    Loose,
}

impl Play {
    /// Every verdict, from sound to bad.
    pub const ALL: [Play; 3] = [Play::Tight, Play::JustMoves, Play::Loose];

    /// The word that stands for this verdict on paper.
    pub fn code(self) -> &'static str {
        match self {
            Play::Tight => "tight",
            Play::JustMoves => "just-moves",
            Play::Loose => "loose",
        }
    }

    /// The verdict a code stands for.
    pub fn from_code(code: &str) -> Option<Play> {
        Play::ALL.into_iter().find(|play| play.code() == code)
    }
}

/// How a tyre answers a hammer, from sound to bad.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ring {
    /// It rings.
    Rings,
    /// The ring is short.
    Dull,
    /// A thud, no ring at all.
    Dead,
}

impl Ring {
    /// Every sound, from sound to bad.
    pub const ALL: [Ring; 3] = [Ring::Rings, Ring::Dull, Ring::Dead];

    /// The word that stands for this sound on paper.
    pub fn code(self) -> &'static str {
        match self {
            Ring::Rings => "rings",
            Ring::Dull => "dull",
            Ring::Dead => "dead",
        }
    }

    /// The sound a code stands for.
    pub fn from_code(code: &str) -> Option<Ring> {
        Ring::ALL.into_iter().find(|ring| ring.code() == code)
    }
}

/// A crack or shake in the wood, from mild to grave; where there is none, nothing was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Crack {
    /// A hairline along the grain.
    Hairline,
    /// Open by 1 mm or more, or reaching a tongue or a mortise.
    Open,
    /// Across the grain, or running out of the wood.
    Across,
}

impl Crack {
    /// Every crack, from mild to grave.
    pub const ALL: [Crack; 3] = [Crack::Hairline, Crack::Open, Crack::Across];

    /// The word that stands for this crack on paper.
    pub fn code(self) -> &'static str {
        match self {
            Crack::Hairline => "hairline",
            Crack::Open => "open",
            Crack::Across => "across",
        }
    }

    /// The crack a code stands for.
    pub fn from_code(code: &str) -> Option<Crack> {
        Crack::ALL.into_iter().find(|crack| crack.code() == code)
    }
}

/// One answer to one question.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Answer {
    /// A length with its doubt; only the dish may be below nought.
    Length(Measured),
    /// More than the thickest leaf of the gauge: at least this much.
    Over(Length),
    /// A verdict of the hand.
    Play(Play),
    /// The sound of the tyre.
    Ring(Ring),
    /// A crack.
    Crack(Crack),
    /// A share of the whole.
    Share(Percent),
    /// Yes.
    Yes,
    /// No.
    No,
    /// It could not be seen or reached.
    CannotSee,
    /// The part is not there.
    NotThere,
    /// Looked at, nothing found.
    NothingFound,
}

impl Answer {
    /// Whether the place was looked at: everything but *can't see*.
    pub fn looked(&self) -> bool {
        !matches!(self, Answer::CannotSee)
    }

    /// The length it gives, if it gives one: the measured value, or the least it can be.
    pub fn length(&self) -> Option<Length> {
        match self {
            Answer::Length(measured) => Some(measured.value()),
            Answer::Over(least) => Some(*least),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Crack, Play, Ring};

    #[test]
    fn a_code_leads_back_to_its_verdict() {
        for play in Play::ALL {
            assert_eq!(Play::from_code(play.code()), Some(play));
        }
        for ring in Ring::ALL {
            assert_eq!(Ring::from_code(ring.code()), Some(ring));
        }
        for crack in Crack::ALL {
            assert_eq!(Crack::from_code(crack.code()), Some(crack));
        }
    }
}
