//! A portion of a book, to be carried to another: the entries that are asked for, and all that they rest on.
//!
//! A portion can be read by itself: whatever an entry of it replaces, and the vehicle, the examination and the
//! description that it names, are in it too, as far as they are in the book. The limits of the house belong to no
//! vehicle and do not go with one: they would be set in the other house.

use super::book::Book;
use super::digests::Digests;
use super::entry::{Entry, EntryId, Kind, Subject};
use super::same_as::SameAs;

/// Which entries of a book, and which pictures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Portion {
    /// The ids of the entries.
    pub entries: Digests,
    /// The digests of the pictures that these speak of; none that any entry of the whole book has erased.
    pub pictures: Digests,
}

impl Portion {
    /// Everything about one vehicle, and about those that are one with it.
    pub fn of_vehicle(book: &Book, vehicle: EntryId) -> Portion {
        let view = book.view();
        let joined = view.joined();
        let is_own = |id: EntryId| joined.stands_for(id) == joined.stands_for(vehicle);
        let own = |entry: &&Entry| match entry.subject() {
            Subject::Vehicle(id) => is_own(id),
            Subject::House if entry.kind == Kind::SameAs => SameAs::from_slot(&entry.slot)
                .is_some_and(|same| same.both().into_iter().any(is_own)),
            Subject::House => false,
        };
        Portion::with_ancestors(book, book.entries().filter(own).map(|entry| entry.id))
    }

    /// These entries, and all that they rest on.
    pub fn with_ancestors(book: &Book, asked: impl Iterator<Item = EntryId>) -> Portion {
        let mut taken = vec![false; book.len()];
        let mut open: Vec<EntryId> = asked.collect();
        while let Some(id) = open.pop() {
            // What is not in the book is passed over, and what has been taken is not taken again.
            let place = book.place(id).ok().and_then(|at| taken.get_mut(at));
            if let Some(place) = place.filter(|taken| !**taken) {
                *place = true;
                open.extend(book.entry(id).into_iter().flat_map(rests_on));
            }
        }
        let entries = book.entries().zip(taken).filter(|(_, taken)| *taken);
        let entries: Vec<&Entry> = entries.map(|(entry, _)| entry).collect();
        let erased = book.view().erased();
        let pictures = entries.iter().filter_map(|entry| entry.pictured());
        Portion {
            pictures: pictures.filter(|digest| !erased.contains(digest)).collect(),
            entries: entries.iter().map(|entry| entry.id).collect(),
        }
    }
}

/// The entries that an entry names.
fn rests_on(entry: &Entry) -> impl Iterator<Item = EntryId> {
    let named = [entry.vehicle, entry.visit, entry.described_by];
    named
        .into_iter()
        .flatten()
        .chain(entry.replaces.iter().copied())
}
