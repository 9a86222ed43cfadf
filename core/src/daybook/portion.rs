//! A portion of a book, to be carried to another: the entries that are asked for, and all that they rest on.
//!
//! A portion can be read by itself: whatever an entry of it replaces, and the vehicle, the examination and the
//! description that it names, and the picture that it marks, are in it too, as far as they are in the book. The limits of the house belong to no
//! vehicle and do not go with one: they would be set in the other house.

use super::book::Book;
use super::digest::Digest;
use super::digests::Digests;
use super::entry::{Entry, EntryId, Kind, Says, Subject};
use super::same_as::{Joined, SameAs};

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
        let view = book.view();
        let pictures = Pictures::of(book, view.joined());
        let mut taken = vec![false; book.len()];
        let mut open: Vec<EntryId> = asked.collect();
        while let Some(id) = open.pop() {
            // What is not in the book is passed over, and what has been taken is not taken again.
            let place = book.place(id).ok().and_then(|at| taken.get_mut(at));
            if let Some(place) = place.filter(|taken| !**taken) {
                *place = true;
                let entry = book.entry(id);
                open.extend(entry.into_iter().flat_map(rests_on));
                open.extend(
                    entry
                        .into_iter()
                        .flat_map(|entry| pictures.marked_by(entry)),
                );
            }
        }
        let entries = book.entries().zip(taken).filter(|(_, taken)| *taken);
        let entries: Vec<&Entry> = entries.map(|(entry, _)| entry).collect();
        let erased = view.erased();
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

/// The entries that speak of pictures, by vehicle and picture.
struct Pictures<'j> {
    spoken: Vec<(Subject, Digest, EntryId)>,
    joined: &'j Joined,
}

impl<'j> Pictures<'j> {
    fn of(book: &Book, joined: &'j Joined) -> Pictures<'j> {
        let speaks = |entry: &Entry| Some((joined.subject(entry), entry.pictured()?, entry.id));
        let mut spoken: Vec<_> = book.entries().filter_map(speaks).collect();
        spoken.sort_unstable();
        Pictures { spoken, joined }
    }

    /// Those that speak of the picture that this entry marks.
    fn marked_by(&self, entry: &Entry) -> impl Iterator<Item = EntryId> {
        let marked = match &entry.says {
            Says::Marks(marks) => Some((self.joined.subject(entry), marks.picture)),
            _ => None,
        };
        let from = |of| self.spoken.partition_point(|(by, at, _)| (*by, *at) < of);
        let rest = marked.and_then(|of| self.spoken.get(from(of)..));
        let same = rest.unwrap_or_default().iter();
        let same = same.take_while(move |(by, at, _)| Some((*by, *at)) == marked);
        same.map(|(_, _, id)| *id)
    }
}
