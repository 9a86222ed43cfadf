//! A book, or a part of it, made ready to be carried out.
//!
//! The same entries and pictures make the same bytes, in whatever order they are given.

use std::collections::BTreeMap;

use crate::daybook::Digest;

use super::bounds::{ENTRIES_BYTES, MANIFEST_BYTES, PICTURE_BYTES, SIDE_BYTES};
use super::crc::{crc32, crc32_on};
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

/// How many bytes are gathered before they are handed over.
const PIECE: usize = 1 << 16;

impl Parcel<'_> {
    /// The file in pieces, so that no picture has to be in memory.
    ///
    /// # Errors
    ///
    /// When the file would be one that no device reads.
    pub fn parts(self) -> Result<Vec<Part>, Unwritable> {
        let table = super::readings::csv(self.readings);
        let mut parts: Vec<Part> = Vec::new();
        self.hand_over(&table, &mut |part| match (parts.last_mut(), part) {
            (Some(Part::Bytes(before)), Part::Bytes(bytes)) => before.extend(bytes),
            (_, part) => parts.push(part),
        })?;
        Ok(parts)
    }

    /// Hands the file over in small pieces, so that neither a picture nor all lines together have to be in memory
    /// twice. `table` is what [`csv`](super::csv) gives, and stands in the place of `readings`.
    ///
    /// # Errors
    ///
    /// When the file would be one that no device reads. The pieces handed over are then no file.
    pub fn hand_over(mut self, table: &str, put: &mut dyn FnMut(Part)) -> Result<(), Unwritable> {
        self.put_in_order();
        self.judge_lines()?;
        let texts = [
            Member::new(ENTRIES, || self.lines(), ENTRIES_BYTES)?,
            Member::new(READINGS, || std::iter::once(table.as_bytes()), SIDE_BYTES)?,
            Member::new(
                READ_ME,
                || std::iter::once(self.read_me.as_bytes()),
                SIDE_BYTES,
            )?,
        ];
        let json = self.manifest(&texts);
        let json = || std::iter::once(json.as_slice());
        let [entries, readings, read_me] = texts;
        let mut out = Out {
            writing: Writing::new(),
            run: Vec::new(),
            put,
        };
        out.member(&Member::new(MANIFEST, json, MANIFEST_BYTES)?, json())?;
        out.member(&entries, self.lines())?;
        out.member(&readings, std::iter::once(table.as_bytes()))?;
        out.member(&read_me, std::iter::once(self.read_me.as_bytes()))?;
        for picture in &self.pictures {
            out.picture(picture)?;
        }
        out.finish();
        Ok(())
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

    fn judge_lines(&self) -> Result<(), Unwritable> {
        let broken = self.entries.iter().find(|entry| entry.line.contains('\n'));
        broken.map_or(Ok(()), |entry| Err(Unwritable::LineFeed { id: entry.id }))
    }

    fn lines(&self) -> impl Iterator<Item = &[u8]> {
        let lines = self.entries.iter();
        lines.flat_map(|entry| [entry.line.as_bytes(), b"\n"])
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

/// A member whose bytes come in pieces.
struct Member {
    name: &'static str,
    bytes: u64,
    digest: Digest,
    crc32: u32,
}

impl Member {
    /// Looks at the pieces without keeping any.
    fn new<'b, P: Iterator<Item = &'b [u8]>>(
        name: &'static str,
        pieces: impl Fn() -> P,
        allowed: u64,
    ) -> Result<Self, Unwritable> {
        let bytes = pieces().map(|piece| piece.len() as u64).sum();
        judge_size(name, bytes, allowed)?;
        Ok(Self {
            name,
            bytes,
            digest: Digest::of_pieces(pieces()),
            crc32: pieces().fold(0, crc32_on),
        })
    }

    fn listed(&self) -> (String, Listed) {
        let (bytes, digest) = (self.bytes, self.digest);
        (self.name.to_owned(), Listed { bytes, digest })
    }
}

/// What goes out, gathered into pieces that are worth handing over.
struct Out<'p> {
    writing: Writing,
    run: Vec<u8>,
    put: &'p mut dyn FnMut(Part),
}

impl Out<'_> {
    fn member<'b>(
        &mut self,
        member: &Member,
        pieces: impl Iterator<Item = &'b [u8]>,
    ) -> Result<(), Unwritable> {
        let header = self
            .writing
            .member(member.name, member.bytes, member.crc32)?;
        self.run.extend(header);
        for piece in pieces {
            self.run.extend(piece);
            if self.run.len() >= PIECE {
                self.hand_over();
            }
        }
        Ok(())
    }

    fn picture(&mut self, picture: &OutgoingPicture) -> Result<(), Unwritable> {
        self.run.extend(picture_header(&mut self.writing, picture)?);
        self.hand_over();
        (self.put)(Part::Picture(picture.digest));
        Ok(())
    }

    fn finish(mut self) {
        let end = std::mem::take(&mut self.writing).finish();
        self.run.extend(end);
        self.hand_over();
    }

    fn hand_over(&mut self) {
        (self.put)(Part::Bytes(std::mem::take(&mut self.run)));
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
