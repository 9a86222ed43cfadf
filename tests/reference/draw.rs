//! Draw: how much smaller round the tyre is made than the wheel. Printed amounts go from nothing to 1¼ in, by trade,
//! country and dish, and always round the wheel, never across it.

use std::f64::consts::PI;

use cartside_core::quantity::circumference::{Circumference, Diameter, Draw};
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};

const HOLMSTROM: &str = "J. G. Holmström, Modern Blacksmithing, 1901, wagon wheels";
const HASLUCK: &str =
    "P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, c. 1900, Tyring Cart Wheels";
const RICHARDSON: &str = "M. T. Richardson (comp.), Practical Carriage Building, vol. 1, 1891";

/// Which wheel, how much in inches, how much in sixteenths, and who says so.
const PRINTED: [(&str, &str, u32, &str); 7] = [
    ("straight wagon wheel, set again", "1/2 in", 8, HOLMSTROM),
    ("the same, heavy and strong", "5/8 in", 10, HOLMSTROM),
    (
        "poor and dished wagon wheel, at most",
        "1/4 in",
        4,
        HOLMSTROM,
    ),
    ("Warner wheel of an English cart", "3/8 in", 6, HASLUCK),
    ("large heavy English cart wheel", "1 1/4 in", 20, HASLUCK),
    ("two-horse wagon, no dish", "1/4 in", 4, RICHARDSON),
    (
        "loose spokes, tongues proud: the warning",
        "3/4 in",
        12,
        RICHARDSON,
    ),
];

/// 1/16 in is 1 587 500 nanometres.
fn mm(sixteenths: u32) -> f64 {
    f64::from(sixteenths * 1_587_500) / 1e6
}

#[test]
fn every_printed_draw_is_typed_and_kept_exactly() {
    for (wheel, text, sixteenths, source) in PRINTED {
        let draw = parse(text, LengthRange::General, BareUnit::Millimetre).unwrap();
        assert_eq!(to_paper_mm(draw), mm(sixteenths), "{wheel}: {source}");
    }
}

/// A draw is a difference of rounds: the wheel's less the tyre's gives it back, and across the wheel it is the draw over
/// π, so that 1¼ in round is less than 0.4 in across.
#[test]
fn a_draw_is_taken_round_the_wheel() {
    for (wheel, text, ..) in PRINTED {
        let draw = Draw(parse(text, LengthRange::General, BareUnit::Millimetre).unwrap());
        let across = parse("4 ft 10 in", LengthRange::WheelDiameter, BareUnit::Inch).unwrap();
        let rim: Circumference = Diameter(across).round();
        let tyre = rim - draw;
        assert!(to_paper_mm((rim - tyre).0 - draw.0).abs() < 1e-6, "{wheel}");
        let less = to_paper_mm(across) - to_paper_mm(tyre.across().0);
        assert!((less - to_paper_mm(draw.0) / PI).abs() < 1e-6, "{wheel}");
        assert!(less < 10.16, "{wheel}: {less} mm across");
    }
}
