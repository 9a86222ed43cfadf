//! What is said of a file that is not brought in: what was found, what is allowed, and that nothing
//! was lost.

use std::fmt;

use super::bounds::{CLAIM_BYTES, COMPRESSION_RATIO, FILE_BYTES, MEMBERS, NAME_BYTES};
use super::manifest::{CONTAINER, FORMAT};
use super::refused::{Counted, Refused, UnsafeName};

/// What ends every sentence: that nothing has happened to the book.
const NOTHING_LOST: &str = "Nothing was brought in; your book is as it was.";

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.say_what_was_found(f)?;
        write!(f, " {NOTHING_LOST}")
    }
}

impl Refused {
    /// The table of sentences, in the order of the variants.
    fn say_what_was_found(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "This file is empty; an exchange file is a ZIP."),
            Self::FileTooLarge { bytes } => write!(
                f,
                "This file has {}; at most {} are read.",
                Size(*bytes),
                Size(FILE_BYTES)
            ),
            Self::Jpeg => write!(
                f,
                "This file is a JPEG picture, whatever its name; an exchange file is a ZIP."
            ),
            Self::NotZip => write!(f, "This file is not a ZIP; an exchange file is one."),
            Self::CutShort => write!(
                f,
                "This file begins as a ZIP but its end is missing or damaged. It may have been \
                 cut short on the way: carry it over once more."
            ),
            Self::DirectoryBroken => write!(
                f,
                "The list of members at the end of this ZIP is damaged: carry it over once more."
            ),
            Self::DirectoryCount { said, found } => write!(
                f,
                "This ZIP says it has {said} members and lists {found}; the two must agree."
            ),
            Self::TooManyMembers { said } => write!(
                f,
                "This ZIP has {said} members; at most {MEMBERS} are read."
            ),
            Self::NoManifest => write!(
                f,
                "This is a ZIP but not an exchange file: it has no manifest.json."
            ),
            Self::ManifestUnreadable { why } => write!(
                f,
                "The manifest.json of this file cannot be read ({why}); it must say what the \
                 file is and list its members."
            ),
            Self::ClaimTooLong { field, bytes } => write!(
                f,
                "The manifest's {field} has {bytes} bytes; at most {CLAIM_BYTES} are allowed."
            ),
            Self::OtherFormat { format } => write!(
                f,
                "The manifest says this file is a \"{}\"; only \"{FORMAT}\" is read.",
                shown(format)
            ),
            Self::NewerContainer { found } => write!(
                f,
                "This file was written by a newer version (container {found}; this version reads \
                 up to {CONTAINER}). Update this device, then bring the file in again."
            ),
            Self::NoSuchContainer { found } => write!(
                f,
                "The manifest gives container {found}; there are only 1 to {CONTAINER}."
            ),
            Self::NameNotText { name } => write!(
                f,
                "A member is named \"{}\", which is not UTF-8 text; names must be.",
                shown(name)
            ),
            Self::NameUnsafe { name, fault } => {
                write!(f, "A member is named \"{}\", which {fault}.", shown(name))
            }
            Self::DuplicateName { name } => write!(
                f,
                "Two members are named \"{}\"; each name may stand once.",
                shown(name)
            ),
            Self::ListedTwice { name } => write!(
                f,
                "The manifest lists \"{}\" twice; each name may stand once.",
                shown(name)
            ),
            Self::Missing { name } => write!(
                f,
                "The member \"{}\" is missing; the file must hold all that its manifest lists.",
                shown(name)
            ),
            Self::EntriesNotListed => write!(
                f,
                "The manifest does not list entries.jsonl; it must vouch for the entries."
            ),
            Self::Encrypted { name } => write!(
                f,
                "The member \"{}\" is locked with a password; only open members are read.",
                shown(name)
            ),
            Self::UnknownMethod { name, method } => write!(
                f,
                "The member \"{}\" is packed by method {method}; only stored (0) and deflated \
                 (8) members are read.",
                shown(name)
            ),
            Self::MemberTooLarge {
                name,
                bytes,
                allowed,
            } => write!(
                f,
                "The member \"{}\" has {}; at most {} are allowed.",
                shown(name),
                Size(*bytes),
                Size(*allowed)
            ),
            Self::UnpacksTooLarge { bytes } => write!(
                f,
                "The members of this file unpack to {}; at most {} are read.",
                Size(*bytes),
                Size(FILE_BYTES)
            ),
            Self::TooCompressed {
                name,
                packed,
                unpacked,
            } => write!(
                f,
                "The member \"{}\" would unpack from {} to {}; at most {COMPRESSION_RATIO} times \
                 the packed size is believed.",
                shown(name),
                Size(*packed),
                Size(*unpacked)
            ),
            Self::Overlap { name, other } => write!(
                f,
                "The members \"{}\" and \"{}\" share the same bytes; each must have its own.",
                shown(name),
                shown(other)
            ),
            Self::MemberBroken { name } => write!(
                f,
                "The member \"{}\" is damaged and cannot be unpacked: carry the file over once \
                 more.",
                shown(name)
            ),
            Self::SizeDiffers { name, said } => write!(
                f,
                "The member \"{}\" does not unpack to the {} it says.",
                shown(name),
                Size(*said)
            ),
            Self::CrcDiffers { name } => write!(
                f,
                "The member \"{}\" was damaged on the way (its CRC differs): carry the file over \
                 once more.",
                shown(name)
            ),
            Self::ListedSizeDiffers {
                name,
                listed,
                found,
            } => write!(
                f,
                "The member \"{}\" has {}; the manifest lists {}.",
                shown(name),
                Size(*found),
                Size(*listed)
            ),
            Self::DigestDiffers { name } => write!(
                f,
                "The member \"{}\" is not the one the manifest lists (its SHA-256 differs).",
                shown(name)
            ),
            Self::PictureMisnamed { name, found } => write!(
                f,
                "The picture \"{}\" is another one (its SHA-256 is {found}); a picture is named \
                 by its SHA-256.",
                shown(name)
            ),
            Self::PictureNotJpeg { name } => write!(
                f,
                "The picture \"{}\" does not begin as a JPEG; only JPEG pictures are read.",
                shown(name)
            ),
            Self::EntriesNotText { at } => write!(
                f,
                "entries.jsonl stops being UTF-8 text at byte {at}; all of it must be."
            ),
            Self::Line { number, why } => {
                write!(f, "Line {number} of entries.jsonl is no entry: {why}.")
            }
            Self::CountDiffers { what, said, found } => write!(
                f,
                "The manifest counts {said} {what}, the file holds {found}; the two must agree."
            ),
        }
    }
}

impl fmt::Display for Counted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Entries => "entries",
            Self::Pictures => "pictures",
        })
    }
}

impl fmt::Display for UnsafeName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "is no name"),
            Self::TooLong => write!(f, "is longer than the {NAME_BYTES} bytes allowed"),
            Self::Control => write!(f, "holds a character that does not print"),
            Self::Backslash => write!(f, "holds a backslash; folders are divided by /"),
            Self::Absolute => write!(f, "begins at the root of a disk; names must be relative"),
            Self::Parent => write!(f, "climbs out of its folder by \"..\""),
        }
    }
}

/// A size in the largest unit that keeps three figures.
pub(super) struct Size(pub(super) u64);

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            0..10_000 => write!(f, "{} bytes", self.0),
            10_000..10_000_000 => write!(f, "{} kB", self.0.div_ceil(1_000)),
            _ => write!(f, "{} MB", self.0.div_ceil(1_000_000)),
        }
    }
}

/// A text from outside, short and without characters that do not print.
pub(super) fn shown(text: &str) -> String {
    const LONGEST: usize = 80;
    let short: String = text.chars().take(LONGEST).collect();
    let mark = if short.len() < text.len() { "…" } else { "" };
    let mut shown = String::new();
    for sign in short.chars() {
        if matches!(sign, '"' | '\\') || is_unseen(sign) {
            shown.extend(sign.escape_default());
        } else {
            shown.push(sign);
        }
    }
    shown + mark
}

/// Signs that do not print, or that turn the writing round.
fn is_unseen(sign: char) -> bool {
    sign.is_control()
        || matches!(sign, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}

#[cfg(test)]
mod tests {
    use super::{Counted, NOTHING_LOST, Refused, Size, UnsafeName, shown};
    use crate::daybook::Digest;
    use crate::paper::line::LineRefusal;

    fn said(refused: &[Refused]) -> String {
        let sentences = refused.iter().map(|refused| {
            let sentence = refused.to_string();
            sentence
                .strip_suffix(NOTHING_LOST)
                .unwrap()
                .trim_end()
                .to_owned()
        });
        sentences.collect::<Vec<_>>().join("\n")
    }

    fn picture() -> String {
        "pictures/ba78.jpg".to_owned()
    }

    #[test]
    fn every_sentence_ends_with_what_did_not_happen() {
        insta::assert_snapshot!(Refused::Empty, @"This file is empty; an exchange file is a ZIP. Nothing was brought in; your book is as it was.");
    }

    #[test]
    fn sentences_about_the_file() {
        insta::assert_snapshot!(said(&[
            Refused::Empty,
            Refused::FileTooLarge { bytes: 1_000_000_001 },
            Refused::Jpeg,
            Refused::NotZip,
            Refused::CutShort,
            Refused::DirectoryBroken,
            Refused::DirectoryCount { said: 3, found: 2 },
            Refused::TooManyMembers { said: 20_001 },
        ]), @"
        This file is empty; an exchange file is a ZIP.
        This file has 1001 MB; at most 1000 MB are read.
        This file is a JPEG picture, whatever its name; an exchange file is a ZIP.
        This file is not a ZIP; an exchange file is one.
        This file begins as a ZIP but its end is missing or damaged. It may have been cut short on the way: carry it over once more.
        The list of members at the end of this ZIP is damaged: carry it over once more.
        This ZIP says it has 3 members and lists 2; the two must agree.
        This ZIP has 20001 members; at most 20000 are read.
        ");
    }

    #[test]
    fn sentences_about_the_manifest() {
        insta::assert_snapshot!(said(&[
            Refused::NoManifest,
            Refused::ManifestUnreadable { why: "EOF while parsing".to_owned() },
            Refused::ClaimTooLong { field: "made_at", bytes: 65 },
            Refused::OtherFormat { format: "a \"letter\"\n".to_owned() },
            Refused::NewerContainer { found: 2 },
            Refused::NoSuchContainer { found: 0 },
            Refused::ListedTwice { name: picture() },
            Refused::EntriesNotListed,
            Refused::CountDiffers { what: Counted::Entries, said: 3, found: 2 },
            Refused::CountDiffers { what: Counted::Pictures, said: 3, found: 2 },
        ]), @r#"
        This is a ZIP but not an exchange file: it has no manifest.json.
        The manifest.json of this file cannot be read (EOF while parsing); it must say what the file is and list its members.
        The manifest's made_at has 65 bytes; at most 64 are allowed.
        The manifest says this file is a "a \"letter\"\n"; only "cartside exchange" is read.
        This file was written by a newer version (container 2; this version reads up to 1). Update this device, then bring the file in again.
        The manifest gives container 0; there are only 1 to 1.
        The manifest lists "pictures/ba78.jpg" twice; each name may stand once.
        The manifest does not list entries.jsonl; it must vouch for the entries.
        The manifest counts 3 entries, the file holds 2; the two must agree.
        The manifest counts 3 pictures, the file holds 2; the two must agree.
        "#);
    }

    #[test]
    fn sentences_about_names() {
        let faults = [
            UnsafeName::Empty,
            UnsafeName::TooLong,
            UnsafeName::Control,
            UnsafeName::Backslash,
            UnsafeName::Absolute,
            UnsafeName::Parent,
        ];
        let mut all = faults
            .map(|fault| Refused::NameUnsafe {
                name: "x".to_owned(),
                fault,
            })
            .to_vec();
        all.push(Refused::NameNotText {
            name: "ca\u{FFFD}t".to_owned(),
        });
        all.push(Refused::DuplicateName { name: picture() });
        all.push(Refused::Missing { name: picture() });
        insta::assert_snapshot!(said(&all), @r#"
        A member is named "x", which is no name.
        A member is named "x", which is longer than the 255 bytes allowed.
        A member is named "x", which holds a character that does not print.
        A member is named "x", which holds a backslash; folders are divided by /.
        A member is named "x", which begins at the root of a disk; names must be relative.
        A member is named "x", which climbs out of its folder by "..".
        A member is named "ca�t", which is not UTF-8 text; names must be.
        Two members are named "pictures/ba78.jpg"; each name may stand once.
        The member "pictures/ba78.jpg" is missing; the file must hold all that its manifest lists.
        "#);
    }

    #[test]
    fn sentences_about_the_packing() {
        insta::assert_snapshot!(said(&[
            Refused::Encrypted { name: picture() },
            Refused::UnknownMethod { name: picture(), method: 12 },
            Refused::MemberTooLarge { name: picture(), bytes: 16_000_001, allowed: 16_000_000 },
            Refused::UnpacksTooLarge { bytes: 1_000_000_001 },
            Refused::TooCompressed { name: picture(), packed: 12_345, unpacked: 9_876_543 },
            Refused::Overlap { name: "entries.jsonl".to_owned(), other: picture() },
            Refused::MemberBroken { name: picture() },
            Refused::SizeDiffers { name: picture(), said: 123 },
            Refused::CrcDiffers { name: picture() },
        ]), @r#"
        The member "pictures/ba78.jpg" is locked with a password; only open members are read.
        The member "pictures/ba78.jpg" is packed by method 12; only stored (0) and deflated (8) members are read.
        The member "pictures/ba78.jpg" has 17 MB; at most 16 MB are allowed.
        The members of this file unpack to 1001 MB; at most 1000 MB are read.
        The member "pictures/ba78.jpg" would unpack from 13 kB to 9877 kB; at most 200 times the packed size is believed.
        The members "entries.jsonl" and "pictures/ba78.jpg" share the same bytes; each must have its own.
        The member "pictures/ba78.jpg" is damaged and cannot be unpacked: carry the file over once more.
        The member "pictures/ba78.jpg" does not unpack to the 123 bytes it says.
        The member "pictures/ba78.jpg" was damaged on the way (its CRC differs): carry the file over once more.
        "#);
    }

    #[test]
    fn sentences_about_what_it_holds() {
        insta::assert_snapshot!(said(&[
            Refused::ListedSizeDiffers { name: picture(), listed: 12, found: 13 },
            Refused::DigestDiffers { name: picture() },
            Refused::PictureMisnamed { name: picture(), found: Digest::of(b"abc") },
            Refused::PictureNotJpeg { name: picture() },
            Refused::EntriesNotText { at: 17 },
            Refused::Line { number: 2, why: LineRefusal::TooDeep(17) },
        ]), @r#"
        The member "pictures/ba78.jpg" has 13 bytes; the manifest lists 12 bytes.
        The member "pictures/ba78.jpg" is not the one the manifest lists (its SHA-256 differs).
        The picture "pictures/ba78.jpg" is another one (its SHA-256 is ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad); a picture is named by its SHA-256.
        The picture "pictures/ba78.jpg" does not begin as a JPEG; only JPEG pictures are read.
        entries.jsonl stops being UTF-8 text at byte 17; all of it must be.
        Line 2 of entries.jsonl is no entry: the line is nested 17 deep; at most 16 is allowed.
        "#);
    }

    #[test]
    fn sizes_keep_three_figures_and_are_never_rounded_down_to_what_is_allowed() {
        for (bytes, said) in [
            (0, "0 bytes"),
            (9_999, "9999 bytes"),
            (10_000, "10 kB"),
            (16_000_000, "16 MB"),
            (16_000_001, "17 MB"),
        ] {
            assert_eq!(Size(bytes).to_string(), said);
        }
    }

    #[test]
    fn texts_from_outside_are_shown_short_and_plain() {
        assert_eq!(shown("a\u{202E}\n\"é"), "a\\u{202e}\\n\\\"é");
        assert_eq!(shown(&"a".repeat(81)), format!("{}…", "a".repeat(80)));
    }
}
