//! A figure: how long one vehicle of 10 000 entries takes on this machine, from its lines to the standing of its wheels
//! and the readings of its examinations, as its page shows them. `cargo xtask measure` runs it with the release profile,
//! which is built for size as the app is.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a figure is printed, and what it is taken of is made here"
)]

use std::time::Instant;

use cartside_core::daybook::{
    Book, Entry, EntryId, Hand, Says, Stamp, Unwritten, VehicleView, Visit, WheelSaid,
};
use cartside_core::diagnosis::{Limit, held, house_limits, lowest, standing_at};
use cartside_core::paper::line;
use cartside_core::paper::summary::Summary;
use cartside_core::survey::{Answer, Play, Question, Reading, Slot};
use cartside_core::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};

const ENTRIES: usize = 10_000;
/// The most milliseconds that it may take to show what was read.
const LIMIT: f64 = 500.0;

fn main() {
    let lines = Lines::of_an_old_cart();
    let limits = house_limits();
    let began = Instant::now();
    let entries: Vec<Entry> = lines
        .0
        .iter()
        .map(|line| line::read(line).expect("our own line"))
        .collect();
    let read = began.elapsed();
    let began = Instant::now();
    let book: Book = entries.into_iter().collect();
    let together = began.elapsed();
    let cart = *book.view().vehicles().first().expect("a cart");
    let mut steps = Vec::new();
    let began = Instant::now();
    steps.push(("view", timed(|| book.view().threads().count())));
    let view = book.view();
    let vehicle = view.vehicle(cart);
    steps.push(("visits", timed(|| vehicle.visits().len())));
    steps.push(("readings", timed(|| readings(&vehicle))));
    steps.push(("standings", timed(|| standings(&vehicle, &limits))));
    steps.push(("disputes", timed(|| vehicle.disputes().len())));
    let shown = began.elapsed().as_secs_f64() * 1000.0;
    steps.push((
        "summary",
        timed(|| Summary::of(&book, cart, &limits).entries),
    ));
    let one = lines.0.last().map(|line| line.replace("10000", "10001"));
    let one = line::read(&one.expect("a line")).expect("a line");
    steps.push((
        "one more, and its summary",
        timed(|| {
            let mut book = book.clone();
            assert!(book.add(one.clone()));
            Summary::of(&book, cart, &limits).entries
        }),
    ));

    println!("{ENTRIES} lines read in {read:.1?}, put together in {together:.1?}");
    for (step, (took, count)) in steps {
        println!("{step}: {took:.1} ms ({count})");
    }
    println!(
        "figure: a vehicle of {ENTRIES} entries looked at natively: {shown:.0} ms (limit {LIMIT:.0} ms)"
    );
    assert!(
        shown < LIMIT,
        "{shown:.0} ms were measured, under {LIMIT} ms are allowed"
    );
}

fn timed(step: impl FnOnce() -> usize) -> (f64, usize) {
    let began = Instant::now();
    let count = step();
    (began.elapsed().as_secs_f64() * 1000.0, count)
}

/// How many readings the list of examinations counts.
fn readings(vehicle: &VehicleView<'_, '_>) -> usize {
    let visits = vehicle.visits().into_iter();
    visits.map(|visit| vehicle.readings(visit.id).len()).sum()
}

/// The standing of each wheel, what held of it before, and of the vehicle; how many there are.
fn standings(vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> usize {
    let latest = vehicle.visits().last().expect("an examination").id;
    let wheels = vehicle.wheels().into_iter().map(|(position, _)| {
        assert!(lowest(vehicle, limits).is_some());
        let _ = held(vehicle, latest, position, limits);
        usize::from(standing_at(vehicle, latest, position, limits).is_some())
    });
    wheels.sum()
}

#[derive(Default)]
struct Lines(Vec<String>);

impl Lines {
    /// A cart of two wheels, every question of both answered again at each examination until the book is full.
    fn of_an_old_cart() -> Lines {
        let mut lines = Lines::default();
        let (kind, name) = (VehicleKind::Cart, "Hay cart".to_owned());
        let cart = lines.write(None, None, Says::Vehicle(Vehicle { kind, name }));
        let wheel = Wheel::of(Felloes::even(12, 6).expect("a rim"));
        let both = [Position::Near, Position::Off];
        for position in both {
            let wheel = wheel.clone();
            lines.write(Some(cart), None, Says::Wheel(WheelSaid { position, wheel }));
        }
        let slots = both.into_iter().flat_map(|position| {
            let wheel = wheel.clone();
            let at = move |question: Question| {
                let places = question.places_on(&wheel).into_iter();
                places.map(move |place| Slot {
                    position,
                    place,
                    question,
                })
            };
            Question::all().flat_map(at)
        });
        let slots: Vec<Slot> = slots.collect();
        loop {
            let visit = lines.write(Some(cart), None, Says::Visit(Visit::default()));
            for (at, slot) in slots.iter().enumerate() {
                if lines.0.len() == ENTRIES {
                    return lines;
                }
                let reading = Reading {
                    slot: *slot,
                    answer: answer(slot.question, at),
                    written: String::new(),
                };
                lines.write(Some(cart), Some(visit), Says::Reading(reading));
            }
        }
    }

    fn write(&mut self, vehicle: Option<EntryId>, visit: Option<EntryId>, says: Says) -> EntryId {
        let hand = Hand {
            by: "A. Wright".to_owned(),
            device: "0f1e".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").expect("a time"),
            n: self.0.len() as u64 + 1,
        };
        let entry = Unwritten::new(vehicle, says).expect("it says something");
        let entry = visit.map_or(entry.clone(), |visit| entry.in_visit(visit));
        let line = line::write(&entry, &hand).expect("the entry can be written");
        let id = EntryId::of(line.as_bytes());
        self.0.push(line);
        id
    }
}

fn answer(question: Question, at: usize) -> Answer {
    match question {
        Question::SpokeFoot | Question::SpokeRimEnd => {
            let mut each = Play::ALL.into_iter().cycle();
            each.nth(at % 3).map_or(Answer::CannotSee, Answer::Play)
        }
        Question::TyreGap | Question::JointGap | Question::FelloeStep => Answer::NothingFound,
        _ if at.is_multiple_of(2) => Answer::Yes,
        _ => Answer::No,
    }
}
