//! Entries joined by `replaces` form a thread; its heads are those that nothing replaces. One head,
//! or several saying the same, is the value. Several that differ are a dispute: a value, not an
//! error.

use super::entry::{Entry, EntryId, Says};

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
        entries.sort_by_key(|entry| entry.order());
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

    /// The latest entry that once settled a dispute of this thread, if one did: it replaces two or
    /// more entries.
    pub fn last_settlement(&self) -> Option<&'a Entry> {
        self.entries
            .iter()
            .rev()
            .copied()
            .find(|entry| entry.replaces.len() > 1)
    }

    /// What one more entry must replace to be the value: all heads.
    pub fn to_replace(&self) -> Vec<EntryId> {
        self.heads.iter().map(|head| head.id).collect()
    }
}
