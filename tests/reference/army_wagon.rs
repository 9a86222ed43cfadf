//! A whole vehicle as one government had it made: the six-mule wagon of the United States Army, by
//! the specification of 1858, which the *Regulations* of 1861 print again.

use cartside_core::daybook::{EntryId, Hand, Says, Stamp, Unwritten, WheelSaid};
use cartside_core::paper::line;
use cartside_core::quantity::format::{
    FeelerStyle, Fraction, LengthStyle, format_feet_inches, format_length,
};
use cartside_core::quantity::length::{from_paper_mm, millimetres, to_paper_mm};
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::quantity::{Length, Measured};
use cartside_core::survey::{Answer, Question};
use cartside_core::wheel::{
    Arm, Felloes, Keeper, Place, Position, Rim, Size, Sizes, Tyre, VehicleKind, Wheel,
};
use cartside_core::words::{self, Style};

use crate::judged::findings;

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

/// The wheels as the specification has them: sizes typed in its own words. It gives no number of spokes; 14 in a fore
/// and 16 in a hind wheel is what *Hints to Horse-keepers*, "Carriages: construction", gives for heavy American work.
fn wheel_of(height: &str, spokes: u16) -> Wheel {
    let typed = |size: Size, text: &str| parse(text, size.range(), BareUnit::Millimetre).ok();
    let sizes = [
        (Size::Height, height),
        (Size::TyreWidth, "2 1/2 in"),
        (Size::TyreThickness, "5/8 in"),
        (Size::FelloeDepth, "2 3/4 in"),
        (Size::BoxLength, "1 ft"),
    ];
    let sizes = sizes
        .into_iter()
        .fold(Sizes::default(), |all, (size, text)| {
            all.with(size, typed(size, text))
        });
    Wheel {
        rim: Some(Rim::Sawn),
        tyre: Some(Tyre::Hoop),
        arm: Some(Arm::Wood),
        keeper: Some(Keeper::LinchPin),
        sizes,
        ..Wheel::of(Felloes::even(spokes, spokes / 2).unwrap())
    }
}

/// Four wheels on wooden axles with linch pins, each described, written on paper, read back and said in the words of the
/// specification.
#[test]
fn the_wagon_can_be_described_and_is_kept_as_it_was_described() {
    let hand = Hand {
        by: "A. Wright".to_owned(),
        device: "0f1e".to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
        n: 2,
    };
    let fore = wheel_of("3 ft 10 in", 14);
    let hind = wheel_of("4 ft 10 in", 16);
    let wagon = EntryId::of(b"the wagon");
    let mut said = Vec::new();
    for position in VehicleKind::Waggon.positions() {
        let is_fore = matches!(position, Position::NearFore | Position::OffFore);
        let wheel = if is_fore { fore.clone() } else { hind.clone() };
        let says = Says::Wheel(WheelSaid {
            position: *position,
            wheel,
        });
        let entry = Unwritten::new(Some(wagon), says.clone()).unwrap();
        let read = line::read(&line::write(&entry, &hand).unwrap()).unwrap();
        assert_eq!(read.says, says, "{position:?}");
        let inches = LengthStyle::Inches(Fraction::Sixteenths);
        let style = Style::american(inches, FeelerStyle::Thou);
        said.push(words::says::says(&read, None, style));
    }
    assert_eq!(said.len(), 4);
    assert_eq!(
        said[0],
        "near fore wheel: 14 spokes, 7 felloes; sawn felloes; hoop tire, shrunk on; wooden arm; linchpin; \
         height over the tread 46 in; tire width 2 1/2 in; tire thickness as new 5/8 in; felloe depth 2 3/4 in; \
         boxing length 12 in"
    );
    assert!(
        said[3].contains("height over the tread 58 in"),
        "{}",
        said[3]
    );
}

/// What a smith would have measured on it when new is no finding of the house.
#[test]
fn a_new_wagon_is_not_found_fault_with() {
    let left = parse("5/8 in", LengthRange::TyreThickness, BareUnit::Inch).unwrap();
    let left = Answer::Length(Measured::new(left, millimetres(0.0)).unwrap());
    let readings = [(Question::TyreLeft, Place::Between(1), left)];
    assert_eq!(findings(&wheel_of("4 ft 10 in", 16), &readings), []);
}
