//! A page as plain data, put up in the browser and kept in step with the signals it reads.
//!
//! Leptos' own views are generic in everything they hold, and every page becomes code of its own: three fifths of
//! the download, when measured. Here an element is a name, attributes, listeners and pieces; one piece of code puts
//! any of them up. Signals, memos, effects, owners and contexts are Leptos'.

mod heard;
mod piece;
mod sheet;
mod standing;

pub use heard::{picked_file, typed};
pub use piece::{Piece, afresh, live, nothing};
pub(crate) use sheet::sheet;
pub use sheet::{Hole, fill, heard, is_sound, tap};

/// Puts a page up at the end of the body, for as long as the app runs. `make` can read and provide contexts.
pub fn put_up(make: impl FnOnce() -> Piece + 'static) {
    // Leptos starts its executor and owns the signals; that its own view is empty is all it need know.
    leptos::mount::mount_to_body(|| {
        let stands = standing::build(make());
        stands.mount(&leptos::tachys::dom::body(), None);
        // The page lives as long as its tab.
        std::mem::forget(stands);
    });
}
