//! The day book: entries written once and never rubbed out, and how a set of them is read.
//!
//! An entry's id is the digest of its line, so two books come together as the union of two sets.
//! Everything here depends on an entry's own content or on the whole set, never on the order of
//! arrival.

pub mod book;
pub mod decision;
pub mod digest;
pub mod digests;
pub mod entry;
pub mod marks;
pub mod portion;
pub mod problem;
pub mod report;
pub mod same_as;
#[cfg(test)]
pub(crate) mod sample;
pub mod stamp;
pub mod thread;
pub mod threshold;
pub mod tyred;
pub mod tyring;
pub mod unwritten;
pub mod vehicle_view;
pub mod view;
pub mod work;
mod joining;
mod order;
#[cfg(test)]
mod tests;

pub use book::Book;
pub use decision::Decision;
pub use digest::Digest;
pub use digests::Digests;
pub use entry::{Entry, EntryId, Kind, Picture, Says, Subject, Visit, WheelSaid};
pub use marks::{Mark, Marks, Spot};
pub use portion::Portion;
pub use problem::Problem;
pub use report::Report;
pub use same_as::{Joined, SameAs};
pub use stamp::{Day, Stamp};
pub use thread::{State, Thread};
pub use threshold::{LimitSaid, Threshold};
pub use tyred::Tyred;
pub use tyring::{RoundTaken, TyringSaid};
pub use unwritten::{Hand, Unwritten};
pub use vehicle_view::VehicleView;
pub use view::View;
pub use work::{Work, WorkDone};
