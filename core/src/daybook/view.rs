//! A book as it reads: threads, vehicles, and what is odd about the set.

use super::book::Book;
use super::digests::Digests;
use super::entry::{Entry, EntryId, Kind, Says, Subject};
use super::joining::threads;
use super::order;
use super::problem::Problem;
use super::same_as::Joined;
use super::thread::Thread;
use super::vehicle_view::VehicleView;

/// Entries that may be joined: one kind, one subject, one slot, and for what is decided one
/// examination. Vehicles that are one are one subject.
type Group<'a> = (Subject, &'a Kind, &'a str, Option<EntryId>);

fn group<'a>(entry: &'a Entry, joined: &Joined) -> Group<'a> {
    let subject = joined.subject(entry);
    (subject, &entry.kind, &entry.slot, entry.within())
}

/// A book as it reads.
#[derive(Clone, Debug)]
pub struct View<'a> {
    threads: Vec<(Subject, &'a Kind, Thread<'a>)>,
    problems: Vec<Problem>,
    joined: Joined,
}

impl<'a> View<'a> {
    /// Reads the whole set.
    pub(super) fn of(book: &'a Book) -> View<'a> {
        let joined = Joined::of(book);
        let mut entries: Vec<&'a Entry> = book.entries().collect();
        // Within a group they stay by id, as the book has them.
        order::sort(&mut entries, &|one, other| {
            group(one, &joined).cmp(&group(other, &joined))
        });
        let mut view = View {
            threads: Vec::new(),
            problems: book
                .entries()
                .flat_map(|entry| strays(book, entry, &joined))
                .collect(),
            joined: joined.clone(),
        };
        let alike =
            |one: &&'a Entry, other: &&'a Entry| group(one, &joined) == group(other, &joined);
        for entries in entries.chunk_by(alike) {
            let Some((subject, kind, ..)) = entries.first().map(|entry| group(entry, &joined))
            else {
                continue;
            };
            let one_thread = kind.one_thread_a_slot();
            for thread in threads(book, entries, one_thread, &mut view.problems) {
                view.threads.push((subject, kind, thread));
            }
        }
        view.problems.sort_unstable();
        view
    }

    /// What is odd about the set, in a fixed order.
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// Every thread.
    pub fn threads(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.threads.iter().map(|(_, _, thread)| thread)
    }

    /// Every thread of one vehicle, or of the whole house, with its kind. They stand by subject, so those of a small
    /// vehicle are found at once in a great book.
    pub(super) fn threads_of(&self, of: Subject) -> impl Iterator<Item = (&'a Kind, &Thread<'a>)> {
        let first = self.threads.partition_point(|(subject, ..)| *subject < of);
        let from_there = self.threads.get(first..).unwrap_or_default();
        from_there
            .iter()
            .take_while(move |(subject, _, _)| *subject == of)
            .map(|(_, kind, thread)| (*kind, thread))
    }

    /// The threads in which the shop sets its limits, by the name of the row.
    pub fn limits(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.threads_of(Subject::House)
            .filter(|(kind, _)| **kind == Kind::Limit)
            .map(|(_, thread)| thread)
    }

    /// Which vehicles are one.
    pub fn joined(&self) -> &Joined {
        &self.joined
    }

    /// The threads in which two vehicles are said to be one.
    pub fn same_as(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.threads_of(Subject::House)
            .filter(|(kind, _)| **kind == Kind::SameAs)
            .map(|(_, thread)| thread)
    }

    /// Every vehicle that any entry belongs to, whether the entry that began it is here or not; of those that
    /// are one the one that stands for them.
    pub fn vehicles(&self) -> Vec<EntryId> {
        let mut vehicles = Vec::new();
        for (subject, _, _) in &self.threads {
            if let Subject::Vehicle(id) = subject
                && vehicles.last() != Some(id)
            {
                vehicles.push(*id);
            }
        }
        vehicles
    }

    /// One vehicle's part of the book, by the id of any that are one with it.
    pub fn vehicle(&self, id: EntryId) -> VehicleView<'_, 'a> {
        VehicleView::new(self, self.joined.stands_for(id))
    }

    /// Digests of the pictures whose bytes are to go.
    pub fn erased(&self) -> Digests {
        self.threads()
            .flat_map(Thread::counts)
            .filter_map(|entry| match entry.says {
                Says::Erasure(digest) => Some(digest),
                _ => None,
            })
            .collect()
    }

    /// How many entries this version keeps without reading, or reads only in part.
    pub fn written_by_newer(&self) -> usize {
        self.threads()
            .flat_map(Thread::entries)
            .filter(|entry| entry.says == Says::Unread || entry.unread_fields > 0)
            .count()
    }
}

/// What an entry names as its vehicle or examination, and is not that.
fn strays(book: &Book, entry: &Entry, joined: &Joined) -> Vec<Problem> {
    let vehicle = entry
        .vehicle
        .filter(|names| !book.entry(*names).is_some_and(Entry::begins_vehicle))
        .map(|names| Problem::VehicleNotHere {
            entry: entry.id,
            names,
        });
    let visit = entry
        .visit
        .filter(|names| {
            !book.entry(*names).is_some_and(|named| {
                named.kind == Kind::Visit && joined.subject(named) == joined.subject(entry)
            })
        })
        .map(|names| Problem::VisitNotHere {
            entry: entry.id,
            names,
        });
    vehicle.into_iter().chain(visit).collect()
}
