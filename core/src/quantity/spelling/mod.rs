//! Reading a length from text: one reading, or a refusal that says why there is not one.
//!
//! The table of spellings stands at the head of [`crate::quantity`]. A sign goes in front of the
//! whole. A dot is always decimal. A comma parts decimals or thousands; where both readings are in
//! range, neither is chosen. A fraction without a unit is inches when inches are the bare unit;
//! halves and quarters are millimetres when millimetres are; every other one is refused, because
//! eighths and finer, or a hyphen before a fraction, are the writing of an inch rule. The reader
//! that comes with `uom` knows neither fractions nor feet and inches, and weighs 40 kB in the app.

mod unit;
mod token;
mod amount;
mod reading;

use self::amount::Comma;
use self::token::Token;
use super::length::{Length, from_paper_mm, round_to_paper};
use super::range::LengthRange;
use super::refusal::{Fault, Refusal};

/// The longest text that is read, in characters.
pub const LONGEST_TEXT: usize = 64;

/// What a number without a unit means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BareUnit {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
    /// Thousandths of an inch.
    Thou,
}

/// Reads `text` as a length within `range`; a number without a unit is in `bare`.
///
/// The length is the one its paper number gives back, to the last bit.
///
/// # Errors
///
/// [`Refusal::Empty`], [`Refusal::TooLong`], [`Refusal::Misspelt`], [`Refusal::CommaTwoWays`] or
/// [`Refusal::OutOfRange`].
pub fn parse(text: &str, range: LengthRange, bare: BareUnit) -> Result<Length, Refusal> {
    let text = text.trim();
    check_size(text)?;
    let misspelt = |fault| Refusal::Misspelt {
        text: text.to_owned(),
        fault,
    };
    let tokens = token::tokens(text).map_err(misspelt)?;
    let read = |comma| read(&tokens, range, bare, comma, misspelt);
    match (read(Comma::Decimal), read(Comma::Thousands)) {
        (Ok(decimal), Ok(thousands)) if decimal != thousands => Err(Refusal::CommaTwoWays {
            text: text.to_owned(),
            decimal,
            thousands,
        }),
        (Ok(length), _) | (_, Ok(length)) => Ok(length),
        (Err(decimal), Err(thousands)) => Err(more_telling(decimal, thousands)),
    }
}

/// A comma taken the wrong way often leaves nothing that can be read: the other way says more.
fn more_telling(decimal: Refusal, thousands: Refusal) -> Refusal {
    match decimal {
        Refusal::Misspelt {
            fault: Fault::Unreadable,
            ..
        } => thousands,
        _ => decimal,
    }
}

fn check_size(text: &str) -> Result<(), Refusal> {
    match text.chars().count() {
        0 => Err(Refusal::Empty),
        given if given > LONGEST_TEXT => Err(Refusal::TooLong {
            given,
            allowed: LONGEST_TEXT,
        }),
        _ => Ok(()),
    }
}

fn read(
    tokens: &[Token<'_>],
    range: LengthRange,
    bare: BareUnit,
    comma: Comma,
    misspelt: impl Fn(Fault) -> Refusal,
) -> Result<Length, Refusal> {
    let millimetres = reading::millimetres(tokens, bare, comma).map_err(misspelt)?;
    range.check(from_paper_mm(round_to_paper(millimetres))?)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::BareUnit::{Inch, Millimetre, Thou};
    use super::*;
    use crate::quantity::format::{Fraction, LengthStyle, format_feet_inches, format_length};
    use crate::quantity::length::to_paper_mm;

    fn check(text: &str, bare: BareUnit, expect_mm: f64) {
        let length = parse(text, LengthRange::General, bare);
        assert_eq!(length.map(to_paper_mm), Ok(expect_mm), "{text}");
    }

    fn check_fault(text: &str, expect: Fault) {
        for bare in [Inch, Millimetre, Thou] {
            let refusal = parse(text, LengthRange::General, bare);
            let fault = expect.clone();
            assert_eq!(
                refusal,
                Err(Refusal::Misspelt {
                    text: text.to_owned(),
                    fault
                }),
                "{text}"
            );
        }
    }

    /// Lengths as printed, each with its text in our hand and its exact value in millimetres.
    #[test]
    fn printed_lengths_are_read_and_written_back() {
        let table = [
            // J. G. Holmström, Modern Blacksmithing, 1901, wagon tires: draw of a straight, a
            // heavy and a dished wheel.
            ("½", 12.7, "1/2 in"),
            ("⅝ in", 15.875, "5/8 in"),
            ("1/4 in", 6.35, "1/4 in"),
            // US Army, specification of the six-mule wagon, 1858: wheels, hub, felloe, box, band.
            ("3 ft 10 in", 1168.4, "3 ft 10 in"),
            ("4 ft. 10 in.", 1473.2, "4 ft 10 in"),
            ("14¼", 361.95, "1 ft 2 1/4 in"),
            ("2¾ in", 69.85, "2 3/4 in"),
            ("1⅞ in", 47.625, "1 7/8 in"),
            ("3/16 in", 4.7625, "3/16 in"),
            // P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, c. 1900, tyring cart wheels:
            // draw of a light and of a large heavy wheel.
            ("3/8 in", 9.525, "3/8 in"),
            ("1¼ in", 31.75, "1 1/4 in"),
            // M. T. Richardson, Practical Carriage Building, vol. 1, 1891: spoke foot, mortise, track.
            ("25/32 in", 19.843_75, "25/32 in"),
            ("1-11/16", 42.8625, "1 11/16 in"),
            ("5 ft 2 in", 1574.8, "5 ft 2 in"),
        ];
        for (text, expect_mm, written) in table {
            check(text, Inch, expect_mm);
            let length = parse(text, LengthRange::General, Inch).unwrap();
            assert_eq!(
                format_feet_inches(length, Fraction::ThirtySeconds).text,
                written
            );
        }
    }

    /// Schwarzburg-Sondershausen, road police rule printed 1909: least width of a felloe.
    #[test]
    fn a_printed_decimal_comma_is_read_and_written_back() {
        check("6,5 cm", Inch, 65.0);
        let width = parse("6,5 cm", LengthRange::TyreWidth, Inch).unwrap();
        assert_eq!(format_length(width, LengthStyle::Millimetres).text, "65 mm");
    }

    #[test]
    fn one_length_in_many_hands() {
        let hands = [
            "4' 2 3/16\"",
            "4'2 3/16\"",
            "4′ 2 3⁄16″",
            "4’ 2 3/16”",
            "4‘ 2 3/16“",
            "4' 2 3/16''",
            "4 ft 2 3/16 in",
            "4ft 2 3/16in",
            "4FT 2 3/16 IN",
            "4 feet 2 3/16 inches",
            "4 foot 2 3/16",
            "4 ft. 2-3/16 in.",
            "4\u{a0}ft 2\u{202f}3/16 in",
            "50 3/16 in",
            "50-3/16 in",
            "50‐3/16 in",
            "50–3/16″",
            "50.1875\"",
            "50,1875 in",
            "+50 3/16 in",
            "1274.7625 mm",
            "127.47625 cm",
            "127,47625cm",
            "1.2747625 m",
            "  50187.5 thou ",
            "1,274.7625 mm",
        ];
        for text in hands {
            check(text, Millimetre, 1274.7625);
        }
    }

    #[test]
    fn every_one_sign_fraction_is_known() {
        let signs = ["⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
        for (text, eighths) in signs.into_iter().zip(1_u16..) {
            let micrometres = f64::from(16 + eighths) * 3175.0;
            check(&format!("2 {text} in"), Millimetre, micrometres / 1000.0);
        }
        check("⅓ in", Millimetre, 8.466_667);
        check("⅔ in", Millimetre, 16.933_333);
    }

    #[test]
    fn the_bare_unit_is_for_bare_numbers_only() {
        check("12", Millimetre, 12.0);
        check("12", Inch, 304.8);
        check("12", Thou, 0.3048);
        check(".5", Millimetre, 0.5);
        check(",5", Millimetre, 0.5);
        check("12 mm", Inch, 12.0);
    }

    #[test]
    fn a_bare_fraction_is_of_an_inch_or_a_plain_part_of_a_millimetre() {
        check("1½", Millimetre, 1.5);
        check("3/4", Millimetre, 0.75);
        check("1-1/2", Inch, 38.1);
        check("5/16", Inch, 7.9375);
        check("5/16 mm", Inch, 0.3125);
        let refused = ["50-3/16", "5/16", "1/32", "1⅜", "8/16", "1-1/2", "⅓"];
        for (text, bare) in refused
            .map(|text| (text, Millimetre))
            .into_iter()
            .chain([("½", Thou)])
        {
            let refusal = parse(text, LengthRange::General, bare);
            let fault = Fault::FractionWithoutUnit { bare };
            assert_eq!(
                refusal,
                Err(Refusal::Misspelt {
                    text: text.to_owned(),
                    fault
                }),
                "{text}"
            );
        }
    }

    #[test]
    fn a_comma_before_three_digits_needs_the_range_to_leave_one_reading() {
        let read = |text, range| parse(text, range, Millimetre).map(to_paper_mm);
        assert_eq!(read("1,275", LengthRange::WheelDiameter), Ok(1275.0));
        assert_eq!(read("1,275", LengthRange::FeelerGap), Ok(1.275));
        assert_eq!(read("1,275 m", LengthRange::General), Ok(1275.0));
        assert_eq!(read("0,275", LengthRange::General), Ok(0.275));
        assert_eq!(read("1275,500", LengthRange::General), Ok(1275.5));
        assert_eq!(read("4 ft 2,375 in", LengthRange::General), Ok(1279.525));
        let (decimal, thousands) = (
            from_paper_mm(1.275).unwrap(),
            from_paper_mm(1275.0).unwrap(),
        );
        let text = "1,275 mm".to_owned();
        let refusal = Refusal::CommaTwoWays {
            text,
            decimal,
            thousands,
        };
        assert_eq!(parse("1,275 mm", LengthRange::General, Inch), Err(refusal));
    }

    #[test]
    fn a_comma_that_leaves_no_reading_is_out_of_range() {
        let given = from_paper_mm(1.275).unwrap();
        let range = LengthRange::TyreWidth;
        assert_eq!(
            parse("1,275 mm", range, Inch),
            Err(Refusal::OutOfRange { range, given })
        );
    }

    #[test]
    fn the_way_of_a_comma_that_can_be_read_gives_the_reason() {
        let given = from_paper_mm(1275.25).unwrap();
        let range = LengthRange::FeelerGap;
        let refusal = parse("1,275 1/4 mm", range, Inch);
        assert_eq!(refusal, Err(Refusal::OutOfRange { range, given }));
    }

    #[test]
    fn a_sign_is_for_the_dish() {
        let dish = |text| parse(text, LengthRange::Dish, Millimetre).map(to_paper_mm);
        for text in ["-12", "−12", "- 12 mm", "−1.2 cm"] {
            assert_eq!(dish(text), Ok(-12.0), "{text}");
        }
        assert_eq!(dish("-1/2 in"), Ok(-12.7));
        assert_eq!(dish("−0 ft 2 in"), Ok(-50.8));
        assert_eq!(dish("+12"), Ok(12.0));
        assert_eq!(dish("-0"), Ok(0.0));
        let given = from_paper_mm(-12.0).unwrap();
        let range = LengthRange::FeelerGap;
        assert_eq!(
            parse("-12", range, Millimetre),
            Err(Refusal::OutOfRange { range, given })
        );
    }

    #[test]
    fn what_is_not_one_length_is_refused() {
        let unreadable = [
            "mm",
            "\"",
            ".",
            ",",
            "5.",
            "1.2.3",
            "1,2,3",
            "1.275,5",
            "1 275",
            "4 2 3/16",
            "5 mm 3",
            "1/2/3",
            "1/",
            "/2",
            "1 /",
            "1.5/2",
            "1.5 1/2",
            "1½½",
            "½1",
            "½/2",
            "1 2 3 mm",
            "5 3 mm",
            "-",
            "+",
            "--5",
            "+-5",
            "4 ft 2 3",
            "4ft.5in",
            "5 mm.5",
            "≈ 5 mm",
            "5 mm;",
            "5_000",
            "５ mm",
            "12,34,567 mm",
            ",275,000 mm",
            "0,275,000 mm",
            "4 ft in",
            "1 1/2 1/2 in",
            "1/99999999999",
            "99999999999999999999 mm",
            "0.00000000000000000001 in 2",
        ];
        for text in unreadable {
            check_fault(text, Fault::Unreadable);
        }
    }

    #[test]
    fn each_slip_has_its_own_name() {
        let unit = |unit: &str| Fault::UnknownUnit {
            unit: unit.to_owned(),
        };
        check_fault("1e5", unit("e"));
        check_fault("nan", unit("nan"));
        check_fault("inf", unit("inf"));
        check_fault("0x10", unit("x"));
        check_fault("12 mil", unit("mil"));
        check_fault("4 elbows", unit("elbows"));
        for text in [
            "12 in 3 mm",
            "4 ft 2 mm",
            "4 ft 2 ft",
            "2 in 4 ft",
            "2 m 5 cm",
            "5 mm mm",
        ] {
            check_fault(text, Fault::TwoUnits);
        }
        for text in [
            "4 ft -2 in",
            "4' −2\"",
            "4'-2\"",
            "5-",
            "4-2",
            "4 ft 2 in -",
            "5 + 3",
            "−4 ft −2",
        ] {
            check_fault(text, Fault::SignInside);
        }
        for text in ["1/0", "0/0", "2 1/0 in", "4 ft 2 1/0 in"] {
            check_fault(text, Fault::ZeroBottom);
        }
        for text in ["13/8", "3/2/1", "16/16", "1 9/8 in"] {
            check_fault(text, Fault::ImproperFraction);
        }
        for text in ["4.5 ft 2 in", "4½ ft 2 in", "4,5' 2\""] {
            check_fault(text, Fault::BrokenFeet);
        }
        for text in ["4 ft 12 in", "4' 14\"", "4 ft 12 1/2 in"] {
            check_fault(text, Fault::TwelveInches);
        }
    }

    #[test]
    fn a_text_has_an_end_and_a_beginning() {
        for text in ["", " ", "\u{a0}\t\n"] {
            assert_eq!(parse(text, LengthRange::General, Inch), Err(Refusal::Empty));
        }
        let long = |n| format!("{}1 mm", "0".repeat(n));
        assert_eq!(
            parse(&long(60), LengthRange::General, Inch).map(to_paper_mm),
            Ok(1.0)
        );
        let refusal = Refusal::TooLong {
            given: 65,
            allowed: 64,
        };
        assert_eq!(parse(&long(61), LengthRange::General, Inch), Err(refusal));
        let range = LengthRange::General;
        let huge = parse(&"9".repeat(19), range, Inch);
        assert!(matches!(huge, Err(Refusal::OutOfRange { .. })), "{huge:?}");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2000))]

        #[test]
        fn any_text_is_read_within_range_or_refused(
            text in prop_oneof![
                "\\PC{0,70}",
                "[-−+]?[0-9]{0,5}[.,]?[0-9]{0,4}[ -]?([0-9]{0,2}[/⁄][0-9]{0,2}|[½⅜¾])? ?(mm|cm|m|in|ft|thou|'|\"|″)?",
                "[-−+0-9 ,./⁄'\"′″½⅜mcinft]{0,12}",
            ],
            range in crate::quantity::range::generator::ranges(),
            bare in proptest::sample::select(&[Inch, Millimetre, Thou][..]),
        ) {
            match parse(&text, range, bare) {
                Ok(length) => prop_assert_eq!(range.check(length), Ok(length)),
                Err(refusal) => prop_assert!(refusal.to_string().ends_with("nothing was changed.")),
            }
        }

        #[test]
        fn a_comma_before_three_digits_never_picks_one_of_two(whole in 1_u32..=19, part in 0_u32..=999) {
            let text = format!("{whole},{part:03} mm");
            let refusal = parse(&text, LengthRange::General, Inch);
            let two_ways = matches!(refusal, Err(Refusal::CommaTwoWays { .. }));
            prop_assert!(two_ways, "{text}: {refusal:?}");
        }
    }
}
