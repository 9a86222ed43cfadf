//! Whether what was seen at one place reaches a limit, and how far: the tests that look at one place
//! at a time.

use super::finding::Measure;
use super::limit::Test;
use super::seen::Seen;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::{Length, Percent};
use crate::survey::Question;
use crate::wheel::{Size, Wheel};

/// The least a felloe or a spoke can be deep, for one whose depth has not been said. Common
/// practice, no source.
const LEAST_PART_MM: f64 = 30.0;

/// The least change of dish that counts, beyond what two readings by rule can differ by.
const LEAST_DISH_MM: f64 = 5.0;

/// Whether a length reaches a limit as both stand on paper, so that a limit reached by adding up is
/// reached whatever the order.
pub(super) fn reaches(length: Length, least: Length) -> bool {
    to_paper_mm(length) >= to_paper_mm(least)
}

/// How far this place reaches the limit; `None` if it does not, or if the limit is not one of those
/// that look at one place at a time.
pub(super) fn at_one_place(
    wheel: &Wheel,
    question: Question,
    test: &Test,
    seen: &Seen,
) -> Option<Measure> {
    let greatest = |holds: &dyn Fn(Length) -> bool| {
        let length = seen.greatest().filter(|length| holds(*length));
        length.map(Measure::Greatest)
    };
    let least = |holds: &dyn Fn(Length) -> bool| {
        let length = seen.least().filter(|length| holds(*length));
        length.map(Measure::Least)
    };
    let said = |holds: bool| holds.then_some(Measure::Said);
    match test {
        Test::Any => greatest(&|length| length > millimetres(0.0)),
        Test::Anywhere(limit) => greatest(&|length| reaches(length, *limit)),
        Test::AThird => greatest(&|length| reaches(length, depth(wheel, question) / 3.0)),
        Test::MoreThan { than, on } => {
            let mine = wheel.keeper.is_none_or(|keeper| on.contains(&keeper));
            greatest(&|length| mine && !reaches(*than, length))
        }
        Test::Under(limit) => least(&|length| !reaches(length, *limit)),
        Test::ShareOfNew(share) => {
            let new = wheel.sizes.get(Size::TyreThickness)? * share.of_one();
            least(&|length| reaches(new, length))
        }
        Test::ShareAtLeast(limit) => furthest(seen, |share| share >= *limit),
        Test::ShareOutside(low, high) => furthest(seen, |share| share <= *low || share >= *high),
        Test::DishLost(_) | Test::DishGrown | Test::DishReversed => {
            dish(wheel.sizes.get(Size::Dish)?, test, seen)
        }
        Test::Felt(play) => said(seen.play >= Some(*play)),
        Test::Sounds(ring) => said(seen.ring >= Some(*ring)),
        Test::Cracked(crack) => said(seen.crack >= Some(*crack)),
        Test::NotThere => said(seen.gone),
        _ => None,
    }
}

/// The depth of the part that is pricked for rot, as said, or the least it can be.
fn depth(wheel: &Wheel, question: Question) -> Length {
    let size = match question {
        Question::RotSpoke | Question::CrackSpoke => Size::SpokeDepth,
        _ => Size::FelloeDepth,
    };
    let said = wheel.sizes.get(size);
    said.filter(|depth| *depth > millimetres(0.0))
        .unwrap_or_else(|| millimetres(LEAST_PART_MM))
}

fn furthest(seen: &Seen, reached: impl Fn(Percent) -> bool) -> Option<Measure> {
    let shares = seen.shares.iter().copied().filter(|share| reached(*share));
    shares.max().map(Measure::Share)
}

/// How far the dish has gone from the dish as built; a wheel built back-dished is looked at from the
/// other side.
fn dish(built: Length, test: &Test, seen: &Seen) -> Option<Measure> {
    let nought = millimetres(0.0);
    let way = if built < nought { -1.0 } else { 1.0 };
    let (built, least) = (built * way, millimetres(LEAST_DISH_MM));
    let by = |reading: &crate::quantity::Measured| -> Length {
        let now = reading.value() * way;
        match test {
            Test::DishGrown => now - built,
            // Beyond doubt: what is left of it when the doubt is taken off.
            Test::DishReversed => -now - reading.doubt(),
            _ => built - now,
        }
    };
    let enough = match test {
        Test::DishLost(thirds) => built * f64::from(*thirds) / 3.0,
        Test::DishGrown => built / 2.0,
        _ if built > nought => nought,
        _ => return None,
    };
    let off = seen.lengths.iter().map(by).reduce(Length::max)?;
    (reaches(off, least) && reaches(off, enough)).then_some(Measure::By(off))
}

/// The worse of two measures of one limit.
pub(super) fn worse(one: Measure, other: Measure) -> Measure {
    match (one, other) {
        (Measure::Greatest(one), Measure::Greatest(other)) => Measure::Greatest(one.max(other)),
        (Measure::Least(one), Measure::Least(other)) => Measure::Least(one.min(other)),
        (Measure::By(one), Measure::By(other)) => Measure::By(one.max(other)),
        (Measure::Share(one), Measure::Share(other)) => Measure::Share(one.max(other)),
        _ => one,
    }
}
