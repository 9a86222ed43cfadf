//! Two descriptions of one cart, made on two devices that had not met.

use super::writer::{Writer, book, lengths, mm};
use crate::daybook::{Book, Digest, Entry, EntryId, Kind, SameAs, Says, Unwritten};

/// The cart as it was begun twice: each time with a wheel, an examination and a play of its own.
struct Twice {
    barn: Writer,
    shop: Writer,
    entries: Vec<Entry>,
    begun: [EntryId; 2],
    visits: [EntryId; 2],
}

impl Twice {
    fn new() -> Twice {
        let (mut barn, mut shop) = (Writer::new("barn"), Writer::new("shop"));
        let mut entries = Vec::new();
        let mut begin = |writer: &mut Writer, name: &str, spokes, place: &str, length| {
            let cart = writer.begin(name);
            let visit = writer.visit(cart.id, place);
            let wheel = writer.wheel(cart.id, spokes, spokes / 2);
            let play = writer.play(cart.id, visit.id, length);
            let ids = (cart.id, visit.id);
            entries.extend([cart, visit, wheel, play]);
            ids
        };
        let one = begin(&mut barn, "Hay cart", 12, "the barn", 0.5);
        let other = begin(&mut shop, "Bess", 14, "the shop", 1.5);
        Twice {
            barn,
            shop,
            entries,
            begun: [one.0, other.0],
            visits: [one.1, other.1],
        }
    }

    fn same(&self) -> Unwritten {
        let [one, other] = self.begun;
        Unwritten::new(None, Says::SameAs(SameAs::new(one, other).unwrap())).unwrap()
    }

    fn book(&self) -> Book {
        book(&self.entries)
    }
}

#[test]
fn the_slot_names_both_the_smaller_first() {
    let (one, other) = (Digest::of(b"one"), Digest::of(b"other"));
    let same = SameAs::new(one, other).unwrap();
    assert_eq!(SameAs::new(other, one), Some(same));
    assert_eq!(SameAs::from_slot(&same.slot()), Some(same));
    assert_eq!(SameAs::new(one, one), None);
    let [small, great] = same.both();
    assert!(small < great);
    assert_eq!(SameAs::from_slot(&format!("{great}/{small}")), None);
    assert_eq!(SameAs::from_slot(&format!("{small}/{small}")), None);
    assert_eq!(SameAs::from_slot(&small.hex()), None);
}

#[test]
fn joined_they_are_one_vehicle_by_either_id() {
    let mut twice = Twice::new();
    assert_eq!(twice.book().view().vehicles().len(), 2);
    let same = twice.barn.write(twice.same());
    twice.entries.push(same);
    let book = twice.book();
    let view = book.view();
    let first = twice.begun[0].min(twice.begun[1]);
    assert_eq!(view.vehicles(), [first]);
    assert!(view.problems().is_empty(), "{:?}", view.problems());
    for id in twice.begun {
        let vehicle = view.vehicle(id);
        assert_eq!(vehicle.id(), first);
        assert_eq!(vehicle.count(), 8);
        assert_eq!(vehicle.visits().len(), 2);
    }
    for (visit, length) in twice.visits.into_iter().zip([0.5, 1.5]) {
        assert_eq!(lengths(&book, first, visit), [length]);
    }
}

#[test]
fn what_the_two_say_otherwise_is_in_dispute_and_one_entry_settles_it() {
    let mut twice = Twice::new();
    let same = twice.barn.write(twice.same());
    twice.entries.push(same);
    let joined = twice.book();
    let view = joined.view();
    let vehicle = view.vehicle(twice.begun[0]);
    let mut kinds: Vec<&Kind> = vehicle
        .disputes()
        .iter()
        .filter_map(|thread| thread.entries().first().map(|entry| &entry.kind))
        .collect();
    kinds.sort();
    assert_eq!(kinds, [&Kind::Vehicle, &Kind::Wheel]);

    let heads = vehicle.description().unwrap().to_replace();
    let named = twice.shop.again(&twice.entries[0], heads);
    twice.entries.push(named);
    let settled = twice.book();
    let view = settled.view();
    let vehicle = view.vehicle(twice.begun[1]);
    assert_eq!(vehicle.disputes().len(), 1, "the wheels still differ");
    assert_eq!(vehicle.described().unwrap().name, "Hay cart");
}

#[test]
fn struck_out_they_are_two_again_and_lose_nothing() {
    let mut twice = Twice::new();
    let apart = twice.book();
    let same = twice.barn.write(twice.same());
    let strike = twice.barn.strike(&[&same]);
    twice.entries.extend([same, strike]);
    let book = twice.book();
    let view = book.view();
    assert_eq!(view.vehicles(), apart.view().vehicles());
    for (id, visit) in twice.begun.into_iter().zip(twice.visits) {
        assert_eq!(view.vehicle(id).count(), 4);
        assert_eq!(
            lengths(&book, id, visit),
            lengths(&apart, id, visit),
            "each has its own reading"
        );
    }
}

#[test]
fn struck_out_on_one_device_and_said_again_on_the_other_they_stay_one() {
    let mut twice = Twice::new();
    let same = twice.barn.write(twice.same());
    let strike = twice.barn.strike(&[&same]);
    let again = twice.shop.write(twice.same().replacing(vec![same.id]));
    twice.entries.extend([same, strike, again]);
    let book = twice.book();
    let view = book.view();
    assert_eq!(view.vehicles().len(), 1);
    let threads: Vec<_> = view.same_as().collect();
    assert!(matches!(threads.as_slice(), [thread] if thread.disputed()));
}

#[test]
fn three_are_one_through_any_chain_of_two() {
    let mut writer = Writer::new("barn");
    let carts: Vec<Entry> = (0..5).map(|n| writer.begin(&format!("cart {n}"))).collect();
    for pairs in [[(0, 1), (1, 2)], [(2, 1), (0, 2)], [(1, 0), (0, 2)]] {
        let said = pairs.map(|(one, other): (usize, usize)| {
            let same = SameAs::new(carts[one].id, carts[other].id).unwrap();
            writer.write(Unwritten::new(None, Says::SameAs(same)).unwrap())
        });
        let book = book(carts.iter().chain(&said));
        let view = book.view();
        let mut all: Vec<EntryId> = carts[..3].iter().map(|cart| cart.id).collect();
        all.sort_unstable();
        for cart in &carts[..3] {
            assert_eq!(view.joined().all(cart.id), all);
            assert_eq!(view.joined().stands_for(cart.id), all[0]);
        }
        assert_eq!(view.joined().all(carts[3].id), [carts[3].id]);
        assert_eq!(view.vehicles().len(), 3);
    }
}

#[test]
fn a_correction_reaches_across_only_while_the_two_are_one() {
    let mut twice = Twice::new();
    // Spoke 3 of the examination in the shop, corrected by an entry of the cart begun in the barn.
    let reading = twice.entries[7].clone();
    let across = Unwritten {
        vehicle: Some(twice.begun[0]),
        ..super::writer::answer(
            twice.begun[1],
            twice.visits[1],
            super::writer::foot(3),
            mm(2.5),
        )
    };
    let across = twice.shop.write(across.replacing(vec![reading.id]));
    twice.entries.push(across);
    let visit = twice.visits[1];
    assert_eq!(lengths(&twice.book(), twice.begun[1], visit), [1.5]);
    assert!(!twice.book().view().problems().is_empty());
    let same = twice.barn.write(twice.same());
    twice.entries.push(same);
    assert_eq!(lengths(&twice.book(), twice.begun[1], visit), [2.5]);
    assert!(twice.book().view().problems().is_empty());
}
