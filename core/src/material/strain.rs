//! A change of length for each length there was; positive where it grows.
//!
//! A strain is not a moisture, though both are parts of one:
//!
//! ```
//! use cartside_core::material::{MoistureContent, Strain};
//! let dry: Strain = Strain(0.01);
//! ```
//! ```compile_fail,E0308
//! use cartside_core::material::{MoistureContent, Strain};
//! let dry: MoistureContent = Strain(0.01);
//! ```

use std::ops::{Add, Mul, Neg};

use crate::quantity::Length;

/// A change of length for each length there was, as a part of one; positive where it grows.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Strain(pub f64);

impl Strain {
    /// How much longer a part of this length becomes.
    #[must_use]
    pub fn of(self, length: Length) -> Length {
        length * self.0
    }
}

impl Add for Strain {
    type Output = Strain;

    fn add(self, other: Strain) -> Strain {
        Strain(self.0 + other.0)
    }
}

impl Neg for Strain {
    type Output = Strain;

    fn neg(self) -> Strain {
        Strain(-self.0)
    }
}

/// So many times the strain.
impl Mul<f64> for Strain {
    type Output = Strain;

    fn mul(self, times: f64) -> Strain {
        Strain(self.0 * times)
    }
}
