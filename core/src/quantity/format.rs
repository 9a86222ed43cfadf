//! Writing a length: to 0.01 mm, to 1/16 or 1/32 in, or in thou; what is not exact is marked "≈".

use super::length::{Length, round_to_paper, to_paper_mm};
use super::spelling::BareUnit;

/// The inch in millimetres, exactly (NIST Special Publication 811, 2008 edition, appendix B.8).
const INCH_MM: f64 = 25.4;
const HUNDREDTH_MM: f64 = 0.01;
const THOU_MM: f64 = INCH_MM / 1000.0;

/// The finest part of an inch that is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fraction {
    /// To the nearest 1/16 in.
    Sixteenths,
    /// To the nearest 1/32 in.
    ThirtySeconds,
}

/// How a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthStyle {
    /// Millimetres, with up to two decimals.
    Millimetres,
    /// Inches and a fraction, however long.
    Inches(Fraction),
}

/// How a gap taken with feelers is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FeelerStyle {
    /// Millimetres, with up to two decimals.
    Millimetres,
    /// Whole thousandths of an inch.
    Thou,
}

/// A length as text, and whether the text says all of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Formatted {
    /// The text with its unit, led by "≈ " when it is not exact; a minus is U+2212.
    pub text: String,
    /// Whether reading the text gives the same length back.
    pub exact: bool,
}

/// Writes `length` in `style`: `1274.76 mm` or `50 3/16 in`.
#[must_use]
pub fn format_length(length: Length, style: LengthStyle) -> Formatted {
    match style {
        LengthStyle::Millimetres => write(length, HUNDREDTH_MM, millimetre_words),
        LengthStyle::Inches(fraction) => write(length, fraction.step_mm(), |count| {
            inch_words(count, fraction.bottom())
        }),
    }
}

/// Writes `length` in feet and inches: `4 ft 2 3/16 in`; below a foot only inches.
#[must_use]
pub fn format_feet_inches(length: Length, fraction: Fraction) -> Formatted {
    write(length, fraction.step_mm(), |count| {
        foot_words(count, fraction.bottom())
    })
}

/// Writes a gap in `style`: `0.3 mm` or `12 thou`.
#[must_use]
pub fn format_feeler(length: Length, style: FeelerStyle) -> Formatted {
    match style {
        FeelerStyle::Millimetres => write(length, HUNDREDTH_MM, millimetre_words),
        FeelerStyle::Thou => write(length, THOU_MM, |count| format!("{count} thou")),
    }
}

impl LengthStyle {
    /// What a number without a unit means to someone who reads this style.
    #[must_use]
    pub const fn bare_unit(self) -> BareUnit {
        match self {
            LengthStyle::Millimetres => BareUnit::Millimetre,
            LengthStyle::Inches(_) => BareUnit::Inch,
        }
    }
}

impl FeelerStyle {
    /// What a number without a unit means to someone who reads this style.
    #[must_use]
    pub const fn bare_unit(self) -> BareUnit {
        match self {
            FeelerStyle::Millimetres => BareUnit::Millimetre,
            FeelerStyle::Thou => BareUnit::Thou,
        }
    }
}

impl Fraction {
    const fn bottom(self) -> u64 {
        match self {
            Fraction::Sixteenths => 16,
            Fraction::ThirtySeconds => 32,
        }
    }

    fn step_mm(self) -> f64 {
        match self {
            Fraction::Sixteenths => INCH_MM / 16.0,
            Fraction::ThirtySeconds => INCH_MM / 32.0,
        }
    }
}

/// The nearest whole number of steps in words, marked when the steps do not say all.
fn write(length: Length, step_mm: f64, words: impl Fn(u64) -> String) -> Formatted {
    let paper = to_paper_mm(length);
    if !paper.is_finite() {
        return Formatted {
            text: "not a length".to_owned(),
            exact: false,
        };
    }
    let steps = (paper / step_mm).round();
    let exact = round_to_paper(steps * step_mm) == paper;
    let mark = if exact { "" } else { "≈ " };
    let sign = if steps < 0.0 { "−" } else { "" };
    Formatted {
        text: format!("{mark}{sign}{}", words(steps.abs() as u64)),
        exact,
    }
}

fn millimetre_words(hundredths: u64) -> String {
    let (whole, rest) = (hundredths / 100, hundredths % 100);
    match rest {
        0 => format!("{whole} mm"),
        _ if rest % 10 == 0 => format!("{whole}.{} mm", rest / 10),
        _ => format!("{whole}.{rest:02} mm"),
    }
}

fn inch_words(count: u64, bottom: u64) -> String {
    match (count / bottom, fraction_words(count % bottom, bottom)) {
        (whole, None) => format!("{whole} in"),
        (0, Some(fraction)) => format!("{fraction} in"),
        (whole, Some(fraction)) => format!("{whole} {fraction} in"),
    }
}

fn foot_words(count: u64, bottom: u64) -> String {
    let (feet, rest) = (count / (12 * bottom), count % (12 * bottom));
    match (feet, rest) {
        (0, rest) => inch_words(rest, bottom),
        (feet, 0) => format!("{feet} ft"),
        (feet, rest) => format!("{feet} ft {}", inch_words(rest, bottom)),
    }
}

/// The fraction in its lowest terms; the bottom is a power of two, so halving is enough.
fn fraction_words(top: u64, bottom: u64) -> Option<String> {
    match top {
        0 => None,
        _ if top % 2 == 0 => fraction_words(top / 2, bottom / 2),
        _ => Some(format!("{top}/{bottom}")),
    }
}
