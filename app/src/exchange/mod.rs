//! Files out of and into the browser. What stands in them is the core's business.

mod arrival;
mod error;
mod parcel;

pub use arrival::read_piece;
pub use error::FileError;
pub use parcel::{Parcel, Parts, Shared, Way, handed_over};
