//! The workshop: the open book in memory, the only thing a page reads. Pages ask it to write; it says
//! *saved* only after the browser has completed the transaction, and only then do pages change.

mod saving;

use std::rc::Rc;

use cartside_core::daybook::{Book, Digest, Entry, EntryId};
use cartside_core::diagnosis::Limit;
use cartside_core::paper::line;
use cartside_core::paper::summary::{SCHEMA, Summary};
use cartside_core::words::Style;
use futures::lock::Mutex;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::house::House;
use crate::only_here::OnlyHere;
use crate::preferences::Preferences;
use crate::scribe::Scribe;
use crate::storage::{
    Batch, HOUSE, Listening, StorageError, Store, Watch, Which, on_other_tab, on_waking,
};
use crate::twice;

/// What the last step came to; shown at the foot of every page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Notice {
    /// Nothing to say.
    Quiet,
    /// A step is being stored.
    Saving,
    /// The step is stored for good; the words say what it was.
    Saved(String),
    /// The step was not stored; the sentence says what happened and what is kept.
    Trouble(String),
}

/// How far the book is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Opening {
    /// It is being opened.
    Wait,
    /// It is open.
    Open,
    /// It cannot be opened; the sentence says why.
    Refused(String),
}

/// A vehicle's part of the book in memory.
#[derive(Clone)]
pub struct Opened {
    /// The vehicle.
    pub vehicle: EntryId,
    /// Its entries.
    pub book: Rc<Book>,
    /// How many stored lines of it could not be read.
    pub unreadable: usize,
    /// The lines of those that could, as they are stored: all there is if the store is lost while it is open.
    pub lines: Rc<Vec<String>>,
}

/// The open book and what can be done with it. Copies are the same workshop; its signals live as long
/// as the app.
#[derive(Clone, Copy)]
pub struct Workshop {
    /// How far the book is open.
    pub opening: ReadSignal<Opening>,
    /// Which book is open: one's own, or the demonstration.
    pub which: ReadSignal<Which>,
    /// Every vehicle in a few words, the latest written first.
    pub list: ReadSignal<Vec<Summary>>,
    /// The vehicle in hand.
    pub opened: ReadSignal<Option<Opened>, LocalStorage>,
    /// The limits in force, and the entries that set them.
    pub house: ReadSignal<House, LocalStorage>,
    /// What the last step came to.
    pub notice: RwSignal<Notice>,
    /// What was found last to be on this device alone.
    pub only_here: RwSignal<OnlyHere>,
    /// The lines of steps that could not be saved since the store is lost.
    pub adrift: RwSignal<Vec<String>>,
    /// What the person looking prefers.
    pub preferences: RwSignal<Preferences>,
    set_opening: WriteSignal<Opening>,
    set_which: WriteSignal<Which>,
    set_list: WriteSignal<Vec<Summary>>,
    set_opened: WriteSignal<Option<Opened>, LocalStorage>,
    set_house: WriteSignal<House, LocalStorage>,
    store: RwSignal<Option<Store>, LocalStorage>,
    device: RwSignal<String>,
    greatest: RwSignal<u64>,
    listening: StoredValue<Option<(Listening, Watch)>, LocalStorage>,
    /// One step is saved at a time, so that each is summed up with the one before it.
    turn: StoredValue<Rc<Mutex<()>>, LocalStorage>,
    /// The steps that wait for their turn or are being saved.
    under_way: StoredValue<Vec<Vec<Entry>>, LocalStorage>,
}

/// What a step comes to: what it was in a few words, or the sentence that says why not.
pub type Step<T> = Result<T, String>;

impl Workshop {
    /// An empty workshop; [`Workshop::open`] opens a book.
    pub fn new(preferences: RwSignal<Preferences>) -> Workshop {
        let (opening, set_opening) = signal(Opening::Wait);
        let (which, set_which) = signal(Which::Own);
        let (list, set_list) = signal(Vec::new());
        let (opened, set_opened) = signal_local(None);
        let (house, set_house) = signal_local(House::of(Book::default()));
        Workshop {
            opening,
            which,
            list,
            opened,
            house,
            notice: RwSignal::new(Notice::Quiet),
            only_here: RwSignal::new(OnlyHere::default()),
            adrift: RwSignal::new(Vec::new()),
            preferences,
            set_opening,
            set_which,
            set_list,
            set_opened,
            set_house,
            store: RwSignal::new_local(None),
            device: RwSignal::new(String::new()),
            greatest: RwSignal::new(0),
            listening: StoredValue::new_local(None),
            turn: StoredValue::new_local(Rc::new(Mutex::new(()))),
            under_way: StoredValue::new_local(Vec::new()),
        }
    }

    /// The limits that findings are judged by.
    pub fn limits(&self) -> Rc<Vec<Limit>> {
        self.house.with(|house| Rc::clone(&house.limits))
    }

    fn limits_untracked(&self) -> Rc<Vec<Limit>> {
        self.house.with_untracked(|house| Rc::clone(&house.limits))
    }

    /// The id by which a vehicle goes; of several that are one, one id for all.
    pub fn stands_for(&self, vehicle: EntryId) -> EntryId {
        self.house.with(|house| house.joined.stands_for(vehicle))
    }

    /// Every id under which entries of a vehicle stand in the store.
    pub fn ids_of(&self, vehicle: EntryId) -> Vec<EntryId> {
        self.house.with_untracked(|house| house.joined.all(vehicle))
    }

    /// A summary as the store keeps it.
    pub fn kept(&self, summary: &Summary) -> (String, u32, String) {
        let form = self.house.with_untracked(|house| house.form);
        (summary.vehicle.hex(), form, summary.write())
    }

    /// How everything is worded for the person looking; a page that reads it is worded anew when that changes.
    pub fn style(&self) -> Style {
        self.preferences.with(Preferences::style)
    }

    /// The vehicle in hand as it is now.
    pub fn in_hand(&self) -> Option<Opened> {
        self.opened.get_untracked()
    }

    /// The name of this device, as it stands in the lines it writes.
    pub fn device(&self) -> String {
        self.device.get_untracked()
    }

    /// Gives this device a new name, for one that meets its own in lines it did not write.
    ///
    /// # Errors
    /// The old name stands.
    pub async fn rename_device(self) -> Step<()> {
        let fresh = self.store()?.rename_device().await.map_err(sentence)?;
        self.device.set(fresh);
        Ok(())
    }

    /// The store of the open book.
    ///
    /// # Errors
    /// The book is not open yet.
    pub fn store(&self) -> Step<Store> {
        self.store.get_untracked().ok_or_else(|| {
            "The book is not open yet. Nothing was changed; wait a moment and try again.".to_owned()
        })
    }

    /// Opens one of the two books, in the place of the one that is open.
    pub async fn open(self, which: Which) {
        self.set_opening.set(Opening::Wait);
        self.set_opened.set(None);
        self.set_which.set(which);
        match self.try_open(which).await {
            Ok(()) => self.set_opening.set(Opening::Open),
            Err(sentence) => self.set_opening.set(Opening::Refused(sentence)),
        }
    }

    async fn try_open(self, which: Which) -> Step<()> {
        let store = Store::open(which).await.map_err(sentence)?;
        self.device.set(store.device().await.map_err(sentence)?);
        // Left by a page that was stopped or killed while it brought a file in.
        // Where that cannot be done they still do not belong to the book.
        drop(store.clear_beside().await);
        store.on_newer(move || {
            self.notice
                .set(Notice::Trouble(sentence(StorageError::Newer)))
        });
        twice::keep(self, &store).await;
        self.store.set(Some(store));
        self.read_house().await?;
        self.refresh().await?;
        let listening = on_other_tab(move |changed| {
            if changed == self.which.get_untracked() {
                spawn_local(async move { self.look_again().await });
            }
        });
        let waking = on_waking(move || spawn_local(async move { self.look_again().await }));
        self.listening.set_value(Some((listening, waking)));
        Ok(())
    }

    /// Reads the list and the vehicle in hand again, after another tab or a file has added to them.
    pub async fn look_again(self) {
        let again = async {
            self.read_house().await?;
            self.refresh().await?;
            match self.opened.get_untracked() {
                Some(opened) => self.open_vehicle(opened.vehicle).await,
                None => Ok(()),
            }
        };
        if let Err(sentence) = again.await {
            self.notice.set(Notice::Trouble(sentence));
        }
    }

    /// Reads the entries that belong to no vehicle: the limits the shop has set.
    async fn read_house(self) -> Step<()> {
        let (book, ..) = self.read_lines(vec![HOUSE.to_owned()], Vec::new()).await?;
        self.set_house.set(House::of(book));
        Ok(())
    }

    /// Reads the list of vehicles. A summary that is missing or of an older form is made again and kept for the next
    /// time.
    async fn refresh(self) -> Step<()> {
        let store = self.store()?;
        self.greatest
            .set(store.greatest_n().await.map_err(sentence)?);
        let form = self.house.with_untracked(|house| house.form);
        let mut list: Vec<Summary> = Vec::new();
        for (vehicle, schema, text) in store.summaries().await.map_err(sentence)? {
            let id = Digest::from_hex(&vehicle);
            let current = id.filter(|_| schema == form);
            list.extend(current.and_then(|id| Summary::read(id, SCHEMA, &text)));
        }
        let told: usize = list.iter().map(|summary| summary.entries).sum();
        let mut mended = Batch::default();
        for vehicle in store.vehicles_beyond(told).await.map_err(sentence)? {
            let Some(id) = Digest::from_hex(&vehicle) else {
                continue;
            };
            let first = untrack(|| self.stands_for(id));
            if first != id {
                // Summed up with the one it is the same as; what was summed up of it alone is out of date.
                mended.summaries.push((vehicle, form, String::new()));
            }
            if list.iter().all(|summary| summary.vehicle != first) {
                let summary = self.sum_up_again(first).await?;
                mended.summaries.push(self.kept(&summary));
                list.push(summary);
            }
        }
        if !mended.summaries.is_empty() {
            // Where there is no room to keep them they are made again next time.
            drop(store.save(mended).await);
        }
        self.show_list(list);
        Ok(())
    }

    async fn sum_up_again(self, vehicle: EntryId) -> Step<Summary> {
        let (book, _) = self.read_vehicle(vehicle).await?;
        Ok(Summary::of(&book, vehicle, &self.limits_untracked()))
    }

    fn show_list(self, mut list: Vec<Summary>) {
        list.sort_by_key(|summary| std::cmp::Reverse((summary.last_n, summary.vehicle)));
        self.set_list.set(list);
    }

    /// One vehicle's entries as they are stored, those of all that are one with it among them, and how many of its
    /// lines could not be read.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn read_vehicle(self, vehicle: EntryId) -> Step<(Book, usize)> {
        let (book, unreadable, _) = self.read_whole(vehicle).await?;
        Ok((book, unreadable))
    }

    async fn read_whole(self, vehicle: EntryId) -> Step<(Book, usize, Vec<String>)> {
        let (ids, said) = self.house.with_untracked(|house| house.one_with(vehicle));
        let of: Vec<String> = ids.iter().map(Digest::hex).collect();
        self.read_lines(of, said).await
    }

    /// The entries that stand in the store under any of these names, together with some that are read already.
    async fn read_lines(
        self,
        of: Vec<String>,
        read: Vec<Entry>,
    ) -> Step<(Book, usize, Vec<String>)> {
        let store = self.store()?;
        let (mut entries, mut unreadable, mut lines) = (read, 0, Vec::new());
        for name in of {
            for text in store.vehicle_lines(&name).await.map_err(sentence)? {
                match line::read(&text) {
                    Ok(entry) => {
                        entries.push(entry);
                        lines.push(text);
                    }
                    Err(_) => unreadable += 1,
                }
            }
        }
        Ok((entries.into_iter().collect(), unreadable, lines))
    }

    /// Takes a vehicle in hand.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn open_vehicle(self, vehicle: EntryId) -> Step<()> {
        let vehicle = untrack(|| self.stands_for(vehicle));
        let (book, unreadable, lines) = self.read_whole(vehicle).await?;
        self.set_opened.set(Some(Opened {
            vehicle,
            book: Rc::new(book),
            unreadable,
            lines: Rc::new(lines),
        }));
        Ok(())
    }

    /// A scribe for the next step.
    pub fn scribe(self) -> Scribe {
        Scribe::new(
            self.preferences.get_untracked().person,
            self.device.get_untracked(),
            self.greatest.get_untracked(),
        )
    }
}

/// What a fault of the storage means, in a sentence.
pub fn sentence(error: StorageError) -> String {
    error.to_string()
}

/// The workshop of this app, from any page or component.
pub fn workshop() -> Workshop {
    expect_context::<Workshop>()
}
