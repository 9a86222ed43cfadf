//! A file of which everything that matters holds; only such a file shows what is in it.

use std::borrow::Cow;
use std::ops::Range;

use crate::daybook::{Digest, Digests, Entry, Says};
use crate::paper::line;

use super::bounds::{ENTRIES_BYTES, FILE_BYTES, PICTURE_BYTES, SIDE_BYTES};
use super::incoming::{JPEG, Unverified, Vouched, not_as_listed};
use super::manifest::Manifest;
use super::packed::Packed;
use super::refused::{Counted, Refused};
use super::warning::Warning;

/// A file whose sizes, digests, lines and pictures all hold.
#[derive(Clone, Debug)]
pub struct Verified<'a> {
    manifest: Manifest,
    text: Cow<'a, str>,
    entries: Vec<Placed>,
    pictures: Vec<IncomingPicture<'a>>,
    warnings: Vec<Warning>,
}

/// A picture on its way in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IncomingPicture<'a> {
    /// The SHA-256 of its bytes.
    pub digest: Digest,
    /// Its bytes; they begin as those of a JPEG do, and have not been decoded.
    pub bytes: Cow<'a, [u8]>,
}

/// An entry and where its line lies in the text.
#[derive(Clone, Debug)]
struct Placed {
    entry: Entry,
    line: Range<usize>,
}

impl<'a> Unverified<'a> {
    /// Looks at all that the file holds.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with an entry, a picture or a size. Members written for
    /// people only ever cause a warning.
    pub fn verify(self) -> Result<Verified<'a>, Refused> {
        self.judge_together()?;
        let mut warnings = self.warnings;
        let text = text(self.entries.bytes(ENTRIES_BYTES)?)?;
        let (entries, lines) = read(&text)?;
        let pictures: Vec<_> = self
            .pictures
            .iter()
            .map(picture)
            .collect::<Result<_, _>>()?;
        agree(Counted::Entries, self.manifest.entries, lines)?;
        agree(Counted::Pictures, self.manifest.pictures, pictures.len())?;
        warnings.extend(self.sides.iter().filter_map(warn_of));
        warnings.extend(warn_of_repeats(lines - entries.len()));
        warnings.extend(warn_of_pictures(&entries, &pictures));
        Ok(Verified {
            manifest: self.manifest,
            text,
            entries,
            pictures,
            warnings,
        })
    }

    /// Refuses what would be too much all in all, before any of it is unpacked.
    fn judge_together(&self) -> Result<(), Refused> {
        let pictures = self.pictures.iter().map(|(_, picture)| &picture.packed);
        let mut members: Vec<_> = std::iter::once(&self.entries.packed)
            .chain(pictures)
            .collect();
        let bytes = members
            .iter()
            .fold(0, |sum: u64, member| sum.saturating_add(member.size));
        members.sort_unstable_by_key(|member| (member.range.start, member.range.end));
        match members.windows(2).find_map(overlap) {
            Some(refused) => Err(refused),
            None if bytes > FILE_BYTES => Err(Refused::UnpacksTooLarge { bytes }),
            None => Ok(()),
        }
    }
}

impl<'a> Verified<'a> {
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
    pub fn pictures(&self) -> &[IncomingPicture<'a>] {
        &self.pictures
    }

    /// What is worth knowing about the file all the same.
    pub fn warnings(&self) -> &[Warning] {
        &self.warnings
    }
}

impl<'a> Vouched<'a> {
    /// The bytes of the member, which are the ones the manifest lists.
    fn bytes(&self, allowed: u64) -> Result<Cow<'a, [u8]>, Refused> {
        let bytes = self.packed.unpack(allowed)?;
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

fn overlap(pair: &[&Packed<'_>]) -> Option<Refused> {
    let [first, second] = pair else { return None };
    (first.range.end > second.range.start).then(|| Refused::Overlap {
        name: first.name.clone(),
        other: second.name.clone(),
    })
}

fn text(bytes: Cow<'_, [u8]>) -> Result<Cow<'_, str>, Refused> {
    let not_text = |error: std::str::Utf8Error| Refused::EntriesNotText {
        at: error.valid_up_to(),
    };
    match bytes {
        Cow::Borrowed(bytes) => std::str::from_utf8(bytes)
            .map(Cow::Borrowed)
            .map_err(not_text),
        Cow::Owned(bytes) => String::from_utf8(bytes)
            .map(Cow::Owned)
            .map_err(|error| not_text(error.utf8_error())),
    }
}

/// The entries, each once, and how many lines there were.
fn read(text: &str) -> Result<(Vec<Placed>, usize), Refused> {
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
    let lines = entries.len();
    let mut repeats = repeats(&entries).into_iter();
    entries.retain(|_| repeats.next() != Some(true));
    Ok((entries, lines))
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

fn picture<'a>((digest, member): &(Digest, Vouched<'a>)) -> Result<IncomingPicture<'a>, Refused> {
    let bytes = member.bytes(PICTURE_BYTES)?;
    let name = || member.packed.name.clone();
    // The manifest's digest is that of the bytes by now.
    if member.listed.digest != *digest {
        return Err(Refused::PictureMisnamed {
            name: name(),
            found: member.listed.digest,
        });
    }
    if !bytes.starts_with(JPEG) {
        return Err(Refused::PictureNotJpeg { name: name() });
    }
    let digest = *digest;
    Ok(IncomingPicture { digest, bytes })
}

fn agree(what: Counted, said: u64, found: usize) -> Result<(), Refused> {
    let found = found as u64;
    if said == found {
        return Ok(());
    }
    Err(Refused::CountDiffers { what, said, found })
}

fn warn_of(side: &Vouched<'_>) -> Option<Warning> {
    let name = &side.packed.name;
    side.bytes(SIDE_BYTES).is_err().then(|| not_as_listed(name))
}

fn warn_of_repeats(count: usize) -> Option<Warning> {
    (count > 0).then_some(Warning::LinesRepeated { count })
}

/// Pictures that are spoken of and absent, unless an entry says they were erased; then pictures
/// that are there and not spoken of.
fn warn_of_pictures(entries: &[Placed], pictures: &[IncomingPicture<'_>]) -> Vec<Warning> {
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
