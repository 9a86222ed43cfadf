//! What the trade has printed of the draw, row by row with its source. Its rows differ by trade and country and no mean of
//! them is anybody's advice.
//!
//! Nothing is advised for a wheel with loose feet or proud tongues, nor while its dish is not known: such a wheel takes any
//! draw as dish.

use super::refusal::Refusal;
use crate::quantity::circumference::Draw;
use crate::quantity::length::inches;

/// How the wheel is dished.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Dished {
    /// Not at all, or hardly.
    Straight,
    /// Dished.
    Dished,
    /// Much dished.
    Much,
    /// The other way than it was built.
    Backwards,
}

/// How heavy the wheel is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Weight {
    /// A carriage's, or as light.
    Light,
    /// A cart's or a waggon's.
    Common,
    /// Heavy and strong.
    Heavy,
}

/// A wheel for which advice is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wheel {
    /// Whether any foot is loose in the nave; `None` if that was not looked for.
    pub loose_feet: Option<bool>,
    /// Whether any tongue stands proud of the sole; `None` if that was not looked for.
    pub proud_tongues: Option<bool>,
    /// How it is dished; `None` if that is not known.
    pub dished: Option<Dished>,
    /// How heavy it is.
    pub weight: Weight,
}

/// One printed row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Of which wheel it speaks, as printed.
    pub wheel: &'static str,
    /// The least and the most, in sixteenths of an inch; `None` where it gives no least.
    sixteenths: (Option<u8>, u8),
    /// Who prints it.
    pub source: &'static str,
    dished: &'static [Dished],
    weights: &'static [Weight],
}

const HOLMSTROM: &str = "J. G. Holmström, Modern Blacksmithing, 1901";
const MANUAL: &str = "Wagon and carriage tires, an American smith's manual (freeblacksmith.com)";
const RICHARDSON: &str = "M. T. Richardson (comp.), Practical Carriage Building, vol. 1, 1891";
const HASLUCK: &str = "P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, c. 1900";

const STRAIGHT: &[Dished] = &[Dished::Straight];
const DISHED: &[Dished] = &[Dished::Dished, Dished::Much];
const MUCH: &[Dished] = &[Dished::Much];
const ANY: &[Dished] = &[Dished::Straight, Dished::Dished, Dished::Much];
const LIGHT: &[Weight] = &[Weight::Light];
const COMMON: &[Weight] = &[Weight::Common, Weight::Heavy];
const HEAVY: &[Weight] = &[Weight::Heavy];

/// The rows, in the order in which they are shown.
pub const ROWS: [Row; 10] = [
    row(
        "straight wagon wheel, set again",
        Some(8),
        8,
        HOLMSTROM,
        STRAIGHT,
        COMMON,
    ),
    row(
        "the same, heavy and strong",
        None,
        10,
        HOLMSTROM,
        STRAIGHT,
        HEAVY,
    ),
    row(
        "poor and dished wagon wheel",
        None,
        4,
        HOLMSTROM,
        DISHED,
        COMMON,
    ),
    row(
        "straight wagon wheel, tyre of ½ in",
        Some(8),
        12,
        MANUAL,
        STRAIGHT,
        COMMON,
    ),
    row(
        "wagon wheel, dished and easily bent",
        None,
        4,
        MANUAL,
        DISHED,
        COMMON,
    ),
    row("carriage wheel", None, 2, MANUAL, ANY, LIGHT),
    row("light wheel, much dished", Some(0), 0, MANUAL, MUCH, LIGHT),
    row(
        "two-horse wagon, spokes driven straight",
        Some(4),
        4,
        RICHARDSON,
        STRAIGHT,
        COMMON,
    ),
    row(
        "Warner wheel of an English cart",
        Some(6),
        6,
        HASLUCK,
        ANY,
        &[Weight::Light, Weight::Common],
    ),
    row(
        "large heavy English cart wheel",
        None,
        20,
        HASLUCK,
        ANY,
        HEAVY,
    ),
];

const fn row(
    wheel: &'static str,
    least: Option<u8>,
    most: u8,
    source: &'static str,
    dished: &'static [Dished],
    weights: &'static [Weight],
) -> Row {
    Row {
        wheel,
        sixteenths: (least, most),
        source,
        dished,
        weights,
    }
}

impl Row {
    /// The least it gives, where it gives one.
    #[must_use]
    pub fn least(&self) -> Option<Draw> {
        self.sixteenths.0.map(draw)
    }

    /// The most it gives.
    #[must_use]
    pub fn most(&self) -> Draw {
        draw(self.sixteenths.1)
    }
}

fn draw(sixteenths: u8) -> Draw {
    Draw(inches(f64::from(sixteenths) / 16.0))
}

/// The printed rows that speak of such a wheel; there may be none.
///
/// # Errors
///
/// [`Refusal::NotLooked`], [`Refusal::LooseFeet`], [`Refusal::ProudTongues`], [`Refusal::DishUnknown`] or
/// [`Refusal::DishedBackwards`].
pub fn advice(wheel: &Wheel) -> Result<Vec<&'static Row>, Refusal> {
    match (wheel.loose_feet, wheel.proud_tongues) {
        (Some(true), _) => return Err(Refusal::LooseFeet),
        (_, Some(true)) => return Err(Refusal::ProudTongues),
        (Some(false), Some(false)) => {}
        _ => return Err(Refusal::NotLooked),
    }
    let dished = wheel.dished.ok_or(Refusal::DishUnknown)?;
    if dished == Dished::Backwards {
        return Err(Refusal::DishedBackwards);
    }
    let speaks = |row: &&Row| row.dished.contains(&dished) && row.weights.contains(&wheel.weight);
    Ok(ROWS.iter().filter(speaks).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::length::to_paper_mm;

    const SOUND: Wheel = Wheel {
        loose_feet: Some(false),
        proud_tongues: Some(false),
        dished: Some(Dished::Straight),
        weight: Weight::Common,
    };

    fn most(wheel: Wheel) -> Vec<f64> {
        let rows = advice(&wheel).unwrap();
        rows.iter().map(|row| to_paper_mm(row.most().0)).collect()
    }

    #[test]
    fn rows_stand_each_for_itself() {
        assert_eq!(most(SOUND), [12.7, 19.05, 6.35, 9.525]);
        let dished = Some(Dished::Dished);
        assert_eq!(most(Wheel { dished, ..SOUND }), [6.35, 6.35, 9.525]);
        let light = Wheel {
            weight: Weight::Light,
            dished: Some(Dished::Much),
            ..SOUND
        };
        assert_eq!(most(light), [3.175, 0.0, 9.525]);
        let heavy = Weight::Heavy;
        assert_eq!(
            most(Wheel {
                weight: heavy,
                ..SOUND
            }),
            [12.7, 15.875, 19.05, 6.35, 31.75]
        );
    }

    #[test]
    fn a_wheel_that_takes_draw_as_dish_gets_no_advice() {
        let of = |wheel| advice(&wheel).unwrap_err();
        let loose_feet = Some(true);
        assert_eq!(
            of(Wheel {
                loose_feet,
                ..SOUND
            }),
            Refusal::LooseFeet
        );
        let proud_tongues = Some(true);
        assert_eq!(
            of(Wheel {
                proud_tongues,
                ..SOUND
            }),
            Refusal::ProudTongues
        );
        assert_eq!(
            of(Wheel {
                proud_tongues,
                loose_feet: None,
                ..SOUND
            }),
            Refusal::ProudTongues
        );
        assert_eq!(
            of(Wheel {
                dished: None,
                ..SOUND
            }),
            Refusal::DishUnknown
        );
        let dished = Some(Dished::Backwards);
        assert_eq!(of(Wheel { dished, ..SOUND }), Refusal::DishedBackwards);
        assert_eq!(
            of(Wheel {
                loose_feet: None,
                ..SOUND
            }),
            Refusal::NotLooked
        );
        assert_eq!(
            of(Wheel {
                proud_tongues: None,
                ..SOUND
            }),
            Refusal::NotLooked
        );
    }

    #[test]
    fn no_row_gives_more_at_the_least_than_at_the_most() {
        for row in ROWS {
            assert!(
                row.least().is_none_or(|least| least <= row.most()),
                "{}",
                row.wheel
            );
        }
    }
}
