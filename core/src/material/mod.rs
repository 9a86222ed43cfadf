//! What a wheel is made of: iron against temperature, timber against moisture. Numbers stand with their published source;
//! what sources dispute is a [`Band`](crate::quantity::Band).

pub mod iron;
pub mod steel;
pub mod moisture;
pub mod source;
pub mod timber;

pub use iron::Iron;
pub use moisture::{MoistureContent, equilibrium};
pub use source::Source;
pub use timber::{Grain, Species, Timber};
