//! Damage on the way: any bit changed, the end cut off anywhere.

use std::collections::BTreeMap;

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::{Manifest, OutgoingPicture, open};

use crate::book::{cart, files, jpeg, manifest, members, picture_line, truthful, with_lines};
use crate::broken::refusal;
use crate::bytes::{Member, zip};
use crate::fields::fields;
use crate::outgoing::{parcel, readings};

/// Fields of a ZIP that no reader of ours reads: the list at the end counts, not what a member's own header repeats of
/// it, and nobody asks for times, attributes, versions and disks.
const NEVER_READ: [&str; 17] = [
    "own header: version needed",
    "own header: time",
    "own header: date",
    "own header: CRC",
    "own header: packed size",
    "own header: size",
    "own header: extra",
    "list: version made by",
    "list: version needed",
    "list: time",
    "list: date",
    "list: first disk",
    "list: attributes of text",
    "list: attributes of the file",
    "end: this disk",
    "end: disk of the list",
    "end: members on this disk",
];

/// Fields of which some changes are harmless, and why.
const AT_TIMES: [(&str, &str); 4] = [
    (
        "own header: flags",
        "only the flag that says a member is locked is read",
    ),
    (
        "list: flags",
        "only the flag that says a member is locked is read",
    ),
    (
        "list: packed size",
        "what lies behind the end of a deflated stream is not read",
    ),
    (
        "bytes of a member",
        "the last byte of a deflated stream is filled up with bits that say nothing",
    ),
];

/// Of these two only deflated members have such changes.
const WHEN_DEFLATED: [&str; 2] = ["list: packed size", "bytes of a member"];

/// What a file brings in: what it says of itself, lines and pictures.
#[derive(Debug, PartialEq)]
struct Brought {
    manifest: Manifest,
    lines: Vec<(Digest, String)>,
    pictures: Vec<(Digest, Vec<u8>)>,
}

/// What became of a file that was changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    Refused,
    /// It is read the same, and something is said about it.
    Warned,
    /// It is read the same, and nothing is said.
    Silent,
}

fn brought(bytes: &[u8]) -> Option<(Brought, usize)> {
    let verified = open(bytes).ok()?.verify().ok()?;
    let lines = verified.entries();
    let pictures = verified.pictures().iter();
    let brought = Brought {
        manifest: verified.manifest().clone(),
        lines: lines
            .map(|(entry, line)| (entry.id, line.to_owned()))
            .collect(),
        pictures: pictures
            .map(|picture| (picture.digest, picture.bytes.to_vec()))
            .collect(),
    };
    Some((brought, verified.warnings().len()))
}

/// What becomes of a file in place of another: refused, or read as the same.
fn fate(good: &Brought, changed: &[u8], what: &str) -> Fate {
    match brought(changed) {
        None => Fate::Refused,
        Some((brought, warnings)) => {
            assert_eq!(&brought, good, "{what}");
            match warnings {
                0 => Fate::Silent,
                _ => Fate::Warned,
            }
        }
    }
}

/// Changes each bit of a file in turn; what became of it, for each field.
fn flip_each(good: &[u8]) -> BTreeMap<&'static str, Vec<Fate>> {
    let (brought, warnings) = brought(good).expect("a good file");
    assert_eq!(warnings, 0);
    let mut fates: BTreeMap<&str, Vec<Fate>> = BTreeMap::new();
    let mut flipped = good.to_vec();
    for (at, field) in fields(good).into_iter().enumerate() {
        for bit in 0..8 {
            flipped[at] ^= 1 << bit;
            let what = format!("bit {bit} of byte {at}, {field}");
            let fate = fate(&brought, &flipped, &what);
            fates.entry(field).or_default().push(fate);
            flipped[at] = good[at];
        }
    }
    fates
}

/// A small file of ours: a cart, and a picture of one of its spokes.
pub(crate) fn small() -> Vec<u8> {
    let picture = jpeg("spoke 3");
    let lines = [(1, cart()), (2, picture_line(&picture, 2))];
    let readings = readings();
    let mut parcel = parcel(&lines, &readings);
    parcel.pictures = vec![OutgoingPicture::of(&picture)];
    parcel
        .whole(&[(Digest::of(&picture), picture)].into())
        .unwrap()
}

/// A file with deflated members and extra fields, written by another hand.
fn deflated() -> Vec<u8> {
    let files = with_lines(files(), &[cart(), picture_line(&jpeg("spoke 3"), 2)]);
    let mut members = members(&manifest(&files), &files);
    for (member, (name, bytes)) in members.iter_mut().skip(1).zip(&files) {
        *member = Member::deflated(name, bytes);
    }
    zip(&members)
}

/// Every change is refused or warned of, but for those that are harmless by name; what those bring in is the same.
fn each_flip_is_found_or_harmless(good: &[u8], at_times: &[&str]) {
    let fates = flip_each(good);
    let flips: usize = fates.values().map(Vec::len).sum();
    assert_eq!(flips, good.len() * 8);
    let mut silent = Vec::new();
    for (field, fates) in fates {
        let some = fates.contains(&Fate::Silent);
        let all = fates.iter().all(|fate| *fate == Fate::Silent);
        if NEVER_READ.contains(&field) {
            assert!(all, "{field} is read after all: {fates:?}");
        } else if some {
            assert!(!all, "{field} is never read");
            silent.push(field);
        }
    }
    assert_eq!(silent, at_times);
}

#[test]
fn a_bit_flipped_in_a_file_of_ours_is_found_or_harmless() {
    let mut at_times = AT_TIMES.map(|(field, _)| field).to_vec();
    at_times.retain(|field| !WHEN_DEFLATED.contains(field));
    at_times.sort_unstable();
    each_flip_is_found_or_harmless(&small(), &at_times);
}

#[test]
fn a_bit_flipped_in_a_deflated_file_is_found_or_harmless() {
    let mut at_times = AT_TIMES.map(|(field, _)| field);
    at_times.sort_unstable();
    each_flip_is_found_or_harmless(&deflated(), &at_times);
}

#[test]
fn a_file_cut_short_anywhere_is_refused() {
    for good in [small(), deflated(), truthful(&files())] {
        for length in 0..good.len() {
            assert!(refusal(&good[..length]).is_some(), "cut to {length}");
        }
    }
}
