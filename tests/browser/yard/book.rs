//! The book of an invented yard: two hundred vehicles, each with an owner, an examination and what was decided; the
//! hay cart among them was examined three summers running.

use std::collections::BTreeMap;

use cartside_core::daybook::{
    Day, Decision, EntryId, Hand, Says, Stamp, Unwritten, Visit, WheelSaid,
};
use cartside_core::paper::exchange::{OutgoingEntry, Parcel, Scope};
use cartside_core::paper::line;
use cartside_core::quantity::length::millimetres;
use cartside_core::quantity::{Measured, Percent};
use cartside_core::survey::{Answer, Play, Question, Reading, Slot, Standing};
use cartside_core::wheel::{Felloes, Part, Place, Position, Vehicle, VehicleKind, Wheel};

/// How many vehicles there are.
pub const VEHICLES: usize = 200;

/// The yard's book as a file.
pub struct Yard {
    /// The exchange file.
    pub file: Vec<u8>,
    /// How many entries it holds.
    pub entries: usize,
    /// The hay cart's id.
    pub hay_cart: String,
}

/// Writes the book.
pub fn yard() -> Yard {
    let mut writing = Writing::default();
    let hay_cart = hay_cart(&mut writing);
    for number in 1..VEHICLES {
        vehicle(&mut writing, number);
    }
    let lines = writing.lines.iter().enumerate();
    let parcel = Parcel {
        made_at: "2026-11-25T10:03:00+00:00",
        device: "0f1e",
        scope: Scope::Book,
        entries: lines
            .map(|(at, (id, line))| OutgoingEntry {
                n: at as u64 + 1,
                id: *id,
                line,
            })
            .collect(),
        pictures: Vec::new(),
        readings: &[],
        read_me: "A book of an invented yard.\n",
    };
    let file = parcel.whole(&BTreeMap::new()).unwrap();
    Yard {
        file,
        entries: writing.lines.len(),
        hay_cart: hay_cart.hex(),
    }
}

#[derive(Default)]
struct Writing {
    lines: Vec<(EntryId, String)>,
    day: String,
}

impl Writing {
    fn write(&mut self, vehicle: Option<EntryId>, visit: Option<EntryId>, says: Says) -> EntryId {
        let mut entry = Unwritten::new(vehicle, says).unwrap();
        if let Some(visit) = visit {
            entry = entry.in_visit(visit);
        }
        let hand = Hand {
            by: "A. Wright".to_owned(),
            device: "0f1e".to_owned(),
            at: Stamp::read(&format!("{}T10:03:00+00:00", self.day)).unwrap(),
            n: self.lines.len() as u64 + 1,
        };
        let line = line::write(&entry, &hand).unwrap();
        let id = EntryId::of(line.as_bytes());
        self.lines.push((id, line));
        id
    }

    fn begin(&mut self, kind: VehicleKind, name: &str, wheels: &[Position]) -> EntryId {
        let name = name.to_owned();
        let vehicle = self.write(None, None, Says::Vehicle(Vehicle { kind, name }));
        for position in wheels {
            let (position, wheel) = (*position, Wheel::of(Felloes::even(12, 6).unwrap()));
            let said = WheelSaid { position, wheel };
            self.write(Some(vehicle), None, Says::Wheel(said));
        }
        vehicle
    }

    fn examine(&mut self, vehicle: EntryId, place: &str) -> EntryId {
        let visit = Visit {
            place: place.to_owned(),
            ..Visit::default()
        };
        self.write(Some(vehicle), None, Says::Visit(visit))
    }

    fn decide(&mut self, vehicle: EntryId, visit: EntryId, position: Position, day: &str) {
        let decision = Decision {
            position,
            standing: Standing::NotJudged,
            proposed: Standing::NotJudged,
            reason: String::new(),
            look_again: Day::read(day),
            signed: "A. Wright".to_owned(),
        };
        self.write(Some(vehicle), Some(visit), Says::Decision(decision));
    }
}

/// One of the many: every seventh belongs to Zoë Müller, every tenth is overdue.
fn vehicle(writing: &mut Writing, number: usize) {
    writing.day = format!("2026-{:02}-{:02}", 1 + number % 12, 1 + number % 28);
    let kind = VehicleKind::ALL[number % 5];
    let vehicle = writing.begin(kind, &format!("Number {number}"), &kind.positions()[..2]);
    let owner = ["B. Mill", "Zoë Müller"][usize::from(number.is_multiple_of(7))];
    let remark = Says::Remark(Part::Vehicle, format!("Owner: {owner}"));
    writing.write(Some(vehicle), None, remark);
    let visit = writing.examine(vehicle, "Long Barn");
    let year = if number.is_multiple_of(10) {
        2001
    } else {
        2900
    };
    writing.decide(
        vehicle,
        visit,
        kind.positions()[0],
        &format!("{year}-{:02}-01", 1 + number % 12),
    );
}

/// Three summers: joint 2 opens as the wood dries, spoke 3 works loose, and the last looks at less.
fn hay_cart(writing: &mut Writing) -> EntryId {
    writing.day = "2024-06-01".to_owned();
    let both = [Position::Near, Position::Off];
    let cart = writing.begin(VehicleKind::Cart, "Hay cart, Quillet Farm", &both);
    let summers = [
        ("2024-06-01", 0.0, 14, Play::Tight, true),
        ("2025-07-10", 1.0, 11, Play::JustMoves, true),
        ("2026-08-20", 3.0, 8, Play::Loose, false),
    ];
    for (day, wide, moist, play, shaken) in summers {
        writing.day = day.to_owned();
        let visit = writing.examine(cart, "the cart shed");
        let mut read = |question, place, answer| {
            let slot = Slot {
                position: Position::Near,
                place,
                question,
            };
            let written = String::new();
            let reading = Reading {
                slot,
                answer,
                written,
            };
            writing.write(Some(cart), Some(visit), Says::Reading(reading));
        };
        read(Question::JointGap, Place::Joint(2), mm(wide));
        read(Question::JointGap, Place::Joint(3), mm(0.0));
        let share = Answer::Share(Percent::whole(moist));
        read(Question::Moisture, Place::Felloe(1), share);
        read(Question::SpokeFoot, Place::Spoke(3), Answer::Play(play));
        if shaken {
            read(Question::Shake, Place::Whole, mm(5.0));
        }
    }
    cart
}

fn mm(mm: f64) -> Answer {
    Answer::Length(Measured::new(millimetres(mm), millimetres(0.25)).unwrap())
}
