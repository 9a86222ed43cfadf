//! A book: a set of entries, and how the set is read. The order in which entries arrive makes no
//! difference, and an entry that is there twice is there once.

use std::collections::{BTreeMap, BTreeSet};

use super::digest::Digest;
use super::entry::{Entry, EntryId, GREATEST_N, Kind, Says, Subject};
use super::problem::Problem;
use super::thread::Thread;
use crate::survey::Reading;
use crate::wheel::{Position, Vehicle, Wheel};

/// A set of entries.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    entries: BTreeMap<EntryId, Entry>,
}

impl FromIterator<Entry> for Book {
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Book {
        Book {
            entries: entries.into_iter().map(|entry| (entry.id, entry)).collect(),
        }
    }
}

impl Book {
    /// Puts one more entry in; `false` if it was there already.
    pub fn add(&mut self, entry: Entry) -> bool {
        self.entries.insert(entry.id, entry).is_none()
    }

    /// How many entries there are.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Every entry, by id.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    /// The entry of this id.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(&id)
    }

    /// The counter the next entry takes, one more than the greatest; it stays at its greatest
    /// lawful value once that is reached.
    pub fn next_n(&self) -> u64 {
        next_n(
            self.entries
                .values()
                .map(|entry| entry.n)
                .max()
                .unwrap_or(0),
        )
    }

    /// Reads the whole set: threads, vehicles, oddities.
    pub fn view(&self) -> View<'_> {
        View::of(self)
    }
}

/// The counter after this one.
pub fn next_n(greatest: u64) -> u64 {
    greatest.saturating_add(1).min(GREATEST_N)
}

/// Entries that may be joined: one kind, one subject, one slot.
type Group<'a> = (Subject, &'a Kind, &'a str);

/// A book as it reads.
#[derive(Clone, Debug)]
pub struct View<'a> {
    threads: Vec<(Subject, &'a Kind, Thread<'a>)>,
    problems: Vec<Problem>,
}

impl<'a> View<'a> {
    fn of(book: &'a Book) -> View<'a> {
        let mut groups: BTreeMap<Group<'a>, Vec<&'a Entry>> = BTreeMap::new();
        for entry in book.entries.values() {
            groups
                .entry((entry.subject(), &entry.kind, &entry.slot))
                .or_default()
                .push(entry);
        }
        let mut problems = Vec::new();
        let mut threads = Vec::new();
        for ((subject, kind, _), entries) in groups {
            for thread in split(book, entries, kind.one_thread_a_slot(), &mut problems) {
                threads.push((subject, kind, thread));
            }
        }
        let mut view = View { threads, problems };
        view.look_for_strays(book);
        view.problems.sort_unstable();
        view
    }

    fn look_for_strays(&mut self, book: &Book) {
        for entry in book.entries.values() {
            if let Some(names) = entry.vehicle
                && !book.entry(names).is_some_and(Entry::begins_vehicle)
            {
                self.problems.push(Problem::VehicleNotHere {
                    entry: entry.id,
                    names,
                });
            }
            if let Some(names) = entry.visit
                && !book.entry(names).is_some_and(|visit| {
                    visit.kind == Kind::Visit && visit.subject() == entry.subject()
                })
            {
                self.problems.push(Problem::VisitNotHere {
                    entry: entry.id,
                    names,
                });
            }
        }
    }

    /// What is odd about the set, in a fixed order.
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// Every thread.
    pub fn threads(&self) -> impl Iterator<Item = &Thread<'a>> {
        self.threads.iter().map(|(_, _, thread)| thread)
    }

    /// Every vehicle that any entry belongs to, whether the entry that began it is here or not.
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

    /// One vehicle's part of the book.
    pub fn vehicle(&self, id: EntryId) -> VehicleView<'_, 'a> {
        VehicleView { view: self, id }
    }

    /// Digests of the pictures whose bytes are to go.
    pub fn erased(&self) -> BTreeSet<Digest> {
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

/// Splits one group into threads: all in one where the slot has only one, else by `replaces`.
fn split<'a>(
    book: &Book,
    entries: Vec<&'a Entry>,
    one_thread: bool,
    problems: &mut Vec<Problem>,
) -> Vec<Thread<'a>> {
    let here: BTreeMap<EntryId, usize> = entries
        .iter()
        .enumerate()
        .map(|(at, entry)| (entry.id, at))
        .collect();
    let mut joined = Joined::new(entries.len());
    let mut replaced = BTreeSet::new();
    let mut first_to_name: BTreeMap<EntryId, usize> = BTreeMap::new();
    let mut missing: Vec<(usize, EntryId)> = Vec::new();
    for (at, entry) in entries.iter().enumerate() {
        let mut absent = 0;
        for target in &entry.replaces {
            match here.get(target) {
                Some(other) if *other != at => {
                    replaced.insert(*target);
                    joined.join(at, *other);
                }
                Some(_) => problems.push(Problem::ReplacesElsewhere {
                    entry: entry.id,
                    names: *target,
                }),
                None if book.entry(*target).is_some() => {
                    problems.push(Problem::ReplacesElsewhere {
                        entry: entry.id,
                        names: *target,
                    });
                }
                None => {
                    absent += 1;
                    missing.push((at, *target));
                    let namer = *first_to_name.entry(*target).or_insert(at);
                    joined.join(at, namer);
                }
            }
        }
        if absent > 0 {
            problems.push(Problem::EarlierNotHere {
                entry: entry.id,
                count: absent,
            });
        }
        if entry.strikes() && entry.replaces.is_empty() {
            problems.push(Problem::StrikesNothing(entry.id));
        }
        if one_thread {
            joined.join(at, 0);
        }
    }
    let mut threads: BTreeMap<usize, (Vec<&'a Entry>, Vec<EntryId>)> = BTreeMap::new();
    for (at, entry) in entries.iter().enumerate() {
        threads.entry(joined.root(at)).or_default().0.push(entry);
    }
    for (at, target) in missing {
        threads.entry(joined.root(at)).or_default().1.push(target);
    }
    let is_replaced = |id: EntryId| replaced.contains(&id);
    threads
        .into_values()
        .map(|(entries, not_here)| Thread::new(entries, &is_replaced, not_here))
        .collect()
}

/// Which entries of a group belong together.
struct Joined(Vec<usize>);

impl Joined {
    fn new(len: usize) -> Joined {
        Joined((0..len).collect())
    }

    fn root(&mut self, mut at: usize) -> usize {
        while let Some(&up) = self.0.get(at) {
            if up == at {
                break;
            }
            // Each step halves the way for the next search; without it a long chain of corrections
            // would cost the square of its length.
            let above = self.0.get(up).copied().unwrap_or(up);
            if let Some(link) = self.0.get_mut(at) {
                *link = above;
            }
            at = above;
        }
        at
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.root(one), self.root(other));
        if let Some(link) = self.0.get_mut(one.max(other)) {
            *link = one.min(other);
        }
    }
}

/// One vehicle's part of a book as it reads.
#[derive(Clone, Copy, Debug)]
pub struct VehicleView<'v, 'a> {
    view: &'v View<'a>,
    id: EntryId,
}

impl<'v, 'a> VehicleView<'v, 'a> {
    /// The entry that began the vehicle.
    pub fn id(&self) -> EntryId {
        self.id
    }

    /// The threads of one kind, earliest first.
    pub fn threads(&self, kind: &Kind) -> Vec<&'v Thread<'a>> {
        let mut threads: Vec<_> = self
            .view
            .threads
            .iter()
            .filter(|(subject, of, _)| *subject == Subject::Vehicle(self.id) && *of == kind)
            .map(|(_, _, thread)| thread)
            .collect();
        threads.sort_by_key(|thread| thread.entries().first().map(|entry| entry.order()));
        threads
    }

    /// Every entry of the vehicle, earliest first.
    pub fn entries(&self) -> Vec<&'a Entry> {
        let mine = self
            .view
            .threads
            .iter()
            .filter(|(subject, _, _)| *subject == Subject::Vehicle(self.id));
        let mut entries: Vec<&'a Entry> = mine
            .flat_map(|(_, _, thread)| thread.entries().to_vec())
            .collect();
        entries.sort_by_key(|entry| entry.order());
        entries
    }

    /// How many entries belong to the vehicle.
    pub fn count(&self) -> usize {
        self.entries().len()
    }

    /// The latest of its entries, by counter.
    pub fn last_entry(&self) -> Option<&'a Entry> {
        self.entries().last().copied()
    }

    /// What is said of the vehicle as a whole; in a dispute the side written first.
    pub fn described(&self) -> Option<&'a Vehicle> {
        self.threads(&Kind::Vehicle)
            .first()?
            .counts()
            .into_iter()
            .find_map(|entry| match &entry.says {
                Says::Vehicle(vehicle) => Some(vehicle),
                _ => None,
            })
    }

    /// Whether the vehicle as a whole is struck out.
    pub fn struck(&self) -> bool {
        self.threads(&Kind::Vehicle)
            .first()
            .is_some_and(|thread| thread.struck())
    }

    /// The thread that describes the wheel at this position.
    pub fn wheel_thread(&self, position: Position) -> Option<&'v Thread<'a>> {
        self.threads(&Kind::Wheel)
            .into_iter()
            .find(|thread| wheel_of(thread, position).is_some())
    }

    /// The wheel at this position and the entry that describes it; in a dispute the side with the
    /// most parts, so that no reading falls out of sight.
    pub fn wheel(&self, position: Position) -> Option<(&'a Wheel, EntryId)> {
        wheel_of(self.wheel_thread(position)?, position)
    }

    /// The wheels that are described and not struck out, in the order they are walked round.
    pub fn wheels(&self) -> Vec<(Position, &'a Wheel)> {
        Position::ALL
            .into_iter()
            .filter_map(|position| Some((position, self.wheel(position)?.0)))
            .collect()
    }

    /// The thread of an examination, by the id of any of its entries.
    pub fn visit_thread(&self, id: EntryId) -> Option<&'v Thread<'a>> {
        self.threads(&Kind::Visit)
            .into_iter()
            .find(|thread| thread.has(id))
    }

    /// The examinations that stand, earliest first, each by the id of its first entry.
    pub fn visits(&self) -> Vec<&'a Entry> {
        self.threads(&Kind::Visit)
            .into_iter()
            .filter(|thread| !thread.struck())
            .filter_map(|thread| thread.entries().first().copied())
            .collect()
    }

    /// Whether an entry is hidden because its vehicle or its examination is struck out.
    pub fn hidden(&self, entry: &Entry) -> bool {
        self.struck()
            || entry
                .visit
                .and_then(|visit| self.visit_thread(visit))
                .is_some_and(|thread| thread.struck())
    }

    /// The threads of one kind that belong to one examination and are not struck out.
    pub fn of_visit(&self, kind: &Kind, visit: EntryId) -> Vec<&'v Thread<'a>> {
        let Some(visit) = self.visit_thread(visit) else {
            return Vec::new();
        };
        self.threads(kind)
            .into_iter()
            .filter(|thread| !thread.struck() && !visit.struck() && !self.struck())
            .filter(|thread| {
                thread
                    .entries()
                    .iter()
                    .any(|entry| entry.visit.is_some_and(|id| visit.has(id)))
            })
            .collect()
    }

    /// The readings of one examination that count, each with its entry; of a disputed one every
    /// side.
    pub fn readings(&self, visit: EntryId) -> Vec<(&'a Entry, &'a Reading)> {
        self.of_visit(&Kind::Reading, visit)
            .into_iter()
            .flat_map(Thread::counts)
            .filter_map(|entry| match &entry.says {
                Says::Reading(reading) => Some((entry, reading)),
                _ => None,
            })
            .collect()
    }

    /// The threads whose heads differ.
    pub fn disputes(&self) -> Vec<&'v Thread<'a>> {
        self.view
            .threads
            .iter()
            .filter(|(subject, _, thread)| {
                *subject == Subject::Vehicle(self.id) && thread.disputed()
            })
            .map(|(_, _, thread)| thread)
            .collect()
    }
}

fn wheel_of<'a>(thread: &Thread<'a>, position: Position) -> Option<(&'a Wheel, EntryId)> {
    let mut best: Option<(&'a Wheel, EntryId)> = None;
    for entry in thread.counts() {
        if let Says::Wheel(said) = &entry.says
            && said.position == position
            && best.is_none_or(|(wheel, _)| parts(&said.wheel) > parts(wheel))
        {
            best = Some((&said.wheel, entry.id));
        }
    }
    best
}

fn parts(wheel: &Wheel) -> (u16, u16) {
    (wheel.felloes.spokes(), wheel.felloes.felloes())
}
