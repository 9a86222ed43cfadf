//! A finding: what, where, how bad, by which limit, resting on which entries; and what is missing
//! before a wheel is judged.

use super::limit::Limit;
use super::standing::Grade;
use crate::daybook::EntryId;
use crate::quantity::{Length, Percent};
use crate::survey::{Need, Question};
use crate::wheel::Place;

/// What a finding measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// The greatest length at any of its places.
    Greatest(Length),
    /// The least length at any of its places.
    Least(Length),
    /// All lengths together.
    Sum(Length),
    /// How far a length lies off what it is held against; never below nought.
    By(Length),
    /// How far the dish lies from that of the other wheel, and what it is.
    Apart {
        /// How far; never below nought.
        by: Length,
        /// The dish of this wheel.
        now: Length,
    },
    /// How much the joints must be eased by in all, so that the spokes can come home.
    Ease(Length),
    /// A share; where several reach, the one furthest off.
    Share(Percent),
    /// So many places, of so many looked at.
    Places {
        /// How many reach the limit.
        reach: usize,
        /// How many were looked at.
        of: usize,
        /// The greatest length at any of them, where one was given.
        greatest: Option<Length>,
    },
    /// What the hand or the eye said.
    Said,
}

/// One finding: a limit of the worst grade that one row of readings reaches.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The readings it is about.
    pub question: Question,
    /// How bad.
    pub grade: Grade,
    /// The limit that is reached, with its origin.
    pub limit: Limit,
    /// Where.
    pub places: Vec<Place>,
    /// How much.
    pub measure: Measure,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
    /// Places of the same row that were not looked at.
    pub not_looked: Vec<Place>,
}

/// Something that must be recorded before the wheel is judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// What.
    pub need: Need,
    /// Where it is still missing; empty where it is asked of the wheel as a whole.
    pub places: Vec<Place>,
}
