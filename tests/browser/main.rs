//! The built app in real browsers: installed, used at the cart without a network, and brought together
//! with another device. `engines` says which test runs on which. What is in a module `alone` is timed,
//! and `cargo xtask test` runs it when nothing else runs.

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
mod contrast;
mod demonstration;
mod devices;
mod elsewhere;
mod engines;
mod erasing;
mod everyone;
mod examination;
mod install;
mod kept;
mod kills;
mod keyboard;
mod kinds;
mod limits;
mod main_line;
mod marks;
mod motion;
mod newer;
mod packed;
mod panic;
mod portions;
mod pressing;
mod reading;
mod report;
mod rested;
mod round;
mod saving;
mod screens;
mod second_copy;
mod stopping;
mod sub_path;
mod tabs;
mod touch;
mod trouble;
mod tyring;
mod typing;
mod words;
mod yard;
mod zoom;
