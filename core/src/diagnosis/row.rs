//! What a row of the table of limits is called, and what of it the shop may set. Names are for ever:
//! books hold them.

use super::limit::{Limit, Test};
use super::standing::Grade;
use crate::daybook::Threshold;
use crate::quantity::LengthRange;
use crate::quantity::length::to_paper_mm;
use crate::survey::{Pad, Places, Question};

/// The most places a count may ask for: no wheel has more spokes.
pub const MOST_PLACES: u32 = 64;

/// Why a row cannot be set to a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EditRefusal {
    /// The row has no threshold: it is as it is.
    Fixed,
    /// The row is reached at another sort of value than this one.
    OtherSort(Threshold),
    /// The value lies beyond what its readings can be: nought, or above the greatest.
    Beyond {
        /// What was given.
        given: Threshold,
        /// The greatest there may be.
        most: Threshold,
    },
}

impl Grade {
    /// The word that stands for this grade in the name of a row.
    pub fn code(self) -> &'static str {
        self.proposes().map_or("note", |standing| standing.code())
    }
}

impl Test {
    /// The word that stands for this sort of test in the name of a row.
    pub fn code(&self) -> &'static str {
        match self {
            Test::Any => "any",
            Test::Anywhere(_) => "anywhere",
            Test::AtPlacesAndAQuarter { .. } => "at-places",
            Test::Sum(_) => "sum",
            Test::Felt(_) => "felt",
            Test::Answered(_) => "answered",
            Test::Neighbours => "neighbours",
            Test::AQuarter => "a-quarter",
            Test::BesideALooseOne => "beside-a-loose-one",
        }
    }

    /// The value at which it is reached, from there upward; so of two values the smaller is the more
    /// cautious.
    pub fn threshold(&self) -> Option<Threshold> {
        match self {
            Test::Anywhere(least) | Test::Sum(least) => Some(Threshold::Length(*least)),
            Test::AtPlacesAndAQuarter { each, .. } => Some(Threshold::Length(*each)),
            Test::Answered(times) => u32::try_from(*times).ok().map(Threshold::Count),
            Test::Any
            | Test::Felt(_)
            | Test::Neighbours
            | Test::AQuarter
            | Test::BesideALooseOne => None,
        }
    }

    /// The same test, reached at another value; `None` where it has no such value.
    fn at(&self, to: Threshold) -> Option<Test> {
        Some(match (*self, to) {
            (Test::Anywhere(_), Threshold::Length(least)) => Test::Anywhere(least),
            (Test::Sum(_), Threshold::Length(least)) => Test::Sum(least),
            (Test::AtPlacesAndAQuarter { places, .. }, Threshold::Length(each)) => {
                Test::AtPlacesAndAQuarter { each, places }
            }
            (Test::Answered(_), Threshold::Count(times)) => {
                Test::Answered(usize::try_from(times).ok()?)
            }
            _ => return None,
        })
    }
}

impl Limit {
    /// The name of the row: question, grade and test, `tyre-gap/keep-empty/anywhere`.
    pub fn code(&self) -> String {
        let (question, grade) = (self.question.code(), self.grade.code());
        format!("{question}/{grade}/{}", self.test.code())
    }

    /// The value that the shop may set; `None` for a row without one, among them whatever is asked
    /// once of the whole wheel, since one bad answer is all there can be.
    pub fn threshold(&self) -> Option<Threshold> {
        let threshold = self.test.threshold()?;
        most(self.question, threshold).map(|_| threshold)
    }

    /// The row with another value, or `Ok(None)` for one that is not to be used.
    ///
    /// # Errors
    /// A row that has no value, a value of another sort, and one that its readings cannot have.
    pub fn edited(&self, to: Option<Threshold>) -> Result<Option<Limit>, EditRefusal> {
        self.threshold().ok_or(EditRefusal::Fixed)?;
        let Some(given) = to else { return Ok(None) };
        let test = self.test.at(given).ok_or(EditRefusal::OtherSort(given))?;
        let most = most(self.question, given).ok_or(EditRefusal::Fixed)?;
        if number(given) > 0.0 && number(given) <= number(most) {
            Ok(Some(Limit { test, ..*self }))
        } else {
            Err(EditRefusal::Beyond { given, most })
        }
    }
}

/// The greatest value of this sort that readings of a question can have.
fn most(question: Question, sort: Threshold) -> Option<Threshold> {
    match sort {
        Threshold::Length(_) => range(question).map(|range| Threshold::Length(range.max())),
        Threshold::Count(_) => {
            (question.places() != Places::Whole).then_some(Threshold::Count(MOST_PLACES))
        }
        Threshold::Percent(_) => None,
    }
}

fn range(question: Question) -> Option<LengthRange> {
    match question.pad() {
        Pad::Gauge(range) | Pad::Verdict(range) => Some(range),
        Pad::YesNo => None,
    }
}

/// A value as it stands on paper; two of one sort compare as these do.
pub(super) fn number(threshold: Threshold) -> f64 {
    match threshold {
        Threshold::Length(least) => to_paper_mm(least),
        Threshold::Percent(share) => share.value(),
        Threshold::Count(count) => f64::from(count),
    }
}
