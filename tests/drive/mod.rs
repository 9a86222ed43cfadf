//! The built app in a real browser, driven in words: what is opened, tapped and seen.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout
)]

pub mod album;
pub mod browser;
pub mod camera;
pub mod carried;
pub mod device;
pub mod driver;
pub mod failure;
pub mod page;
pub mod printed;
pub mod programs;
pub mod server;
pub mod sight;

pub use browser::Browser;
pub use carried::Carried;
pub use device::Device;
pub use printed::Printed;
pub use server::Server;
