//! What must hold of any bytes at all. The fuzzer feeds these checks with what it makes up; the tests feed them with
//! what it has found.

#[allow(dead_code)] // The tests of the exchange file use more of it.
#[path = "../exchange/bytes.rs"]
mod bytes;
#[path = "checks/file.rs"]
mod file;
#[path = "checks/members.rs"]
mod members;
#[path = "checks/manifest.rs"]
mod manifest;
#[path = "checks/line.rs"]
mod line;
#[path = "checks/length.rs"]
mod length;

/// A check, by the name of its folder in `corpus` and `crashers`.
pub type Check = (&'static str, fn(&[u8]));

/// Every check.
pub const CHECKS: [Check; 5] = [
    ("file", file),
    ("members", members),
    ("manifest", manifest),
    ("line", line),
    ("length", length),
];

/// The bytes as a file from outside.
pub fn file(bytes: &[u8]) {
    file::check(bytes);
}

/// The bytes as a recipe for a ZIP whose sizes and digests mostly hold, so that what lies behind them is reached.
pub fn members(bytes: &[u8]) {
    members::check(bytes);
}

/// The bytes as the manifest of a file that is otherwise sound.
pub fn manifest(bytes: &[u8]) {
    manifest::check(bytes);
}

/// The bytes as lines of a book.
pub fn line(bytes: &[u8]) {
    line::check(bytes);
}

/// The bytes as what someone typed for a length or a share, the first saying which length and the second which unit.
pub fn length(bytes: &[u8]) {
    length::check(bytes);
}
