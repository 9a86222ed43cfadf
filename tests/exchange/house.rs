//! What belongs to the whole house and to no vehicle: a limit the shop has set, written, carried out,
//! brought in and joined with another book.

use std::collections::BTreeMap;

use cartside_core::daybook::{
    Book, Digest, Entry, Hand, LimitSaid, Says, Stamp, Subject, Threshold, Unwritten,
};
use cartside_core::diagnosis::{house_limits, limits};
use cartside_core::paper::exchange::{OutgoingEntry, open};
use cartside_core::paper::line;
use cartside_core::quantity::length::millimetres;

use crate::book::{cart, visit};
use crate::outgoing::parcel;

const ROW: &str = "tyre-gap/keep-empty/anywhere";

/// A line that sets the row to this many millimetres.
fn limit(device: &str, mm: f64, n: u64) -> String {
    let says = Says::Limit(LimitSaid {
        row: ROW.to_owned(),
        threshold: Some(Threshold::Length(millimetres(mm))),
    });
    let hand = Hand {
        by: "A. Wright".to_owned(),
        device: device.to_owned(),
        at: Stamp::read("2024-05-06T07:08:09-01:30").unwrap(),
        n,
    };
    line::write(&Unwritten::new(None, says).unwrap(), &hand).unwrap()
}

/// The entries of a file that holds these lines.
fn carried(lines: &[String]) -> Vec<Entry> {
    let out: Vec<(u64, String)> = lines
        .iter()
        .map(|line| (line::read(line).unwrap().n, line.clone()))
        .collect();
    let mut parcel = parcel(&out, &[]);
    parcel.pictures.clear();
    assert!(
        parcel
            .entries
            .iter()
            .all(|OutgoingEntry { id, line, .. }| *id == Digest::of(line.as_bytes()))
    );
    let file = parcel.whole(&BTreeMap::new()).unwrap();
    let verified = open(&file).unwrap().verify().unwrap();
    assert_eq!(verified.warnings(), []);
    verified
        .entries()
        .map(|(entry, line)| {
            assert!(lines.iter().any(|sent| sent == line), "byte for byte");
            entry.clone()
        })
        .collect()
}

/// The value of the row, in a book.
fn value(book: &Book) -> Option<Threshold> {
    let mut rows = limits(&book.view()).into_iter();
    rows.find(|row| row.code() == ROW)?.threshold()
}

#[test]
fn a_limit_is_carried_from_one_book_into_another() {
    let mm = |mm| Some(Threshold::Length(millimetres(mm)));
    let mine: Book = carried(&[cart(), limit("phone", 4.0, 2)])
        .into_iter()
        .collect();
    assert_eq!(mine.len(), 2);
    assert_eq!(value(&mine), mm(4.0));
    let theirs = carried(&[cart(), visit(), limit("tablet", 2.0, 9)]);
    let of_house: Vec<&Entry> = theirs
        .iter()
        .filter(|entry| entry.subject() == Subject::House)
        .collect();
    assert_eq!(of_house.len(), 1);
    let mut both = mine.clone();
    for entry in &theirs {
        both.add(entry.clone());
    }
    assert_eq!(both.len(), 4);
    assert_eq!(
        value(&both),
        mm(2.0),
        "they differ, and the more cautious counts"
    );
    assert!(both.view().limits().all(|thread| thread.disputed()));
    let mut other: Book = theirs.into_iter().collect();
    for entry in mine.entries() {
        other.add(entry.clone());
    }
    assert_eq!(other, both, "whichever comes first");
    assert_eq!(limits(&both.view()).len(), house_limits().len());
    assert_eq!(both.view().problems(), []);
}
