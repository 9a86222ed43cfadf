//! Packs a wasm by guessing every bit from what stood before it and what it means, so that only what was not guessed
//! is stored; and unpacks it again, step by step the same.
#![no_std]
#![allow(
    clippy::indexing_slicing,
    reason = "places are masked or bounded where they are made; checks of each would take time with every bit"
)]

extern crate alloc;

mod coder;
mod contexts;
mod copies;
mod facts;
mod kind;
mod known;
mod pack;
mod text;
mod trees;
mod types;
mod unpack;
mod walk;

pub use pack::pack;
pub use unpack::{MOST, unpack};

/// How many trees there are: two for each kind, one for the first byte of a number and one for those that follow.
const KINDS: usize = 2 * kind::Kind::COUNT;
const _: () = assert!(
    KINDS == cartside_guess::KINDS,
    "each kind has chances of its own"
);

/// What was to be unpacked is cut, or has other bytes than were packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Damaged;
