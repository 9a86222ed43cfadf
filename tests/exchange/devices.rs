//! Three devices that write into books of their own, with clocks years apart, and now and then hand each other some of
//! what they have.

mod saying;

use std::collections::BTreeMap;

use cartside_core::daybook::{
    Book, Digest, Entry, EntryId, Hand, Kind, Stamp, Subject, Thread, Unwritten,
};
use cartside_core::paper::exchange::{OutgoingEntry, Parcel, Scope, open};
use cartside_core::paper::line;

use crate::chance::Chance;
use saying::{Known, anything, something_else};

/// How many devices there are.
pub(crate) const DEVICES: usize = 3;
/// What each is called, and the year its clock believes it is.
const NAMES: [(&str, u32); DEVICES] = [("barn", 2026), ("shop", 2036), ("bench", 2016)];

/// A line and the entry it is.
pub(crate) struct Written {
    pub(crate) line: String,
    pub(crate) entry: Entry,
}

/// One device.
pub(crate) struct Device {
    pub(crate) book: Book,
    /// The lines it has, by their places among all that were written.
    has: Vec<usize>,
}

/// Devices, and all that any of them wrote.
pub(crate) struct History {
    chance: Chance,
    pub(crate) devices: Vec<Device>,
    pub(crate) written: Vec<Written>,
    by_id: BTreeMap<EntryId, usize>,
}

impl History {
    /// What this seed makes of so many steps; the devices have not yet brought everything together.
    pub(crate) fn of(seed: u64, steps: usize) -> History {
        let device = || Device {
            book: Book::default(),
            has: Vec::new(),
        };
        let mut history = History {
            chance: Chance::of(seed),
            devices: std::iter::repeat_with(device).take(DEVICES).collect(),
            written: Vec::new(),
            by_id: BTreeMap::new(),
        };
        history.begin();
        for _ in 0..steps {
            let device = history.chance.below(DEVICES);
            history.step(device);
        }
        history
    }

    /// The first device begins a cart with a wheel and an examination, and mostly the others are told.
    fn begin(&mut self) {
        for first in saying::beginning() {
            let begun = self.written.first().map(|written| written.entry.id);
            self.write(0, Unwritten::new(begun, first).unwrap());
        }
        for other in 1..DEVICES {
            if !self.chance.once_in(4) {
                self.hand_over(0, other);
            }
        }
    }

    fn step(&mut self, device: usize) {
        match self.chance.below(12) {
            0..=4 => self.say(device),
            5 | 6 => self.correct(device),
            7 => self.strike(device),
            8 => self.settle(device),
            9 => self.say_what_is_odd(device),
            _ => {
                let other = (device + 1 + self.chance.below(DEVICES - 1)) % DEVICES;
                self.hand_over(device, other);
            }
        }
    }

    fn write(&mut self, device: usize, entry: Unwritten) {
        let (name, year) = NAMES[device];
        let minute = self.written.len() % 60;
        let hand = Hand {
            by: "A. Wright".to_owned(),
            device: name.to_owned(),
            at: Stamp::read(&format!("{year}-11-25T10:{minute:02}:00+01:00")).unwrap(),
            n: self.devices[device].book.next_n(),
        };
        let line = line::write(&entry, &hand).unwrap();
        self.put(device, line);
    }

    fn put(&mut self, device: usize, line: String) {
        let entry = line::read(&line).unwrap();
        let at = self.written.len();
        self.by_id.insert(entry.id, at);
        self.written.push(Written { line, entry });
        self.deliver(device, at);
    }

    /// A line reaches a device, maybe not for the first time.
    fn deliver(&mut self, device: usize, at: usize) {
        let device = &mut self.devices[device];
        if device.book.add(self.written[at].entry.clone()) {
            device.has.push(at);
        }
    }

    fn any_entry(&mut self, device: usize) -> Option<Entry> {
        let at = self.chance.one(self.devices[device].has.clone())?;
        Some(self.written[at].entry.clone())
    }

    fn say(&mut self, device: usize) {
        let known = Known::of(&self.devices[device].book);
        if let Some(entry) = anything(&known, &mut self.chance) {
            self.write(device, entry);
        }
    }

    /// Says something else in the place of one entry, a head or not.
    fn correct(&mut self, device: usize) {
        if let Some(old) = self.any_entry(device)
            && let Some(entry) = something_else(&old, &mut self.chance)
        {
            self.write(device, entry.replacing(vec![old.id]));
        }
    }

    fn strike(&mut self, device: usize) {
        if let Some(old) = self.any_entry(device) {
            let heads = self.heads(device, old.id);
            self.write(device, Unwritten::striking(&old, heads));
        }
    }

    /// Settles a dispute, or brings back what was struck out.
    fn settle(&mut self, device: usize) {
        let view = self.devices[device].book.view();
        let open = view
            .threads()
            .filter(|thread| thread.disputed() || thread.struck());
        let open =
            open.filter_map(|thread| Some((thread.last_said()?.clone(), thread.to_replace())));
        if let Some((said, heads)) = self.chance.one(open.collect()) {
            let again = Unwritten {
                kind: said.kind.clone(),
                vehicle: vehicle(&said),
                visit: said.visit,
                described_by: None,
                slot: said.slot.clone(),
                says: said.says,
                replaces: heads,
            };
            self.write(device, again);
        }
    }

    /// What is lawful and strange: replacing what is of another slot, or was never here; a line of a later version.
    fn say_what_is_odd(&mut self, device: usize) {
        let Some(old) = self.any_entry(device) else {
            return;
        };
        let Some(entry) = something_else(&old, &mut self.chance) else {
            return;
        };
        let other = match self.chance.below(3) {
            0 => Digest::of(&[self.chance.below(2) as u8]),
            _ => self.any_entry(device).map_or(old.id, |other| other.id),
        };
        if self.chance.once_in(3) {
            self.write(device, entry.replacing(vec![old.id, other]));
            let Some(Written { line, .. }) = self.written.last() else {
                return;
            };
            let later = match self.chance.below(4) {
                0 => line.replacen(r#""kind":""#, r#""kind":"later-"#, 1),
                1 => line.replacen(r#""cartside":1"#, r#""cartside":2"#, 1),
                2 => line.replacen(r#""says":{"#, r#""says":{"later":[1,{}],"#, 1),
                _ => line.replacen(r#""slot":""#, r#""slot":"later-"#, 1),
            };
            // An erasure's slot is its picture, in every version.
            if line::read(&later).is_ok() {
                self.put(device, later);
            }
        } else {
            self.write(device, entry.replacing(vec![other]));
        }
    }

    /// What must be replaced to strike out the thread of this entry, as a device sees it.
    fn heads(&self, device: usize, id: EntryId) -> Vec<EntryId> {
        let view = self.devices[device].book.view();
        let of = |thread: &&Thread<'_>| thread.entries().iter().any(|entry| entry.id == id);
        let thread = view.threads().find(of);
        thread.map(Thread::to_replace).unwrap_or_default()
    }

    /// One device gives another all it has, or one vehicle, or what happens to get through; some of it twice, in any
    /// order.
    fn hand_over(&mut self, from: usize, to: usize) {
        let mut given = self.devices[from].has.clone();
        match self.chance.below(4) {
            0 => {
                let one = self.any_entry(from).map(|entry| entry.subject());
                given.retain(|at| {
                    let subject = self.written[*at].entry.subject();
                    Some(subject) == one || subject == Subject::House
                });
            }
            1 => given.retain(|_| !self.chance.once_in(3)),
            _ => {}
        }
        self.give(given, to);
    }

    fn give(&mut self, mut given: Vec<usize>, to: usize) {
        let again = given.iter().copied().filter(|_| self.chance.once_in(5));
        let again: Vec<usize> = again.collect();
        given.extend(again);
        self.chance.shuffle(&mut given);
        for at in given {
            self.deliver(to, at);
        }
    }

    /// Every device gives every other what it has, one pair after another in any order, until all have all of it.
    pub(crate) fn bring_together(&mut self) {
        let mut pairs: Vec<(usize, usize)> = Vec::new();
        for from in 0..DEVICES {
            pairs.extend((0..DEVICES).filter(|to| *to != from).map(|to| (from, to)));
        }
        while self
            .devices
            .iter()
            .any(|device| device.book.len() < self.written.len())
        {
            self.chance.shuffle(&mut pairs);
            for (from, to) in &pairs {
                self.give(self.devices[*from].has.clone(), *to);
            }
        }
    }

    /// All that was written, read again from its lines into a new book in another order.
    pub(crate) fn read_afresh(&mut self) -> Book {
        let mut order: Vec<usize> = (0..self.written.len()).collect();
        self.chance.shuffle(&mut order);
        let lines = order.into_iter().map(|at| &self.written[at].line);
        lines.map(|line| line::read(line).unwrap()).collect()
    }

    /// A file of all that was written.
    pub(crate) fn file(&self) -> Vec<u8> {
        let entries = self.written.iter().map(|written| OutgoingEntry {
            n: written.entry.n,
            id: written.entry.id,
            line: &written.line,
        });
        let parcel = Parcel {
            made_at: "2024-05-06T17:18:19+01:00",
            device: "0f1e",
            scope: Scope::Book,
            entries: entries.collect(),
            pictures: Vec::new(),
            readings: &[],
            read_me: "A wheelwright's book.\n",
        };
        parcel.whole(&BTreeMap::new()).unwrap()
    }

    /// The book that comes out of such a file.
    pub(crate) fn carried(&self) -> Book {
        let file = self.file();
        let verified = open(&file).unwrap().verify().unwrap();
        verified.entries().map(|(entry, _)| entry.clone()).collect()
    }
}

/// The vehicle that an entry names; of one that begins it, itself.
fn vehicle(entry: &Entry) -> Option<EntryId> {
    match entry.subject() {
        Subject::Vehicle(id) => Some(id),
        Subject::House => None,
    }
}

/// Whether it is one that says nothing by itself.
fn is_of(entry: &Entry, kind: Kind) -> bool {
    entry.kind == kind && !entry.strikes()
}
