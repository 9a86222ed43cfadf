//! What the members of a file hold, looked at one after the other: the entries, each picture, and what is written for
//! people.

use std::borrow::Cow;
use std::ops::Range;

use crate::daybook::{Digest, Digests, Says};
use crate::paper::line;

use super::incoming::{JPEG, Layout, Vouched, not_as_listed};
use super::member::Kind;
use super::refused::{Counted, Refused};
use super::verified::{Checked, PictureMember, Placed};
use super::warning::Warning;

/// The members, which are looked at by name, and what has come out so far.
#[derive(Debug)]
pub(super) struct Contents {
    layout: Layout,
    /// The place of the member that is looked at now.
    at: usize,
    text: String,
    entries: Vec<Placed>,
    lines: usize,
    pictures: Vec<PictureMember>,
}

impl Contents {
    /// Begins to look at the members of a file whose layout holds, and says which bytes are wanted first.
    pub(super) fn of(layout: Layout) -> Result<(Self, Option<Range<u64>>), Refused> {
        let mut contents = Self {
            layout,
            at: 0,
            text: String::new(),
            entries: Vec::new(),
            lines: 0,
            pictures: Vec::new(),
        };
        let wants = contents.next()?;
        Ok((contents, wants))
    }

    /// How many of the pictures have been looked at, and how many there are.
    pub(super) fn progress(&self) -> (usize, usize) {
        (self.pictures.len(), self.layout.pictures())
    }

    /// Looks at the member that was wanted, and says which bytes are wanted next.
    pub(super) fn give(&mut self, packed: Vec<u8>) -> Result<Option<Range<u64>>, Refused> {
        if let Some(member) = self.layout.members.get(self.at).cloned() {
            let bytes = member.bytes(Cow::Owned(packed));
            match member.kind {
                Kind::Entries => self.read(bytes?.into_owned())?,
                Kind::Picture(digest) => self.pictures.push(picture(digest, &bytes?, member)?),
                _ if bytes.is_err() => self.warn_of(&member),
                _ => {}
            }
        }
        self.at += 1;
        self.next()
    }

    /// The bytes of the next member that is worth reading at all.
    fn next(&mut self) -> Result<Option<Range<u64>>, Refused> {
        while let Some(member) = self.layout.members.get(self.at).cloned() {
            match member.packed.judge_size(member.kind.allowed()) {
                Ok(()) => return Ok(Some(member.packed.range)),
                Err(_) if member.kind == Kind::Side => self.warn_of(&member),
                Err(refused) => return Err(refused),
            }
            self.at += 1;
        }
        let manifest = &self.layout.manifest;
        agree(Counted::Entries, manifest.entries, self.lines)?;
        agree(Counted::Pictures, manifest.pictures, self.pictures.len())?;
        Ok(None)
    }

    fn warn_of(&mut self, member: &Vouched) {
        let warning = not_as_listed(&member.packed.name);
        self.layout.warnings.push(warning);
    }

    /// Reads the lines and keeps each entry once.
    fn read(&mut self, bytes: Vec<u8>) -> Result<(), Refused> {
        self.text = String::from_utf8(bytes).map_err(|error| Refused::EntriesNotText {
            at: error.utf8_error().valid_up_to(),
        })?;
        self.entries = read(&self.text)?;
        self.lines = self.entries.len();
        let mut repeats = repeats(&self.entries).into_iter();
        self.entries.retain(|_| repeats.next() != Some(true));
        Ok(())
    }

    /// All that came out.
    pub(super) fn checked(self) -> Checked {
        let mut warnings = self.layout.warnings;
        warnings.extend(warn_of_repeats(self.lines - self.entries.len()));
        warnings.extend(warn_of_pictures(&self.entries, &self.pictures));
        Checked {
            manifest: self.layout.manifest,
            text: self.text,
            entries: self.entries,
            pictures: self.pictures,
            warnings,
        }
    }
}

impl Vouched {
    /// The bytes of the member from its packed bytes; they are the ones the manifest lists.
    pub(super) fn bytes<'b>(&self, packed: Cow<'b, [u8]>) -> Result<Cow<'b, [u8]>, Refused> {
        let bytes = self.packed.unpack(packed, self.kind.allowed())?;
        let name = || self.packed.name.clone();
        if bytes.len() as u64 != self.listed.bytes {
            return Err(Refused::ListedSizeDiffers {
                name: name(),
                listed: self.listed.bytes,
                found: bytes.len() as u64,
            });
        }
        if Digest::of(&bytes) != self.listed.digest {
            return Err(Refused::DigestDiffers { name: name() });
        }
        Ok(bytes)
    }
}

fn read(text: &str) -> Result<Vec<Placed>, Refused> {
    let mut entries: Vec<Placed> = Vec::new();
    let mut start = 0;
    for line in text.split_terminator('\n') {
        let number = entries.len() + 1;
        let entry = line::read(line).map_err(|why| Refused::Line { number, why })?;
        let end = start + line.len();
        let line = start..end;
        entries.push(Placed { entry, line });
        start = end + 1;
    }
    Ok(entries)
}

/// Of each entry, whether it has stood before.
fn repeats(entries: &[Placed]) -> Vec<bool> {
    let ids = entries.iter().map(|placed| placed.entry.id);
    let mut places: Vec<(Digest, usize)> = ids.zip(0..).collect();
    places.sort_unstable();
    let mut repeats = vec![false; entries.len()];
    for pair in places.windows(2) {
        if let [(one, _), (other, at)] = pair
            && one == other
            && let Some(repeated) = repeats.get_mut(*at)
        {
            *repeated = true;
        }
    }
    repeats
}

fn picture(digest: Digest, bytes: &[u8], member: Vouched) -> Result<PictureMember, Refused> {
    let name = || member.packed.name.clone();
    // The manifest's digest is that of the bytes by now.
    if member.listed.digest != digest {
        return Err(Refused::PictureMisnamed {
            name: name(),
            found: member.listed.digest,
        });
    }
    if !bytes.starts_with(JPEG) {
        return Err(Refused::PictureNotJpeg { name: name() });
    }
    Ok(PictureMember { digest, member })
}

fn agree(what: Counted, said: u64, found: usize) -> Result<(), Refused> {
    let found = found as u64;
    if said == found {
        return Ok(());
    }
    Err(Refused::CountDiffers { what, said, found })
}

fn warn_of_repeats(count: usize) -> Option<Warning> {
    (count > 0).then_some(Warning::LinesRepeated { count })
}

/// Pictures that are spoken of and absent, unless an entry says they were erased; then pictures
/// that are there and not spoken of.
fn warn_of_pictures(entries: &[Placed], pictures: &[PictureMember]) -> Vec<Warning> {
    let says = || entries.iter().map(|placed| &placed.entry.says);
    let spoken_of = says().filter_map(|says| match says {
        Says::Picture(picture) => Some(picture.digest),
        _ => None,
    });
    let erased = says().filter_map(|says| match says {
        Says::Erasure(digest) => Some(*digest),
        _ => None,
    });
    let (spoken_of, erased): (Digests, Digests) = (spoken_of.collect(), erased.collect());
    let here: Digests = pictures.iter().map(|picture| picture.digest).collect();
    let absent = spoken_of
        .iter()
        .filter(|digest| !here.contains(digest) && !erased.contains(digest));
    let unused = here.iter().filter(|digest| !spoken_of.contains(digest));
    absent
        .map(|digest| Warning::PictureAbsent { digest: *digest })
        .chain(unused.map(|digest| Warning::PictureUnused { digest: *digest }))
        .collect()
}
