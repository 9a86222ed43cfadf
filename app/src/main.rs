//! Cartside in the browser.
fn main() {}
