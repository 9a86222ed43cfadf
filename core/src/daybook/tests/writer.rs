//! A device that writes entries down and reads them back, so that every id is a real one.

use crate::daybook::{Book, Entry, EntryId, Hand, Says, Stamp, Unwritten, Visit, WheelSaid};
use crate::paper::line;
use crate::quantity::Measured;
use crate::quantity::length::millimetres;
use crate::survey::{Answer, Question, Reading, Slot};
use crate::wheel::{Felloes, Place, Position, Vehicle, VehicleKind, Wheel};

/// A device with its counter.
pub(super) struct Writer {
    device: &'static str,
    n: u64,
}

impl Writer {
    pub(super) fn new(device: &'static str) -> Writer {
        Writer { device, n: 0 }
    }

    /// The same device once its book holds entries up to this counter.
    pub(super) fn after(device: &'static str, n: u64) -> Writer {
        Writer { device, n }
    }

    /// Writes one entry and reads it back.
    pub(super) fn write(&mut self, entry: Unwritten) -> Entry {
        self.n += 1;
        let line = line::write(&entry, &hand(self.device, self.n)).unwrap();
        line::read(&line).unwrap()
    }

    pub(super) fn begin(&mut self, name: &str) -> Entry {
        self.write(Unwritten::new(None, cart(name)).unwrap())
    }

    pub(super) fn visit(&mut self, vehicle: EntryId, place: &str) -> Entry {
        let said = Visit {
            place: place.to_owned(),
            ..Visit::default()
        };
        self.write(Unwritten::new(Some(vehicle), Says::Visit(said)).unwrap())
    }

    pub(super) fn wheel(&mut self, vehicle: EntryId, spokes: u16, felloes: u16) -> Entry {
        self.write(
            Unwritten::new(Some(vehicle), near_wheel(Position::Near, spokes, felloes)).unwrap(),
        )
    }

    /// The play of the foot of spoke 3 of the near wheel.
    pub(super) fn play(&mut self, vehicle: EntryId, visit: EntryId, mm: f64) -> Entry {
        self.write(play(vehicle, visit, mm))
    }

    /// Corrects entries to this play.
    pub(super) fn correct(&mut self, entries: &[&Entry], mm: f64) -> Entry {
        let ids = entries.iter().map(|entry| entry.id).collect();
        let (vehicle, visit) = (entries[0].vehicle.unwrap(), entries[0].visit.unwrap());
        self.write(play(vehicle, visit, mm).replacing(ids))
    }

    /// Strikes out the thread of which these are the heads.
    pub(super) fn strike(&mut self, heads: &[&Entry]) -> Entry {
        let ids = heads.iter().map(|entry| entry.id).collect();
        self.write(Unwritten::striking(heads[0], ids))
    }

    /// Says again what an entry says, in the place of these.
    pub(super) fn again(&mut self, said: &Entry, replaces: Vec<EntryId>) -> Entry {
        self.write(Unwritten {
            kind: said.kind.clone(),
            vehicle: said.vehicle.or(Some(said.id)),
            visit: said.visit,
            described_by: said.described_by,
            slot: said.slot.clone(),
            says: said.says.clone(),
            replaces,
        })
    }
}

pub(super) fn hand(device: &str, n: u64) -> Hand {
    Hand {
        by: "A. Smith".to_owned(),
        device: device.to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
        n,
    }
}

pub(super) fn cart(name: &str) -> Says {
    Says::Vehicle(Vehicle {
        kind: VehicleKind::Cart,
        name: name.to_owned(),
    })
}

pub(super) fn near_wheel(position: Position, spokes: u16, felloes: u16) -> Says {
    let wheel = Wheel::of(Felloes::even(spokes, felloes).unwrap());
    Says::Wheel(WheelSaid { position, wheel })
}

pub(super) fn mm(mm: f64) -> Answer {
    Answer::Length(Measured::new(millimetres(mm), millimetres(0.25)).unwrap())
}

pub(super) fn foot(spoke: u16) -> Slot {
    Slot {
        position: Position::Near,
        place: Place::Spoke(spoke),
        question: Question::SpokeFoot,
    }
}

pub(super) fn answer(vehicle: EntryId, visit: EntryId, slot: Slot, answer: Answer) -> Unwritten {
    let written = String::new();
    let reading = Says::Reading(Reading {
        slot,
        answer,
        written,
    });
    Unwritten::new(Some(vehicle), reading)
        .unwrap()
        .in_visit(visit)
}

pub(super) fn play(vehicle: EntryId, visit: EntryId, length: f64) -> Unwritten {
    answer(vehicle, visit, foot(3), mm(length))
}

pub(super) fn book<'e>(entries: impl IntoIterator<Item = &'e Entry>) -> Book {
    entries.into_iter().cloned().collect()
}

pub(super) fn ids<'e>(entries: impl IntoIterator<Item = &'e Entry>) -> Vec<EntryId> {
    entries.into_iter().map(|entry| entry.id).collect()
}

/// The lengths of the readings of an examination that count, in mm.
pub(super) fn lengths(book: &Book, vehicle: EntryId, visit: EntryId) -> Vec<f64> {
    let view = book.view();
    let readings = view.vehicle(vehicle).readings(visit);
    readings
        .iter()
        .filter_map(|(_, reading)| reading.answer.length())
        .map(crate::quantity::length::to_paper_mm)
        .collect()
}
