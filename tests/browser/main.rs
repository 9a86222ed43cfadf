//! The built app in real browsers: installed, used at the cart without a network, and brought together
//! with another device. `engines` says which test runs on which.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout
)]

mod addresses;
mod answers;
mod arriving;
mod asking;
mod broken_files;
mod demonstration;
mod devices;
mod elsewhere;
mod engines;
mod erasing;
mod examination;
mod install;
mod kept;
mod kills;
mod kinds;
mod limits;
mod main_line;
mod marks;
mod newer;
mod packed;
mod panic;
mod portions;
mod report;
mod round;
mod saving;
mod second_copy;
mod stopping;
mod sub_path;
mod tabs;
mod touch;
mod trouble;
mod typing;
mod words;
mod yard;
