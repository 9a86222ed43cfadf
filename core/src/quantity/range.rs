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
    OutOfRound: "out of round", 0.0 to 300.0 mm, "how far the rim rises and falls in one turn, from least to most";
    Shake: "shake", 0.0 to 300.0 mm, "how far the rim moves between two hands, from stop to stop";
    RotDepth: "rot depth", 0.0 to 200.0 mm, "how deep a point goes into soft wood";
    FelloeDepth: "felloe depth", 10.0 to 400.0 mm, "through the felloe, from sole to belly";
    SpokeDepth: "spoke depth", 10.0 to 200.0 mm, "through the spoke, from face to back";
    FelloeWidth: "felloe width", 10.0 to 400.0 mm, "across the felloe, from face to back";
    SpokeWidth: "spoke width", 10.0 to 200.0 mm, "across the spoke, in the plane of the wheel";
    NaveDiameter: "nave diameter", 50.0 to 900.0 mm, "across the nave, where the spokes enter it";
    JointSum: "sum of the joints", 0.0 to 500.0 mm, "all joint gaps at the sole added up";
    BoxLength: "box length", 30.0 to 600.0 mm, "along the box, from end to end";
    Round: "round", 300.0 to 9500.0 mm, "once about a wheel or a tyre";
    TravellerRound: "traveller's own round", 100.0 to 3000.0 mm, "once about the traveller";
    Draw: "draw", 0.0 to 100.0 mm, "how much smaller round the tyre is than the wheel";
    Clearance: "clearance", 0.0 to 50.0 mm, "between the hot tyre and the sole, across the wheel";
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

    /// Gives `length` back when it lies in the range. It is compared as it would stand on paper, so
    /// that an end reached by adding up is still the end.
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

/// Generators for property tests, from the same rows.
#[cfg(test)]
pub(crate) mod generator {
    use proptest::prelude::*;

    use super::{Length, LengthRange, Range, millimetres};

    /// Any of the ranges.
    pub(crate) fn ranges() -> impl Strategy<Value = LengthRange> {
        proptest::sample::select(LengthRange::ALL)
    }

    impl LengthRange {
        /// Lengths of this range on the grid of 0.01 mm, both ends among them.
        pub(crate) fn hundredths(self) -> impl Strategy<Value = Length> {
            self.grid(0.01)
        }

        /// Lengths of this range on the grid of 1/32 in.
        pub(crate) fn thirty_seconds(self) -> impl Strategy<Value = Length> {
            self.grid(25.4 / 32.0)
        }

        fn grid(self, step_mm: f64) -> impl Strategy<Value = Length> {
            let Range { min_mm, max_mm, .. } = self.row();
            let steps = |mm: f64| (mm / step_mm * 1e6).round() / 1e6;
            (steps(min_mm).ceil() as i64..=steps(max_mm).floor() as i64)
                .prop_map(move |n| millimetres(n as f64 * step_mm))
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use proptest::prelude::*;

    use super::generator::ranges;
    use super::*;

    #[test]
    fn the_rows_are_apart_and_in_order() {
        let names: HashSet<_> = LengthRange::ALL.iter().map(|range| range.name()).collect();
        assert_eq!(names.len(), LengthRange::ALL.len());
        for range in LengthRange::ALL {
            assert!(range.min() < range.max(), "{}", range.name());
            assert!(!range.words().is_empty());
        }
    }

    #[test]
    fn only_the_dish_is_signed() {
        let signed: Vec<_> = LengthRange::ALL
            .iter()
            .filter(|range| range.is_signed())
            .collect();
        assert_eq!(signed, [&LengthRange::Dish]);
    }

    #[test]
    fn both_ends_are_allowed_and_nothing_beyond() {
        for &range in LengthRange::ALL {
            let hundredth = millimetres(0.01);
            assert_eq!(range.check(range.min()), Ok(range.min()));
            assert_eq!(range.check(range.max()), Ok(range.max()));
            for given in [range.min() - hundredth, range.max() + hundredth] {
                assert_eq!(
                    range.check(given),
                    Err(Refusal::OutOfRange { range, given })
                );
            }
        }
    }

    #[test]
    fn an_end_reached_by_adding_up_is_still_the_end() {
        let max = (0..500)
            .map(|_| millimetres(0.1))
            .fold(millimetres(0.0), |sum, step| sum + step);
        assert_ne!(
            max,
            LengthRange::FeelerGap.max(),
            "the sum should carry a rounding error"
        );
        assert!(LengthRange::FeelerGap.check(max).is_ok());
    }

    #[test]
    fn no_range_takes_what_is_not_a_number() {
        for range in LengthRange::ALL {
            for v in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                assert_eq!(range.check(millimetres(v)), Err(Refusal::NotFinite));
            }
        }
    }

    proptest! {
        #[test]
        fn the_generators_keep_to_their_rows(
            (range, hundredth, part) in ranges()
                .prop_flat_map(|range| (Just(range), range.hundredths(), range.thirty_seconds()))
        ) {
            prop_assert_eq!(range.check(hundredth), Ok(hundredth));
            prop_assert_eq!(range.check(part), Ok(part));
        }
    }
}
