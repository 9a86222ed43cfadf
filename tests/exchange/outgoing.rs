//! Files that we write: the same book gives the same bytes, and reading gives back what went in.

use std::collections::BTreeMap;

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::{
    Manifest, OutgoingEntry, OutgoingPicture, Parcel, Part, Scope, Unwritable, open,
};

use crate::book::{cart, jpeg, picture_line, remark, visit};

/// Lines with their counters, in the order in which a file has them.
pub(crate) fn lines() -> Vec<(u64, String)> {
    let spoke = picture_line(&jpeg("spoke 3"), 3);
    let nave = picture_line(&jpeg("nave"), 3);
    let mut same_counter = [spoke, nave];
    same_counter.sort_by_key(|line| Digest::of(line.as_bytes()));
    let [third, fourth] = same_counter;
    vec![
        (1, cart()),
        (2, visit()),
        (3, third),
        (3, fourth),
        (10, remark("½″ – \"bad\"", 10)),
    ]
}

pub(crate) fn pictures() -> BTreeMap<Digest, Vec<u8>> {
    ["spoke 3", "nave"]
        .map(jpeg)
        .map(|picture| (Digest::of(&picture), picture))
        .into()
}

pub(crate) fn readings() -> Vec<Vec<String>> {
    vec![
        vec!["part".to_owned(), "says".to_owned()],
        vec!["near spoke 3".to_owned(), "=loose".to_owned()],
    ]
}

pub(crate) fn parcel<'a>(lines: &'a [(u64, String)], readings: &'a [Vec<String>]) -> Parcel<'a> {
    let entry = |(n, line): &'a (u64, String)| OutgoingEntry {
        n: *n,
        id: Digest::of(line.as_bytes()),
        line,
    };
    Parcel {
        made_at: "2024-05-06T17:18:19+01:00",
        device: "0f1e",
        scope: Scope::Book,
        entries: lines.iter().map(entry).collect(),
        pictures: pictures()
            .values()
            .map(|bytes| OutgoingPicture::of(bytes))
            .collect(),
        readings,
        read_me: "A wheelwright's book.\n",
    }
}

#[test]
fn what_we_write_we_read_back() {
    let (lines, readings) = (lines(), readings());
    let whole = parcel(&lines, &readings).whole(&pictures()).unwrap();
    let verified = open(&whole).unwrap().verify().unwrap();
    let found: Vec<_> = verified
        .entries()
        .map(|(entry, line)| (entry.n, line.to_owned()))
        .collect();
    assert_eq!(found, lines);
    let found: BTreeMap<_, _> = verified
        .pictures()
        .iter()
        .map(|picture| (picture.digest, picture.bytes.to_vec()))
        .collect();
    assert_eq!(found, pictures());
    assert_eq!(verified.warnings(), []);
    let manifest = Manifest {
        made_at: "2024-05-06T17:18:19+01:00".to_owned(),
        device: "0f1e".to_owned(),
        scope: Some(Scope::Book),
        entries: 5,
        pictures: 2,
    };
    assert_eq!(verified.manifest(), &manifest);
}

#[test]
fn the_same_book_in_another_order_gives_the_same_bytes() {
    let (lines, readings) = (lines(), readings());
    let whole = parcel(&lines, &readings).whole(&pictures()).unwrap();
    let mut shuffled = lines.clone();
    shuffled.reverse();
    shuffled.push(lines[2].clone());
    let mut other = parcel(&shuffled, &readings);
    other.pictures.reverse();
    assert_eq!(other.whole(&pictures()).unwrap(), whole);
}

#[test]
fn the_pieces_one_after_the_other_are_the_file() {
    let (lines, readings) = (lines(), readings());
    let whole = parcel(&lines, &readings).whole(&pictures()).unwrap();
    let parts = parcel(&lines, &readings).parts().unwrap();
    assert_eq!(parts.len(), 5, "bytes, picture, bytes, picture, bytes");
    let joined: Vec<_> = parts
        .into_iter()
        .flat_map(|part| match part {
            Part::Bytes(bytes) => bytes,
            Part::Picture(digest) => pictures()[&digest].clone(),
        })
        .collect();
    assert_eq!(joined, whole);
}

#[test]
fn what_no_device_would_read_is_not_written() {
    let (lines, readings) = (lines(), readings());
    let broken_line = [(1, "{\n}".to_owned())];
    let id = Digest::of(b"{\n}");
    assert_eq!(
        parcel(&broken_line, &readings).parts(),
        Err(Unwritable::LineFeed { id })
    );
    let mut large = parcel(&lines, &readings);
    large.pictures[0].bytes = 16_000_001;
    assert!(matches!(
        large.parts(),
        Err(Unwritable::MemberTooLarge {
            bytes: 16_000_001,
            ..
        })
    ));
    let digest = *pictures().first_key_value().unwrap().0;
    assert_eq!(
        parcel(&lines, &readings).whole(&BTreeMap::new()),
        Err(Unwritable::PictureBytes { digest })
    );
}
