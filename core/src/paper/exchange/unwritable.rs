//! Why a file cannot be written. The book itself is not touched by writing.

use std::fmt;

use crate::daybook::Digest;

use super::bounds::{FILE_BYTES, MEMBERS};
use super::sentence::{Size, shown};

/// Why no file was made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unwritable {
    /// There would be more members than a file may have.
    TooManyMembers,
    /// The file would be larger than a file may be.
    FileTooLarge,
    /// A member would be larger than its kind may be.
    MemberTooLarge {
        /// Its name.
        name: String,
        /// Its size in bytes.
        bytes: u64,
        /// What its kind may have, in bytes.
        allowed: u64,
    },
    /// A member would have a name that no file may hold.
    Name {
        /// The name.
        name: String,
    },
    /// Two members would have the same name.
    NameTwice {
        /// The name.
        name: String,
    },
    /// A line holds a line feed, so that it would be read as two.
    LineFeed {
        /// The id of the entry.
        id: Digest,
    },
    /// The bytes of a picture were not given, or are not those that were spoken of.
    PictureBytes {
        /// The SHA-256 of the picture.
        digest: Digest,
    },
}

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooManyMembers => write!(
                f,
                "The file would have more than {MEMBERS} members; no device would read it. Carry \
                 out one vehicle at a time."
            )?,
            Self::FileTooLarge => write!(
                f,
                "The file would be larger than {}; no device would read it. Carry out one vehicle \
                 at a time.",
                Size(FILE_BYTES)
            )?,
            Self::MemberTooLarge {
                name,
                bytes,
                allowed,
            } => write!(
                f,
                "\"{}\" would have {}; at most {} are read.",
                shown(name),
                Size(*bytes),
                Size(*allowed)
            )?,
            Self::Name { name } => write!(
                f,
                "\"{}\" is not a name that a member may have.",
                shown(name)
            )?,
            Self::NameTwice { name } => write!(
                f,
                "\"{}\" would stand twice; each name may stand once.",
                shown(name)
            )?,
            Self::LineFeed { id } => write!(
                f,
                "The line of entry {id} holds a line feed; a line must be one line."
            )?,
            Self::PictureBytes { digest } => write!(
                f,
                "The bytes of picture {digest} are missing or are those of another picture."
            )?,
        }
        write!(f, " No file was made; your book is as it was.")
    }
}

#[cfg(test)]
mod tests {
    use super::Unwritable;
    use crate::daybook::Digest;

    #[test]
    fn each_has_its_sentence() {
        let name = || "entries.jsonl".to_owned();
        let id = Digest::of(b"abc");
        let all = [
            Unwritable::TooManyMembers,
            Unwritable::FileTooLarge,
            Unwritable::MemberTooLarge {
                name: name(),
                bytes: 256_000_001,
                allowed: 256_000_000,
            },
            Unwritable::Name { name: name() },
            Unwritable::NameTwice { name: name() },
            Unwritable::LineFeed { id },
            Unwritable::PictureBytes { digest: id },
        ]
        .map(|unwritable| unwritable.to_string())
        .join("\n");
        insta::assert_snapshot!(all, @r#"
        The file would have more than 20000 members; no device would read it. Carry out one vehicle at a time. No file was made; your book is as it was.
        The file would be larger than 1000 MB; no device would read it. Carry out one vehicle at a time. No file was made; your book is as it was.
        "entries.jsonl" would have 257 MB; at most 256 MB are read. No file was made; your book is as it was.
        "entries.jsonl" is not a name that a member may have. No file was made; your book is as it was.
        "entries.jsonl" would stand twice; each name may stand once. No file was made; your book is as it was.
        The line of entry ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad holds a line feed; a line must be one line. No file was made; your book is as it was.
        The bytes of picture ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad are missing or are those of another picture. No file was made; your book is as it was.
        "#);
    }
}
