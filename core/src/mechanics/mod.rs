//! What a tyre does to a wheel: the balance of tyre, rim and spokes, taken as the same all round.
//!
//! Sizes come in as lengths and forces go out as forces. Between them, in `springs` and `balance`, all is plain
//! numbers in newtons and millimetres; nothing else in the core reckons so.

pub mod build;
pub mod refusal;
pub mod assumed;
mod springs;
mod balance;
mod stiffness;
pub mod dish;
pub mod gives;
pub mod fit;
pub mod sheet;
pub mod after;
pub mod cooling;
pub mod moved;
pub mod year;
pub mod season;
pub mod drying;

pub use after::{After, after};
pub use assumed::{Assumption, Corner};
pub use build::{Build, Feet};
pub use cooling::{Cooled, STEPS, cooled};
pub use dish::folds_at;
pub use drying::{Slack, explains, over_a_joint};
pub use fit::{Fit, Fitting, fit};
pub use gives::Gives;
pub use moved::Damp;
pub use refusal::FitRefusal;
pub use season::{Harm, Helps, Month, Range, Season, season};
pub use sheet::{Leading, Sheet, sheet};
pub use stiffness::bedding;
pub use year::{Stand, StandSource, Year};

#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
mod tests;
