//! A book, or a part of it, made ready to be carried out.
//!
//! The same entries and pictures make the same bytes, in whatever order they are given.

use std::collections::BTreeMap;

use crate::daybook::Digest;

use super::bounds::{ENTRIES_BYTES, MANIFEST_BYTES, PICTURE_BYTES, SIDE_BYTES};
use super::crc::crc32;
use super::manifest::{self, List, Listed, Manifest, Scope};
use super::member::{ENTRIES, MANIFEST, READ_ME, READINGS, picture_name};
use super::unwritable::Unwritable;
use super::writing::Writing;

/// What goes into a file.
#[derive(Clone, Debug)]
pub struct Parcel<'a> {
    /// The time by the clock of this device: local, with its offset.
    pub made_at: &'a str,
    /// This device, in hexadecimal.
    pub device: &'a str,
    /// Which part of the book it is.
    pub scope: Scope,
    /// The entries, in any order.
    pub entries: Vec<OutgoingEntry<'a>>,
    /// The pictures, in any order. Their bytes need not be at hand.
    pub pictures: Vec<OutgoingPicture>,
    /// The readings for a spreadsheet, the first row the header.
    pub readings: &'a [Vec<String>],
    /// What the file is, in plain words.
    pub read_me: &'a str,
}

/// An entry on its way out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct OutgoingEntry<'a> {
    /// Its counter.
    pub n: u64,
    /// The SHA-256 of its line.
    pub id: Digest,
    /// Its line as stored, without a line feed.
    pub line: &'a str,
}

/// A picture on its way out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct OutgoingPicture {
    /// The SHA-256 of its bytes.
    pub digest: Digest,
    /// How many bytes it has.
    pub bytes: u64,
    /// Their CRC, as [`crc32`](super::crc32) gives it.
    pub crc32: u32,
}

impl OutgoingPicture {
    /// Looks at the bytes of a picture.
    pub fn of(bytes: &[u8]) -> Self {
        Self {
            digest: Digest::of(bytes),
            bytes: bytes.len() as u64,
            crc32: crc32(bytes),
        }
    }
}

/// A piece of a file. The pieces one after the other are the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// These bytes.
    Bytes(Vec<u8>),
    /// The bytes of the picture with this digest.
    Picture(Digest),
}

impl Parcel<'_> {
    /// The file in pieces, so that no picture has to be in memory.
    ///
    /// # Errors
    ///
    /// When the file would be one that no device reads.
    pub fn parts(mut self) -> Result<Vec<Part>, Unwritable> {
        self.put_in_order();
        let texts = self.texts()?;
        let manifest = Member::new(MANIFEST, self.manifest(&texts), MANIFEST_BYTES)?;
        let mut writing = Writing::new();
        let mut parts = Vec::new();
        let mut run = Vec::new();
        for member in std::iter::once(&manifest).chain(&texts) {
            run.extend(writing.member(member.name, member.len(), crc32(&member.bytes))?);
            run.extend(&member.bytes);
        }
        for picture in &self.pictures {
            run.extend(picture_header(&mut writing, picture)?);
            parts.push(Part::Bytes(std::mem::take(&mut run)));
            parts.push(Part::Picture(picture.digest));
        }
        run.extend(writing.finish());
        parts.push(Part::Bytes(run));
        Ok(parts)
    }

    /// The whole file, from the bytes of its pictures.
    ///
    /// # Errors
    ///
    /// When the file would be one that no device reads, or the bytes of a picture are not given or
    /// are not those it was said to have.
    pub fn whole(self, pictures: &BTreeMap<Digest, Vec<u8>>) -> Result<Vec<u8>, Unwritable> {
        for picture in &self.pictures {
            let bytes = pictures.get(&picture.digest).map(Vec::as_slice);
            if bytes.map(OutgoingPicture::of) != Some(*picture) {
                let digest = picture.digest;
                return Err(Unwritable::PictureBytes { digest });
            }
        }
        let mut whole = Vec::new();
        for part in self.parts()? {
            match part {
                Part::Bytes(bytes) => whole.extend(bytes),
                Part::Picture(digest) => whole.extend(pictures.get(&digest).into_iter().flatten()),
            }
        }
        Ok(whole)
    }

    fn put_in_order(&mut self) {
        self.entries.sort_unstable();
        self.entries.dedup_by_key(|entry| entry.id);
        self.pictures.sort_unstable();
        self.pictures.dedup_by_key(|picture| picture.digest);
    }

    fn texts(&self) -> Result<[Member; 3], Unwritable> {
        let readings = super::readings::csv(self.readings).into_bytes();
        Ok([
            Member::new(ENTRIES, self.lines()?, ENTRIES_BYTES)?,
            Member::new(READINGS, readings, SIDE_BYTES)?,
            Member::new(READ_ME, self.read_me.as_bytes().to_vec(), SIDE_BYTES)?,
        ])
    }

    fn lines(&self) -> Result<Vec<u8>, Unwritable> {
        let mut lines = Vec::new();
        for entry in &self.entries {
            if entry.line.contains('\n') {
                return Err(Unwritable::LineFeed { id: entry.id });
            }
            lines.extend(entry.line.as_bytes());
            lines.push(b'\n');
        }
        Ok(lines)
    }

    fn manifest(&self, texts: &[Member]) -> Vec<u8> {
        let manifest = Manifest {
            made_at: self.made_at.to_owned(),
            device: self.device.to_owned(),
            scope: Some(self.scope.clone()),
            entries: self.entries.len() as u64,
            pictures: self.pictures.len() as u64,
        };
        let pictures = self.pictures.iter().map(listed_picture);
        let list: List = texts.iter().map(Member::listed).chain(pictures).collect();
        manifest::write(&manifest, &list)
    }
}

/// A member whose bytes are at hand.
struct Member {
    name: &'static str,
    bytes: Vec<u8>,
}

impl Member {
    fn new(name: &'static str, bytes: Vec<u8>, allowed: u64) -> Result<Self, Unwritable> {
        let member = Self { name, bytes };
        judge_size(name, member.len(), allowed)?;
        Ok(member)
    }

    fn len(&self) -> u64 {
        self.bytes.len() as u64
    }

    fn listed(&self) -> (String, Listed) {
        let digest = Digest::of(&self.bytes);
        let bytes = self.len();
        (self.name.to_owned(), Listed { bytes, digest })
    }
}

fn picture_header(writing: &mut Writing, picture: &OutgoingPicture) -> Result<Vec<u8>, Unwritable> {
    let name = picture_name(picture.digest);
    judge_size(&name, picture.bytes, PICTURE_BYTES)?;
    writing.member(&name, picture.bytes, picture.crc32)
}

fn listed_picture(picture: &OutgoingPicture) -> (String, Listed) {
    let listed = Listed {
        bytes: picture.bytes,
        digest: picture.digest,
    };
    (picture_name(picture.digest), listed)
}

fn judge_size(name: &str, bytes: u64, allowed: u64) -> Result<(), Unwritable> {
    if bytes <= allowed {
        return Ok(());
    }
    Err(Unwritable::MemberTooLarge {
        name: name.to_owned(),
        bytes,
        allowed,
    })
}
