//! A reading with its doubt: the length read, and how far the truth may lie to either side.

use super::length::{Length, millimetres};
use super::refusal::Refusal;

/// A length that was read, and its doubt: both finite, the doubt never negative.
#[derive(Default, Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    value: Length,
    doubt: Length,
}

impl Measured {
    /// A reading of `value`, true to within `doubt` on either side.
    ///
    /// # Errors
    ///
    /// [`Refusal::NotFinite`] or [`Refusal::NegativeDoubt`].
    pub fn new(value: Length, doubt: Length) -> Result<Measured, Refusal> {
        if !value.is_finite() || !doubt.is_finite() {
            Err(Refusal::NotFinite)
        } else if doubt < millimetres(0.0) {
            Err(Refusal::NegativeDoubt { given: doubt })
        } else {
            Ok(Measured { value, doubt })
        }
    }

    /// What was read.
    #[must_use]
    pub fn value(self) -> Length {
        self.value
    }

    /// How far the truth may lie to either side.
    #[must_use]
    pub fn doubt(self) -> Length {
        self.doubt
    }

    /// The most it can be.
    #[must_use]
    pub fn at_most(self) -> Length {
        self.value + self.doubt
    }

    /// The least it can be; below nothing when the doubt is greater than the reading.
    #[must_use]
    pub fn at_least(self) -> Length {
        self.value - self.doubt
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::length::to_paper_mm;

    #[test]
    fn the_truth_lies_between_least_and_most() {
        let gap = Measured::new(millimetres(1.5), millimetres(0.25)).unwrap();
        assert_eq!(to_paper_mm(gap.value()), 1.5);
        assert_eq!(to_paper_mm(gap.doubt()), 0.25);
        assert_eq!(to_paper_mm(gap.at_most()), 1.75);
        assert_eq!(to_paper_mm(gap.at_least()), 1.25);
    }

    #[test]
    fn a_reading_may_be_without_doubt_but_not_below() {
        let sure = Measured::new(millimetres(-3.0), millimetres(0.0)).unwrap();
        assert_eq!(sure.at_most(), sure.at_least());
        let given = millimetres(-0.01);
        let refusal = Measured::new(millimetres(1.0), given);
        assert_eq!(refusal, Err(Refusal::NegativeDoubt { given }));
    }

    #[test]
    fn neither_part_may_be_without_end() {
        for v in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let (odd, sound) = (millimetres(v), millimetres(1.0));
            assert_eq!(Measured::new(odd, sound), Err(Refusal::NotFinite));
            assert_eq!(Measured::new(sound, odd), Err(Refusal::NotFinite));
        }
    }
}
