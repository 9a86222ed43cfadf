//! What a wheelwright asks at the cart, writes down, and works out.
//!
//! The core asks nobody: it has no clock, no random source, no input or output, no browser. Time,
//! names of devices and bytes come in as arguments. The rooms stand in reading order, and a room
//! may use those above it, never one below.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )
)]

pub mod quantity;
pub mod material;
pub mod wheel;
pub mod mechanics;
pub mod tyring;
pub mod survey;
pub mod daybook;
pub mod diagnosis;
pub mod words;
pub mod paper;
