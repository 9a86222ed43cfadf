//! The book on this device: lines, pictures, drafts and summaries in IndexedDB.
//!
//! [`Store`] is the way in. A [`Batch`] is saved wholly or not at all, and only a [`Saved`] lets a page say *saved*.
//! This room knows nothing of what the lines say.

mod asleep;
mod batch;
mod connection;
mod device;
mod drafts;
mod entries;
mod error;
mod meta;
mod other_tabs;
mod pictures;
mod record;
mod request;
mod room;
mod second;
mod shape;
mod staging;
mod store;
mod summaries;
mod transaction;

pub use asleep::{Watch, on_waking};
pub use batch::{Batch, NewLine, NewPicture, Saved};
pub use entries::HOUSE;
pub use error::StorageError;
pub use other_tabs::{Listening, on_other_tab};
pub use pictures::StoredPicture;
pub use room::{Promised, Room, ask_to_keep, is_kept, room};
pub use second::open_second;
pub use shape::Which;
pub use store::Store;
