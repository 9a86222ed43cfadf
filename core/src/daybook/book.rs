//! A book: a set of entries. The order in which they arrive makes no difference, and an entry that
//! is there twice is there once.

use std::rc::Rc;

use super::digests::Digests;
use super::entry::{Entry, EntryId, GREATEST_N};
use super::view::View;

/// A set of entries.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    /// By id. A book is copied at every step that is saved, so its entries are shared.
    entries: Vec<Rc<Entry>>,
}

impl FromIterator<Entry> for Book {
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Book {
        let mut entries: Vec<Rc<Entry>> = entries.into_iter().map(Rc::new).collect();
        entries.sort_by_key(|entry| entry.id);
        entries.dedup_by_key(|entry| entry.id);
        Book { entries }
    }
}

impl Book {
    /// Puts one more entry in; `false` if it was there already.
    pub fn add(&mut self, entry: Entry) -> bool {
        match self.place(entry.id) {
            Ok(_) => false,
            Err(at) => {
                self.entries.insert(at, Rc::new(entry));
                true
            }
        }
    }

    pub(super) fn place(&self, id: EntryId) -> Result<usize, usize> {
        self.entries.binary_search_by_key(&id, |entry| entry.id)
    }

    /// The entries of a portion as a book of their own.
    #[must_use]
    pub fn portion(&self, ids: &Digests) -> Book {
        let entries = self.entries.iter().filter(|entry| ids.contains(&entry.id));
        Book {
            entries: entries.cloned().collect(),
        }
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
        self.entries.iter().map(Rc::as_ref)
    }

    /// The entry of this id.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(self.place(id).ok()?).map(Rc::as_ref)
    }

    /// The counter the next entry takes, one more than the greatest; it stays at its greatest
    /// lawful value once that is reached.
    pub fn next_n(&self) -> u64 {
        next_n(self.entries().map(|entry| entry.n).max().unwrap_or(0))
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
