//! An entry that is about to be written: what it says and where it belongs. Who writes it, on which
//! device and when comes from outside.

use super::decision::Decision;
use super::entry::{Entry, EntryId, Kind, Says};
use super::report;
use super::stamp::Stamp;
use super::tyring::TyringSaid;

/// Who writes, where and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hand {
    /// Who says it; empty if not said.
    pub by: String,
    /// The device it is written on.
    pub device: String,
    /// The wall time the device claims.
    pub at: Stamp,
    /// One more than the greatest counter in the book.
    pub n: u64,
}

/// An entry not yet written.
#[derive(Clone, Debug, PartialEq)]
pub struct Unwritten {
    /// What sort of thing it says.
    pub kind: Kind,
    /// The entry that began its vehicle; `None` to begin one.
    pub vehicle: Option<EntryId>,
    /// The examination it belongs to.
    pub visit: Option<EntryId>,
    /// The description it is judged against.
    pub described_by: Option<EntryId>,
    /// Part and field.
    pub slot: String,
    /// What it says.
    pub says: Says,
    /// The entries it replaces.
    pub replaces: Vec<EntryId>,
}

impl Unwritten {
    /// An entry that says this of a vehicle (`None` to begin one, for a limit and for two vehicles that
    /// are one, which are the whole house's), replacing nothing. `None` for
    /// what can only be said of other entries: a strike, or something unread.
    pub fn new(vehicle: Option<EntryId>, says: Says) -> Option<Unwritten> {
        let (kind, slot) = place(&says)?;
        Some(Unwritten {
            kind,
            vehicle,
            visit: None,
            described_by: None,
            slot,
            says,
            replaces: Vec::new(),
        })
    }

    /// The same, within an examination.
    #[must_use]
    pub fn in_visit(self, visit: EntryId) -> Unwritten {
        Unwritten {
            visit: Some(visit),
            ..self
        }
    }

    /// The same, naming the description it is judged against.
    #[must_use]
    pub fn described_by(self, description: EntryId) -> Unwritten {
        Unwritten {
            described_by: Some(description),
            ..self
        }
    }

    /// The same, replacing these entries of its own slot: a correction, or the settling of a
    /// dispute.
    #[must_use]
    pub fn replacing(self, entries: Vec<EntryId>) -> Unwritten {
        Unwritten {
            replaces: entries,
            ..self
        }
    }

    /// An entry that strikes out the thread this entry is a head of; `heads` are all its heads.
    pub fn striking(entry: &Entry, heads: Vec<EntryId>) -> Unwritten {
        Unwritten {
            kind: entry.kind.clone(),
            vehicle: entry.vehicle.or(entry.begins_vehicle().then_some(entry.id)),
            visit: entry.visit,
            described_by: None,
            slot: entry.slot.clone(),
            says: Says::Struck,
            replaces: heads,
        }
    }
}

/// The kind and slot of what is said, if it has one of its own.
fn place(says: &Says) -> Option<(Kind, String)> {
    Some(match says {
        Says::Vehicle(_) => (Kind::Vehicle, "vehicle".to_owned()),
        Says::Wheel(said) => (Kind::Wheel, said.position.code().to_owned()),
        Says::Visit(_) => (Kind::Visit, "visit".to_owned()),
        Says::Reading(reading) => (Kind::Reading, reading.slot.code()),
        Says::Remark(part, _) => (Kind::Remark, part.code()),
        Says::Picture(picture) => (Kind::Picture, picture.part.code()),
        Says::Erasure(digest) => (Kind::Erasure, digest.hex()),
        Says::Marks(marks) => (Kind::Marks, marks.picture.hex()),
        Says::Decision(decision) => (Kind::Decision, Decision::slot(decision.position)),
        Says::Limit(limit) => (Kind::Limit, limit.row.clone()),
        Says::Work(work) => (Kind::Work, work.part.code()),
        Says::Report(_) => (Kind::Report, report::SLOT.to_owned()),
        Says::Round(round) => (Kind::Round, round.slot()),
        Says::Tyring(said) => (Kind::Tyring, TyringSaid::slot(said.position)),
        Says::SameAs(same) => (Kind::SameAs, same.slot()),
        Says::Struck | Says::Unread => return None,
    })
}
