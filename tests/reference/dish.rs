//! Dish as it is printed, beside what the house limits make of its loss.
//!
//! English and American wheels differ by far: what a farm wagon is built with, an English carriage has lost long since.

use cartside_core::diagnosis::{Grade, Standing};
use cartside_core::quantity::Length;
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::survey::Question;
use cartside_core::wheel::{Place, Size, Sizes, Wheel};

use crate::judged::{findings, length, wheel};

/// Who built what with how much dish, in inches as printed.
const PRINTED: [(&str, &str); 7] = [
    // J. W. Burgess, *A Practical Treatise on Coach-Building*, 1881: 1½ to 2½ in.
    ("English carriage, least", "1 1/2 in"),
    ("English carriage, most", "2 1/2 in"),
    // *Encyclopaedia Britannica*, 9th ed., vol. 11, "Gunnery", p. 311: 2 in on a wheel of 5 ft.
    ("British nine-pounder", "2 in"),
    // M. T. Richardson (comp.), *Practical Carriage Building*, vol. 1, 1891, letters of several makers of farm wagons:
    // hind wheels barely ⅛ in before tyring, not more than ⅛ to 3/16 in after it, ⅜ in on all wheels.
    ("farm wagon, hind, before tyring", "1/8 in"),
    ("farm wagon, a good wheel, most", "3/16 in"),
    ("farm wagon, another maker", "3/8 in"),
    // The same: front wheels are straight, a straight-edge touches both sides of the rim.
    ("farm wagon, fore", "0 in"),
];

fn dish(text: &str) -> Length {
    parse(text, LengthRange::Dish, BareUnit::Millimetre).unwrap()
}

#[test]
fn every_printed_dish_can_be_said() {
    for (name, text) in PRINTED {
        let sizes = Sizes::default().with(Size::Dish, Some(dish(text)));
        assert_eq!(sizes.get(Size::Dish), Some(dish(text)), "{name}");
    }
}

/// A quarter of an inch of dish to each foot of half the wheel, 0.58 in on the wheel of 56 in: the standard artillery
/// wheel of the United States Army in 1917.
#[test]
fn the_army_s_rule_of_a_quarter_inch_to_the_foot() {
    let half =
        to_paper_mm(parse("56 in", LengthRange::WheelDiameter, BareUnit::Inch).unwrap()) / 2.0;
    let by_rule =
        half / to_paper_mm(parse("1 ft", LengthRange::General, BareUnit::Inch).unwrap()) * 6.35;
    let printed = to_paper_mm(dish("0.58 in"));
    assert!((by_rule - printed).abs() < 0.1, "{by_rule} {printed}");
}

fn built(text: &str) -> Wheel {
    let sizes = Sizes::default().with(Size::Dish, Some(dish(text)));
    Wheel { sizes, ..wheel() }
}

/// The grades that a wheel built with this dish gets when it is found with another.
fn grades(as_built: &str, found: &str) -> Vec<Grade> {
    let reading = [(
        Question::Dish,
        Place::Whole,
        length(found, LengthRange::Dish),
    )];
    findings(&built(as_built), &reading)
        .into_iter()
        .map(|finding| finding.grade)
        .collect()
}

/// The house limits are thirds of the dish as built and never less than 5 mm (house: common practice, no source). No
/// printed limit is known. So the house sees a flat English carriage, and cannot see that a farm wagon's ⅛ in is gone:
/// a rule reads no better.
#[test]
fn what_the_house_makes_of_a_wheel_gone_flat() {
    let flat = |as_built| grades(as_built, "0 in");
    for english in ["1 1/2 in", "2 in", "2 1/2 in"] {
        assert_eq!(
            flat(english).first(),
            Some(&Grade::LightWorkOnly),
            "{english}"
        );
    }
    assert_eq!(flat("3/8 in").first(), Some(&Grade::LightWorkOnly));
    for below_the_house in ["1/8 in", "3/16 in", "0 in"] {
        assert_eq!(flat(below_the_house), [], "{below_the_house}");
    }
}

/// Dished the wrong way is dangerous: Lyn Museum (Ontario), "Wagon wheel tire shrinker", 2019. The house agrees for a
/// wheel built with dish, from 5 mm beyond doubt.
#[test]
fn a_dish_reversed_is_not_to_be_used() {
    let worst = |as_built| grades(as_built, "-1/2 in").first().copied();
    for as_built in ["1/8 in", "3/8 in", "2 in"] {
        let proposes = worst(as_built).and_then(Grade::proposes);
        assert_eq!(proposes, Some(Standing::NotOnThisWheel), "{as_built}");
    }
    // A wheel built straight has no wrong way: that it leans at all is what the house minds.
    assert_eq!(worst("0 in"), Some(Grade::LightWorkOnly));
}
