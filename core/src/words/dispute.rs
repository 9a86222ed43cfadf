//! A dispute: what each side says, who says it and when, what counts meanwhile and how it ends.

use super::says::{says, subject};
use super::style::Style;
use super::when::{by, moment};
use super::{capital, limit::number};
use crate::daybook::{Entry, EntryId, Thread};
use crate::wheel::Wheel;

/// One side of a dispute.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideWords {
    /// The entry that says it.
    pub entry: EntryId,
    /// What it says.
    pub says: String,
    /// Who says it.
    pub by: String,
    /// When, as its device claimed.
    pub when: String,
    /// The device it was written on.
    pub device: String,
}

/// A dispute in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DisputeWords {
    /// What it is about.
    pub heading: String,
    /// What has happened.
    pub explanation: String,
    /// What each side says, earliest first.
    pub sides: Vec<SideWords>,
    /// What counts until it is settled.
    pub meanwhile: String,
    /// An earlier settlement that a late correction has opened again.
    pub settled_before: Option<String>,
    /// How it is settled.
    pub remedy: String,
}

/// Puts a thread's dispute into words; `None` for a thread without one.
#[must_use]
pub fn dispute(thread: &Thread, wheel: Option<&Wheel>, style: Style) -> Option<DisputeWords> {
    let first = thread.heads().first().filter(|_| thread.disputed())?;
    Some(DisputeWords {
        heading: capital(&subject(first, wheel, style)),
        explanation: format!(
            "{} entries stand for the same thing and differ. Neither device could know of the other's.",
            capital(&number(thread.heads().len()))
        ),
        sides: thread.heads().iter().map(|head| side(head, wheel, style)).collect(),
        meanwhile: "Until it is settled every side is shown, and the more cautious one counts.".to_owned(),
        settled_before: thread.last_settlement().map(|entry| settled(entry, wheel, style)),
        remedy: "Say which is right, or say it anew: one more entry then replaces them all. Every side stays in the book.".to_owned(),
    })
}

/// What one entry says, by whom and when.
#[must_use]
pub fn side(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> SideWords {
    SideWords {
        entry: entry.id,
        says: says(entry, wheel, style),
        by: by(entry),
        when: moment(&entry.at),
        device: entry.device.clone(),
    }
}

fn settled(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    format!(
        "It was settled once, as “{}” ({}, {}); an entry that came later has opened it again.",
        says(entry, wheel, style),
        by(entry),
        moment(&entry.at)
    )
}
