//! What a door of this room will not take, with the sentence that says so.
//!
//! The sentences live here and not with the rest because a refusal is part of the door: each says
//! what was given, what is allowed, and that nothing was changed.

use std::error::Error;
use std::fmt::{self, Display, Formatter};

use super::format::{Fraction, LengthStyle, format_length};
use super::length::Length;
use super::range::LengthRange;

/// Why a length was not taken; what stood before stands unchanged.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// The text was empty or blank.
    Empty,
    /// The text was longer than a length can need; both counted in characters.
    TooLong {
        /// How long it was.
        given: usize,
        /// How long it may be.
        allowed: usize,
    },
    /// The text could not be read as one length.
    Misspelt {
        /// The text, without the blanks about it.
        text: String,
        /// What is wrong with it.
        fault: Fault,
    },
    /// The comma may part the decimals or the thousands, and both are in range.
    CommaTwoWays {
        /// The text, without the blanks about it.
        text: String,
        /// The length if the comma parts the decimals.
        decimal: Length,
        /// The length if the comma parts the thousands.
        thousands: Length,
    },
    /// The length lies outside its named range.
    OutOfRange {
        /// The range it was checked against.
        range: LengthRange,
        /// The length that was given.
        given: Length,
    },
    /// The number was infinite, or not a number.
    NotFinite,
    /// The doubt of a reading was below nothing.
    NegativeDoubt {
        /// The doubt that was given.
        given: Length,
    },
}

/// What is wrong with the spelling of a length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// It is not a number, or a number and a unit.
    Unreadable,
    /// A word in it is not a unit of length that is known here.
    UnknownUnit {
        /// The word.
        unit: String,
    },
    /// It has more than one unit, and they are not feet and then inches.
    TwoUnits,
    /// A plus or minus stands anywhere but in front.
    SignInside,
    /// The bottom of the fraction is nought.
    ZeroBottom,
    /// The top of the fraction is not smaller than its bottom.
    ImproperFraction,
    /// The feet before inches are not a whole number.
    BrokenFeet,
    /// There are twelve inches or more after the feet.
    TwelveInches,
    /// It has a fraction but no unit, and may be inches or something else.
    FractionWithoutUnit,
}

impl Display for Refusal {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::Empty => write!(f, "No length was given")?,
            Refusal::TooLong { given, allowed } => {
                write!(
                    f,
                    "The text has {given} characters, and a length may have {allowed}"
                )?;
            }
            Refusal::Misspelt { text, fault } => write!(f, "“{text}” {fault}")?,
            Refusal::CommaTwoWays {
                text,
                decimal,
                thousands,
            } => write!(
                f,
                "“{text}” may mean {} or {}; write it without the comma",
                both(*decimal),
                both(*thousands)
            )?,
            Refusal::OutOfRange { range, given } => write!(
                f,
                "The {} was given as {}, and it may be from {} to {}",
                range.name(),
                both(*given),
                both(range.min()),
                both(range.max())
            )?,
            Refusal::NotFinite => write!(
                f,
                "The number given is without end or no number at all, and a length is an ordinary number"
            )?,
            Refusal::NegativeDoubt { given } => write!(
                f,
                "The doubt of a reading was given as {}, and it may not be less than 0 mm",
                both(*given)
            )?,
        }
        write!(f, "; nothing was changed.")
    }
}

impl Display for Fault {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Unreadable => write!(
                f,
                "cannot be read as one length, such as 1275 mm, 50 3/16 in or 4 ft 2 in"
            ),
            Fault::UnknownUnit { unit } => write!(
                f,
                "has “{unit}” for a unit, and the units are mm, cm, m, in, ft and thou"
            ),
            Fault::TwoUnits => write!(
                f,
                "has more than one unit, and only feet and then inches go together"
            ),
            Fault::SignInside => write!(
                f,
                "has a plus or minus inside, and a sign may only stand in front of the whole length"
            ),
            Fault::ZeroBottom => write!(
                f,
                "has a fraction with 0 below the line, and the number below must be 1 or more"
            ),
            Fault::ImproperFraction => write!(
                f,
                "has a fraction of one or more, and the number above the line must be the smaller, as in 1 3/8"
            ),
            Fault::BrokenFeet => write!(
                f,
                "has part of a foot and then inches, and feet before inches must be whole"
            ),
            Fault::TwelveInches => write!(
                f,
                "has 12 inches or more after the feet, and there may be less than 12"
            ),
            Fault::FractionWithoutUnit => write!(
                f,
                "has a fraction but no unit and may be inches or not; write in, mm or thou behind it"
            ),
        }
    }
}

impl Error for Refusal {}

/// The length in both styles, because a refusal does not know which one its reader keeps.
fn both(length: Length) -> String {
    let millimetres = format_length(length, LengthStyle::Millimetres).text;
    let inches = format_length(length, LengthStyle::Inches(Fraction::ThirtySeconds)).text;
    format!("{millimetres} ({inches})")
}
