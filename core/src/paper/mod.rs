//! What the book looks like on paper: the only room that knows how things are written out.
//!
#![doc = include_str!("FORMAT.md")]

mod json;
pub mod exchange;
pub mod line;
pub mod summary;
