//! Rounds, diameters and the draw, kept apart: what is said of one is never said of another.
//!
//! A round is a circumference. The draw is the round of the wheel less the round of the tyre, both
//! taken on the line where they meet, positive when the tyre is the smaller; it is a difference of
//! rounds, never of diameters.
//!
//! ```
//! use cartside_core::quantity::circumference::{Circumference, Diameter, Draw};
//! use cartside_core::quantity::length::millimetres;
//!
//! let wheel = Diameter(millimetres(1200.0)).round();
//! let tyre = wheel - Draw(millimetres(12.7));
//! assert!((wheel - tyre).0 > millimetres(12.6));
//! ```
//!
//! A round is not a diameter:
//!
//! ```
//! use cartside_core::quantity::{circumference::{Circumference, Diameter}, length::millimetres};
//! let wheel: Circumference = Circumference(millimetres(3770.0));
//! ```
//! ```compile_fail,E0308
//! use cartside_core::quantity::{circumference::{Circumference, Diameter}, length::millimetres};
//! let wheel: Circumference = Diameter(millimetres(3770.0));
//! ```
//!
//! A draw is taken between two rounds:
//!
//! ```
//! use cartside_core::quantity::{circumference::{Circumference, Diameter}, length::millimetres};
//! let draw = Circumference(millimetres(1200.0)) - Circumference(millimetres(1196.0));
//! ```
//! ```compile_fail,E0308
//! use cartside_core::quantity::{circumference::{Circumference, Diameter}, length::millimetres};
//! let draw = Circumference(millimetres(1200.0)) - Diameter(millimetres(1196.0));
//! ```
//!
//! A draw is taken off a round:
//!
//! ```
//! use cartside_core::quantity::{circumference::{Circumference, Diameter, Draw}, length::millimetres};
//! let tyre = Circumference(millimetres(1200.0)) - Draw(millimetres(12.7));
//! ```
//! ```compile_fail,E0369
//! use cartside_core::quantity::{circumference::{Circumference, Diameter, Draw}, length::millimetres};
//! let tyre = Diameter(millimetres(1200.0)) - Draw(millimetres(12.7));
//! ```

use std::f64::consts::PI;
use std::ops::Sub;

use super::length::Length;

/// A round: the length once about a wheel, a tyre or a traveller.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Circumference(pub Length);

/// The length straight across a circle.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Diameter(pub Length);

/// How much smaller round the tyre is than the wheel; negative when the tyre is the larger.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Draw(pub Length);

impl Circumference {
    /// The diameter of the circle with this round.
    #[must_use]
    pub fn across(self) -> Diameter {
        Diameter(self.0 / PI)
    }
}

impl Diameter {
    /// The round of the circle with this diameter.
    #[must_use]
    pub fn round(self) -> Circumference {
        Circumference(self.0 * PI)
    }
}

impl From<Diameter> for Circumference {
    fn from(diameter: Diameter) -> Circumference {
        diameter.round()
    }
}

impl From<Circumference> for Diameter {
    fn from(circumference: Circumference) -> Diameter {
        circumference.across()
    }
}

/// The wheel's round less the tyre's is the draw.
impl Sub for Circumference {
    type Output = Draw;

    fn sub(self, tyre: Circumference) -> Draw {
        Draw(self.0 - tyre.0)
    }
}

/// The wheel's round less the draw is the round of the tyre.
impl Sub<Draw> for Circumference {
    type Output = Circumference;

    fn sub(self, draw: Draw) -> Circumference {
        Circumference(self.0 - draw.0)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::length::{inches, millimetres, to_paper_mm};
    use crate::quantity::range::LengthRange;

    /// T. F. Googerty, *Hand Forging and Wrought-Iron*, p. 69, takes the round as 3 1/7 times the
    /// diameter: 11 in gives 34 4/7 in, which is a little over the true round.
    #[test]
    fn the_smiths_three_and_a_seventh_is_a_little_over() {
        let true_round = Diameter(inches(11.0)).round().0;
        let smiths_round = inches(11.0 * 22.0 / 7.0);
        let over = to_paper_mm(smiths_round - true_round);
        assert!((0.3..0.4).contains(&over), "{over} mm over");
    }

    #[test]
    fn the_draw_is_positive_when_the_tyre_is_the_smaller() {
        let (wheel, tyre) = (
            Circumference(millimetres(3800.0)),
            Circumference(millimetres(3787.3)),
        );
        assert_eq!(to_paper_mm((wheel - tyre).0), 12.7);
        assert_eq!(to_paper_mm((tyre - wheel).0), -12.7);
        assert_eq!(to_paper_mm((wheel - Draw(millimetres(12.7))).0), 3787.3);
    }

    proptest! {
        #[test]
        fn across_and_round_undo_each_other(across in LengthRange::WheelDiameter.hundredths()) {
            let back = Diameter::from(Circumference::from(Diameter(across)));
            prop_assert_eq!(to_paper_mm(back.0), to_paper_mm(across));
        }
    }
}
