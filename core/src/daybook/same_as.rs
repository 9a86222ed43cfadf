//! Two descriptions of one vehicle, made apart: the entry that says so, and what it joins. Such an entry
//! belongs to no vehicle but to the whole house, so that a device knows of it before it opens either.

use super::book::Book;
use super::digest::Digest;
use super::entry::{Entry, EntryId, Kind, Says, Subject};
use super::joining::threads;
use super::order;

/// Two vehicles, each by the entry that began it, that are one; the smaller id stands first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SameAs {
    one: EntryId,
    other: EntryId,
}

impl SameAs {
    /// These two, in whatever order they are named; `None` if they are one id.
    pub fn new(one: EntryId, other: EntryId) -> Option<SameAs> {
        (one != other).then(|| SameAs {
            one: one.min(other),
            other: one.max(other),
        })
    }

    /// Both ids, the smaller first.
    pub fn both(self) -> [EntryId; 2] {
        [self.one, self.other]
    }

    /// The slot in which the two are said to be one: both ids with a stroke between them.
    pub fn slot(self) -> String {
        format!("{}/{}", self.one, self.other)
    }

    /// The two that a slot names; `None` for a slot of any other form, ids in the wrong order among them.
    pub fn from_slot(slot: &str) -> Option<SameAs> {
        let (one, other) = slot.split_once('/')?;
        let (one, other) = (Digest::from_hex(one)?, Digest::from_hex(other)?);
        (one < other).then_some(SameAs { one, other })
    }
}

/// Which vehicles of a book are one: for each joined id the one that stands for them all, the smallest.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Joined(Vec<(EntryId, EntryId)>);

impl Joined {
    /// What the entries of a book join. One that is disputed counts as long as any side of it says so.
    pub fn of(book: &Book) -> Joined {
        let of_kind = |entry: &&Entry| entry.kind == Kind::SameAs;
        let mut entries: Vec<&Entry> = book.entries().filter(of_kind).collect();
        order::sort(&mut entries, &|one, other| one.slot.cmp(&other.slot));
        let mut joined = Joined::default();
        for group in entries.chunk_by(|one, other| one.slot == other.slot) {
            for thread in threads(book, group, true, &mut Vec::new()) {
                for entry in thread.counts() {
                    if let Says::SameAs(said) = entry.says {
                        joined.join(said);
                    }
                }
            }
        }
        joined
    }

    /// The id that stands for this one and all it is joined with; itself if it is joined with none.
    pub fn stands_for(&self, id: EntryId) -> EntryId {
        let at = self.0.binary_search_by_key(&id, |(of, _)| *of);
        at.ok()
            .and_then(|at| self.0.get(at))
            .map_or(id, |(_, first)| *first)
    }

    /// All ids that are one with this one, itself among them, the smallest first.
    pub fn all(&self, id: EntryId) -> Vec<EntryId> {
        let first = self.stands_for(id);
        let joined = self.0.iter().filter(|(_, of)| *of == first);
        let all: Vec<EntryId> = joined.map(|(id, _)| *id).collect();
        if all.is_empty() { vec![id] } else { all }
    }

    /// What an entry belongs to once these are one.
    pub(super) fn subject(&self, entry: &Entry) -> Subject {
        match entry.subject() {
            Subject::Vehicle(id) if !self.0.is_empty() => Subject::Vehicle(self.stands_for(id)),
            subject => subject,
        }
    }

    fn join(&mut self, said: SameAs) {
        let [one, other] = said.both().map(|id| self.stands_for(id));
        let (first, second) = (one.min(other), one.max(other));
        for (_, stands) in &mut self.0 {
            if *stands == second {
                *stands = first;
            }
        }
        for id in [one, other] {
            if let Err(at) = self.0.binary_search_by_key(&id, |(of, _)| *of) {
                self.0.insert(at, (id, first));
            }
        }
    }
}
