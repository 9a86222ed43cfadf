//! The tyre that is to be heated: its iron, its round cold on the inside, its width and its thickness.

use crate::material::iron::Iron;
use crate::quantity::LengthRange;
use crate::quantity::circumference::{Circumference, Diameter};
use crate::quantity::length::to_paper_mm;
use crate::quantity::{Length, Refusal};

/// A tyre as it is before the fire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HotTyre {
    /// What it is of.
    pub iron: Iron,
    inside: Circumference,
    width: Length,
    thickness: Length,
}

impl HotTyre {
    /// A tyre of this iron, this round on the inside when cold, this wide and this thick.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where one of them no tyre has.
    pub fn of(
        iron: Iron,
        inside: Circumference,
        width: Length,
        thickness: Length,
    ) -> Result<HotTyre, Refusal> {
        Ok(HotTyre {
            iron,
            inside: Circumference(LengthRange::Round.check(inside.0)?),
            width: LengthRange::TyreWidth.check(width)?,
            thickness: LengthRange::TyreThickness.check(thickness)?,
        })
    }

    /// Its round on the inside, cold.
    #[must_use]
    pub fn inside(&self) -> Circumference {
        self.inside
    }

    /// How far it is across on the inside, cold.
    #[must_use]
    pub fn across(&self) -> Diameter {
        self.inside.across()
    }

    /// Its inside round, width and thickness in mm.
    pub(super) fn in_mm(&self) -> [f64; 3] {
        [self.inside.0, self.width, self.thickness].map(to_paper_mm)
    }
}
