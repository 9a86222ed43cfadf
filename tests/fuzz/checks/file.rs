//! A file from outside is refused in one sentence, or all that it shows holds.

use std::collections::BTreeSet;

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::{ENTRIES_BYTES, PICTURE_BYTES, Verified, open};
use cartside_core::paper::line;

/// How every refusal ends.
const UNHARMED: &str = "Nothing was brought in; your book is as it was.";

/// Reads the bytes as a file that is brought in; whether it was taken.
pub(crate) fn check(bytes: &[u8]) -> bool {
    match open(bytes).and_then(|file| file.verify()) {
        Ok(verified) => {
            entries_hold(&verified);
            pictures_hold(&verified);
            for warning in verified.warnings() {
                assert!(!warning.to_string().is_empty());
            }
            true
        }
        Err(refused) => {
            let sentence = refused.to_string();
            assert!(sentence.ends_with(UNHARMED), "{sentence}");
            false
        }
    }
}

fn entries_hold(verified: &Verified<'_>) {
    let (mut ids, mut bytes) = (BTreeSet::new(), 0);
    for (entry, text) in verified.entries() {
        assert_eq!(entry.id, Digest::of(text.as_bytes()));
        assert_eq!(line::read(text).as_ref(), Ok(entry));
        assert!(ids.insert(entry.id), "an entry is there once");
        bytes += text.len() as u64;
    }
    assert!(bytes <= ENTRIES_BYTES);
    assert!(ids.len() as u64 <= verified.manifest().entries);
}

fn pictures_hold(verified: &Verified<'_>) {
    let pictures = verified.pictures();
    for picture in pictures {
        assert_eq!(picture.digest, Digest::of(&picture.bytes));
        assert!(picture.bytes.starts_with(&[0xFF, 0xD8, 0xFF]));
        assert!(picture.bytes.len() as u64 <= PICTURE_BYTES);
    }
    assert!(pictures.is_sorted_by(|one, other| one.digest < other.digest));
    assert_eq!(pictures.len() as u64, verified.manifest().pictures);
}
