//! What is odd about a set: reported, without effect on anything else.

use super::writer::{Writer, answer, book, foot, lengths, mm, near_wheel, play};
use crate::daybook::{Digest, Entry, Kind, Problem, State, Unwritten};
use crate::wheel::Position;

fn missing(name: &str) -> Digest {
    Digest::of(name.as_bytes())
}

#[test]
fn an_entry_whose_target_is_not_here_counts_and_is_reported() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let gone = vec![missing("one"), missing("other"), missing("one")];
    let entry = writer.write(play(cart.id, visit.id, 2.0).replacing(gone));
    let book = book([&cart, &visit, &entry]);
    assert_eq!(lengths(&book, cart.id, visit.id), [2.0]);
    let view = book.view();
    let thread = view.vehicle(cart.id).threads(&Kind::Reading)[0];
    assert_eq!(thread.not_here().len(), 2);
    assert!(thread.has(missing("one")) && thread.has(entry.id) && !thread.has(cart.id));
    let problem = Problem::EarlierNotHere {
        entry: entry.id,
        count: 2,
    };
    assert_eq!(view.problems(), [problem]);
}

#[test]
fn two_that_name_the_same_entry_not_here_are_one_thread() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let lost = writer.play(cart.id, visit.id, 1.0);
    let one = writer.correct(&[&lost], 2.0);
    let other = writer.correct(&[&lost], 3.0);
    let apart = writer.play(cart.id, visit.id, 4.0);
    let mut book = book([&cart, &visit, &one, &other, &apart]);
    {
        let view = book.view();
        let vehicle = view.vehicle(cart.id);
        assert_eq!(vehicle.threads(&Kind::Reading).len(), 2);
        assert_eq!(vehicle.disputes().len(), 1);
        assert_eq!(vehicle.disputes()[0].not_here(), [lost.id]);
    }
    book.add(lost);
    let view = book.view();
    assert_eq!(view.vehicle(cart.id).threads(&Kind::Reading).len(), 2);
    assert!(view.problems().is_empty(), "once it arrives nothing is odd");
}

#[test]
fn a_claim_on_another_vehicle_slot_or_kind_is_inert_and_reported() {
    let mut writer = Writer::new("barn");
    let (cart, other_cart) = (writer.begin("Hay cart"), writer.begin("Tumbril"));
    let (visit, other_visit) = (
        writer.visit(cart.id, "barn"),
        writer.visit(other_cart.id, ""),
    );
    let reading = writer.play(cart.id, visit.id, 1.0);
    let other_vehicle = writer.play(other_cart.id, other_visit.id, 1.0);
    let other_slot = writer.write(answer(cart.id, visit.id, foot(4), mm(1.0)));
    for target in [&other_vehicle, &other_slot, &visit, &cart] {
        let claim = writer.write(play(cart.id, visit.id, 9.0).replacing(vec![target.id]));
        let all = [
            &cart,
            &other_cart,
            &visit,
            &other_visit,
            &reading,
            &other_vehicle,
        ];
        let book = book(all.into_iter().chain([&other_slot, &claim]));
        let view = book.view();
        let elsewhere = Problem::ReplacesElsewhere {
            entry: claim.id,
            names: target.id,
        };
        assert_eq!(view.problems(), [elsewhere]);
        let heads: Vec<_> = view
            .threads()
            .filter(|thread| thread.has(target.id))
            .collect();
        assert_eq!(heads.len(), 1);
        assert_eq!(
            heads[0].state(),
            Some(State::Settled(target)),
            "it stands as before"
        );
        assert_eq!(lengths(&book, cart.id, visit.id), [1.0, 1.0, 9.0]);
    }
}

#[test]
fn a_claim_on_the_same_position_of_another_vehicle_is_inert() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tumbril"));
    let wheel = writer.wheel(cart.id, 12, 6);
    let near = near_wheel(Position::Near, 10, 5);
    let claim = Unwritten::new(Some(other.id), near).unwrap();
    let claim = writer.write(claim.replacing(vec![wheel.id]));
    let book = book([&cart, &other, &wheel, &claim]);
    let view = book.view();
    assert_eq!(
        view.vehicle(cart.id).wheel(Position::Near).unwrap().1,
        wheel.id
    );
    assert_eq!(
        view.vehicle(other.id).wheel(Position::Near).unwrap().1,
        claim.id
    );
    assert_eq!(view.problems().len(), 1);
}

#[test]
fn entries_of_a_vehicle_or_an_examination_not_here_are_kept_and_reported() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let wheel = writer.wheel(cart.id, 12, 6);
    let reading = writer.play(cart.id, visit.id, 1.0);
    let book = book([&wheel, &reading]);
    let view = book.view();
    assert_eq!(view.vehicles(), [cart.id]);
    let vehicle = view.vehicle(cart.id);
    assert!(vehicle.described().is_none() && !vehicle.struck());
    assert_eq!((vehicle.wheels().len(), vehicle.count()), (1, 2));
    let no_vehicle = |entry: &Entry| Problem::VehicleNotHere {
        entry: entry.id,
        names: cart.id,
    };
    let no_visit = Problem::VisitNotHere {
        entry: reading.id,
        names: visit.id,
    };
    let mut expected = vec![no_vehicle(&wheel), no_vehicle(&reading), no_visit];
    expected.sort();
    assert_eq!(view.problems(), expected);
}

#[test]
fn what_begins_no_vehicle_and_what_is_no_examination_are_reported() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tumbril"));
    let (visit, elsewhere) = (writer.visit(cart.id, ""), writer.visit(other.id, ""));
    let renamed = writer.again(&cart, vec![cart.id]);
    let of_a_correction = writer.visit(renamed.id, "");
    let in_a_wheel = writer.play(cart.id, cart.id, 1.0);
    let in_anothers = writer.play(cart.id, elsewhere.id, 1.0);
    let all = [
        &cart,
        &other,
        &visit,
        &elsewhere,
        &renamed,
        &of_a_correction,
    ];
    let book = book(all.into_iter().chain([&in_a_wheel, &in_anothers]));
    let mut expected = vec![
        Problem::VehicleNotHere {
            entry: of_a_correction.id,
            names: renamed.id,
        },
        Problem::VisitNotHere {
            entry: in_a_wheel.id,
            names: cart.id,
        },
        Problem::VisitNotHere {
            entry: in_anothers.id,
            names: elsewhere.id,
        },
    ];
    expected.sort();
    assert_eq!(book.view().problems(), expected);
}

/// An id is the digest of the line that would have to hold it, so a line that names itself cannot
/// be made; the nearest thing is one that names what it would have been without the name.
#[test]
fn an_entry_cannot_name_itself() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let without = Writer::after("barn", 2).play(cart.id, visit.id, 1.0);
    let entry = play(cart.id, visit.id, 1.0).replacing(vec![without.id]);
    let with = Writer::after("barn", 2).write(entry);
    assert_ne!(with.id, without.id);
    let book = book([&cart, &visit, &with]);
    let view = book.view();
    let thread = view.vehicle(cart.id).threads(&Kind::Reading)[0];
    assert_eq!(thread.not_here(), [without.id]);
    assert_eq!(thread.state(), Some(State::Settled(&with)));
}

/// Entries can also be put together in memory; even then nothing is lost and nothing hangs.
#[test]
fn entries_that_replace_themselves_or_each_other_in_memory_are_kept() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let mut own = writer.play(cart.id, visit.id, 1.0);
    own.replaces = vec![own.id];
    let (mut one, mut other) = (
        writer.play(cart.id, visit.id, 2.0),
        writer.play(cart.id, visit.id, 3.0),
    );
    one.replaces = vec![other.id];
    other.replaces = vec![one.id];
    let book = book([&cart, &visit, &own, &one, &other]);
    let view = book.view();
    let threads = view.vehicle(cart.id).threads(&Kind::Reading);
    assert_eq!(threads.len(), 2);
    assert_eq!(threads[0].state(), Some(State::Settled(&own)));
    assert_eq!((threads[1].state(), threads[1].entries().len()), (None, 2));
    assert!(threads[1].counts().is_empty() && !threads[1].struck() && !threads[1].disputed());
}
