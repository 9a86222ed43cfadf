//! Saving: a step is stored in one transaction, and only then does the book in memory change.

use std::rc::Rc;

use cartside_core::daybook::{Book, Digest, Entry, EntryId, Subject, Unwritten};
use cartside_core::paper::summary::Summary;
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::{Notice, Opened, Step, Workshop, sentence};
use crate::scribe::Scribe;
use crate::storage::{Batch, Saved, StorageError, Store};
use crate::{keeping, typing};

impl Workshop {
    /// Saves one entry, then goes on with whether it is stored; see [`Workshop::save_then`].
    pub fn write_then(self, entry: &Unwritten, what: String, then: impl FnOnce(bool) + 'static) {
        self.write_boxed(entry, what, Box::new(then));
    }

    fn write_boxed(self, entry: &Unwritten, what: String, then: Box<dyn FnOnce(bool)>) {
        let mut scribe = self.scribe();
        match scribe.write(entry) {
            Ok(_) => self.start(scribe, what, then),
            Err(sentence) => {
                self.notice.set(Notice::Trouble(sentence));
                then(false);
            }
        }
    }

    /// Saves a whole step as [`Workshop::save`] does, then goes on with whether it is stored. What went wrong is
    /// shown at the foot. A step that says what another one says that is not stored yet is a key pressed twice, and comes
    /// to nothing.
    pub fn save_then(self, scribe: Scribe, what: String, then: impl FnOnce(bool) + 'static) {
        self.start(scribe, what, Box::new(then));
    }

    /// The one task in which the steps of all keys are saved: each task of its own is more to download.
    fn start(self, scribe: Scribe, what: String, then: Box<dyn FnOnce(bool)>) {
        let twice = |before: &Vec<Entry>| says_the_same(before, &scribe.entries);
        if self.under_way.with_value(|all| all.iter().any(twice)) {
            return;
        }
        let page = typing::page();
        let entries = scribe.entries.clone();
        self.under_way.update_value(|all| all.push(entries.clone()));
        spawn_local(async move {
            let stored = self.save(scribe, &what).await.is_ok();
            self.under_way
                .update_value(|all| all.retain(|one| *one != entries));
            then(stored);
            if stored {
                typing::sweep(self, page);
            }
        });
    }

    /// Saves a whole step in one transaction and says *saved* when the browser has completed it; `what`
    /// says in a few words what it was.
    ///
    /// # Errors
    /// Nothing of the step was stored; the sentence is shown too.
    pub async fn save(self, scribe: Scribe, what: &str) -> Step<()> {
        self.notice.set(Notice::Saving);
        let done = self.try_save(scribe).await;
        self.notice.set(match &done {
            Ok(()) => Notice::Saved(what.to_owned()),
            Err(sentence) => Notice::Trouble(sentence.clone()),
        });
        if done.is_ok() {
            keeping::ask_once(self.store()?);
        }
        done
    }

    /// Saves what came from outside in one transaction, then reads the book again. `make` gathers the batch
    /// while no other step can be saved; `what` says in a few words what it came to.
    ///
    /// # Errors
    /// Nothing was stored; the sentence is shown too.
    pub async fn take_in(
        self,
        make: impl AsyncFnOnce(&Store) -> Step<Batch>,
        what: impl FnOnce(Saved) -> String,
    ) -> Step<Saved> {
        self.notice.set(Notice::Saving);
        let done = self.try_take_in(make).await;
        self.notice.set(match &done {
            Ok(saved) => Notice::Saved(what(*saved)),
            Err(sentence) => Notice::Trouble(sentence.clone()),
        });
        done
    }

    async fn try_take_in(self, make: impl AsyncFnOnce(&Store) -> Step<Batch>) -> Step<Saved> {
        let turn = self.turn.get_value();
        let _turn = turn.lock().await;
        let store = self.store()?;
        let batch = make(&store).await?;
        let saved = store.save(batch).await.map_err(sentence)?;
        self.look_again().await;
        Ok(saved)
    }

    async fn try_save(self, scribe: Scribe) -> Step<()> {
        let turn = self.turn.get_value();
        let _turn = turn.lock().await;
        let store = self.store()?;
        let greatest = scribe
            .entries
            .iter()
            .map(|entry| entry.n)
            .max()
            .unwrap_or(0);
        self.greatest.update(|n| *n = (*n).max(greatest));
        let books = self.books_after(&scribe).await?;
        let summaries: Vec<Summary> = books
            .iter()
            .map(|(vehicle, book)| Summary::of(book, *vehicle, &self.limits_untracked()))
            .collect();
        let lines: Vec<String> = scribe.lines.iter().map(|one| one.line.clone()).collect();
        let batch = Batch {
            lines: scribe.lines,
            pictures: scribe.pictures,
            summaries: summaries.iter().map(|made| self.kept(made)).collect(),
            drop_drafts: scribe.drop_drafts,
            erase_pictures: scribe.erase_pictures.iter().map(Digest::hex).collect(),
            ..Batch::default()
        };
        if let Err(error) = store.save(batch).await {
            if error == StorageError::Gone {
                self.adrift.update(|adrift| adrift.extend(lines));
            }
            return Err(sentence(error));
        }
        self.adrift.set(Vec::new());
        self.take_up(books, summaries, lines);
        if let Some(house) = self
            .house
            .with_untracked(|house| house.with(&scribe.entries))
        {
            // By other limits every vehicle may stand otherwise.
            self.set_house.set(house);
            // The step is saved whatever comes of the list, which is made again at each start.
            drop(self.refresh().await);
            if let Some(opened) = self.opened.get_untracked() {
                // It may be one with another now, or no longer.
                drop(self.open_vehicle(opened.vehicle).await);
            }
        }
        Ok(())
    }

    /// The books of the vehicles a step touches, as they will be after it.
    async fn books_after(self, scribe: &Scribe) -> Step<Vec<(EntryId, Book)>> {
        let mut books: Vec<(EntryId, Book)> = Vec::new();
        for entry in &scribe.entries {
            let Subject::Vehicle(vehicle) = entry.subject() else {
                continue;
            };
            let vehicle = untrack(|| self.stands_for(vehicle));
            if books.iter().all(|(of, _)| *of != vehicle) {
                books.push((vehicle, self.book_of(vehicle).await?));
            }
            for (_, book) in books.iter_mut().filter(|(of, _)| *of == vehicle) {
                book.add(entry.clone());
            }
        }
        Ok(books)
    }

    async fn book_of(self, vehicle: EntryId) -> Step<Book> {
        match self.opened.get_untracked() {
            Some(opened) if opened.vehicle == vehicle => Ok((*opened.book).clone()),
            _ => Ok(self.read_vehicle(vehicle).await?.0),
        }
    }

    fn take_up(self, books: Vec<(EntryId, Book)>, summaries: Vec<Summary>, lines: Vec<String>) {
        let mut list = self.list.get_untracked();
        list.retain(|old| summaries.iter().all(|new| new.vehicle != old.vehicle));
        list.extend(summaries);
        self.show_list(list);
        if let Some(opened) = self.opened.get_untracked()
            && let Some((_, book)) = books.into_iter().find(|(of, _)| *of == opened.vehicle)
        {
            let mut kept = opened.lines;
            // A step is one vehicle's; the few of another would do no harm in a file.
            Rc::make_mut(&mut kept).extend(lines);
            self.set_opened.set(Some(Opened {
                book: Rc::new(book),
                lines: kept,
                ..opened
            }));
        }
    }
}

/// Whether two steps differ in nothing but when they were written; each may have begun a vehicle of its own.
fn says_the_same(one: &[Entry], other: &[Entry]) -> bool {
    one.len() == other.len()
        && one
            .iter()
            .zip(other)
            .all(|(one, other)| one.slot == other.slot && one.says == other.says)
}
