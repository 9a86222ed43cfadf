//! The vehicle, where its wheels stand, what a wheel is made of and how its parts are numbered.

pub mod axle;
pub mod felloes;
pub mod part;
pub mod position;
pub mod sizes;
pub mod vehicle;
mod description;

pub use axle::{Arm, Keeper};
pub use description::{Rim, Tyre, Wheel};
pub use felloes::{Felloes, FelloesRefusal};
pub use part::{Part, Place};
pub use position::Position;
pub use sizes::{Size, Sizes};
pub use vehicle::{Vehicle, VehicleKind};
