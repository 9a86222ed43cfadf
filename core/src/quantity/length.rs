//! A length, and the doors through which plain numbers become one: millimetres, inches, paper.

use uom::si::length::{inch, millimeter};

use super::refusal::Refusal;

/// A length of any unit; positive in the direction its range names.
pub type Length = uom::si::f64::Length;

/// Beyond a thousand kilometres the sixth decimal of a millimetre is finer than an `f64` can hold.
const LARGEST_ROUNDED_MM: f64 = 1e9;

/// A length from a number of millimetres: a door for tables of constants.
#[must_use]
pub fn millimetres(v: f64) -> Length {
    Length::new::<millimeter>(v)
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
    if millimetres.abs() < LARGEST_ROUNDED_MM {
        (millimetres * 1e6).round() / 1e6 + 0.0
    } else {
        millimetres
    }
}
