//! A whole vehicle as one government had it made: the six-mule wagon of the United States Army, by
//! the specification of 1858, which the *Regulations* of 1861 print again.

use cartside_core::quantity::Length;
use cartside_core::quantity::format::{Fraction, LengthStyle, format_feet_inches, format_length};
use cartside_core::quantity::length::{from_paper_mm, to_paper_mm};
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::wheel::{Arm, Keeper, Position, VehicleKind};

/// What the specification calls it, the range we ask it in, the text, and sixteenths of an inch.
const SIZES: [(&str, LengthRange, &str, u32); 14] = [
    ("fore wheel", LengthRange::WheelDiameter, "3 ft 10 in", 736),
    ("hind wheel", LengthRange::WheelDiameter, "4 ft 10 in", 928),
    ("hub, across", LengthRange::General, "10 1/4 in", 164),
    ("hub, long", LengthRange::General, "1 ft 2 1/2 in", 232),
    ("felloe, wide", LengthRange::General, "2 1/2 in", 40),
    ("felloe, deep", LengthRange::General, "2 3/4 in", 44),
    ("tyre, wide", LengthRange::TyreWidth, "2 1/2 in", 40),
    ("tyre, thick", LengthRange::TyreThickness, "5/8 in", 10),
    ("box, long", LengthRange::General, "1 ft", 192),
    ("box, small end", LengthRange::General, "1 7/8 in", 30),
    ("linch-pin band", LengthRange::General, "2 3/4 in", 44),
    ("driving band, thick", LengthRange::General, "3/16 in", 3),
    ("linch-pin, thick", LengthRange::General, "3/8 in", 6),
    ("axle at the middle", LengthRange::General, "1 1/2 in", 24),
];

/// The size by whole-number arithmetic: 1/16 in is 1 587 500 nanometres.
fn mm(sixteenths: u32) -> f64 {
    f64::from(sixteenths) * 1_587_500.0 / 1e6
}

#[test]
fn every_size_can_be_written_and_is_kept_exactly() {
    for (name, range, text, sixteenths) in SIZES {
        let length: Length = parse(text, range, BareUnit::Millimetre).expect(name);
        let paper = to_paper_mm(length);
        assert_eq!(paper, mm(sixteenths), "{name}");
        let back = format_feet_inches(from_paper_mm(paper).unwrap(), Fraction::Sixteenths);
        assert_eq!((back.text.as_str(), back.exact), (text, true), "{name}");
    }
}

/// What a smith with a metric rule reads off the same wheel.
#[test]
fn its_wheels_in_millimetres() {
    for (feet, millimetres) in [("3 ft 10 in", "1168.4 mm"), ("4 ft 10 in", "1473.2 mm")] {
        let across = parse(feet, LengthRange::WheelDiameter, BareUnit::Inch).unwrap();
        let written = format_length(across, LengthStyle::Millimetres);
        assert_eq!((written.text.as_str(), written.exact), (millimetres, true));
    }
}

/// Four wheels on wooden axles with linch-pins.
#[test]
fn the_wagon_can_be_described() {
    let positions = VehicleKind::Waggon.positions();
    assert_eq!(positions.len(), 4);
    assert!(positions.contains(&Position::NearHind));
    assert_eq!(Keeper::from_code("linch-pin"), Some(Keeper::LinchPin));
    assert_eq!(Arm::from_code("wood"), Some(Arm::Wood));
}
