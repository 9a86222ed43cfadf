//! A book of 10 000 entries, in 50 vehicles or in one, as a real exchange file.

use std::collections::BTreeMap;

use cartside_core::daybook::{EntryId, Hand, Says, Stamp, Unwritten, Visit, WheelSaid};
use cartside_core::paper::exchange::{OutgoingEntry, Parcel, Scope};
use cartside_core::paper::line;
use cartside_core::survey::{Answer, Play, Question, Reading, Slot};
use cartside_core::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};

/// How many entries the book has.
pub(crate) const ENTRIES: usize = 10_000;
/// How many vehicles it has, where it has many.
pub(crate) const VEHICLES: usize = 50;

/// The file of such a book with so many vehicles.
pub(crate) fn file(vehicles: usize) -> Vec<u8> {
    let mut writing = Writing::default();
    for number in 1..=vehicles {
        vehicle(&mut writing, number, ENTRIES / vehicles);
    }
    assert_eq!(writing.lines.len(), ENTRIES);
    let entries = writing
        .lines
        .iter()
        .enumerate()
        .map(|(at, (id, line))| OutgoingEntry {
            n: at as u64 + 1,
            id: *id,
            line,
        });
    let parcel = Parcel {
        made_at: "2026-11-25T10:03:00+00:00",
        device: "0f1e",
        scope: Scope::Book,
        entries: entries.collect(),
        pictures: Vec::new(),
        readings: &[],
        read_me: "A book of an invented county.\n",
    };
    parcel
        .whole(&BTreeMap::new())
        .expect("the book can be written")
}

#[derive(Default)]
struct Writing {
    lines: Vec<(EntryId, String)>,
}

impl Writing {
    fn write(&mut self, entry: &Unwritten) -> EntryId {
        let hand = Hand {
            by: "A. Wright".to_owned(),
            device: "0f1e".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").expect("a time"),
            n: self.lines.len() as u64 + 1,
        };
        let line = line::write(entry, &hand).expect("the entry can be written");
        let id = EntryId::of(line.as_bytes());
        self.lines.push((id, line));
        id
    }
}

/// A cart with two wheels, examined until it has so many entries, those of its description among them.
fn vehicle(writing: &mut Writing, number: usize, entries: usize) {
    let says = Says::Vehicle(Vehicle {
        kind: VehicleKind::Cart,
        name: format!("Cart {number}"),
    });
    let vehicle = writing.write(&Unwritten::new(None, says).expect("a beginning"));
    let wheel = Wheel::of(Felloes::even(12, 6).expect("a rim"));
    let mut described = BTreeMap::new();
    for position in [Position::Near, Position::Off] {
        let said = WheelSaid {
            position,
            wheel: wheel.clone(),
        };
        let entry = Unwritten::new(Some(vehicle), Says::Wheel(said)).expect("a wheel");
        described.insert(position, writing.write(&entry));
    }
    let begun = writing.lines.len() - 3;
    let mut slots = Vec::new();
    for position in described.keys() {
        for question in Question::all() {
            for place in question.places_on(&wheel) {
                slots.push(Slot {
                    position: *position,
                    place,
                    question,
                });
            }
        }
    }
    while writing.lines.len() < begun + entries {
        examine(writing, vehicle, &described, &slots, begun + entries);
    }
}

/// One examination, cut short where the book is full.
fn examine(
    writing: &mut Writing,
    vehicle: EntryId,
    described: &BTreeMap<Position, EntryId>,
    slots: &[Slot],
    full: usize,
) {
    let says = Says::Visit(Visit {
        place: "Long Barn".to_owned(),
        ..Visit::default()
    });
    let visit = writing.write(&Unwritten::new(Some(vehicle), says).expect("an examination"));
    for (at, slot) in slots.iter().enumerate() {
        if writing.lines.len() == full {
            return;
        }
        let says = Says::Reading(Reading {
            slot: *slot,
            answer: answer(slot.question, at),
            written: String::new(),
        });
        let entry = Unwritten::new(Some(vehicle), says)
            .expect("a reading")
            .in_visit(visit);
        let entry = Unwritten {
            described_by: described.get(&slot.position).copied(),
            ..entry
        };
        writing.write(&entry);
    }
}

fn answer(question: Question, at: usize) -> Answer {
    match question {
        Question::SpokeFoot | Question::SpokeRimEnd => Answer::Play(Play::ALL[at % 3]),
        Question::TyreGap | Question::JointGap | Question::FelloeStep => Answer::NothingFound,
        _ if at.is_multiple_of(2) => Answer::Yes,
        _ => Answer::No,
    }
}
