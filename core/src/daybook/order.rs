//! The orders in which entries are gone through, and how one is found. One sort serves them all, since
//! each sort of its own is that much more to download.

use std::cmp::Ordering;

use super::entry::{Entry, EntryId};

/// Sorts entries; those that the order does not tell apart stay as they stood.
pub(super) fn sort(entries: &mut [&Entry], order: &dyn Fn(&Entry, &Entry) -> Ordering) {
    entries.sort_by(|one, other| order(one, other));
}

/// By counter, then by id: as entries are shown.
pub(super) fn shown(one: &Entry, other: &Entry) -> Ordering {
    one.order().cmp(&other.order())
}

/// By the day each claims, then as they are shown: as a history goes.
pub(super) fn by_day(one: &Entry, other: &Entry) -> Ordering {
    let days = one.at.day().cmp(other.at.day());
    days.then_with(|| shown(one, other))
}

/// By id: as entries are found.
pub(super) fn by_id(one: &Entry, other: &Entry) -> Ordering {
    one.id.cmp(&other.id)
}

/// The place of the entry of this id among entries that stand by id.
pub(super) fn place(entries: &[&Entry], id: EntryId) -> Option<usize> {
    entries.binary_search_by(|entry| entry.id.cmp(&id)).ok()
}
