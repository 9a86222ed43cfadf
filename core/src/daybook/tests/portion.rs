//! Portions of a book: one vehicle, and what is new, each with all that it rests on.

use super::writer::{Writer, book, ids, lengths, play};
use crate::daybook::{
    Book, Digest, Digests, Entry, EntryId, LimitSaid, Picture, Portion, Says, Threshold, Unwritten,
};
use crate::wheel::Part;

fn picture(vehicle: EntryId, seed: u8) -> Unwritten {
    let says = Says::Picture(Picture {
        part: Part::Vehicle,
        digest: Digest::of(&[seed]),
        width: 4,
        height: 3,
        bytes: 100,
    });
    Unwritten::new(Some(vehicle), says).unwrap()
}

fn erasure(vehicle: EntryId, seed: u8) -> Unwritten {
    Unwritten::new(Some(vehicle), Says::Erasure(Digest::of(&[seed]))).unwrap()
}

fn digests<'e>(entries: impl IntoIterator<Item = &'e Entry>) -> Digests {
    ids(entries).into_iter().collect()
}

fn seeds(seeds: &[u8]) -> Digests {
    seeds.iter().map(|seed| Digest::of(&[*seed])).collect()
}

#[test]
fn a_vehicle_goes_whole_and_alone() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tip cart"));
    let visit = writer.visit(cart.id, "barn");
    let first = writer.play(cart.id, visit.id, 1.0);
    let second = writer.correct(&[&first], 2.0);
    let strike = writer.strike(&[&second]);
    let elsewhere = writer.visit(other.id, "yard");
    let house = LimitSaid {
        row: "tyre-gap/keep-empty/anywhere".to_owned(),
        threshold: Some(Threshold::Count(2)),
    };
    let house = writer.write(Unwritten::new(None, Says::Limit(house)).unwrap());
    let all = book([
        &cart, &other, &visit, &first, &second, &strike, &elsewhere, &house,
    ]);
    let portion = Portion::of_vehicle(&all, cart.id);
    let own = [&cart, &visit, &first, &second, &strike];
    assert_eq!(portion.entries, digests(own));
    let carried = all.portion(&portion.entries);
    assert_eq!(carried.len(), own.len());
    assert!(carried.view().problems().is_empty());
    let read = |book: &Book| lengths(book, cart.id, visit.id);
    assert_eq!(read(&carried), read(&all));
}

#[test]
fn what_is_new_takes_along_all_that_it_rests_on_and_no_more() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let wheel = writer.wheel(cart.id, 12, 6);
    let (early, late) = (writer.visit(cart.id, "barn"), writer.visit(cart.id, "yard"));
    let other = writer.play(cart.id, early.id, 9.0);
    let first = writer.play(cart.id, early.id, 1.0);
    let second = writer.correct(&[&first], 2.0);
    let third = writer.correct(&[&second], 3.0);
    let described = writer.write(Unwritten {
        described_by: Some(wheel.id),
        ..play(cart.id, late.id, 4.0)
    });
    let all = book([
        &cart, &wheel, &early, &late, &other, &first, &second, &third, &described,
    ]);
    let new = |entries: &[&Entry]| {
        let asked = entries.iter().map(|entry| entry.id);
        Portion::with_ancestors(&all, asked).entries
    };
    assert_eq!(
        new(&[&third]),
        digests([&cart, &early, &first, &second, &third])
    );
    assert_eq!(
        new(&[&described]),
        digests([&cart, &wheel, &late, &described])
    );
    assert_eq!(new(&[]), Digests::default());
}

#[test]
fn what_is_not_here_is_passed_over() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let first = writer.play(cart.id, visit.id, 1.0);
    let second = writer.correct(&[&first], 2.0);
    let all = book([&cart, &second]);
    let portion = Portion::with_ancestors(&all, [second.id, visit.id].into_iter());
    assert_eq!(portion.entries, digests([&cart, &second]));
}

#[test]
fn the_pictures_are_those_spoken_of_but_for_the_erased() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tip cart"));
    let [kept, erased, erased_elsewhere] =
        [1, 2, 3].map(|seed| writer.write(picture(cart.id, seed)));
    let foreign = writer.write(picture(other.id, 4));
    let erasure_here = writer.write(erasure(cart.id, 2));
    // An erasure of any vehicle holds for the bytes wherever they came from.
    let erasure_there = writer.write(erasure(other.id, 3));
    let all = book([
        &cart,
        &other,
        &kept,
        &erased,
        &erased_elsewhere,
        &foreign,
        &erasure_here,
        &erasure_there,
    ]);
    let portion = Portion::of_vehicle(&all, cart.id);
    assert_eq!(portion.pictures, seeds(&[1]));
    assert!(portion.entries.contains(&erasure_here.id));
    assert!(portion.entries.contains(&erased.id));
    let new = Portion::with_ancestors(&all, [foreign.id].into_iter());
    assert_eq!(new.pictures, seeds(&[4]));
}

#[test]
fn ancestors_that_name_each_other_in_a_ring_end() {
    // No honest lines do, since an id is the digest of its line.
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let mut one = writer.visit(cart.id, "barn");
    let other = writer.visit(cart.id, "yard");
    one.replaces = vec![other.id, one.id];
    let all = book([&cart, &one, &other]);
    let portion = Portion::with_ancestors(&all, [one.id].into_iter());
    assert_eq!(portion.entries.len(), 3);
}
