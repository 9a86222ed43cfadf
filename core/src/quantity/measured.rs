//! A reading with its doubt: the length read, and how far the truth may lie to either side.

use super::length::Length;
use super::refusal::Refusal;

/// A length that was read, and its doubt: both finite, the doubt never negative.
#[derive(Clone, Copy, Debug, PartialEq)]
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
        } else if doubt.value < 0.0 {
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
