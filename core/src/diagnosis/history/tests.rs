//! A joint over several examinations, beside moisture, work, other numbers and strikes.

use proptest::prelude::*;

use super::{Difference, History, history, since_last};
use crate::daybook::sample::{self, id};
use crate::daybook::{Book, Entry, Kind, Says, Stamp, Visit, WheelSaid, Work, WorkDone};
use crate::diagnosis::{Change, Grade, house_limits};
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::{Measured, Percent};
use crate::survey::{Answer, Question, Reading, Slot, Stage};
use crate::wheel::{Felloes, Part, Place, Position, Vehicle, VehicleKind, Wheel};

const NEAR: Position = Position::Near;

/// An entry of this number, written on this day.
fn entry(n: u64, day: &str, kind: Kind, slot: &str, says: Says) -> Entry {
    Entry {
        at: Stamp::read(&format!("{day}T10:03:00+00:00")).unwrap(),
        ..sample::entry(n, kind, slot, says)
    }
}

fn described(n: u64, spokes: u16, felloes: u16) -> Entry {
    let wheel = Wheel::of(Felloes::even(spokes, felloes).unwrap());
    let said = WheelSaid {
        position: NEAR,
        wheel,
    };
    let code = NEAR.code();
    entry(n, "2024-01-01", Kind::Wheel, code, Says::Wheel(said))
}

fn cart() -> Vec<Entry> {
    let vehicle = Says::Vehicle(Vehicle {
        kind: VehicleKind::Cart,
        name: String::new(),
    });
    let begun = entry(0, "2024-01-01", Kind::Vehicle, "vehicle", vehicle);
    vec![begun, described(1, 12, 6)]
}

fn visit(n: u64, day: &str, stage: Stage) -> Entry {
    let says = Says::Visit(Visit {
        stage,
        ..Visit::default()
    });
    entry(n, day, Kind::Visit, "visit", says)
}

fn slot(question: Question, place: Place) -> Slot {
    Slot {
        position: NEAR,
        place,
        question,
    }
}

fn joint(n: u16) -> Slot {
    slot(Question::JointGap, Place::Joint(n))
}

/// A reading within the examination that is entry `visit`, of the day of that entry.
fn reading(n: u64, visit: &Entry, slot: Slot, answer: Answer) -> Entry {
    let says = Says::Reading(Reading {
        slot,
        answer,
        written: String::new(),
    });
    Entry {
        visit: Some(visit.id),
        described_by: Some(id(1)),
        ..entry(n, visit.at.day(), Kind::Reading, &slot.code(), says)
    }
}

fn worked(n: u64, day: &str, place: Place) -> Entry {
    let part = Part::At(NEAR, place);
    let done = WorkDone {
        part,
        did: vec![Work::Contracted],
        text: String::new(),
        by_whom: String::new(),
    };
    entry(n, day, Kind::Work, &part.code(), Says::Work(done))
}

fn gap(mm: f64) -> Answer {
    Answer::Length(Measured::new(millimetres(mm), millimetres(0.25)).unwrap())
}

fn moist(percent: u8) -> Answer {
    Answer::Share(Percent::whole(percent))
}

/// Each point as text: the day, the lengths, the moisture, how often work was done, other numbers.
fn told(history: &History<'_>) -> Vec<String> {
    let point = |point: &super::Point<'_>| {
        let lengths = point.answers.iter().filter_map(Answer::length);
        let lengths: Vec<String> = lengths.map(|it| to_paper_mm(it).to_string()).collect();
        let moisture = point.moisture.map_or(String::new(), |(low, high)| {
            format!(" at {}-{} %", low.to_paper(), high.to_paper())
        });
        let work = " worked".repeat(point.work.len());
        let other = if point.other_numbers { " other" } else { "" };
        let day = point.visit.at.day();
        format!("{day}: {}{moisture}{work}{other}", lengths.join("/"))
    };
    history.points.iter().map(point).collect()
}

fn points(entries: &[Entry], slot: Slot) -> (Vec<String>, bool) {
    let book: Book = entries.iter().cloned().collect();
    let view = book.view();
    let history = history(&view.vehicle(id(0)), slot);
    (told(&history), history.gone)
}

/// The first summer dry, then a tyre contracted, then a wet spring; each a joint and two felloes.
fn three_years() -> Vec<Entry> {
    let visits = [
        visit(10, "2024-06-01", Stage::OnTheArm),
        visit(20, "2025-06-01", Stage::OnTheArm),
        visit(30, "2026-03-01", Stage::OnTheArm),
    ];
    let mut entries = cart();
    for (visit, wide, dry, wet) in [
        (&visits[0], 1.0, 9, 11),
        (&visits[1], 3.0, 8, 8),
        (&visits[2], 0.0, 16, 18),
    ] {
        let moisture = |n| slot(Question::Moisture, Place::Felloe(n));
        entries.push(reading(visit.n + 1, visit, joint(2), gap(wide)));
        entries.push(reading(visit.n + 2, visit, moisture(1), moist(dry)));
        entries.push(reading(visit.n + 3, visit, moisture(4), moist(wet)));
    }
    entries.push(worked(25, "2025-06-01", Place::Whole));
    entries.push(worked(26, "2025-06-02", Place::Joint(3)));
    entries.extend(visits);
    entries
}

#[test]
fn a_reading_stands_day_by_day_with_the_moisture_of_that_day() {
    let (told, gone) = points(&three_years(), joint(2));
    assert_eq!(
        told,
        [
            "2024-06-01: 1 at 9-11 %",
            "2025-06-01: 3 at 8-8 %",
            "2026-03-01: 0 at 16-18 % worked",
        ]
    );
    assert!(!gone);
    assert_eq!(points(&three_years(), joint(3)).0, Vec::<String>::new());
}

/// What was written later on another device may be of an earlier day.
#[test]
fn the_day_goes_before_the_counter() {
    let mut entries = three_years();
    let found = visit(40, "2025-01-01", Stage::OnTheArm);
    entries.push(reading(41, &found, joint(2), gap(2.0)));
    entries.push(found);
    let days: Vec<String> = points(&entries, joint(2)).0;
    assert!(days[1].starts_with("2025-01-01: 2"), "{days:?}");
}

#[test]
fn a_part_the_wheel_has_no_more_and_a_number_that_meant_another_are_told() {
    let mut entries = three_years();
    entries.push(Entry {
        replaces: vec![id(1)],
        ..described(2, 10, 5)
    });
    let (told, gone) = points(&entries, joint(2));
    assert!(
        told.iter().all(|point| point.ends_with(" other")),
        "{told:?}"
    );
    assert!(!gone, "the wheel has a joint 2 still");
    for (question, place, other) in [
        (Question::SpokeFoot, Place::Spoke(2), true),
        (Question::TyreGap, Place::Between(2), true),
        (Question::Shake, Place::Whole, false),
    ] {
        let visit = visit(30, "2026-03-01", Stage::OnTheArm);
        entries.push(reading(45, &visit, slot(question, place), gap(1.0)));
        let told = points(&entries, slot(question, place)).0;
        assert_eq!(told[0].ends_with(" other"), other, "{told:?}");
        entries.pop();
    }
    let first = visit(50, "2026-04-01", Stage::OnTheArm);
    entries.push(reading(51, &first, joint(6), gap(1.0)));
    entries.push(first);
    let (told, gone) = points(&entries, joint(6));
    assert_eq!((told.len(), gone), (1, true));
}

#[test]
fn what_is_struck_out_is_no_history_and_a_dispute_keeps_all_sides() {
    let mut entries = three_years();
    entries.push(Entry {
        replaces: vec![id(21)],
        visit: Some(id(20)),
        ..entry(
            60,
            "2026-04-01",
            Kind::Reading,
            &joint(2).code(),
            Says::Struck,
        )
    });
    for (n, wide) in [(61, 0.5), (62, 2.0)] {
        let side = reading(
            n,
            &visit(30, "2026-03-01", Stage::OnTheArm),
            joint(2),
            gap(wide),
        );
        entries.push(Entry {
            visit: Some(id(30)),
            replaces: vec![id(31)],
            ..side
        });
    }
    let (told, _) = points(&entries, joint(2));
    assert_eq!(told.len(), 2);
    assert!(told[1].starts_with("2026-03-01: 0.5/2 "), "{told:?}");
}

fn differences(entries: &[Entry], visit: u64) -> Vec<(String, Change, Option<Grade>, bool, bool)> {
    let book: Book = entries.iter().cloned().collect();
    let view = book.view();
    let all = since_last(&view.vehicle(id(0)), id(visit), NEAR, &house_limits());
    let row = |it: &Difference<'_>| {
        let code = it.slot.code();
        (code, it.change, it.grade, it.worked, it.gone)
    };
    all.iter().map(row).collect()
}

#[test]
fn an_examination_stands_beside_what_was_found_before_it() {
    let rows = differences(&three_years(), 20);
    let moisture = |n| format!("near/felloe-{n}/moisture");
    assert_eq!(
        rows,
        [
            (
                "near/joint-2/joint-gap".to_owned(),
                Change::Worse,
                Some(Grade::LightWorkOnly),
                false,
                false
            ),
            (
                moisture(1),
                Change::Differs,
                Some(Grade::Note),
                false,
                false
            ),
            (
                moisture(4),
                Change::Differs,
                Some(Grade::Note),
                false,
                false
            ),
        ]
    );
    let rows = differences(&three_years(), 30);
    let better = rows
        .iter()
        .find(|row| row.0.ends_with("joint-gap"))
        .unwrap();
    assert_eq!(
        (better.1, better.3),
        (Change::Better, true),
        "the tyre was contracted"
    );
    assert!(
        differences(&three_years(), 10)
            .iter()
            .all(|row| row.1 == Change::New)
    );
    assert_eq!(differences(&three_years(), 99), []);
}

/// The examination before this one may have looked elsewhere.
#[test]
fn the_latest_that_looked_is_what_is_held_beside() {
    let mut entries = three_years();
    let now = visit(40, "2026-05-01", Stage::OnTheArm);
    entries.push(reading(41, &now, joint(2), Answer::CannotSee));
    entries.push(now);
    let last = visit(50, "2026-06-01", Stage::OnTheArm);
    entries.push(reading(51, &last, joint(2), gap(2.0)));
    entries.push(last);
    let book: Book = entries.into_iter().collect();
    let view = book.view();
    let vehicle = view.vehicle(id(0));
    let at = |visit| {
        let all = since_last(&vehicle, visit, NEAR, &house_limits());
        all.into_iter().find(|it| it.slot == joint(2)).unwrap()
    };
    let (blind, seen) = (at(id(40)), at(id(50)));
    assert_eq!(blind.change, Change::NotLookedAt);
    assert_eq!(seen.change, Change::Worse);
    for it in [blind, seen] {
        assert_eq!(it.then.unwrap().0.at.day(), "2026-03-01");
    }
}

#[test]
fn what_cannot_be_asked_at_this_stage_is_not_missed() {
    let mut entries = three_years();
    let shake = slot(Question::Shake, Place::Whole);
    entries.push(reading(
        34,
        &visit(30, "2026-03-01", Stage::OnTheArm),
        shake,
        gap(2.0),
    ));
    let missed = |stage| {
        let mut entries = entries.clone();
        entries.push(visit(40, "2026-05-01", stage));
        let rows = differences(&entries, 40);
        rows.iter().any(|row| row.0 == shake.code())
    };
    assert_eq!(
        (missed(Stage::OnTheArm), missed(Stage::TyreOff)),
        (true, false)
    );
}

#[test]
fn a_value_counted_otherwise_is_listed_and_held_beside_nothing() {
    let mut entries = three_years();
    entries.push(Entry {
        replaces: vec![id(1)],
        ..described(2, 10, 5)
    });
    let rows = differences(&entries, 20);
    let joint = rows.iter().find(|row| row.0 == joint(2).code()).unwrap();
    assert_eq!((joint.1, joint.4), (Change::New, true));
}

proptest! {
    /// A book is a set: in whichever order its entries came, its history is the same.
    #[test]
    fn the_order_of_entries_changes_nothing(entries in Just(three_years()).prop_shuffle()) {
        prop_assert_eq!(points(&entries, joint(2)), points(&three_years(), joint(2)));
        prop_assert_eq!(differences(&entries, 30), differences(&three_years(), 30));
    }
}
