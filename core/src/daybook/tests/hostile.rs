//! Books made to be slow, and counters made to run out.

use std::time::{Duration, Instant};

use super::writer::{Writer, book, hand, lengths, play};
use crate::daybook::book::next_n;
use crate::daybook::entry::GREATEST_N;
use crate::daybook::{Book, Digest, Entry, Kind, State};
use crate::paper::line;

/// Far more than it takes, so that a slow machine passes, and far less than the square of 10 000
/// would take.
const WELL_UNDER: Duration = Duration::from_secs(5);

fn barn() -> (Writer, Entry, Entry) {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let visit = writer.visit(cart.id, "barn");
    (writer, cart, visit)
}

fn in_time<T>(work: impl FnOnce() -> T) -> T {
    let start = Instant::now();
    let done = work();
    let took = start.elapsed();
    assert!(took < WELL_UNDER, "{took:?}");
    done
}

/// As many copies of an entry under names of their own; `change` makes each what it is to be.
fn many(entry: &Entry, mut change: impl FnMut(&mut Entry, &[Entry])) -> Vec<Entry> {
    let mut entries: Vec<Entry> = Vec::new();
    for n in entry.n + 1..=entry.n + 10_000 {
        let mut copy = entry.clone();
        copy.id = Digest::of(format!("{} {n}", entry.id).as_bytes());
        copy.n = n;
        change(&mut copy, &entries);
        entries.push(copy);
    }
    entries
}

#[test]
fn a_chain_of_ten_thousand_corrections_is_read_in_time() {
    let (mut writer, cart, visit) = barn();
    let first = writer.play(cart.id, visit.id, 1.0);
    let chain = many(&first, |entry, before| {
        entry.replaces = vec![before.last().unwrap_or(&first).id];
    });
    let book = book([&cart, &visit, &first].into_iter().chain(&chain));
    in_time(|| {
        let view = book.view();
        let thread = view.vehicle(cart.id).threads(&Kind::Reading)[0];
        assert_eq!(thread.entries().len(), 10_001);
        assert_eq!(thread.state(), Some(State::Settled(chain.last().unwrap())));
        assert_eq!(thread.last_settlement(), None);
        assert_eq!(lengths(&book, cart.id, visit.id), [1.0]);
    });
}

#[test]
fn ten_thousand_entries_that_replace_one_are_read_in_time() {
    let (mut writer, cart, visit) = barn();
    let target = writer.play(cart.id, visit.id, 0.0);
    for names in [target.id, Digest::of(b"lost")] {
        let claim = writer.write(play(cart.id, visit.id, 1.0).replacing(vec![names]));
        let other = writer.write(play(cart.id, visit.id, 2.0).replacing(vec![names]));
        let claims = many(&claim, |_, _| {});
        let book = book([&cart, &visit, &target, &other].into_iter().chain(&claims));
        in_time(|| {
            let view = book.view();
            let vehicle = view.vehicle(cart.id);
            assert_eq!(vehicle.disputes()[0].heads().len(), 10_001);
            let apart = usize::from(names != target.id);
            assert_eq!(vehicle.readings(visit.id).len(), 10_001 + apart);
        });
    }
}

#[test]
fn ten_thousand_readings_and_as_many_corrections_of_their_examination_are_read_in_time() {
    let (mut writer, cart, visit) = barn();
    let again = writer.again(&visit, vec![visit.id]);
    let visits = many(&again, |_, _| {});
    let reading = writer.play(cart.id, visit.id, 1.0);
    let readings = many(&reading, |entry, before| {
        entry.visit = Some(visits[before.len()].id);
    });
    let all = [&cart, &visit, &again].into_iter().chain(&visits);
    let book = book(all.chain(&readings));
    in_time(|| assert_eq!(lengths(&book, cart.id, visit.id).len(), 10_000));
}

/// What a line over the limit costs is no more than looking at it.
#[test]
fn a_line_with_ten_thousand_replaces_is_refused() {
    let (mut writer, cart, visit) = barn();
    let names = |count: u64| (0..count).map(|at| Digest::of(&at.to_be_bytes())).collect();
    let refused = line::write(
        &play(cart.id, visit.id, 1.0).replacing(names(10_000)),
        &hand("barn", 9),
    );
    assert!(
        matches!(refused, Err(line::LineRefusal::TooLong(_))),
        "{refused:?}"
    );
    let refused = line::write(
        &play(cart.id, visit.id, 1.0).replacing(names(65)),
        &hand("barn", 9),
    );
    assert_eq!(refused, Err(line::LineRefusal::ReplacesTooMany(65)));
    let read = writer.write(play(cart.id, visit.id, 1.0).replacing(names(64)));
    assert_eq!(read.replaces.len(), 64);
}

#[test]
fn the_greatest_counter_leaves_a_lawful_next() {
    let last = Writer::after("barn", GREATEST_N - 1).begin("Hay cart");
    assert_eq!(last.n, GREATEST_N);
    let book = book([&last]);
    assert_eq!(book.next_n(), GREATEST_N);
    let next = Writer::after("barn", book.next_n() - 1).visit(last.id, "barn");
    assert_eq!(next.n, GREATEST_N);
    assert_eq!(next_n(u64::MAX), GREATEST_N);
    assert_eq!((Book::default().next_n(), next_n(7)), (1, 8));
}
