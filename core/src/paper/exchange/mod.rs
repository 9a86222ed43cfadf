//! The file in which a book, or a part of it, is carried to another device.
//!
//! A plain ZIP that any computer opens, with these members:
//!
//! | member | holds | a wrong digest |
//! |---|---|---|
//! | `manifest.json` | what the file is, who made it and when, and the name, size and SHA-256 of every other member | – |
//! | `entries.jsonl` | the lines of the day book as they are stored, each followed by one line feed, ordered by counter and then by id | refuses the file |
//! | `pictures/<sha256>.jpg` | one picture each, named by the SHA-256 of its bytes | refuses the file |
//! | `readings.csv` | the readings once more, for a spreadsheet; never read back | is a warning |
//! | `READ-ME.txt` | what the file is, in plain words; never read back | is a warning |
//!
//! Going out: a [`Parcel`] becomes [`Part`]s. Coming in: a [`Reading`] asks for one piece of the file after the other
//! and gives a [`Checked`]; only that shows entries and pictures. For a file in memory [`open`] does the same: it
//! gives an [`Unverified`], whose [`verify`](Unverified::verify) gives a [`Verified`].
//! What the manifest does not list, and members this version does not know, are left out and
//! reported; everything else that is not as it should be refuses the whole file, because half a
//! book is worse than none.

mod bounds;
mod contents;
mod crc;
mod directory;
mod fields;
mod incoming;
mod manifest;
mod member;
mod names;
mod packed;
mod parcel;
mod reading;
mod readings;
mod refused;
mod sentence;
mod unwritable;
mod verified;
mod warning;
mod writing;

pub use bounds::{
    COMPRESSION_RATIO, DIRECTORY_BYTES, ENTRIES_BYTES, FILE_BYTES, MANIFEST_BYTES, MEMBERS,
    PICTURE_BYTES, SIDE_BYTES,
};
pub use crc::crc32;
pub use manifest::{CONTAINER, FORMAT, Manifest, Scope};
pub use parcel::{OutgoingEntry, OutgoingPicture, Parcel, Part};
pub use reading::Reading;
pub use readings::csv;
pub use refused::{Counted, Refused, UnsafeName};
pub use unwritable::Unwritable;
pub use verified::{Checked, IncomingPicture, PictureMember, Unverified, Verified, open};
pub use warning::{Warning, WhyLeftOut};
pub use writing::Writing;
