//! What is typed for a length is refused in a sentence, or is one length that is written and read again as the same.

use cartside_core::quantity::format::{
    FeelerStyle, Formatted, Fraction, LengthStyle, format_feeler, format_feet_inches, format_length,
};
use cartside_core::quantity::length::{from_paper_mm, to_paper_mm};
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::quantity::{Length, Percent};

/// How every refusal of a quantity ends.
const UNHARMED: &str = "nothing was changed.";
/// Half a step of the coarsest way to write, a sixteenth of an inch, in mm.
const HALF_A_STEP_MM: f64 = 0.793_75;
const BARE: [BareUnit; 3] = [BareUnit::Millimetre, BareUnit::Inch, BareUnit::Thou];

/// Reads the text behind the first two bytes.
pub(crate) fn check(bytes: &[u8]) {
    let [range, bare, text @ ..] = bytes else {
        return;
    };
    let range = LengthRange::ALL[usize::from(*range) % LengthRange::ALL.len()];
    let bare = BARE[usize::from(*bare) % BARE.len()];
    let text = String::from_utf8_lossy(text);
    match parse(&text, range, bare) {
        Ok(length) => comes_through(length, range),
        Err(refusal) => assert!(
            refusal.to_string().ends_with(UNHARMED),
            "{text:?}: {refusal}"
        ),
    }
    match Percent::parse(&text) {
        Ok(share) => assert_eq!(Percent::from_paper(share.to_paper()), Ok(share)),
        Err(refusal) => assert!(
            refusal.to_string().ends_with(UNHARMED),
            "{text:?}: {refusal}"
        ),
    }
}

/// On paper and in every way of writing it is the same length, or nearly and says so.
fn comes_through(length: Length, range: LengthRange) {
    assert_eq!(range.check(length), Ok(length));
    assert_eq!(from_paper_mm(to_paper_mm(length)), Ok(length));
    for fraction in [Fraction::Sixteenths, Fraction::ThirtySeconds] {
        read_again(
            length,
            range,
            format_length(length, LengthStyle::Inches(fraction)),
        );
        read_again(length, range, format_feet_inches(length, fraction));
    }
    read_again(
        length,
        range,
        format_length(length, LengthStyle::Millimetres),
    );
    read_again(
        length,
        range,
        format_feeler(length, FeelerStyle::Millimetres),
    );
    read_again(length, range, format_feeler(length, FeelerStyle::Thou));
}

fn read_again(length: Length, range: LengthRange, written: Formatted) {
    for bare in BARE {
        if written.exact {
            assert_eq!(parse(&written.text, range, bare), Ok(length), "{written:?}");
        } else {
            let text = written.text.strip_prefix("≈ ").expect("it says so");
            // Rounded, it may stand just past the end of its own range.
            if let Ok(read) = parse(text, range, bare) {
                let off = to_paper_mm((read - length).abs());
                assert!(
                    off > 0.0 && off <= HALF_A_STEP_MM,
                    "{written:?} is off by {off} mm"
                );
            }
        }
    }
}
