//! The figures the README quotes, taken in a real browser whose processor is slowed four times. Each stands
//! on a line `figure: <name>: <value> <unit> (limit …)`, and one over its limit fails.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout
)]

mod big_book;
mod figure;
mod opening;
mod pictures;
mod rating;
mod responding;
mod saving;
mod starting;
