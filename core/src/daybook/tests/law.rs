//! Laws that hold of every history: a book is a set, and what it says depends on the set alone.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;

use super::history::histories;
use super::writer::hand;
use crate::daybook::{
    Book, Digest, Entry, EntryId, Kind, Problem, Says, State, Subject, Thread, Unwritten,
};
use crate::paper::line;
use crate::wheel::Position;

/// All that a book says, in words that can be compared.
fn told(book: &Book) -> Vec<String> {
    let view = book.view();
    let mut told = vec![
        format!("{:?}", view.problems()),
        format!("{:?}", view.erased()),
        format!(
            "{:?} {} {}",
            view.vehicles(),
            view.written_by_newer(),
            book.next_n()
        ),
    ];
    for thread in view.threads() {
        told.push(format!("{:?} {:?}", thread, thread.state()));
        told.push(format!(
            "{:?} {:?}",
            thread.counts(),
            thread.last_settlement()
        ));
    }
    for id in view.vehicles() {
        let vehicle = view.vehicle(id);
        told.push(format!("{:?} {:?}", vehicle.described(), vehicle.wheels()));
        told.push(format!("{:?} {:?}", vehicle.entries(), vehicle.disputes()));
        for visit in vehicle.visits() {
            told.push(format!("{visit:?} {:?}", vehicle.readings(visit.id)));
            told.push(format!("{:?}", vehicle.of_visit(&Kind::Decision, visit.id)));
        }
    }
    told
}

fn book(entries: &[Entry]) -> Book {
    entries.iter().cloned().collect()
}

fn united(one: &Book, other: &Book) -> Book {
    one.entries().chain(other.entries()).cloned().collect()
}

/// An order of arrival that has nothing to do with the order of writing.
fn shuffled(entries: &[Entry], seed: u64) -> Vec<Entry> {
    let mut shuffled = entries.to_vec();
    shuffled.sort_by_key(|entry| {
        let mut bytes = entry.id.bytes().to_vec();
        bytes.extend(seed.to_be_bytes());
        Digest::of(&bytes)
    });
    shuffled
}

fn part(entries: &[Entry], chosen: u64) -> Book {
    let parts = entries.iter().enumerate();
    parts
        .filter(|(at, _)| chosen >> (at % 64) & 1 == 1)
        .map(|(_, entry)| entry.clone())
        .collect()
}

/// For each entry that begins a vehicle and is said to be the same as another, the smallest id it is one with:
/// said by a head of a slot, one thread each, and handed on from pair to pair until nothing changes.
fn one_by_the_rule(entries: &[Entry]) -> BTreeMap<EntryId, EntryId> {
    let said = entries.iter().filter(|entry| entry.kind == Kind::SameAs);
    let mut pairs = Vec::new();
    for entry in said.clone() {
        let mut of_slot = said.clone().filter(|other| other.slot == entry.slot);
        let replaced = of_slot.any(|other| other.replaces.contains(&entry.id));
        if let (Says::SameAs(same), false) = (&entry.says, replaced) {
            pairs.push(same.both());
        }
    }
    let mut one: BTreeMap<EntryId, EntryId> = pairs.iter().flatten().map(|id| (*id, *id)).collect();
    for _ in 0..pairs.len() {
        for [left, right] in &pairs {
            let least = one[left].min(one[right]);
            one.extend([(*left, least), (*right, least)]);
        }
    }
    one
}

/// What entries must share to be joined; only what is decided, rounds and what is chosen for a tyring keep to their
/// examination.
fn group<'e>(
    entry: &'e Entry,
    one: &BTreeMap<EntryId, EntryId>,
) -> (Subject, &'e Kind, &'e str, Option<EntryId>) {
    let within = match entry.kind {
        Kind::Decision | Kind::Round | Kind::Tyring => entry.visit,
        _ => None,
    };
    let subject = match entry.subject() {
        Subject::Vehicle(id) => Subject::Vehicle(one.get(&id).copied().unwrap_or(id)),
        Subject::House => Subject::House,
    };
    (subject, &entry.kind, &entry.slot, within)
}

/// Threads by going round the entries until no two that belong together are apart: slow, and
/// written from the rule alone.
fn threads_by_the_rule(entries: &[Entry]) -> BTreeSet<BTreeSet<EntryId>> {
    let here: BTreeMap<EntryId, &Entry> = entries.iter().map(|entry| (entry.id, entry)).collect();
    let joined = one_by_the_rule(entries);
    let same_group = |one: &Entry, other: &Entry| group(one, &joined) == group(other, &joined);
    let names = |one: &Entry, id: EntryId| {
        one.replaces.contains(&id) && here.get(&id).is_none_or(|other| same_group(one, other))
    };
    let bears = |one: &Entry| !one.strikes() || one.replaces.iter().any(|id| names(one, *id));
    let together = |one: &Entry, other: &Entry| {
        let one_thread = one.kind.one_thread_a_slot() && bears(one) && bears(other);
        let shared = || {
            let missing = one.replaces.iter().filter(|id| !here.contains_key(id));
            missing.clone().any(|id| other.replaces.contains(id))
        };
        same_group(one, other)
            && (one_thread || names(one, other.id) || names(other, one.id) || shared())
    };
    let mut label: Vec<usize> = (0..entries.len()).collect();
    let mut changed = true;
    while changed {
        changed = false;
        for (one, left) in entries.iter().enumerate() {
            for (other, right) in entries.iter().enumerate() {
                if label[other] < label[one] && together(left, right) {
                    label[one] = label[other];
                    changed = true;
                }
            }
        }
    }
    let mut threads: BTreeMap<usize, BTreeSet<EntryId>> = BTreeMap::new();
    for (at, entry) in entries.iter().enumerate() {
        threads.entry(label[at]).or_default().insert(entry.id);
    }
    threads.into_values().collect()
}

/// Heads by the rule: what no entry of its own group replaces.
fn heads_by_the_rule(entries: &[Entry]) -> BTreeSet<EntryId> {
    let joined = one_by_the_rule(entries);
    let replaced = |target: &Entry| {
        entries.iter().any(|entry| {
            entry.replaces.contains(&target.id) && group(entry, &joined) == group(target, &joined)
        })
    };
    entries
        .iter()
        .filter(|entry| !replaced(entry))
        .map(|entry| entry.id)
        .collect()
}

/// One more entry that replaces all heads of a thread, saying what its first head says.
fn settling(thread: &Thread<'_>, n: u64) -> Option<Entry> {
    let said = thread.last_said()?;
    let vehicle = match said.subject() {
        Subject::Vehicle(vehicle) => Some(vehicle),
        Subject::House => None,
    };
    let entry = Unwritten {
        kind: said.kind.clone(),
        vehicle,
        visit: said.visit,
        described_by: None,
        slot: said.slot.clone(),
        says: said.says.clone(),
        replaces: thread.to_replace(),
    };
    let line = line::write(&entry, &hand("settler", n)).unwrap();
    Some(line::read(&line).unwrap())
}

proptest! {
    // Each history is a book of its own; sixty-four of them take a second.
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_book_is_the_same_in_any_order_of_arrival(
        entries in histories(), seed in any::<u64>(), chosen in any::<u64>(),
    ) {
        let all = book(&entries);
        let expected = told(&all);
        let mut arrived = Book::default();
        for entry in shuffled(&entries, seed) {
            arrived.add(entry);
        }
        prop_assert_eq!(told(&arrived), expected.clone(), "shuffled");
        for entry in shuffled(&entries, !seed) {
            prop_assert!(!arrived.add(entry), "an entry is there once");
        }
        prop_assert_eq!(arrived.len(), all.len());
        prop_assert_eq!(told(&arrived), expected.clone(), "twice");
        let parts = united(&part(&entries, !chosen), &part(&entries, chosen));
        prop_assert_eq!(told(&parts), expected, "split and united");
    }

    #[test]
    fn union_is_commutative_associative_and_idempotent(
        entries in histories(), masks in any::<[u64; 3]>(),
    ) {
        let [a, b, c] = masks.map(|mask| part(&entries, mask));
        prop_assert_eq!(told(&united(&a, &b)), told(&united(&b, &a)));
        let (left, right) = (united(&united(&a, &b), &c), united(&a, &united(&b, &c)));
        prop_assert_eq!(told(&left), told(&right));
        prop_assert_eq!(told(&united(&a, &a)), told(&a));
        prop_assert_eq!(left, right);
    }

    #[test]
    fn threads_and_heads_are_those_of_the_rule(entries in histories(), chosen in any::<u64>()) {
        let some: Vec<Entry> = part(&entries, chosen).entries().cloned().collect();
        for entries in [entries, some] {
            let book = book(&entries);
            let view = book.view();
            let ids = |entries: &[&Entry]| entries.iter().map(|entry| entry.id).collect();
            let threads: BTreeSet<BTreeSet<EntryId>> =
                view.threads().map(|thread| ids(thread.entries())).collect();
            prop_assert_eq!(threads, threads_by_the_rule(&entries));
            let heads: BTreeSet<EntryId> =
                view.threads().flat_map(|thread| thread.heads()).map(|head| head.id).collect();
            prop_assert_eq!(heads, heads_by_the_rule(&entries));
        }
    }

    #[test]
    fn what_is_found_by_kind_or_examination_is_what_going_through_every_thread_finds(
        entries in histories(), chosen in any::<u64>(),
    ) {
        let book = part(&entries, chosen);
        let view = book.view();
        let first = |thread: &Thread<'_>| thread.entries()[0].id;
        let groups = book.entries().map(|entry| (view.joined().subject(entry), &entry.kind));
        for (subject, kind) in groups {
            let of_group = |thread: &&Thread<'_>| {
                let entry = thread.entries()[0];
                (view.joined().subject(entry), &entry.kind) == (subject, kind)
            };
            let all: Vec<_> = view.threads().filter(of_group).collect();
            let found = view.of_kind(subject, kind).map(first);
            prop_assert_eq!(found.collect::<Vec<_>>(), all.iter().map(|it| first(it)).collect::<Vec<_>>());
            for visit in entries.iter().map(|entry| entry.id) {
                let names = |thread: &&&Thread<'_>| {
                    thread.heads().iter().any(|head| head.visit == Some(visit))
                };
                let naming = all.iter().filter(names).map(|it| first(it));
                let found = view.naming(visit, (subject, kind)).map(first);
                prop_assert_eq!(found.collect::<Vec<_>>(), naming.collect::<Vec<_>>());
            }
        }
    }

    #[test]
    fn every_entry_is_in_one_thread_and_every_thread_has_a_head(entries in histories()) {
        let book = book(&entries);
        let view = book.view();
        let in_threads: Vec<EntryId> =
            view.threads().flat_map(|thread| thread.entries()).map(|entry| entry.id).collect();
        prop_assert_eq!(in_threads.len(), book.len());
        prop_assert_eq!(in_threads.into_iter().collect::<BTreeSet<_>>().len(), book.len());
        for thread in view.threads() {
            let said: Vec<_> = thread.heads().iter().filter(|head| !head.strikes()).collect();
            let state = thread.state();
            prop_assert!(state.is_some());
            prop_assert_eq!(thread.counts().is_empty(), said.is_empty());
            if let Some(State::Dispute(heads)) = state {
                prop_assert!(heads.len() > 1);
                prop_assert_eq!(thread.counts().len(), said.len(), "every side counts");
            }
        }
    }

    #[test]
    fn one_more_entry_settles_any_thread(entries in histories()) {
        let before = book(&entries);
        let view = before.view();
        for thread in view.threads() {
            if let Some(last) = settling(thread, before.next_n()) {
                let mut after = before.clone();
                after.add(last.clone());
                let view = after.view();
                let of = view.threads().find(|thread| thread.has(last.id));
                let of = of.map(|thread| (thread.entries().len(), thread.state()));
                let settled = Some(State::Settled(&last));
                prop_assert_eq!(of, Some((thread.entries().len() + 1, settled)));
                // Said once more that two vehicles are one, what was said of each apart comes together.
                if last.kind != Kind::SameAs {
                    prop_assert_eq!(view.threads().count(), before.view().threads().count());
                }
            }
        }
    }

    #[test]
    fn what_was_odd_because_something_was_not_here_is_odd_no_longer_once_it_is(
        entries in histories(),
    ) {
        // A target that never was stays missing; all others are here.
        let never: BTreeSet<EntryId> = [Digest::of(&[0]), Digest::of(&[1])].into();
        let book = book(&entries);
        for problem in book.view().problems() {
            match problem {
                Problem::EarlierNotHere { entry, .. } => {
                    let entry = book.entry(*entry).unwrap();
                    prop_assert!(entry.replaces.iter().any(|id| never.contains(id)));
                }
                Problem::VehicleNotHere { .. } | Problem::VisitNotHere { .. } => {
                    prop_assert!(false, "{problem:?}");
                }
                Problem::ReplacesElsewhere { .. } | Problem::StrikesNothing(_) => {}
            }
        }
    }

    #[test]
    fn what_is_struck_out_or_hidden_is_in_no_list(entries in histories()) {
        let book = book(&entries);
        let view = book.view();
        for id in view.vehicles() {
            let vehicle = view.vehicle(id);
            prop_assert!(!vehicle.struck() || vehicle.visits().is_empty());
            prop_assert!(!vehicle.struck() || vehicle.disputes().is_empty());
            for visit in vehicle.visits() {
                for (entry, _) in vehicle.readings(visit.id) {
                    prop_assert!(!vehicle.hidden(entry) && !entry.strikes());
                }
            }
            let listed = vehicle.visits().len();
            let standing = vehicle.threads(&Kind::Visit).into_iter();
            let standing = standing.filter(|thread| !thread.struck()).count();
            prop_assert_eq!(listed, if vehicle.struck() { 0 } else { standing });
            let wheel = vehicle.wheel(Position::Near).is_some();
            prop_assert_eq!(vehicle.wheels().len(), usize::from(wheel && !vehicle.struck()));
        }
    }
}
