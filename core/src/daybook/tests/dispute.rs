//! Corrections, disputes and how they are settled and opened again.

use super::writer::{Writer, answer, book, cart, foot, ids, lengths, mm, play};
use crate::daybook::entry::MOST_REPLACED;
use crate::daybook::{Book, Entry, Kind, Says, State, Thread, Unwritten};
use crate::survey::{Answer, Reading};
use crate::wheel::Position;

/// A cart with an examination and one reading on two devices that know of it.
struct Two {
    cart: Entry,
    visit: Entry,
    old: Entry,
    barn: Writer,
    shop: Writer,
}

fn two() -> Two {
    let mut barn = Writer::new("barn");
    let cart = barn.begin("Hay cart");
    let visit = barn.visit(cart.id, "barn");
    let old = barn.play(cart.id, visit.id, 1.0);
    Two {
        cart,
        visit,
        old,
        barn,
        shop: Writer::after("shop", 3),
    }
}

impl Two {
    fn book(&self, more: &[&Entry]) -> Book {
        book(
            [&self.cart, &self.visit, &self.old]
                .into_iter()
                .chain(more.iter().copied()),
        )
    }
}

/// The one thread of readings in a book.
fn with_reading<T>(book: &Book, look: impl FnOnce(&Thread<'_>) -> T) -> T {
    let view = book.view();
    let vehicle = view.vehicle(view.vehicles()[0]);
    let threads = vehicle.threads(&Kind::Reading);
    assert_eq!(threads.len(), 1);
    look(threads[0])
}

#[test]
fn one_head_is_the_value() {
    let mut two = two();
    let new = two.barn.correct(&[&two.old], 2.0);
    with_reading(&two.book(&[&new]), |thread| {
        assert_eq!(thread.state(), Some(State::Settled(&new)));
        assert_eq!(thread.entries(), [&two.old, &new]);
        assert_eq!(thread.last_settlement(), None);
    });
}

#[test]
fn two_corrections_on_two_devices_are_a_dispute_in_which_both_count() {
    let mut two = two();
    let one = two.barn.correct(&[&two.old], 2.0);
    let other = two.shop.correct(&[&two.old], 3.0);
    let book = two.book(&[&one, &other]);
    let mut heads = vec![&one, &other];
    heads.sort_by_key(|head| head.order());
    with_reading(&book, |thread| {
        assert_eq!(thread.state(), Some(State::Dispute(heads.clone())));
        assert_eq!(thread.heads(), heads);
        assert_eq!(thread.to_replace(), ids(heads.iter().copied()));
    });
    let mut counted = lengths(&book, two.cart.id, two.visit.id);
    counted.sort_by(f64::total_cmp);
    assert_eq!(counted, [2.0, 3.0]);
    assert_eq!(book.view().vehicle(two.cart.id).disputes().len(), 1);
}

#[test]
fn an_entry_that_replaces_both_sides_settles() {
    let mut two = two();
    let one = two.barn.correct(&[&two.old], 2.0);
    let other = two.shop.correct(&[&two.old], 3.0);
    let last = two.shop.correct(&[&one, &other], 2.5);
    let book = two.book(&[&one, &other, &last]);
    with_reading(&book, |thread| {
        assert_eq!(thread.state(), Some(State::Settled(&last)));
        assert_eq!(thread.last_settlement(), Some(&last));
    });
    assert_eq!(lengths(&book, two.cart.id, two.visit.id), [2.5]);
    assert!(book.view().vehicle(two.cart.id).disputes().is_empty());
}

#[test]
fn a_late_correction_of_the_old_reading_opens_it_again() {
    let mut two = two();
    let one = two.barn.correct(&[&two.old], 2.0);
    let other = two.shop.correct(&[&two.old], 3.0);
    let settlement = two.shop.correct(&[&one, &other], 2.5);
    let late = two.barn.correct(&[&two.old], 4.0);
    with_reading(&two.book(&[&one, &other, &settlement, &late]), |thread| {
        let mut heads = vec![&settlement, &late];
        heads.sort_by_key(|head| head.order());
        assert_eq!(thread.state(), Some(State::Dispute(heads)));
        assert_eq!(thread.last_settlement(), Some(&settlement));
    });
}

#[test]
fn only_what_joined_sides_that_differ_is_a_settlement() {
    let mut two = two();
    let new = two.barn.correct(&[&two.old], 2.0);
    let both = two.barn.correct(&[&two.old, &new], 3.0);
    with_reading(&two.book(&[&new, &both]), |thread| {
        assert_eq!(thread.last_settlement(), None, "one line of corrections");
    });
    let twice = two.barn.correct(&[&new, &new], 3.0);
    with_reading(&two.book(&[&new, &twice]), |thread| {
        assert_eq!(thread.last_settlement(), None, "one entry named twice");
    });
    let foreign = two.barn.correct(&[&new, &two.visit], 3.0);
    with_reading(&two.book(&[&new, &foreign]), |thread| {
        assert_eq!(thread.last_settlement(), None, "an entry of another kind");
    });
    let same = two.shop.correct(&[&two.old], 2.0);
    let merged = two.shop.correct(&[&new, &same], 3.0);
    with_reading(&two.book(&[&new, &same, &merged]), |thread| {
        assert_eq!(thread.last_settlement(), None, "two that say the same");
    });
    with_reading(&two.book(&[&new, &merged]), |thread| {
        assert_eq!(
            thread.last_settlement(),
            Some(&merged),
            "one of them not here"
        );
    });
}

#[test]
fn the_same_value_said_twice_is_settled() {
    let mut two = two();
    let one = two.barn.correct(&[&two.old], 2.0);
    let other = two.shop.correct(&[&two.old], 2.0);
    let first = if one.order() < other.order() {
        &one
    } else {
        &other
    };
    with_reading(&two.book(&[&one, &other]), |thread| {
        assert_eq!(thread.heads().len(), 2);
        assert_eq!(thread.state(), Some(State::Settled(first)));
        assert_eq!(thread.counts(), [first]);
    });
}

#[test]
fn how_an_answer_was_typed_makes_no_dispute() {
    let mut two = two();
    let (cart, visit) = (two.cart.id, two.visit.id);
    let typed = |written: &str| {
        let says = Says::Reading(Reading {
            slot: foot(3),
            answer: mm(1.5),
            written: written.to_owned(),
        });
        let entry = Unwritten::new(Some(cart), says).unwrap().in_visit(visit);
        entry.replacing(vec![two.old.id])
    };
    let one = two.barn.write(typed("1.5"));
    let other = two.shop.write(typed("1 1/2 mm"));
    with_reading(&two.book(&[&one, &other]), |thread| {
        assert!(!thread.disputed())
    });
}

#[test]
fn a_doubt_that_differs_is_a_dispute() {
    let mut two = two();
    let (cart, visit) = (two.cart.id, two.visit.id);
    let over = Answer::Over(crate::quantity::length::millimetres(2.0));
    let said = |says| answer(cart, visit, foot(3), says).replacing(vec![two.old.id]);
    let one = two.barn.write(said(mm(2.0)));
    let other = two.shop.write(said(over));
    with_reading(&two.book(&[&one, &other]), |thread| {
        assert!(thread.disputed())
    });
}

#[test]
fn readings_of_one_slot_stand_beside_each_other() {
    let mut two = two();
    let second = two.shop.play(two.cart.id, two.visit.id, 2.0);
    let book = two.book(&[&second]);
    let view = book.view();
    let vehicle = view.vehicle(two.cart.id);
    assert_eq!(vehicle.threads(&Kind::Reading).len(), 2);
    assert!(vehicle.disputes().is_empty());
    assert_eq!(lengths(&book, two.cart.id, two.visit.id), [1.0, 2.0]);
}

#[test]
fn a_wheel_described_twice_is_a_dispute_without_a_word_of_replacing() {
    let mut two = two();
    let small = two.barn.wheel(two.cart.id, 10, 5);
    let large = two.shop.wheel(two.cart.id, 12, 6);
    let book = two.book(&[&small, &large]);
    let view = book.view();
    let vehicle = view.vehicle(two.cart.id);
    let thread = vehicle.wheel_thread(Position::Near).unwrap();
    assert!(thread.disputed());
    let (wheel, by) = vehicle.wheel(Position::Near).unwrap();
    assert_eq!(
        (wheel.felloes.spokes(), by),
        (12, large.id),
        "the one with most parts"
    );
    assert_eq!(vehicle.wheels().len(), 1);
    let settled = two.barn.again(&small, thread.to_replace());
    let book = two.book(&[&small, &large, &settled]);
    let view = book.view();
    let (wheel, by) = view.vehicle(two.cart.id).wheel(Position::Near).unwrap();
    assert_eq!((wheel.felloes.spokes(), by), (10, settled.id));
}

#[test]
fn a_wheel_described_alike_on_two_devices_is_no_dispute() {
    let mut two = two();
    let one = two.barn.wheel(two.cart.id, 12, 6);
    let other = two.shop.write(
        Unwritten::new(Some(two.cart.id), one.says.clone())
            .unwrap()
            .in_visit(two.visit.id),
    );
    let book = two.book(&[&one, &other]);
    assert!(book.view().vehicle(two.cart.id).disputes().is_empty());
}

#[test]
fn a_vehicle_in_dispute_goes_by_the_name_written_first() {
    let mut two = two();
    let named = |name: &str| {
        let entry = Unwritten::new(Some(two.cart.id), cart(name)).unwrap();
        entry.replacing(vec![two.cart.id])
    };
    let first = two.barn.write(named("Tumbril"));
    let mut later = Writer::after("shop", 9);
    let second = later.write(named("Dung cart"));
    let book = two.book(&[&first, &second]);
    let view = book.view();
    let vehicle = view.vehicle(two.cart.id);
    assert!(vehicle.description().unwrap().disputed());
    assert_eq!(vehicle.described().unwrap().name, "Tumbril");
}

#[test]
fn a_reading_moved_to_another_examination_counts_there_only() {
    let mut two = two();
    let spring = two.barn.visit(two.cart.id, "yard");
    let moved = two
        .barn
        .write(play(two.cart.id, spring.id, 1.0).replacing(vec![two.old.id]));
    let book = two.book(&[&spring, &moved]);
    assert_eq!(lengths(&book, two.cart.id, two.visit.id), [] as [f64; 0]);
    assert_eq!(lengths(&book, two.cart.id, spring.id), [1.0]);
    let view = book.view();
    let vehicle = view.vehicle(two.cart.id);
    assert!(vehicle.of_visit(&Kind::Reading, two.visit.id).is_empty());
    assert_eq!(vehicle.of_visit(&Kind::Reading, spring.id).len(), 1);

    let stayed = two.shop.correct(&[&two.old], 1.0);
    let book = two.book(&[&spring, &moved, &stayed]);
    assert_eq!(book.view().vehicle(two.cart.id).disputes().len(), 1);
    assert_eq!(
        lengths(&book, two.cart.id, two.visit.id),
        [1.0],
        "each side in its own"
    );
    assert_eq!(lengths(&book, two.cart.id, spring.id), [1.0]);
}

#[test]
fn more_sides_than_one_entry_may_replace_are_settled_by_two() {
    let mut two = two();
    let sides: Vec<Entry> = (0_u16..100)
        .map(|side| two.barn.correct(&[&two.old], f64::from(side) / 4.0))
        .collect();
    let mut all = two.book(&sides.iter().collect::<Vec<_>>());
    for _ in 0..2 {
        let to_replace = with_reading(&all, |thread| thread.to_replace());
        assert!(to_replace.len() <= MOST_REPLACED);
        let entry = play(two.cart.id, two.visit.id, 7.0).replacing(to_replace);
        all.add(two.barn.write(entry));
    }
    with_reading(&all, |thread| assert_eq!(thread.heads().len(), 1));
}
