//! Writing a length: to 0.01 mm, to 1/16 or 1/32 in, or in thou; what is not exact is marked "≈".

use super::length::{BEYOND_MEASURE_MM, Length, round_to_paper, to_paper_mm};
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
    if !is_measurable(length) {
        return Formatted {
            text: "beyond measure".to_owned(),
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

/// Whether `length` is a number that can be written to the last decimal.
pub(super) fn is_measurable(length: Length) -> bool {
    to_paper_mm(length).abs() < BEYOND_MEASURE_MM
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
        _ if top.is_multiple_of(2) => fraction_words(top / 2, bottom / 2),
        _ => Some(format!("{top}/{bottom}")),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::length::{from_paper_mm, inches, millimetres};
    use crate::quantity::range::LengthRange;
    use crate::quantity::range::generator::ranges;
    use crate::quantity::spelling::parse;

    const SIXTEENTHS: LengthStyle = LengthStyle::Inches(Fraction::Sixteenths);
    const THIRTY_SECONDS: LengthStyle = LengthStyle::Inches(Fraction::ThirtySeconds);

    fn check(formatted: Formatted, text: &str) {
        assert_eq!(formatted.text, text);
        assert_eq!(formatted.exact, !text.starts_with('≈'), "{text}");
    }

    #[test]
    fn millimetres_have_up_to_two_decimals() {
        let check = |v, text| {
            check(
                format_length(millimetres(v), LengthStyle::Millimetres),
                text,
            )
        };
        check(0.0, "0 mm");
        check(1275.0, "1275 mm");
        check(0.5, "0.5 mm");
        check(0.05, "0.05 mm");
        check(-12.25, "−12.25 mm");
        check(1274.7625, "≈ 1274.76 mm");
        check(-0.001, "≈ 0 mm");
        check(-0.006, "≈ −0.01 mm");
    }

    #[test]
    fn inches_are_plain_however_many() {
        let check = |v, style, text| check(format_length(inches(v), style), text);
        check(50.1875, SIXTEENTHS, "50 3/16 in");
        check(50.1875, THIRTY_SECONDS, "50 3/16 in");
        check(0.781_25, THIRTY_SECONDS, "25/32 in");
        check(0.781_25, SIXTEENTHS, "≈ 13/16 in");
        check(-0.5, SIXTEENTHS, "−1/2 in");
        check(0.0, SIXTEENTHS, "0 in");
        check(240.0, SIXTEENTHS, "240 in");
        check(0.001, SIXTEENTHS, "≈ 0 in");
    }

    #[test]
    fn feet_come_before_inches() {
        let check = |v, text| check(format_feet_inches(inches(v), Fraction::Sixteenths), text);
        check(50.1875, "4 ft 2 3/16 in");
        check(48.0, "4 ft");
        check(48.1875, "4 ft 3/16 in");
        check(11.5, "11 1/2 in");
        check(-50.0, "−4 ft 2 in");
        check(11.99, "≈ 1 ft");
    }

    #[test]
    fn feelers_are_in_millimetres_or_thou() {
        check(format_feeler(inches(0.012), FeelerStyle::Thou), "12 thou");
        check(
            format_feeler(millimetres(0.3), FeelerStyle::Thou),
            "≈ 12 thou",
        );
        check(
            format_feeler(millimetres(0.3), FeelerStyle::Millimetres),
            "0.3 mm",
        );
    }

    #[test]
    fn what_cannot_be_measured_is_not_written_as_a_number() {
        for v in [f64::NAN, f64::INFINITY, 1e300, -1e300] {
            let formatted = format_length(millimetres(v), LengthStyle::Millimetres);
            assert_eq!(
                formatted,
                Formatted {
                    text: "beyond measure".to_owned(),
                    exact: false
                }
            );
        }
    }

    /// Read, put on paper, read from paper, write: the text must come through.
    fn check_round_trip(
        range: LengthRange,
        written: Formatted,
        write: impl Fn(Length) -> Formatted,
    ) {
        assert!(written.exact, "{written:?}");
        // A whole number of feet or inches keeps its unit, so the bare unit must not matter.
        for bare in [BareUnit::Millimetre, BareUnit::Inch, BareUnit::Thou] {
            let read = parse(&written.text, range, bare).unwrap();
            let paper = from_paper_mm(to_paper_mm(read)).unwrap();
            assert_eq!(paper, read);
            assert_eq!(write(paper), written);
        }
    }

    proptest! {
        #[test]
        fn hundredths_come_through_writing_and_reading(
            (range, length) in ranges().prop_flat_map(|range| (Just(range), range.hundredths()))
        ) {
            let write = |length| format_length(length, LengthStyle::Millimetres);
            check_round_trip(range, write(length), write);
        }

        #[test]
        fn thirty_seconds_come_through_writing_and_reading(
            (range, length) in ranges().prop_flat_map(|range| (Just(range), range.thirty_seconds()))
        ) {
            let write = |length| format_length(length, THIRTY_SECONDS);
            check_round_trip(range, write(length), write);
            let write = |length| format_feet_inches(length, Fraction::ThirtySeconds);
            check_round_trip(range, write(length), write);
        }

        #[test]
        fn thou_come_through_writing_and_reading(n in 0_u32..1968) {
            let write = |length| format_feeler(length, FeelerStyle::Thou);
            check_round_trip(LengthRange::FeelerGap, write(inches(f64::from(n) / 1000.0)), write);
        }

        #[test]
        fn what_is_marked_is_off_by_half_a_step_at_most(length in LengthRange::RunOut.hundredths()) {
            let written = format_length(length, SIXTEENTHS);
            let text = written.text.trim_start_matches("≈ ");
            let read = parse(text, LengthRange::General, BareUnit::Inch).unwrap();
            let off = to_paper_mm((read - length).abs());
            prop_assert!(off <= 0.793_75);
            prop_assert_eq!(written.exact, off == 0.0);
        }
    }
}
