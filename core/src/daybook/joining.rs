//! Which entries of one kind, subject and slot belong together: those that `replaces` joins,
//! whether what it names is here or not.

use super::book::Book;
use super::digests::Digests;
use super::entry::{Entry, EntryId};
use super::order;
use super::problem::Problem;
use super::thread::Thread;

/// Splits one group, whose entries stand by id, into threads: all in one where the slot has only
/// one, else by `replaces`. What is odd about its entries is added to `problems`.
pub(super) fn threads<'a>(
    book: &Book,
    entries: &[&'a Entry],
    one_thread: bool,
    problems: &mut Vec<Problem>,
) -> Vec<Thread<'a>> {
    let mut group = Group::new(book, entries);
    let mut first = None;
    for (at, entry) in entries.iter().enumerate() {
        let bears = group.take(at, entry, problems);
        if one_thread && bears {
            let first = *first.get_or_insert(at);
            group.joined.join(at, first);
        }
    }
    group.split()
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
struct Group<'b, 'a> {
    book: &'b Book,
    /// By id.
    entries: &'b [&'a Entry],
    joined: Joined,
    /// Which of them another replaces.
    replaced: Vec<bool>,
    /// Ids that are not here, each with an entry that names it.
    missing: Vec<(EntryId, usize)>,
}

impl<'b, 'a> Group<'b, 'a> {
    fn new(book: &'b Book, entries: &'b [&'a Entry]) -> Group<'b, 'a> {
        Group {
            book,
            entries,
            joined: Joined::new(entries.len()),
            replaced: vec![false; entries.len()],
            missing: Vec::new(),
        }
    }

    /// Joins one entry to what it replaces; a target named twice is named once. `false` if it can
    /// have no effect: it strikes out nothing.
    fn take(&mut self, at: usize, entry: &Entry, problems: &mut Vec<Problem>) -> bool {
        let (mut here, mut not_here) = (0, 0);
        for names in Digests::of(entry.replaces.clone()).iter().copied() {
            match self.find(at, names) {
                Target::Here(other) => {
                    here += 1;
                    self.replace(other);
                    self.joined.join(at, other);
                }
                Target::NotHere => {
                    not_here += 1;
                    self.missing.push((names, at));
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
        match order::place(self.entries, names) {
            Some(other) if other != at => Target::Here(other),
            None if self.book.entry(names).is_none() => Target::NotHere,
            _ => Target::Elsewhere,
        }
    }

    fn replace(&mut self, at: usize) {
        if let Some(replaced) = self.replaced.get_mut(at) {
            *replaced = true;
        }
    }

    fn is_replaced(&self, id: EntryId) -> bool {
        let at = order::place(self.entries, id);
        at.is_some_and(|at| self.replaced.get(at) == Some(&true))
    }

    /// Joins entries that name the same entry where that is not here.
    fn join_missing(&mut self) {
        self.missing.sort_unstable();
        for pair in self.missing.windows(2) {
            if let [(one, at), (other, too)] = pair
                && one == other
            {
                self.joined.join(*at, *too);
            }
        }
    }

    /// The threads, each in the place of its first entry.
    fn split(mut self) -> Vec<Thread<'a>> {
        self.join_missing();
        let mut threads: Vec<(Vec<&'a Entry>, Vec<EntryId>)> = Vec::new();
        threads.resize_with(self.entries.len(), Default::default);
        for (at, entry) in self.entries.iter().enumerate() {
            if let Some((entries, _)) = threads.get_mut(self.joined.root(at)) {
                entries.push(entry);
            }
        }
        for (names, at) in &self.missing {
            if let Some((_, not_here)) = threads.get_mut(self.joined.root(*at)) {
                not_here.push(*names);
            }
        }
        threads
            .into_iter()
            .filter(|(entries, _)| !entries.is_empty())
            .map(|(entries, not_here)| Thread::new(entries, &|id| self.is_replaced(id), not_here))
            .collect()
    }
}

/// Which places of a group belong together: each leads up to the first of those it belongs with.
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
