//! A file of which everything that matters holds; only such a file shows what is in it.

use std::borrow::Cow;
use std::ops::Range;

use crate::daybook::{Digest, Entry};

use super::incoming::Vouched;
use super::manifest::Manifest;
use super::reading::Reading;
use super::refused::Refused;
use super::warning::Warning;

/// A file whose sizes, digests, lines and pictures all hold. Its pictures have stayed in the file.
#[derive(Clone, Debug)]
pub struct Checked {
    pub(super) manifest: Manifest,
    pub(super) text: String,
    pub(super) entries: Vec<Placed>,
    pub(super) pictures: Vec<PictureMember>,
    pub(super) warnings: Vec<Warning>,
}

/// An entry and where its line lies in the text.
#[derive(Clone, Debug)]
pub(super) struct Placed {
    pub(super) entry: Entry,
    pub(super) line: Range<usize>,
}

/// A picture that has been looked at, and where it lies in the file.
#[derive(Clone, Debug)]
pub struct PictureMember {
    /// The SHA-256 of its bytes.
    pub digest: Digest,
    pub(super) member: Vouched,
}

impl Checked {
    /// What the file says of itself.
    pub fn manifest(&self) -> &Manifest {
        &self.manifest
    }

    /// The entries, each once, in the order of their lines; with each its line, byte for byte as
    /// it must be stored.
    pub fn entries(&self) -> impl Iterator<Item = (&Entry, &str)> {
        self.entries.iter().filter_map(|placed| {
            let line = self.text.get(placed.line.clone())?;
            Some((&placed.entry, line))
        })
    }

    /// The pictures, ordered by digest.
    pub fn pictures(&self) -> &[PictureMember] {
        &self.pictures
    }

    /// What is worth knowing about the file all the same.
    pub fn warnings(&self) -> &[Warning] {
        &self.warnings
    }
}

impl PictureMember {
    /// Where its packed bytes lie in the file.
    pub fn range(&self) -> Range<u64> {
        self.member.packed.range.clone()
    }

    /// Its bytes, from the packed bytes of its range.
    ///
    /// # Errors
    /// They are not the ones that were looked at: the file has changed since.
    pub fn unpack<'b>(&self, packed: Cow<'b, [u8]>) -> Result<Cow<'b, [u8]>, Refused> {
        self.member.bytes(packed)
    }
}

/// A file in memory whose layout holds: a ZIP with a manifest of our container, whose members have names
/// that may stand, once each, and are the ones the manifest lists. What they hold has not been
/// looked at, and nothing shows it before [`verify`](Self::verify) has.
#[derive(Debug)]
pub struct Unverified<'a> {
    file: &'a [u8],
    reading: Reading,
}

/// A file in memory of which everything that matters holds.
#[derive(Clone, Debug)]
pub struct Verified<'a> {
    checked: Checked,
    pictures: Vec<IncomingPicture<'a>>,
}

/// A picture on its way in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IncomingPicture<'a> {
    /// The SHA-256 of its bytes.
    pub digest: Digest,
    /// Its bytes; they begin as those of a JPEG do, and have not been decoded.
    pub bytes: Cow<'a, [u8]>,
}

/// Looks at the layout of a file that is in memory as a whole. [`Reading`] does the same for one that is not.
///
/// # Errors
///
/// A newer container before anything else but being a ZIP with a manifest, then the first thing
/// that is wrong with the layout.
pub fn open(file: &[u8]) -> Result<Unverified<'_>, Refused> {
    let mut reading = Reading::begin(file.len() as u64)?;
    while let Some(range) = reading.wants().filter(|_| !reading.is_laid_out()) {
        reading.give(part(file, &range).to_vec())?;
    }
    Ok(Unverified { file, reading })
}

impl<'a> Unverified<'a> {
    /// Looks at all that the file holds.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with an entry, a picture or a size. Members written for
    /// people only ever cause a warning.
    pub fn verify(mut self) -> Result<Verified<'a>, Refused> {
        while let Some(range) = self.reading.wants() {
            self.reading.give(part(self.file, &range).to_vec())?;
        }
        // Nothing is wanted any more, so that all of it has been looked at.
        let checked = self.reading.checked().ok_or(Refused::DirectoryBroken)?;
        let picture = |member: &PictureMember| {
            let bytes = member.unpack(Cow::Borrowed(part(self.file, &member.range())))?;
            let digest = member.digest;
            Ok(IncomingPicture { digest, bytes })
        };
        let pictures = checked
            .pictures
            .iter()
            .map(picture)
            .collect::<Result<_, _>>()?;
        Ok(Verified { checked, pictures })
    }
}

fn part<'a>(file: &'a [u8], range: &Range<u64>) -> &'a [u8] {
    let place = |at: u64| usize::try_from(at).unwrap_or(usize::MAX);
    file.get(place(range.start)..place(range.end))
        .unwrap_or_default()
}

impl<'a> Verified<'a> {
    /// What the file says of itself.
    pub fn manifest(&self) -> &Manifest {
        self.checked.manifest()
    }

    /// The entries, each once, in the order of their lines; with each its line, byte for byte as
    /// it must be stored.
    pub fn entries(&self) -> impl Iterator<Item = (&Entry, &str)> {
        self.checked.entries()
    }

    /// The pictures, ordered by digest.
    pub fn pictures(&self) -> &[IncomingPicture<'a>] {
        &self.pictures
    }

    /// What is worth knowing about the file all the same.
    pub fn warnings(&self) -> &[Warning] {
        self.checked.warnings()
    }
}
