//! The rounds of three examinations, each beside the latest before it, with what was done in between.

use super::rounds_since;
use crate::daybook::sample::{self, id};
use crate::daybook::tyring::{Ran, TakenWith};
use crate::daybook::{
    Book, Entry, EntryId, Kind, RoundTaken, Says, Stamp, TyringSaid, Visit, WheelSaid, Work,
    WorkDone,
};
use crate::quantity::Measured;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::tyring::round::{Line, Run};
use crate::wheel::{Felloes, Part, Place, Position, Vehicle, VehicleKind, Wheel};

const NEAR: Position = Position::Near;

/// An entry of this number and year; what is not zero or one belongs to the examination of that number.
fn entry(n: u64, year: u16, visit: u64, kind: Kind, slot: &str, says: Says) -> Entry {
    Entry {
        visit: (visit > 0).then(|| id(visit)),
        at: Stamp::read(&format!("{year}-05-03T10:03:00+00:00")).unwrap(),
        ..sample::entry(n, kind, slot, says)
    }
}

/// A cart with one wheel, examined in 2024, 2025 and 2026 by the entries 10, 20 and 30.
fn cart() -> Vec<Entry> {
    let vehicle = Says::Vehicle(Vehicle {
        kind: VehicleKind::Cart,
        name: String::new(),
    });
    let wheel = Says::Wheel(WheelSaid {
        position: NEAR,
        wheel: Wheel::of(Felloes::even(12, 6).unwrap()),
    });
    let visit = |n, year| {
        let says = Says::Visit(Visit::default());
        entry(n, year, 0, Kind::Visit, "visit", says)
    };
    vec![
        entry(0, 2024, 0, Kind::Vehicle, "vehicle", vehicle),
        entry(1, 2024, 0, Kind::Wheel, NEAR.code(), wheel),
        visit(10, 2024),
        visit(20, 2025),
        visit(30, 2026),
    ]
}

fn round(n: u64, ran: Ran, past: f64) -> Entry {
    on_line(n, ran, past, Line::Middle)
}

/// A round of six turns and so much, within the examination of the tens of its number.
fn on_line(n: u64, ran: Ran, past: f64, line: Line) -> Entry {
    let own = Measured::new(millimetres(628.0), millimetres(0.5)).unwrap();
    let past = millimetres(past);
    let taken = RoundTaken {
        position: NEAR,
        ran,
        with: TakenWith::Traveller(1, own),
        line,
        runs: vec![Run { turns: 6, past }],
        warm: None,
        hot_weld: false,
        written: String::new(),
    };
    let (slot, year) = (taken.slot(), 2023 + (n / 10) as u16);
    entry(n, year, n / 10 * 10, Kind::Round, &slot, Says::Round(taken))
}

fn work(n: u64, year: u16, did: Work) -> Entry {
    let part = Part::At(NEAR, Place::Whole);
    let done = WorkDone {
        part,
        did: vec![did],
        text: String::new(),
        by_whom: String::new(),
    };
    entry(n, year, 0, Kind::Work, &part.code(), Says::Work(done))
}

/// Of the last examination: what was run, since which entry, by how many half millimetres it is longer; and what says that
/// it was tyred.
type Told = (Vec<(Ran, EntryId, Option<f64>)>, Vec<EntryId>);

fn told(more: Vec<Entry>) -> Told {
    let book: Book = cart().into_iter().chain(more).collect();
    let view = book.view();
    let rounds = rounds_since(&view.vehicle(id(0)), id(30), NEAR);
    let longer = |it: &crate::diagnosis::RoundSince<'_>| {
        let longer = it.longer.map(|(longer, _)| to_paper_mm(longer).round());
        (it.ran, it.then.id, longer)
    };
    (
        rounds.since.iter().map(longer).collect(),
        rounds.tyred.iter().map(|it| it.id).collect(),
    )
}

#[test]
fn each_round_stands_beside_the_latest_before_it() {
    let (since, tyred) = told(vec![
        round(11, Ran::Sole, 480.0),
        round(12, Ran::Tyre, 470.0),
        round(22, Ran::Tyre, 473.0),
        round(31, Ran::Sole, 471.0),
        round(32, Ran::Tyre, 478.0),
    ]);
    let sole = (Ran::Sole, id(10), Some(-9.0));
    assert_eq!(since, [sole, (Ran::Tyre, id(20), Some(5.0))]);
    assert_eq!(tyred, []);
}

#[test]
fn a_tyre_stands_beside_itself_as_it_was_welded_and_the_tyring_is_named() {
    let (since, tyred) = told(vec![
        round(22, Ran::Tyre, 478.0),
        round(23, Ran::Welded, 457.0),
        round(32, Ran::Tyre, 460.0),
    ]);
    assert_eq!(since, [(Ran::Tyre, id(20), Some(3.0))]);
    assert_eq!(tyred, [id(23)]);
}

#[test]
fn a_tyring_of_which_no_round_was_taken_is_named_too() {
    let chosen = |n: u64, lay| {
        let said = TyringSaid {
            lay,
            ..TyringSaid::of(NEAR)
        };
        let slot = TyringSaid::slot(NEAR);
        let year = 2023 + (n / 10) as u16;
        entry(
            n,
            year,
            n / 10 * 10,
            Kind::Tyring,
            &slot,
            Says::Tyring(said),
        )
    };
    assert_eq!(told(vec![chosen(24, Some(41))]).1, [id(24)]);
    // Only thought of; done, but before the last examination; in the one that stands beside.
    assert_eq!(told(vec![chosen(24, None)]).1, []);
    assert_eq!(told(vec![chosen(14, Some(41))]).1, []);
    assert_eq!(told(vec![chosen(34, Some(41))]).1, []);
    let done = told(vec![
        work(25, 2025, Work::Contracted),
        work(26, 2025, Work::Greased),
        work(15, 2024, Work::Contracted),
        work(35, 2026, Work::Contracted),
    ]);
    assert_eq!(done, (vec![], vec![id(25)]));
}

#[test]
fn another_line_is_not_compared_and_nothing_earlier_is_nothing() {
    let (since, _) = told(vec![
        on_line(21, Ran::Sole, 471.0, Line::Face),
        round(31, Ran::Sole, 471.0),
        round(32, Ran::Tyre, 471.0),
    ]);
    assert_eq!(since, [(Ran::Sole, id(20), None)]);
    assert_eq!(told(vec![]), (vec![], vec![]));
}
