//! What is drawn over a picture: one thing a picture, corrected, in dispute, and gone with its picture.

use super::writer::{Writer, book, ids};
use crate::daybook::{
    Digest, Digests, Entry, EntryId, Mark, Marks, Picture, Portion, Says, Spot, Unwritten,
};
use crate::wheel::Part;

fn seen() -> Digest {
    Digest::of(b"seen")
}

fn pin(text: &str) -> Mark {
    Mark::Pin(Spot::at(100, 200), text.to_owned())
}

fn picture(writer: &mut Writer, vehicle: EntryId, digest: Digest) -> Entry {
    let says = Says::Picture(Picture {
        part: Part::Vehicle,
        digest,
        width: 4,
        height: 3,
        bytes: 100,
    });
    writer.write(Unwritten::new(Some(vehicle), says).unwrap())
}

fn marks(writer: &mut Writer, vehicle: EntryId, texts: &[&str], replaces: &[&Entry]) -> Entry {
    let (picture, all) = (seen(), texts.iter().map(|text| pin(text)).collect());
    let says = Says::Marks(Marks { picture, all });
    let entry = Unwritten::new(Some(vehicle), says).unwrap();
    writer.write(entry.replacing(ids(replaces.iter().copied())))
}

/// The remarks at the pins that are drawn over the picture.
fn drawn(entries: &[&Entry], vehicle: EntryId) -> Vec<String> {
    let book = book(entries.iter().copied());
    let view = book.view();
    let marks = view.vehicle(vehicle).marks(seen());
    let text = |mark| match mark {
        Mark::Pin(_, text) => text,
        other => panic!("{other:?}"),
    };
    marks.into_iter().map(text).collect()
}

#[test]
fn the_last_drawn_stands_in_the_place_of_what_it_replaces() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let taken = picture(&mut writer, cart.id, seen());
    let first = marks(&mut writer, cart.id, &["crack", "rot"], &[]);
    let second = marks(&mut writer, cart.id, &["crack"], &[&first]);
    assert_eq!(
        drawn(&[&cart, &taken, &first], cart.id),
        ["crack", "rot"],
        "before it was corrected"
    );
    let all = [&cart, &taken, &first, &second];
    assert_eq!(drawn(&all, cart.id), ["crack"]);
    let strike = writer.strike(&[&second]);
    let all = [&cart, &taken, &first, &second, &strike];
    assert!(drawn(&all, cart.id).is_empty());
}

#[test]
fn what_two_devices_draw_is_in_dispute_and_all_of_it_is_shown_once() {
    let mut barn = Writer::new("barn");
    let cart = barn.begin("Hay cart");
    let taken = picture(&mut barn, cart.id, seen());
    let mut shop = Writer::after("shop", 2);
    let here = marks(&mut barn, cart.id, &["crack", "nail"], &[]);
    let there = marks(&mut shop, cart.id, &["nail", "rot"], &[]);
    let all = book([&cart, &taken, &here, &there]);
    let view = all.view();
    let [dispute] = view.vehicle(cart.id).disputes()[..] else {
        panic!("one dispute");
    };
    assert_eq!(dispute.heads().len(), 2);
    let mut shown = drawn(&[&cart, &taken, &here, &there], cart.id);
    shown.sort();
    assert_eq!(shown, ["crack", "nail", "rot"]);
    let settled = marks(&mut barn, cart.id, &["nail"], &[&here, &there]);
    let all = [&cart, &taken, &here, &there, &settled];
    assert_eq!(drawn(&all, cart.id), ["nail"]);
}

#[test]
fn marks_go_with_their_picture_and_come_back_with_it() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let taken = picture(&mut writer, cart.id, seen());
    let drawn_here = marks(&mut writer, cart.id, &["crack"], &[]);
    let base = [&cart, &taken, &drawn_here];
    assert_eq!(drawn(&base, cart.id), ["crack"]);

    let erasure = Unwritten::new(Some(cart.id), Says::Erasure(seen())).unwrap();
    let erasure = writer.write(erasure);
    let erased = [&base[..], &[&erasure]].concat();
    assert!(drawn(&erased, cart.id).is_empty(), "erased");
    let back = writer.strike(&[&erasure]);
    let back = [&erased[..], &[&back]].concat();
    assert_eq!(drawn(&back, cart.id), ["crack"], "the erasing undone");

    let strike = writer.strike(&[&taken]);
    let struck = [&base[..], &[&strike]].concat();
    assert!(drawn(&struck, cart.id).is_empty(), "struck out");
    let all = book(struck.iter().copied());
    assert!(all.view().vehicle(cart.id).hidden(&drawn_here));
    let again = writer.again(&taken, vec![strike.id]);
    let again = [&struck[..], &[&again]].concat();
    assert_eq!(drawn(&again, cart.id), ["crack"], "brought back");
}

/// The same bytes may be a picture of two parts: while one of them stands, so do the marks.
#[test]
fn marks_stand_while_any_entry_speaks_of_their_picture() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let one = picture(&mut writer, cart.id, seen());
    let other = picture(&mut writer, cart.id, seen());
    let drawn_here = marks(&mut writer, cart.id, &["crack"], &[]);
    let strike = writer.strike(&[&one]);
    let all = [&cart, &one, &other, &drawn_here, &strike];
    assert_eq!(drawn(&all, cart.id), ["crack"]);
    assert_eq!(drawn(&[&cart, &drawn_here], cart.id), ["crack"], "not here");
}

#[test]
fn a_portion_takes_along_the_picture_that_is_marked() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tip cart"));
    let taken = picture(&mut writer, cart.id, seen());
    let unmarked = picture(&mut writer, cart.id, Digest::of(b"unmarked"));
    let elsewhere = picture(&mut writer, other.id, seen());
    let drawn_here = marks(&mut writer, cart.id, &["crack"], &[]);
    let all = book([&cart, &other, &taken, &unmarked, &elsewhere, &drawn_here]);
    let portion = Portion::with_ancestors(&all, [drawn_here.id].into_iter());
    let expected: Digests = ids([&cart, &taken, &drawn_here]).into_iter().collect();
    assert_eq!(portion.entries, expected);
    assert_eq!(portion.pictures, Digests::of(vec![seen()]));
}
