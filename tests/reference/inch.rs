//! The inch and the foot as the standards fix them.

use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};

/// NIST Special Publication 811, *Guide for the Use of the International System of Units*, 2008
/// edition, appendix B.8, "Factors for units listed alphabetically": inch to millimetre 2.54 E+01,
/// foot to metre 3.048 E−01, mil (0.001 in) to millimetre 2.54 E−02, each in bold, which marks an
/// exact factor.
#[test]
fn factors_are_exact() {
    let mm = |text: &str| to_paper_mm(parse(text, LengthRange::General, BareUnit::Inch).unwrap());
    assert_eq!(mm("1 in"), 25.4);
    assert_eq!(mm("1 ft"), 304.8);
    assert_eq!(mm("1 thou"), 0.0254);
    // A whole number of 1/32 in is a whole number of nanometres: 25.4 mm / 32 = 793 750 nm.
    for n in 1_u32..32 {
        assert_eq!(mm(&format!("{n}/32 in")), f64::from(n * 793_750) / 1e6);
    }
}
