//! The named ranges of length: one row each of name, least and greatest in mm, and human words.

use super::length::{Length, millimetres, to_paper_mm};
use super::refusal::Refusal;

/// One row of the table of ranges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// What the length is called, in the singular and without an article.
    pub name: &'static str,
    /// What is measured, in a few words.
    pub words: &'static str,
    min_mm: f64,
    max_mm: f64,
}

// The enum, its documentation, its rows and the list of all come from this one table, so that a
// limit, its words and its generator cannot drift apart.
macro_rules! length_ranges {
    ($($variant:ident: $name:literal, $min:literal to $max:literal mm, $words:literal;)+) => {
        /// Which length is meant, and so what it may be.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum LengthRange {
            $(#[doc = concat!("A ", $name, ", ", $min, " to ", $max, " mm: ", $words, ".")] $variant,)+
        }

        impl LengthRange {
            /// Every range, in the order of the table.
            pub const ALL: &[LengthRange] = &[$(LengthRange::$variant,)+];

            /// The row of the table.
            #[must_use]
            pub const fn row(self) -> Range {
                match self {
                    $(LengthRange::$variant => Range {
                        name: $name, words: $words, min_mm: $min, max_mm: $max,
                    },)+
                }
            }
        }
    };
}

// Common practice, no source: each end lies well outside what a wheel can show, so that a slip of
// the finger is refused and a poor wheel never is.
length_ranges! {
    FeelerGap: "feeler gap", 0.0 to 50.0 mm, "the thickest feeler that goes in";
    SpokePlay: "spoke play", 0.0 to 50.0 mm, "how far the spoke moves by hand, end to end";
    WheelDiameter: "wheel diameter", 100.0 to 3000.0 mm, "across the wheel, over the sole";
    Dish: "dish", -300.0 to 300.0 mm, "from the plane of the spokes in the nave out to the rim's face, negative when back-dished";
    TyreWidth: "tyre width", 5.0 to 400.0 mm, "across the tread of the tyre";
    TyreThickness: "tyre thickness", 1.0 to 80.0 mm, "through the iron of the tyre";
    JointGap: "joint gap", 0.0 to 100.0 mm, "between the ends of two felloes";
    StandOff: "stand-off", 0.0 to 50.0 mm, "between the spoke's shoulder and the belly of the felloe";
    RunOut: "run-out", 0.0 to 300.0 mm, "how far the rim wanders in one turn, from least to most";
    EndPlay: "end play", 0.0 to 100.0 mm, "how far the wheel slides along its arm";
    General: "length", 0.0 to 20000.0 mm, "any other length";
}

impl LengthRange {
    /// What the length is called, in the singular and without an article.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// What is measured, in a few words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        self.row().words
    }

    /// The least it may be, itself allowed.
    #[must_use]
    pub fn min(self) -> Length {
        millimetres(self.row().min_mm)
    }

    /// The greatest it may be, itself allowed.
    #[must_use]
    pub fn max(self) -> Length {
        millimetres(self.row().max_mm)
    }

    /// Whether it may be negative.
    #[must_use]
    pub const fn is_signed(self) -> bool {
        self.row().min_mm < 0.0
    }

    /// Gives `length` back when it lies in the range, as it would stand on paper.
    ///
    /// # Errors
    ///
    /// [`Refusal::NotFinite`] or [`Refusal::OutOfRange`].
    pub fn check(self, length: Length) -> Result<Length, Refusal> {
        let paper = to_paper_mm(length);
        let Range { min_mm, max_mm, .. } = self.row();
        if !paper.is_finite() {
            Err(Refusal::NotFinite)
        } else if (min_mm..=max_mm).contains(&paper) {
            Ok(length)
        } else {
            Err(Refusal::OutOfRange {
                range: self,
                given: length,
            })
        }
    }
}
