//! A length, and the doors through which plain numbers become one: millimetres, inches, paper.

use std::marker::PhantomData;

use uom::si::length::{inch, millimeter};

use super::refusal::Refusal;

/// A length of any unit; positive in the direction its range names.
pub type Length = uom::si::f64::Length;

/// A thousand kilometres: beyond it an `f64` cannot hold the sixth decimal of a millimetre.
pub(super) const BEYOND_MEASURE_MM: f64 = 1e9;

/// A length from a number of millimetres: a door for tables of constants.
#[must_use]
pub const fn millimetres(v: f64) -> Length {
    // As `Length::new` works it out, which no table of constants can call.
    Length {
        dimension: PhantomData,
        units: PhantomData,
        value: v * 1e-3,
    }
}

/// A length from a number of inches: a door for tables of constants.
///
/// One inch is 25.4 mm exactly (NIST Special Publication 811, 2008 edition, appendix B.8).
#[must_use]
pub fn inches(v: f64) -> Length {
    Length::new::<inch>(v)
}

/// The length as it stands on paper: millimetres, rounded to six decimals.
///
/// Six decimals hold both grids the trade writes on, 0.01 mm and 1/32 in, exactly, so that paper
/// to length to paper changes nothing.
#[must_use]
pub fn to_paper_mm(length: Length) -> f64 {
    round_to_paper(length.get::<millimeter>())
}

/// The length that stands on paper as `v` millimetres.
///
/// # Errors
///
/// [`Refusal::NotFinite`] when `v` is infinite or not a number.
pub fn from_paper_mm(v: f64) -> Result<Length, Refusal> {
    if v.is_finite() {
        Ok(millimetres(v))
    } else {
        Err(Refusal::NotFinite)
    }
}

/// `millimetres` rounded to the sixth decimal, with no negative zero.
pub(super) fn round_to_paper(millimetres: f64) -> f64 {
    if millimetres.abs() < BEYOND_MEASURE_MM {
        (millimetres * 1e6).round() / 1e6 + 0.0
    } else {
        millimetres
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// NIST Special Publication 811, 2008 edition, appendix B.8: 1 in = 2.54 E−02 m and 1 ft =
    /// 3.048 E−01 m, both in bold, which is how that table marks an exact factor.
    #[test]
    fn an_inch_is_25_4_mm_exactly() {
        assert_eq!(to_paper_mm(inches(1.0)), 25.4);
        assert_eq!(to_paper_mm(inches(12.0)), 304.8);
        assert_eq!(to_paper_mm(inches(1.0 / 32.0)), 0.793_75);
    }

    #[test]
    fn paper_has_no_negative_zero_and_no_seventh_decimal() {
        assert!(to_paper_mm(millimetres(-0.0)).is_sign_positive());
        assert!(to_paper_mm(millimetres(-4e-7)).is_sign_positive());
        assert_eq!(to_paper_mm(millimetres(1.234_567_4)), 1.234_567);
    }

    #[test]
    fn paper_refuses_what_is_not_a_number() {
        for v in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(from_paper_mm(v), Err(Refusal::NotFinite));
        }
    }

    #[test]
    fn a_huge_number_stays_finite_on_paper() {
        assert!(to_paper_mm(from_paper_mm(1e305).unwrap()).is_finite());
    }

    fn through(paper: f64) -> f64 {
        to_paper_mm(from_paper_mm(paper).unwrap())
    }

    proptest! {
        #[test]
        fn millimetres_are_those_of_the_library_to_the_last_bit(v in -1e6_f64..1e6) {
            let by_library = Length::new::<millimeter>(v).value;
            prop_assert_eq!(millimetres(v).value.to_bits(), by_library.to_bits());
        }

        #[test]
        fn paper_keeps_each_hundredth_of_a_millimetre(n in -2_000_000_i32..=2_000_000) {
            let paper = f64::from(n) / 100.0;
            prop_assert_eq!(through(paper), paper);
        }

        #[test]
        fn paper_keeps_each_thirty_second_of_an_inch(n in -25_000_i32..=25_000) {
            let paper = to_paper_mm(inches(f64::from(n) / 32.0));
            // 1/32 in is 793 750 nanometres: the same number by whole-number arithmetic.
            prop_assert_eq!(paper, (f64::from(n) * 793_750.0) / 1e6);
            prop_assert_eq!(through(paper), paper);
        }

        #[test]
        fn paper_keeps_any_six_decimals(n in -20_000_000_000_i64..=20_000_000_000) {
            let paper = n as f64 / 1e6;
            prop_assert_eq!(through(paper), paper);
        }
    }
}
