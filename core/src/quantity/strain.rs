//! Strain: how much longer a thing is, as a part of its length; positive when it is longer.
//!
//! Moisture is a part of one too, and is no strain:
//!
//! ```
//! use cartside_core::quantity::{Percent, Strain};
//! fn grows_by(strain: Strain) {}
//! grows_by(Strain::of(0.011));
//! ```
//! ```compile_fail,E0308
//! use cartside_core::quantity::{Percent, Strain};
//! fn grows_by(strain: Strain) {}
//! grows_by(Percent::whole(011));
//! ```

use uom::si::f64::Ratio;

/// How much longer, as a part of the length at rest.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Strain(pub Ratio);

impl Strain {
    /// So many parts of one.
    #[must_use]
    pub fn of(parts: f64) -> Strain {
        Strain(Ratio::from(parts))
    }

    /// The strain as a part of one.
    #[must_use]
    pub fn of_one(self) -> f64 {
        self.0.into()
    }
}
