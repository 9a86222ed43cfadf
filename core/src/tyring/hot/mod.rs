//! The heat: how hot to drop the tyre on, how long it stays large enough, what heat and wood that takes, and how little
//! its colour says.
//!
//! Published formulas are worked in plain numbers: °C (K where a formula wants it), mm, s, W, J; their doc lines say which.

pub mod sum;
pub mod air;
pub mod tyre;
pub mod drop;
pub mod cooling;
pub mod window;
pub mod fire;
pub mod colour;
pub mod heat;

pub use drop::{DropOn, Over};
pub use heat::Heat;
pub use tyre::HotTyre;
pub use window::{Verdict, Window};
