//! What a wheel is made of: how timber takes up moisture, moves with it, and what it bears.

pub mod strain;
pub mod moisture;
pub mod source;
pub mod spread;
pub mod timber;

pub use moisture::{MoistureContent, equilibrium};
pub use source::Source;
pub use spread::{Level, Spread};
pub use strain::Strain;
pub use timber::{Grain, Species, Timber};
