//! What a wheel is made of: iron against temperature, timber against moisture. Numbers stand with their published source;
//! what sources dispute is a [`Band`](crate::quantity::Band).

pub mod iron;
pub mod steel;
