//! The core against the world outside: values that others have published, each beside its source,
//! and readers that are not ours.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod army_wagon;
mod cutting;
mod digests;
mod dish;
mod draw;
mod felloes;
mod inch;
mod independent;
mod judged;
mod limits;
mod schema;
mod steel;
mod timber;
mod wheel;
