//! Carbon steel against temperature, by EN 1993-1-2:2005, from −40 °C to 1200 °C.
//!
//! The standard speaks of 20 °C and above; below, its first branch is continued, which is what a yard in winter needs. It
//! speaks of heating only: in cooling, steel goes through its change of structure some 50 to 100 K lower.

pub mod elongation;
pub mod heat;
pub mod strength;

pub use elongation::{MOST_GROWN, NoFurther, elongation, temperature_for};
pub use heat::{DENSITY, conductivity, specific_heat};
pub use strength::{Kept, MODULUS, kept, stress};
