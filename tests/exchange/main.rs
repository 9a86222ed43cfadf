//! The exchange file against the world outside: files written by others, broken files, another
//! language's ZIP library, and a validator of JSON Schema.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod book;
mod broken;
mod bytes;
mod chance;
mod devices;
mod fields;
mod flipped;
mod golden;
mod good;
mod histories;
mod house;
mod outgoing;
mod python;
mod schema;
mod second;
mod told;
