//! The README's pictures: taken of the built app as it shows its demonstration, and known by the digests of the files
//! that make those screens, which lie beside them. `cargo xtask pictures` takes them.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout
)]

mod made_from;
mod taking;
