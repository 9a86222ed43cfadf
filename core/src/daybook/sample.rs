//! An entry for tests, of which each says what matters to it.

use super::{Digest, Entry, EntryId, Kind, Says, Stamp};

/// The id of the entry of this number.
pub(crate) fn id(n: u64) -> EntryId {
    Digest::of(&n.to_le_bytes())
}

/// An entry of this number and of no examination; it belongs to the vehicle of number zero, unless it begins that.
pub(crate) fn entry(n: u64, kind: Kind, slot: &str, says: Says) -> Entry {
    Entry {
        id: id(n),
        vehicle: (n != 0).then(|| id(0)),
        visit: None,
        described_by: None,
        kind,
        slot: slot.to_owned(),
        says,
        by: String::new(),
        device: String::new(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
        n,
        replaces: Vec::new(),
        unread_fields: 0,
    }
}
