//! Cartside in the browser.

mod clock;
mod exchange;
mod photo;
mod storage;
mod update;

fn main() {}
