//! Pictures taken at the cart: from the camera's file to a JPEG the book can keep, and addresses to show it by.

mod canvas;
mod error;
mod object_url;
mod picture;
mod source;

pub use object_url::ObjectUrl;
pub use picture::{Picture, take, thumbnail};
