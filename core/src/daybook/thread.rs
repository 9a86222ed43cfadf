//! Entries joined by `replaces` form a thread; its heads are those that nothing replaces. One head,
//! or several saying the same, is the value. Several that differ are a dispute: a value, not an
//! error.

use super::digests::Digests;
use super::entry::{Entry, EntryId, MOST_REPLACED, Says};
use super::order;

/// What a thread comes to.
#[derive(Clone, Debug, PartialEq)]
pub enum State<'a> {
    /// All heads say the same: this one, the earliest of them.
    Settled(&'a Entry),
    /// All heads strike it out.
    Struck(&'a Entry),
    /// Heads differ; all of them, in order.
    Dispute(Vec<&'a Entry>),
}

/// The entries of one thread.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread<'a> {
    entries: Vec<&'a Entry>,
    heads: Vec<&'a Entry>,
    not_here: Vec<EntryId>,
}

impl<'a> Thread<'a> {
    /// Puts a thread together from its entries, the ids among them that another validly replaces,
    /// and the ids it names that are not here.
    pub(super) fn new(
        mut entries: Vec<&'a Entry>,
        replaced: &dyn Fn(EntryId) -> bool,
        mut not_here: Vec<EntryId>,
    ) -> Thread<'a> {
        order::sort(&mut entries, &order::shown);
        not_here.sort_unstable();
        not_here.dedup();
        let heads = entries
            .iter()
            .copied()
            .filter(|entry| !replaced(entry.id))
            .collect();
        Thread {
            entries,
            heads,
            not_here,
        }
    }

    /// Every entry of the thread, earliest first.
    pub fn entries(&self) -> &[&'a Entry] {
        &self.entries
    }

    /// The entries that nothing replaces, earliest first.
    pub fn heads(&self) -> &[&'a Entry] {
        &self.heads
    }

    /// Earlier entries that are named and are not here.
    pub fn not_here(&self) -> &[EntryId] {
        &self.not_here
    }

    /// Whether this entry is of the thread, or is named by it and not here.
    pub fn has(&self, id: EntryId) -> bool {
        self.entries.iter().any(|entry| entry.id == id) || self.not_here.contains(&id)
    }

    /// Whether it is nothing but a strike that strikes out nothing.
    pub(super) fn void(&self) -> bool {
        let only = matches!(self.entries.as_slice(), [entry] if entry.strikes());
        only && self.not_here.is_empty()
    }

    /// The ids of its entries, and those it names that are not here.
    pub fn ids(&self) -> impl Iterator<Item = EntryId> {
        let here = self.entries.iter().map(|entry| entry.id);
        here.chain(self.not_here.iter().copied())
    }

    /// What the thread comes to; `None` only for a thread without a head, which digests rule out.
    pub fn state(&self) -> Option<State<'a>> {
        let first = *self.heads.first()?;
        let agreed = self
            .heads
            .iter()
            .skip(1)
            .all(|head| head.agrees_with(first));
        Some(match first.says {
            _ if !agreed => State::Dispute(self.heads.clone()),
            Says::Struck => State::Struck(first),
            _ => State::Settled(first),
        })
    }

    /// What counts: the value, or every side of a dispute that does not strike it out, so that the
    /// more cautious of them can be taken. Empty for a thread struck out.
    pub fn counts(&self) -> Vec<&'a Entry> {
        match self.state() {
            Some(State::Settled(entry)) => vec![entry],
            Some(State::Dispute(heads)) => {
                heads.into_iter().filter(|head| !head.strikes()).collect()
            }
            Some(State::Struck(_)) | None => Vec::new(),
        }
    }

    /// Whether every head strikes it out.
    pub fn struck(&self) -> bool {
        matches!(self.state(), Some(State::Struck(_)))
    }

    /// Whether its heads differ.
    pub fn disputed(&self) -> bool {
        matches!(self.state(), Some(State::Dispute(_)))
    }

    /// The latest entry that this version can read and that says something: what bringing back a
    /// thread struck out would say again.
    pub fn last_said(&self) -> Option<&'a Entry> {
        let said = |entry: &&Entry| entry.is_read() && !entry.strikes();
        self.entries.iter().rev().copied().find(said)
    }

    /// What counts of a description, as far as this version can read it. Where all that counts was
    /// written by a newer Cartside, the latest that can be read stands in, so that what was
    /// described does not fall out of sight.
    pub fn readable(&self) -> Vec<&'a Entry> {
        let counts = self.counts();
        let read: Vec<_> = counts
            .iter()
            .copied()
            .filter(|head| head.is_read())
            .collect();
        match self.last_said() {
            Some(said) if read.is_empty() && !counts.is_empty() => vec![said],
            _ => read,
        }
    }

    /// The latest entry that once settled a dispute of this thread, if one did: it replaces two or
    /// more entries that stood beside each other and did not say the same.
    pub fn last_settlement(&self) -> Option<&'a Entry> {
        let mut by_id = self.entries.clone();
        order::sort(&mut by_id, &order::by_id);
        let settles = |entry: &&Entry| entry.replaces.len() > 1 && self.settles(entry, &by_id);
        self.entries.iter().rev().copied().find(settles)
    }

    /// Whether one of its entries settled a dispute; `by_id` are all of them by id.
    fn settles(&self, entry: &Entry, by_id: &[&Entry]) -> bool {
        let here = |id: &EntryId| by_id.get(order::place(by_id, *id)?).copied();
        let targets = Digests::of(entry.replaces.clone());
        let replaced: Digests = targets
            .iter()
            .filter_map(here)
            .flat_map(|target| target.replaces.iter().copied())
            .collect();
        let sides = || targets.iter().filter(|side| !replaced.contains(side));
        let present: Vec<&Entry> = sides().filter_map(here).collect();
        let unseen = sides()
            .filter(|side| self.not_here.binary_search(side).is_ok())
            .count();
        let differ = present.windows(2).any(|pair| match pair {
            [one, other] => !one.agrees_with(other),
            _ => false,
        });
        differ || (unseen > 0 && present.len() + unseen > 1)
    }

    /// What one more entry must replace to be the value: all heads, or as many as one entry may
    /// replace; the next such entry then takes up the rest.
    pub fn to_replace(&self) -> Vec<EntryId> {
        let heads = self.heads.iter().take(MOST_REPLACED);
        heads.map(|head| head.id).collect()
    }
}
