//! Who may use whom: rooms of the core use those above them, only paper knows how things are written
//! out, and nothing in the core reaches for a clock, a random number or a browser.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod dependencies;
mod files;
mod rooms;
mod source;
