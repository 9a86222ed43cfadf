//! Which entries of one kind, subject and slot belong together: those that `replaces` joins,
//! whether what it names is here or not.

use std::collections::{BTreeMap, BTreeSet};

use super::book::Book;
use super::entry::{Entry, EntryId};
use super::problem::Problem;
use super::thread::Thread;

/// Splits one group into threads: all in one where the slot has only one, else by `replaces`. What
/// is odd about its entries is added to `problems`.
pub(super) fn threads<'a>(
    book: &Book,
    entries: Vec<&'a Entry>,
    one_thread: bool,
    problems: &mut Vec<Problem>,
) -> Vec<Thread<'a>> {
    let mut group = Group::new(book, &entries);
    let mut first = None;
    for (at, entry) in entries.iter().enumerate() {
        let bears = group.take(at, entry, problems);
        if one_thread && bears {
            let first = *first.get_or_insert(at);
            group.joined.join(at, first);
        }
    }
    group.split(&entries)
}

/// What an entry names in `replaces`.
enum Target {
    /// Another entry of its group, by its place there.
    Here(usize),
    /// An entry that is not in the book.
    NotHere,
    /// An entry of another vehicle, slot or kind.
    Elsewhere,
}

/// The entries of one group on their way into threads.
struct Group<'b> {
    book: &'b Book,
    here: BTreeMap<EntryId, usize>,
    joined: Joined,
    replaced: BTreeSet<EntryId>,
    /// Ids that are not here, each with the first entry that names it.
    missing: BTreeMap<EntryId, usize>,
}

impl<'b> Group<'b> {
    fn new(book: &'b Book, entries: &[&Entry]) -> Group<'b> {
        let places = entries.iter().enumerate();
        Group {
            book,
            here: places.map(|(at, entry)| (entry.id, at)).collect(),
            joined: Joined::new(entries.len()),
            replaced: BTreeSet::new(),
            missing: BTreeMap::new(),
        }
    }

    /// Joins one entry to what it replaces; a target named twice is named once. `false` if it can
    /// have no effect: it strikes out nothing.
    fn take(&mut self, at: usize, entry: &Entry, problems: &mut Vec<Problem>) -> bool {
        let targets: BTreeSet<EntryId> = entry.replaces.iter().copied().collect();
        let (mut here, mut not_here) = (0, 0);
        for names in targets {
            match self.find(at, names) {
                Target::Here(other) => {
                    here += 1;
                    self.replaced.insert(names);
                    self.joined.join(at, other);
                }
                Target::NotHere => {
                    not_here += 1;
                    let namer = *self.missing.entry(names).or_insert(at);
                    self.joined.join(at, namer);
                }
                Target::Elsewhere => problems.push(Problem::ReplacesElsewhere {
                    entry: entry.id,
                    names,
                }),
            }
        }
        if not_here > 0 {
            problems.push(Problem::EarlierNotHere {
                entry: entry.id,
                count: not_here,
            });
        }
        let bears = here + not_here > 0 || !entry.strikes();
        if !bears {
            problems.push(Problem::StrikesNothing(entry.id));
        }
        bears
    }

    fn find(&self, at: usize, names: EntryId) -> Target {
        match self.here.get(&names) {
            Some(other) if *other != at => Target::Here(*other),
            None if self.book.entry(names).is_none() => Target::NotHere,
            _ => Target::Elsewhere,
        }
    }

    fn split<'a>(mut self, entries: &[&'a Entry]) -> Vec<Thread<'a>> {
        let mut threads: BTreeMap<usize, (Vec<&'a Entry>, Vec<EntryId>)> = BTreeMap::new();
        for (at, entry) in entries.iter().enumerate() {
            let root = self.joined.root(at);
            threads.entry(root).or_default().0.push(entry);
        }
        for (names, at) in std::mem::take(&mut self.missing) {
            let root = self.joined.root(at);
            threads.entry(root).or_default().1.push(names);
        }
        threads
            .into_values()
            .map(|(entries, not_here)| {
                Thread::new(entries, &|id| self.replaced.contains(&id), not_here)
            })
            .collect()
    }
}

/// Which places of a group belong together.
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
