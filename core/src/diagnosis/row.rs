//! What a row of the table of limits is called, and what of it the shop may set. Names are for ever:
//! books hold them.

use super::limit::{Limit, Origin, Test};
use super::standing::Grade;
use crate::daybook::Threshold;
use crate::quantity::length::to_paper_mm;
use crate::quantity::spelling::{self, BareUnit};
use crate::quantity::{LengthRange, Percent, Refusal};
use crate::survey::{Pad, Places, Question};
use crate::wheel::Keeper;

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

/// Why what was typed for a row is not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum TypedRefusal {
    /// The text is no length or no share.
    Spelled(Refusal),
    /// The row cannot be set so.
    Row(EditRefusal),
}

impl From<Refusal> for TypedRefusal {
    fn from(refusal: Refusal) -> TypedRefusal {
        TypedRefusal::Spelled(refusal)
    }
}

impl From<EditRefusal> for TypedRefusal {
    fn from(refusal: EditRefusal) -> TypedRefusal {
        TypedRefusal::Row(refusal)
    }
}

impl Grade {
    /// The word that stands for this grade in the name of a row and in the state of a page.
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
            Test::Under(_) => "under",
            Test::MoreThan { on, .. } => match on.first() {
                Some(Keeper::LinchPin) => "more-than-linch-pin",
                Some(Keeper::Nut) => "more-than-nut",
                _ => "more-than-collinge-mail",
            },
            Test::AThird => "a-third",
            Test::ShareAtLeast(_) => "share",
            Test::ShareOutside(..) => "share-outside",
            Test::ShareOfNew(_) => "share-of-new",
            Test::DishLost(_) => "dish-lost",
            Test::DishGrown => "dish-grown",
            Test::DishReversed => "dish-reversed",
            Test::PairDiffers(_) => "pair-differs",
            Test::AtPlacesAndAQuarter { .. } => "at-places",
            Test::Sum(_) => "sum",
            Test::Felt(_) => "felt",
            Test::Sounds(_) => "sounds",
            Test::DeadAllRound => "dead-all-round",
            Test::Cracked(_) => "cracked",
            Test::CrackedWithLooseBond(_) => "cracked-with-loose-bond",
            Test::NotThere => "not-there",
            Test::Answered(_) => "answered",
            Test::Neighbours => "neighbours",
            Test::AQuarter => "a-quarter",
            Test::BesideALooseOne => "beside-a-loose-one",
            Test::FelloeBound => "felloe-bound",
        }
    }

    /// The value at which it is reached: from there upward, or downward where
    /// [`is_reached_below`](Self::is_reached_below).
    pub fn threshold(&self) -> Option<Threshold> {
        match self {
            Test::Anywhere(least)
            | Test::Sum(least)
            | Test::Under(least)
            | Test::PairDiffers(least)
            | Test::AtPlacesAndAQuarter { each: least, .. }
            | Test::MoreThan { than: least, .. } => Some(Threshold::Length(*least)),
            Test::ShareAtLeast(share) | Test::ShareOfNew(share) => Some(Threshold::Percent(*share)),
            Test::Answered(times) => u32::try_from(*times).ok().map(Threshold::Count),
            _ => None,
        }
    }

    /// Whether it is reached by less than its value, so that of two values the greater is the more
    /// cautious.
    pub fn is_reached_below(&self) -> bool {
        matches!(self, Test::Under(_) | Test::ShareOfNew(_))
    }

    /// The same test, reached at another value; `None` where it has no such value.
    fn at(&self, to: Threshold) -> Option<Test> {
        Some(match (*self, to) {
            (Test::Anywhere(_), Threshold::Length(least)) => Test::Anywhere(least),
            (Test::Sum(_), Threshold::Length(least)) => Test::Sum(least),
            (Test::Under(_), Threshold::Length(limit)) => Test::Under(limit),
            (Test::PairDiffers(_), Threshold::Length(least)) => Test::PairDiffers(least),
            (Test::MoreThan { on, .. }, Threshold::Length(than)) => Test::MoreThan { than, on },
            (Test::ShareAtLeast(_), Threshold::Percent(share)) => Test::ShareAtLeast(share),
            (Test::ShareOfNew(_), Threshold::Percent(share)) => Test::ShareOfNew(share),
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

    /// The value that was typed for this row; a length without a unit is in `unit`.
    ///
    /// # Errors
    /// The row has no value, or the text is no value of its sort.
    pub fn typed(&self, text: &str, unit: BareUnit) -> Result<Threshold, TypedRefusal> {
        Ok(match self.threshold().ok_or(EditRefusal::Fixed)? {
            Threshold::Length(_) => {
                let range = range(self.question).ok_or(EditRefusal::Fixed)?;
                Threshold::Length(spelling::parse(text, range, unit)?)
            }
            Threshold::Percent(_) => Threshold::Percent(Percent::parse(text)?),
            // What is no count of places is none at all, and none is refused when the row is set.
            Threshold::Count(_) => Threshold::Count(text.trim().parse().unwrap_or(0)),
        })
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
            let origin = Origin::Shop;
            Ok(Some(Limit {
                test,
                origin,
                ..*self
            }))
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
        Threshold::Percent(_) => Some(Threshold::Percent(Percent::whole(100))),
    }
}

fn range(question: Question) -> Option<LengthRange> {
    match question.pad() {
        Pad::Gauge(range) | Pad::Size(range) | Pad::Verdict(range) => Some(range),
        Pad::Fastening | Pad::Ring | Pad::Crack | Pad::Share | Pad::YesNo => None,
    }
}

/// A value as it stands on paper; two of one sort compare as these do.
pub(super) fn number(threshold: Threshold) -> f64 {
    match threshold {
        Threshold::Length(least) => to_paper_mm(least),
        Threshold::Percent(share) => share.to_paper(),
        Threshold::Count(count) => f64::from(count),
    }
}
