//! What a newer version wrote, and pictures whose bytes are to go.

use super::writer::{Writer, book, hand, lengths, play};
use crate::daybook::{Digest, Digests, Entry, EntryId, Kind, Problem, Says, State, Unwritten};
use crate::paper::line;
use crate::wheel::Position;

/// A line as a newer version might write it: one of ours with some text put in the place of other.
fn newer(entry: &Unwritten, n: u64, from: &str, to: &str) -> Entry {
    let written = line::write(entry, &hand("newer", n)).unwrap();
    assert!(written.contains(from), "{written}");
    line::read(&written.replace(from, to)).unwrap()
}

fn erasure(vehicle: EntryId, picture: Digest) -> Unwritten {
    Unwritten::new(Some(vehicle), Says::Erasure(picture)).unwrap()
}

#[test]
fn what_a_newer_version_wrote_is_kept_and_counted() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let play = play(cart.id, visit.id, 1.0);
    let kind = newer(&play, 3, "\"kind\":\"reading\"", "\"kind\":\"weather\"");
    let slot = newer(&play, 4, "spoke-foot", "spoke-smell");
    let said = newer(&play, 5, "\"answer\":\"length\"", "\"answer\":\"sound\"");
    let form = newer(&play, 6, "\"cartside\":1", "\"cartside\":2");
    let field = newer(&play, 7, "\"by\"", "\"weather\":\"wet\",\"by\"");
    let inner = newer(&play, 8, "\"answer\"", "\"hand\":\"left\",\"answer\"");
    let all = [&cart, &visit, &kind, &slot, &said, &form, &field, &inner];
    let book = book(all);
    let view = book.view();
    assert_eq!(view.written_by_newer(), 6);
    assert_eq!(
        view.threads().flat_map(|thread| thread.entries()).count(),
        8
    );
    assert!(view.problems().is_empty());
    assert_eq!(kind.kind, Kind::Unknown("weather".to_owned()));
    let unread = [&kind, &slot, &said, &form];
    assert!(unread.iter().all(|entry| entry.says == Says::Unread));
    assert_eq!((field.unread_fields, inner.unread_fields), (1, 1));
    assert_eq!(
        lengths(&book, cart.id, visit.id),
        [1.0, 1.0],
        "what can be read is read"
    );
}

#[test]
fn a_reading_corrected_by_a_newer_version_does_not_count_as_it_was() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let old = writer.play(cart.id, visit.id, 1.0);
    let entry = play(cart.id, visit.id, 2.0).replacing(vec![old.id]);
    let new = newer(&entry, 4, "\"answer\":\"length\"", "\"answer\":\"sound\"");
    let book = book([&cart, &visit, &old, &new]);
    assert!(lengths(&book, cart.id, visit.id).is_empty());
    let view = book.view();
    let thread = view.vehicle(cart.id).threads(&Kind::Reading)[0];
    assert_eq!(thread.state(), Some(State::Settled(&new)));
}

#[test]
fn a_description_corrected_by_a_newer_version_stays_in_sight() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let wheel = writer.wheel(cart.id, 12, 6);
    let again = |said: &Entry| Unwritten {
        kind: said.kind.clone(),
        vehicle: Some(cart.id),
        visit: None,
        described_by: None,
        slot: said.slot.clone(),
        says: said.says.clone(),
        replaces: vec![said.id],
    };
    let new_cart = newer(&again(&cart), 3, "\"kind\":\"cart\"", "\"kind\":\"sledge\"");
    let new_wheel = newer(
        &again(&wheel),
        4,
        "\"felloes\"",
        "\"rim\":\"glued\",\"felloes\"",
    );
    let book = book([&cart, &wheel, &new_cart, &new_wheel]);
    let view = book.view();
    let vehicle = view.vehicle(cart.id);
    assert_eq!(vehicle.described().unwrap().name, "Hay cart");
    assert_eq!(vehicle.wheel(Position::Near).unwrap().1, wheel.id);
    assert_eq!(view.written_by_newer(), 2);
}

#[test]
fn what_cannot_be_read_agrees_with_nothing() {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    let old = writer.play(cart.id, visit.id, 1.0);
    let entry = play(cart.id, visit.id, 2.0).replacing(vec![old.id]);
    let one = newer(&entry, 4, "\"answer\":\"length\"", "\"answer\":\"sound\"");
    let two = newer(&entry, 5, "\"answer\":\"length\"", "\"answer\":\"smell\"");
    assert!(!one.agrees_with(&two) && !two.agrees_with(&one) && !one.agrees_with(&one));
    let read = writer.correct(&[&old], 2.0);
    assert!(!one.agrees_with(&read) && !read.agrees_with(&one) && read.agrees_with(&read));

    let unread = book([&cart, &visit, &old, &one, &two]);
    let view = unread.view();
    let vehicle = view.vehicle(cart.id);
    let heads = [&one, &two].to_vec();
    assert_eq!(
        vehicle.threads(&Kind::Reading)[0].state(),
        Some(State::Dispute(heads)),
        "in order, whichever side is looked at first"
    );
    assert!(vehicle.disputes().is_empty(), "no side of it can be shown");

    let half_read = book([&cart, &visit, &old, &one, &read]);
    let view = half_read.view();
    assert_eq!(view.vehicle(cart.id).disputes().len(), 1);
    assert_eq!(lengths(&half_read, cart.id, visit.id), [2.0]);
}

#[test]
fn erased_is_what_an_erasure_that_counts_names() {
    let mut writer = Writer::new("barn");
    let (cart, other) = (writer.begin("Hay cart"), writer.begin("Tumbril"));
    let (one, two) = (Digest::of(b"one"), Digest::of(b"two"));
    let first = writer.write(erasure(cart.id, one));
    let second = writer.write(erasure(cart.id, two));
    let strike = writer.strike(&[&second]);
    let mut book = book([&cart, &other, &first, &second]);
    assert_eq!(book.view().erased(), Digests::of(vec![one, two]));
    book.add(strike.clone());
    assert_eq!(
        book.view().erased(),
        Digests::of(vec![one]),
        "a strike takes it back"
    );
    book.add(writer.again(&second, vec![second.id]));
    assert_eq!(
        book.view().erased(),
        Digests::of(vec![one, two]),
        "in a dispute it is erased"
    );
    let vehicle = writer.strike(&[&cart]);
    book.add(vehicle);
    assert_eq!(
        book.view().erased(),
        Digests::of(vec![one, two]),
        "hidden is not brought back"
    );
    assert_eq!(book.view().problems(), [] as [Problem; 0]);
}
