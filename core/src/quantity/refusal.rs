//! What a door of this room will not take, with the sentence that says so.
//!
//! The sentences live here and not with the rest because a refusal is part of the door: each says
//! what was given, what is allowed, and that nothing was changed.

use std::error::Error;
use std::fmt::{self, Display, Formatter};

use super::decimal::decimal;
use super::format::{Fraction, LengthStyle, format_length, is_measurable};
use super::length::{Length, to_paper_mm};
use super::range::LengthRange;
use super::spelling::BareUnit;
use super::temperature::{ICE_K, Temperature, TemperatureRange, in_celsius};

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
    /// What was given is no share from 0 % to 100 %.
    NoShare {
        /// What was given.
        given: String,
    },
    /// What was given is no temperature.
    NoTemperature {
        /// What was given.
        given: String,
    },
    /// The temperature is lower than any can be.
    BelowAbsoluteZero {
        /// The temperature that was given.
        given: Temperature,
    },
    /// The temperature lies outside its named range.
    Temperature {
        /// The range it was checked against.
        range: TemperatureRange,
        /// The temperature that was given.
        given: Temperature,
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
    /// It has a fraction but no unit, and may be inches or the bare unit.
    FractionWithoutUnit {
        /// What a number without a unit means here.
        bare: BareUnit,
    },
}

impl Display for Refusal {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::Empty => write!(f, "No length was given, and one is written like {EXAMPLES}"),
            Refusal::TooLong { given, allowed } => write!(
                f,
                "The text has {given} characters, and a length may have {allowed} at most"
            ),
            Refusal::Misspelt { text, fault } => write!(f, "“{text}” {fault}"),
            Refusal::CommaTwoWays {
                text,
                decimal,
                thousands,
            } => write!(
                f,
                "“{text}” may be {} or {}, and only one is allowed, so write it without the comma",
                in_millimetres(*decimal),
                in_millimetres(*thousands)
            ),
            Refusal::OutOfRange { range, given } => write!(
                f,
                "The {} was given as {}, and it may be from {} to {}",
                range.name(),
                in_both(*given),
                in_both(range.min()),
                in_both(range.max())
            ),
            Refusal::NotFinite => write!(
                f,
                "The number given is without end or no number, and a length must be a number"
            ),
            Refusal::NegativeDoubt { given } => write!(
                f,
                "The doubt of a reading was given as {}, and it may not be less than 0 mm",
                in_millimetres(*given)
            ),
            Refusal::NoShare { given } => write!(
                f,
                "“{given}” was given, and a share may be from 0 % to 100 %"
            ),
            Refusal::NoTemperature { given } => write!(
                f,
                "“{given}” was given, and a temperature is written like 20 °C or 68 °F"
            ),
            Refusal::BelowAbsoluteZero { given } => write!(
                f,
                "The temperature was given as {}, and nothing is colder than {} °C",
                degrees(*given),
                minus(-ICE_K)
            ),
            Refusal::Temperature { range, given } => write!(
                f,
                "The temperature{} was given as {}, and it may be from {} °C to {} °C",
                of(*range),
                degrees(*given),
                minus(range.ends().0),
                minus(range.ends().1)
            ),
        }?;
        write!(f, "; nothing was changed.")
    }
}

impl Display for Fault {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Unreadable => {
                write!(
                    f,
                    "cannot be read as one length, and one is written like {EXAMPLES}"
                )
            }
            Fault::UnknownUnit { unit } => {
                write!(
                    f,
                    "has “{unit}” for a unit, and the units are mm, cm, m, in, ft and thou"
                )
            }
            Fault::TwoUnits => {
                f.write_str("has more than one unit, and only feet and then inches go together")
            }
            Fault::SignInside => f.write_str(
                "has a plus or minus inside, and a sign may only stand in front of the whole",
            ),
            Fault::ZeroBottom => f.write_str(
                "has a fraction with 0 below the line, and below it 1 or more is allowed",
            ),
            Fault::ImproperFraction => f.write_str(
                "has a fraction of one or more, and a fraction must be below one, as in 1 3/8",
            ),
            Fault::BrokenFeet => f.write_str(
                "has part of a foot and then inches, and feet before inches must be whole",
            ),
            Fault::TwelveInches => {
                f.write_str("has 12 inches or more after the feet, and less than 12 are allowed")
            }
            Fault::FractionWithoutUnit { bare } => {
                let (name, sign) = bare_words(*bare);
                write!(
                    f,
                    "has a fraction but no unit and may be inches or {name}, so write in or {sign} behind it"
                )
            }
        }
    }
}

impl Error for Refusal {}

const EXAMPLES: &str = "1275 mm, 50 3/16 in or 4 ft 2 in";

/// The name of the bare unit in the plural, and its sign.
fn bare_words(bare: BareUnit) -> (&'static str, &'static str) {
    match bare {
        BareUnit::Millimetre => ("millimetres", "mm"),
        BareUnit::Inch => ("inches", "in"),
        BareUnit::Thou => ("thou", "thou"),
    }
}

/// Whose temperature is meant, as it follows the word.
fn of(range: TemperatureRange) -> &'static str {
    match range {
        TemperatureRange::Air => " of the air",
        TemperatureRange::Measured => " of the iron as it is measured",
        TemperatureRange::Iron => " of the iron",
    }
}

/// Degrees Celsius: rounded to whole ones, a temperature just past an end would read like that end.
fn degrees(temperature: Temperature) -> String {
    format!("{} °C", minus(in_celsius(temperature)))
}

fn minus(v: f64) -> String {
    decimal(v, 2).replace('-', "−")
}

/// Millimetres to the last decimal: rounded, a length just past an end would read like that end.
fn in_millimetres(length: Length) -> String {
    if is_measurable(length) {
        format!("{} mm", decimal(to_paper_mm(length), 6)).replace('-', "−")
    } else {
        "more than can be measured".to_owned()
    }
}

/// Millimetres and inches, because a refusal does not know which of them its reader keeps.
fn in_both(length: Length) -> String {
    let inches = format_length(length, LengthStyle::Inches(Fraction::ThirtySeconds)).text;
    if is_measurable(length) {
        format!("{} ({inches})", in_millimetres(length))
    } else {
        in_millimetres(length)
    }
}

#[cfg(test)]
mod tests {
    use insta::assert_snapshot;

    use super::*;
    use crate::quantity::length::{from_paper_mm, millimetres};
    use crate::quantity::measured::Measured;
    use crate::quantity::spelling::parse;

    fn refused(text: &str, range: LengthRange) -> Refusal {
        parse(text, range, BareUnit::Millimetre).unwrap_err()
    }

    fn general(text: &str) -> Refusal {
        refused(text, LengthRange::General)
    }

    #[test]
    fn each_refusal_is_one_sentence() {
        assert_snapshot!(general(" "), @"No length was given, and one is written like 1275 mm, 50 3/16 in or 4 ft 2 in; nothing was changed.");
        assert_snapshot!(general(&"1".repeat(65)), @"The text has 65 characters, and a length may have 64 at most; nothing was changed.");
        assert_snapshot!(general("1,275 mm"), @"“1,275 mm” may be 1.275 mm or 1275 mm, and only one is allowed, so write it without the comma; nothing was changed.");
        assert_snapshot!(refused("2 3/8 in", LengthRange::FeelerGap), @"The feeler gap was given as 60.325 mm (2 3/8 in), and it may be from 0 mm (0 in) to 50 mm (≈ 1 31/32 in); nothing was changed.");
        assert_snapshot!(refused("50.004", LengthRange::FeelerGap), @"The feeler gap was given as 50.004 mm (≈ 1 31/32 in), and it may be from 0 mm (0 in) to 50 mm (≈ 1 31/32 in); nothing was changed.");
        assert_snapshot!(general(&"9".repeat(19)), @"The length was given as more than can be measured, and it may be from 0 mm (0 in) to 20000 mm (≈ 787 13/32 in); nothing was changed.");
        assert_snapshot!(refused("−301", LengthRange::Dish), @"The dish was given as −301 mm (≈ −11 27/32 in), and it may be from −300 mm (≈ −11 13/16 in) to 300 mm (≈ 11 13/16 in); nothing was changed.");
        assert_snapshot!(from_paper_mm(f64::NAN).unwrap_err(), @"The number given is without end or no number, and a length must be a number; nothing was changed.");
        let below = Measured::new(millimetres(1.0), millimetres(-0.25));
        assert_snapshot!(below.unwrap_err(), @"The doubt of a reading was given as −0.25 mm, and it may not be less than 0 mm; nothing was changed.");
    }

    #[test]
    fn each_fault_is_one_sentence() {
        assert_snapshot!(general("1 275"), @"“1 275” cannot be read as one length, and one is written like 1275 mm, 50 3/16 in or 4 ft 2 in; nothing was changed.");
        assert_snapshot!(general("12 mil"), @"“12 mil” has “mil” for a unit, and the units are mm, cm, m, in, ft and thou; nothing was changed.");
        assert_snapshot!(general("12 in 3 mm"), @"“12 in 3 mm” has more than one unit, and only feet and then inches go together; nothing was changed.");
        assert_snapshot!(general("4 ft −2 in"), @"“4 ft −2 in” has a plus or minus inside, and a sign may only stand in front of the whole; nothing was changed.");
        assert_snapshot!(general("1/0"), @"“1/0” has a fraction with 0 below the line, and below it 1 or more is allowed; nothing was changed.");
        assert_snapshot!(general("13/8"), @"“13/8” has a fraction of one or more, and a fraction must be below one, as in 1 3/8; nothing was changed.");
        assert_snapshot!(general("4½ ft 2 in"), @"“4½ ft 2 in” has part of a foot and then inches, and feet before inches must be whole; nothing was changed.");
        assert_snapshot!(general("4 ft 14 in"), @"“4 ft 14 in” has 12 inches or more after the feet, and less than 12 are allowed; nothing was changed.");
        assert_snapshot!(parse("½", LengthRange::FeelerGap, BareUnit::Thou).unwrap_err(), @"“½” has a fraction but no unit and may be inches or thou, so write in or thou behind it; nothing was changed.");
        assert_snapshot!(general("50-3/16"), @"“50-3/16” has a fraction but no unit and may be inches or millimetres, so write in or mm behind it; nothing was changed.");
    }
}
