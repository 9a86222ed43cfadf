//! The built app in real browsers, driven in words: what is opened, tapped and seen.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout
)]

pub mod album;
pub mod audit;
pub mod browser;
pub mod camera;
pub mod carried;
pub mod device;
pub mod driver;
pub mod early;
pub mod engine;
pub mod failure;
pub mod installed;
pub mod keys;
pub mod page;
pub mod pressing;
pub mod printed;
pub mod programs;
pub mod reading;
mod rested;
mod running;
pub mod server;
pub mod sight;
pub mod site;

pub use audit::Theme;
pub use browser::Browser;
pub use carried::Carried;
pub use device::Device;
pub use engine::Engine;
pub use printed::Printed;
pub use server::Server;
pub use site::Site;
