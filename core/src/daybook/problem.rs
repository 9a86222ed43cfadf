//! What is odd about a set of entries: reported, never a reason to drop one.

use super::entry::EntryId;

/// One oddity, naming the entry it is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Problem {
    /// It names an entry of another vehicle, slot or kind in `replaces`; that has no effect.
    ReplacesElsewhere {
        /// The entry.
        entry: EntryId,
        /// What it names.
        names: EntryId,
    },
    /// It strikes out nothing: it replaces nothing, or nothing of its own vehicle, slot and kind. It
    /// has no effect.
    StrikesNothing(EntryId),
    /// The entry that began its vehicle is not here, or begins no vehicle.
    VehicleNotHere {
        /// The entry.
        entry: EntryId,
        /// What it names as its vehicle.
        names: EntryId,
    },
    /// The examination it belongs to is not here, or is none.
    VisitNotHere {
        /// The entry.
        entry: EntryId,
        /// What it names as its examination.
        names: EntryId,
    },
    /// Some entries it replaces are not here; they count all the same.
    EarlierNotHere {
        /// The entry.
        entry: EntryId,
        /// How many.
        count: usize,
    },
}
