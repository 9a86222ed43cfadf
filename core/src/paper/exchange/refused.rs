//! Why a file is not brought in. One variant is one thing wrong with it, and one sentence.

use crate::daybook::Digest;
use crate::paper::line::LineRefusal;

/// Why a whole file was refused. Nothing of a refused file reaches a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// There is not a single byte in it.
    Empty,
    /// The file is larger than any file may be.
    FileTooLarge {
        /// Its size in bytes.
        bytes: u64,
    },
    /// It is a JPEG picture, whatever its name says.
    Jpeg,
    /// It has neither the beginning nor the end of a ZIP.
    NotZip,
    /// It begins as a ZIP and has no end, or the end points outside it.
    CutShort,
    /// The list of members at the end of the ZIP cannot be read.
    DirectoryBroken,
    /// The list of members is longer or shorter than the ZIP says.
    DirectoryCount {
        /// How many members it says it has.
        said: u64,
        /// How many are listed.
        found: u64,
    },
    /// There are more members than a file may have.
    TooManyMembers {
        /// How many members it says it has.
        said: u64,
    },
    /// It is some other ZIP: it has no `manifest.json`.
    NoManifest,
    /// `manifest.json` does not say what a manifest must say.
    ManifestUnreadable {
        /// What the reader of JSON found, and where.
        why: String,
    },
    /// The manifest's `made_at` or `device` is too long to be one.
    ClaimTooLong {
        /// Which of the two.
        field: &'static str,
        /// Its length in bytes.
        bytes: usize,
    },
    /// The manifest is that of another kind of file.
    OtherFormat {
        /// The name it gives itself.
        format: String,
    },
    /// The file was laid out by a later version, by rules this one does not know.
    NewerContainer {
        /// The version of its container.
        found: u64,
    },
    /// The manifest gives a version that there never was.
    NoSuchContainer {
        /// The version it gives.
        found: u64,
    },
    /// A name is not UTF-8.
    NameNotText {
        /// As much of it as can be shown.
        name: String,
    },
    /// A name could write outside a folder, or hide what it is.
    NameUnsafe {
        /// As much of it as can be shown.
        name: String,
        /// What is wrong with it.
        fault: UnsafeName,
    },
    /// Two members have the same name.
    DuplicateName {
        /// The name.
        name: String,
    },
    /// The manifest lists the same name twice.
    ListedTwice {
        /// The name.
        name: String,
    },
    /// A member that the manifest lists, or that every file has, is not there.
    Missing {
        /// Its name.
        name: String,
    },
    /// The manifest does not vouch for the entries.
    EntriesNotListed,
    /// A member is locked with a password.
    Encrypted {
        /// Its name.
        name: String,
    },
    /// A member is packed in a way other than stored or deflated.
    UnknownMethod {
        /// Its name.
        name: String,
        /// The number of the way it is packed (PKWARE APPNOTE 4.4.5).
        method: u16,
    },
    /// A member is larger than its kind may be.
    MemberTooLarge {
        /// Its name.
        name: String,
        /// What it says it unpacks to, in bytes.
        bytes: u64,
        /// What its kind may have, in bytes.
        allowed: u64,
    },
    /// The members together are larger than a file may be.
    UnpacksTooLarge {
        /// What they unpack to, in bytes.
        bytes: u64,
    },
    /// A member says it unpacks to more than any honest one does.
    TooCompressed {
        /// Its name.
        name: String,
        /// Its size as packed, in bytes.
        packed: u64,
        /// What it says it unpacks to, in bytes.
        unpacked: u64,
    },
    /// Two members use the same bytes of the file.
    Overlap {
        /// The name of the first.
        name: String,
        /// The name of the one that begins inside it.
        other: String,
    },
    /// A member's own header or packed bytes cannot be read, or contradict the list of members.
    MemberBroken {
        /// Its name.
        name: String,
    },
    /// A member unpacks to another size than it says.
    SizeDiffers {
        /// Its name.
        name: String,
        /// The size it says, in bytes.
        said: u64,
    },
    /// A member's CRC is not that of its bytes.
    CrcDiffers {
        /// Its name.
        name: String,
    },
    /// A member has another size than the manifest lists.
    ListedSizeDiffers {
        /// Its name.
        name: String,
        /// The size listed, in bytes.
        listed: u64,
        /// The size found, in bytes.
        found: u64,
    },
    /// A member has another SHA-256 than the manifest lists.
    DigestDiffers {
        /// Its name.
        name: String,
    },
    /// A picture is not the one its name says.
    PictureMisnamed {
        /// Its name.
        name: String,
        /// The SHA-256 of its bytes.
        found: Digest,
    },
    /// A picture does not begin as a JPEG does.
    PictureNotJpeg {
        /// Its name.
        name: String,
    },
    /// The entries are not UTF-8.
    EntriesNotText {
        /// The first byte that is not, counted from 0.
        at: usize,
    },
    /// A line is not an entry.
    Line {
        /// Which line, counted from 1.
        number: usize,
        /// What is wrong with it.
        why: LineRefusal,
    },
    /// There are more or fewer entries or pictures than the manifest says.
    CountDiffers {
        /// Entries or pictures.
        what: Counted,
        /// How many it says.
        said: u64,
        /// How many there are.
        found: u64,
    },
}

/// What a manifest counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// Lines of `entries.jsonl`.
    Entries,
    /// Members that are pictures.
    Pictures,
}

/// What makes the name of a member one that cannot be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnsafeName {
    /// There is no name.
    Empty,
    /// It has more than 255 bytes.
    TooLong,
    /// It holds a character that does not print.
    Control,
    /// It holds a backslash, which some computers take for a folder.
    Backslash,
    /// It begins at the root of a disk.
    Absolute,
    /// It climbs out of its folder by `..`.
    Parent,
}
