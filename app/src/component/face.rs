//! A wheel's face in the units of its drawing: the sole lies 93 out from the middle whatever the wheel's height, the
//! rest follows the sizes that have been said. What stands open or moves is drawn wider than it is, by a scale that is
//! told beside the drawing.

use cartside_core::quantity::length::to_paper_mm;
use cartside_core::survey::{Answer, Play, Question};
use cartside_core::wheel::{Place, Size, Wheel};

use crate::looking::Looking;

/// How far out the sole lies.
pub const SOLE: f64 = 93.0;
/// A wheel whose height has not been said, in millimetres. Only the drawing's proportions follow from it.
const USUAL: f64 = 1300.0;
/// How much wider than it is a gap is drawn on a screen.
pub const WIDER: f64 = 10.0;
/// What is drawn of a part that moves but was not measured, in millimetres. Common practice, no source.
const JUST_MOVES: f64 = 0.5;
const LOOSE: f64 = 1.5;

/// The face of one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Units of the drawing to a millimetre of the wheel.
    unit: f64,
    /// How much wider than it is a gap is drawn.
    wider: f64,
    /// How far round the wheel is turned, in turns: what stands there is drawn at the top.
    pub top: f64,
    /// How far out the nave reaches.
    pub nave: f64,
    /// How far out the belly of the felloes lies.
    pub belly: f64,
    /// How far out the running face of the tyre lies.
    pub tread: f64,
    width: f64,
}

impl Face {
    /// A wheel that stands so far round, in turns, with gaps drawn so many times as wide as they are.
    pub fn of(wheel: &Wheel, wider: f64, top: f64) -> Face {
        let size = |size: Size| wheel.sizes.get(size).map(to_paper_mm);
        let unit = 2.0 * SOLE / size(Size::Height).unwrap_or(USUAL).max(1.0);
        let scaled = |mm: Option<f64>, least: f64, usual: f64, most: f64| {
            mm.map_or(usual, |mm| (mm * unit).clamp(least, most))
        };
        Face {
            unit,
            wider,
            top,
            nave: 17.0,
            belly: SOLE - scaled(size(Size::FelloeDepth), 7.0, 14.0, 30.0),
            tread: SOLE + scaled(size(Size::TyreThickness), 1.5, 3.5, 8.0),
            width: scaled(size(Size::TyreWidth), 4.0, 9.0, 28.0),
        }
    }

    /// A length of the wheel in units of the drawing.
    pub fn units(&self, mm: f64) -> f64 {
        mm * self.unit
    }

    /// How wide the rim is from face to back, by its tyre.
    pub fn width(&self) -> f64 {
        self.width
    }

    /// How far round from the top of the drawing a place lies.
    pub fn turn(&self, wheel: &Wheel, place: Place) -> f64 {
        wheel.turn(place).unwrap_or_default() - self.top
    }

    /// How wide what was answered here is drawn; no wider than this.
    pub fn drawn(&self, looking: &Looking, question: Question, place: Place, most: f64) -> f64 {
        let answers = looking.answer(question, place).unwrap_or_default();
        let widest = answers.iter().map(open).fold(0.0, f64::max);
        (widest * self.unit * self.wider).min(most)
    }
}

/// How far something stands open or moves, in millimetres.
fn open(answer: &Answer) -> f64 {
    match answer {
        Answer::Play(Play::JustMoves) => JUST_MOVES,
        Answer::Play(Play::Loose) => LOOSE,
        _ => answer.length().map_or(0.0, to_paper_mm),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Face, SOLE, WIDER};
    use cartside_core::quantity::length::millimetres;
    use cartside_core::wheel::{Felloes, Place, Size, Sizes, Wheel};

    fn wheel(sizes: &[(Size, f64)]) -> Wheel {
        let mut wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        wheel.sizes = sizes.iter().fold(Sizes::default(), |said, (size, mm)| {
            said.with(*size, Some(millimetres(*mm)))
        });
        wheel
    }

    #[test]
    fn the_face_has_the_proportions_of_the_wheel() {
        let low = Face::of(
            &wheel(&[
                (Size::Height, 930.0),
                (Size::FelloeDepth, 80.0),
                (Size::TyreThickness, 15.0),
            ]),
            WIDER,
            0.0,
        );
        // 930 mm are twice 93 units: five millimetres to a unit.
        assert_eq!((low.belly, low.tread), (SOLE - 16.0, SOLE + 3.0));
        let high = Face::of(
            &wheel(&[(Size::Height, 1860.0), (Size::FelloeDepth, 80.0)]),
            WIDER,
            0.0,
        );
        assert_eq!(high.belly, SOLE - 8.0);
    }

    #[test]
    fn sizes_that_cannot_be_keep_the_drawing_whole() {
        let face = Face::of(
            &wheel(&[
                (Size::Height, 0.0),
                (Size::FelloeDepth, 5000.0),
                (Size::TyreThickness, 0.0),
            ]),
            WIDER,
            0.0,
        );
        assert!(face.nave < face.belly && face.belly < SOLE && face.tread > SOLE);
    }

    #[test]
    fn a_turned_wheel_has_the_spoke_in_hand_at_the_top() {
        let wheel = wheel(&[]);
        let top = wheel.turn(Place::Spoke(4)).unwrap();
        let face = Face::of(&wheel, WIDER, top);
        assert_eq!(face.turn(&wheel, Place::Spoke(4)), 0.0);
        assert!(face.turn(&wheel, Place::Spoke(5)) > 0.0);
    }
}
