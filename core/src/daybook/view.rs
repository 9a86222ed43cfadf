//! A book as it reads: threads, vehicles, and what is odd about the set.

use std::cmp::Ordering;

use super::book::Book;
use super::digests::Digests;
use super::entry::{Entry, EntryId, Kind, Says, Subject};
use super::joining;
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

/// One thread with what it belongs to and its kind.
type Placed<'a> = (Subject, &'a Kind, Thread<'a>);

/// A book as it reads.
#[derive(Clone, Debug)]
pub struct View<'a> {
    /// By subject, then by kind.
    threads: Vec<Placed<'a>>,
    /// Every examination that a head of a thread names, with that thread's place; by examination. An old vehicle has
    /// ten thousand readings, of which one examination took three hundred.
    naming: Vec<(EntryId, usize)>,
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
            naming: Vec::new(),
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
            for thread in joining::threads(book, entries, one_thread, &mut view.problems) {
                view.threads.push((subject, kind, thread));
            }
        }
        view.problems.sort_unstable();
        view.naming = naming(&view.threads);
        view
    }

    /// What is odd about the set, in a fixed order.
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// Every thread.
    pub fn threads(&self) -> impl Iterator<Item = &Thread<'a>> {
        threads(&self.threads)
    }

    /// Every thread of one vehicle, or of the whole house. They stand by subject, so those of a small vehicle are found at
    /// once in a great book.
    pub(super) fn threads_of(&self, of: Subject) -> impl Iterator<Item = &Thread<'a>> {
        threads(self.stretch(&|(subject, ..)| subject.cmp(&of)))
    }

    /// Those of one kind.
    pub(super) fn of_kind(&self, of: Subject, kind: &Kind) -> impl Iterator<Item = &Thread<'a>> {
        threads(self.stretch(&|(subject, its, _)| subject.cmp(&of).then_with(|| (*its).cmp(kind))))
    }

    /// The threads that stand side by side where this order finds them.
    fn stretch(&self, order: &dyn Fn(&Placed<'a>) -> Ordering) -> &[Placed<'a>] {
        let first = self.threads.partition_point(|it| order(it).is_lt());
        let end = self.threads.partition_point(|it| order(it).is_le());
        self.threads.get(first..end).unwrap_or_default()
    }

    /// The threads of one kind of a vehicle of which a head names this examination, each once.
    pub(super) fn naming(
        &self,
        visit: EntryId,
        (of, kind): (Subject, &Kind),
    ) -> impl Iterator<Item = &Thread<'a>> {
        let first = self.naming.partition_point(|(names, _)| *names < visit);
        let from_there = self.naming.get(first..).unwrap_or_default().iter();
        let named = from_there.take_while(move |(names, _)| *names == visit);
        let named = named.filter_map(|(_, at)| self.threads.get(*at));
        named
            .filter(move |(subject, its, _)| *subject == of && *its == kind)
            .map(|(_, _, thread)| thread)
    }

    /// The threads in which the shop sets its limits, by the name of the row.
    pub fn limits(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.of_kind(Subject::House, &Kind::Limit)
    }

    /// Which vehicles are one.
    pub fn joined(&self) -> &Joined {
        &self.joined
    }

    /// The threads in which two vehicles are said to be one.
    pub fn same_as(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.of_kind(Subject::House, &Kind::SameAs)
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

fn threads<'v, 'a>(placed: &'v [Placed<'a>]) -> impl Iterator<Item = &'v Thread<'a>> {
    placed.iter().map(|(_, _, thread)| thread)
}

/// The examinations that the heads of each thread name: nothing else counts.
fn naming(threads: &[Placed<'_>]) -> Vec<(EntryId, usize)> {
    let mut naming: Vec<(EntryId, usize)> = Vec::new();
    for (at, (_, _, thread)) in threads.iter().enumerate() {
        let visits = thread.heads().iter().filter_map(|head| head.visit);
        naming.extend(visits.map(|visit| (visit, at)));
    }
    naming.sort_unstable();
    naming.dedup();
    naming
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
