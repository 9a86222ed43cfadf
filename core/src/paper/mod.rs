//! What the book looks like on paper: the only room that knows how things are written out.

mod json;
pub mod exchange;
pub mod line;
pub mod summary;
