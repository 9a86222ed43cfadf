//! A figure: how long it takes to bring together 100 000 entries on this machine, from the lines of a file to every
//! vehicle looked at. `cargo xtask measure` runs it with the release profile, which is built for size as the app is.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a figure is printed, and what it is taken of is made here"
)]

use std::collections::BTreeMap;
use std::time::Instant;

use cartside_core::daybook::{Book, EntryId, Hand, Says, Stamp, Unwritten, Visit, WheelSaid};
use cartside_core::diagnosis::{limits, lowest};
use cartside_core::paper::exchange::{OutgoingEntry, Parcel, Scope, Verified, open};
use cartside_core::paper::line;
use cartside_core::survey::{Answer, Play, Question, Reading, Slot};
use cartside_core::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};

const ENTRIES: usize = 100_000;
const VEHICLES: usize = 100;
/// The most seconds it may take.
const LIMIT: f64 = 10.0;

fn main() {
    // What one device has, and the file of another that has half of the same and as much that is new.
    let lines = lines();
    let (all, half) = (
        file(&lines),
        file(lines.get(..ENTRIES / 2).unwrap_or_default()),
    );
    let mine: Book = open(&half)
        .and_then(|file| file.verify())
        .map(|verified| entries(&verified))
        .expect("our own file");
    let began = Instant::now();
    let verified = open(&all)
        .and_then(|file| file.verify())
        .expect("our own file");
    let read = began.elapsed().as_secs_f64();
    let theirs = verified.entries().map(|(entry, _)| entry);
    let book: Book = mine.entries().chain(theirs).cloned().collect();
    assert_eq!(book.len(), ENTRIES);
    let seen = look_at(&book);
    let seconds = began.elapsed().as_secs_f64();
    println!(
        "{ENTRIES} lines of {} MB read in {read:.2} s; {seen} threads looked at",
        all.len() / 1_000_000
    );
    println!(
        "figure: {ENTRIES} entries in {VEHICLES} vehicles brought together natively: {seconds:.2} s (limit {LIMIT:.0} s)"
    );
    assert!(
        seconds < LIMIT,
        "{seconds:.2} s was measured, under {LIMIT} s is allowed"
    );
}

fn entries(verified: &Verified<'_>) -> Book {
    verified.entries().map(|(entry, _)| entry.clone()).collect()
}

/// Looks at every vehicle as its page would; how many threads there are.
fn look_at(book: &Book) -> usize {
    let view = book.view();
    let limits = limits(&view);
    assert_eq!(view.problems(), []);
    let vehicles = view.vehicles();
    assert_eq!(vehicles.len(), VEHICLES);
    for id in vehicles {
        let vehicle = view.vehicle(id);
        assert!(vehicle.described().is_some() && !vehicle.disputes().is_empty());
        assert!(lowest(&vehicle, &limits).is_some());
        let readings = vehicle
            .visits()
            .into_iter()
            .map(|visit| vehicle.readings(visit.id).len());
        assert!(readings.sum::<usize>() > 500);
    }
    view.threads().count()
}

type Lines = Vec<(EntryId, String)>;

fn file(lines: &[(EntryId, String)]) -> Vec<u8> {
    let entry =
        |(at, (id, line)): (usize, &'_ (EntryId, String))| (at as u64 + 1, *id, line.clone());
    let numbered: Vec<_> = lines.iter().enumerate().map(entry).collect();
    let entries = numbered.iter().map(|(n, id, line)| OutgoingEntry {
        n: *n,
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

/// Vehicles with two wheels and five examinations each; of the readings every tenth is corrected twice beside itself,
/// which is a dispute.
fn lines() -> Lines {
    let mut lines = Lines::new();
    for number in 0..VEHICLES {
        let end = (number + 1) * (ENTRIES / VEHICLES);
        vehicle(&mut lines, number, end);
    }
    lines
}

fn vehicle(lines: &mut Lines, number: usize, end: usize) {
    let kind = VehicleKind::Cart;
    let name = format!("Cart {number}");
    let cart = write(
        lines,
        None,
        None,
        Says::Vehicle(Vehicle { kind, name }),
        Vec::new(),
    );
    for position in [Position::Near, Position::Off] {
        let wheel = Wheel::of(Felloes::even(12, 6).expect("a rim"));
        write(
            lines,
            Some(cart),
            None,
            Says::Wheel(WheelSaid { position, wheel }),
            Vec::new(),
        );
    }
    let visit = |lines: &mut Lines| {
        write(
            lines,
            Some(cart),
            None,
            Says::Visit(Visit::default()),
            Vec::new(),
        )
    };
    let visits: Vec<EntryId> = (0..5).map(|_| visit(lines)).collect();
    let questions: Vec<Slot> = slots();
    for (slot, visit) in questions.iter().cycle().zip(visits.iter().cycle()) {
        let mut last = None;
        for play in Play::ALL
            .into_iter()
            .cycle()
            .skip(lines.len())
            .take(if lines.len().is_multiple_of(10) { 3 } else { 1 })
        {
            if lines.len() == end {
                return;
            }
            let said = Says::Reading(Reading {
                slot: *slot,
                answer: Answer::Play(play),
                written: String::new(),
            });
            let id = write(
                lines,
                Some(cart),
                Some(*visit),
                said,
                last.into_iter().collect(),
            );
            last = last.or(Some(id));
        }
    }
}

fn slots() -> Vec<Slot> {
    let wheel = Wheel::of(Felloes::even(12, 6).expect("a rim"));
    let of_spokes = [Question::SpokeFoot, Question::SpokeRimEnd];
    let each = Position::ALL
        .into_iter()
        .skip(1)
        .take(2)
        .flat_map(|position| {
            let at = |question: Question| {
                question
                    .places_on(&wheel)
                    .into_iter()
                    .map(move |place| (question, place))
            };
            let places: Vec<_> = of_spokes.into_iter().flat_map(at).collect();
            places.into_iter().map(move |(question, place)| Slot {
                position,
                place,
                question,
            })
        });
    each.collect()
}

fn write(
    lines: &mut Lines,
    vehicle: Option<EntryId>,
    visit: Option<EntryId>,
    says: Says,
    replaces: Vec<EntryId>,
) -> EntryId {
    let hand = Hand {
        by: "A. Wright".to_owned(),
        device: "0f1e".to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").expect("a time"),
        n: lines.len() as u64 + 1,
    };
    let entry = Unwritten::new(vehicle, says)
        .expect("it says something")
        .replacing(replaces);
    let entry = visit.map_or(entry.clone(), |visit| entry.in_visit(visit));
    let line = line::write(&entry, &hand).expect("the entry can be written");
    let id = EntryId::of(line.as_bytes());
    lines.push((id, line));
    id
}
