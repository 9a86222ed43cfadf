//! A file from outside read in steps, so that no more of it than one member is ever in memory.
//!
//! The core reads nothing itself: [`Reading::wants`] says which bytes of the file are looked at next, whoever has the
//! file hands them to [`Reading::give`], and so on until nothing is wanted. All that can be wrong with a file is
//! found here, whether its bytes lie in memory, on a disk or behind a browser.

use std::borrow::Cow;
use std::ops::Range;

use super::bounds::FILE_BYTES;
use super::contents::Contents;
use super::directory::{Directory, End, end, tail};
use super::incoming::{Layout, find_manifest, no_zip, not_as_listed};
use super::manifest;
use super::member::Kind;
use super::packed::Packed;
use super::refused::Refused;
use super::verified::Checked;

/// How many bytes tell what a file that is no ZIP is.
const BEGINNING: u64 = 3;

/// A file being read.
#[derive(Debug)]
pub struct Reading {
    /// The size of the file in bytes.
    size: u64,
    now: Now,
    wants: Option<Range<u64>>,
}

/// What the bytes that come next are.
#[derive(Debug)]
enum Now {
    Beginning,
    Tail {
        beginning: Vec<u8>,
    },
    List {
        end: End,
    },
    ManifestHeader {
        directory: Directory,
        manifest: Packed,
    },
    Manifest {
        directory: Directory,
        manifest: Packed,
    },
    Headers {
        layout: Layout,
        at: usize,
    },
    Contents(Box<Contents>),
    Refused,
}

impl Reading {
    /// Begins to read a file of this size.
    ///
    /// # Errors
    /// No file has this size.
    pub fn begin(size: u64) -> Result<Self, Refused> {
        match size {
            0 => Err(Refused::Empty),
            bytes if bytes > FILE_BYTES => Err(Refused::FileTooLarge { bytes }),
            _ => Ok(Self {
                size,
                now: Now::Beginning,
                wants: Some(0..BEGINNING.min(size)),
            }),
        }
    }

    /// Where in the file the bytes lie that are looked at next; `None` once all has been. It is within the file.
    pub fn wants(&self) -> Option<Range<u64>> {
        self.wants.clone()
    }

    /// Whether the layout has been looked at and holds, so that only what the members hold is still to be looked at.
    pub fn is_laid_out(&self) -> bool {
        matches!(self.now, Now::Contents(_))
    }

    /// How many of the pictures have been looked at, and how many there are; none before the layout is known.
    pub fn pictures(&self) -> (usize, usize) {
        match &self.now {
            Now::Contents(contents) => contents.progress(),
            _ => (0, 0),
        }
    }

    /// Takes the bytes that are wanted.
    ///
    /// # Errors
    /// The first thing that is wrong with the file: a newer container before anything else but being a ZIP with a
    /// manifest; then its layout; then what its members hold. From then on nothing is wanted.
    pub fn give(&mut self, bytes: Vec<u8>) -> Result<(), Refused> {
        let now = std::mem::replace(&mut self.now, Now::Refused);
        let (now, wants) = now
            .given(bytes, self.size)
            .inspect_err(|_| self.wants = None)?;
        self.now = now;
        self.wants = wants.map(|range| range.start.min(self.size)..range.end.min(self.size));
        Ok(())
    }

    /// The file, once all of it has been looked at.
    pub fn checked(self) -> Option<Checked> {
        match self.now {
            Now::Contents(contents) if self.wants.is_none() => Some(contents.checked()),
            _ => None,
        }
    }
}

type Next = (Now, Option<Range<u64>>);

impl Now {
    fn given(self, bytes: Vec<u8>, size: u64) -> Result<Next, Refused> {
        match self {
            Now::Beginning => {
                let beginning = bytes;
                Ok((Now::Tail { beginning }, Some(tail(size))))
            }
            Now::Tail { beginning } => {
                let end = end(&bytes, tail(size).start).ok_or_else(|| no_zip(&beginning))?;
                end.judge()?;
                let wants = end.list.clone();
                Ok((Now::List { end }, Some(wants)))
            }
            Now::List { end } => {
                let mut directory = Directory::read(&bytes, &end);
                let manifest = find_manifest(&mut directory)?;
                let wants = manifest.header();
                let now = Now::ManifestHeader {
                    directory,
                    manifest,
                };
                Ok((now, Some(wants)))
            }
            Now::ManifestHeader {
                directory,
                mut manifest,
            } => {
                manifest.find(&bytes, size)?;
                manifest.judge_size(Kind::Manifest.allowed())?;
                let wants = manifest.range.clone();
                Ok((
                    Now::Manifest {
                        directory,
                        manifest,
                    },
                    Some(wants),
                ))
            }
            Now::Manifest {
                directory,
                manifest,
            } => {
                let json = manifest.unpack(Cow::Owned(bytes), Kind::Manifest.allowed())?;
                manifest::judge_version(&json)?;
                headers(Layout::of(directory, &json)?, 0)
            }
            Now::Headers { mut layout, at } => {
                let next = look_at_header(&mut layout, at, &bytes, size)?;
                headers(layout, next)
            }
            Now::Contents(mut contents) => {
                let wants = contents.give(bytes)?;
                Ok((Now::Contents(contents), wants))
            }
            Now::Refused => Ok((Now::Refused, None)),
        }
    }
}

/// Asks for the own header of the member at this place; after the last one, for what the members hold.
fn headers(layout: Layout, at: usize) -> Result<Next, Refused> {
    if let Some(member) = layout.members.get(at) {
        let wants = member.packed.header();
        return Ok((Now::Headers { layout, at }, Some(wants)));
    }
    layout.judge_together()?;
    let (contents, wants) = Contents::of(layout)?;
    Ok((Now::Contents(Box::new(contents)), wants))
}

/// Looks at a member's own header and gives the place of the next. What is written for people only ever causes a
/// warning.
fn look_at_header(
    layout: &mut Layout,
    at: usize,
    header: &[u8],
    size: u64,
) -> Result<usize, Refused> {
    let Some(member) = layout.members.get_mut(at) else {
        return Ok(at);
    };
    match member.packed.find(header, size) {
        Ok(()) => Ok(at + 1),
        Err(_) if member.kind == Kind::Side => {
            layout.warnings.push(not_as_listed(&member.packed.name));
            layout.members.remove(at);
            Ok(at)
        }
        Err(refused) => Err(refused),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]

    use std::borrow::Cow;
    use std::collections::BTreeMap;
    use std::ops::Range;

    use super::Reading;
    use crate::daybook::Digest;
    use crate::paper::exchange::{OutgoingPicture, Parcel, Refused, Scope};

    const PICTURE: usize = 100_000;

    /// A file of twenty pictures and no entries.
    fn file() -> (Vec<u8>, BTreeMap<Digest, Vec<u8>>) {
        let picture = |seed: u8| [&[0xFF, 0xD8, 0xFF, seed][..], &vec![seed; PICTURE - 4]].concat();
        let pictures = (0..20).map(picture);
        let pictures: BTreeMap<_, _> = pictures.map(|jpeg| (Digest::of(&jpeg), jpeg)).collect();
        let parcel = Parcel {
            made_at: "2024-05-06T17:18:19+01:00",
            device: "0f1e",
            scope: Scope::Book,
            entries: Vec::new(),
            pictures: pictures
                .values()
                .map(|jpeg| OutgoingPicture::of(jpeg))
                .collect(),
            readings: &[],
            read_me: "Twenty pictures.\n",
        };
        (parcel.whole(&pictures).unwrap(), pictures)
    }

    fn part(file: &[u8], range: &Range<u64>) -> Vec<u8> {
        file[range.start as usize..range.end as usize].to_vec()
    }

    /// Reads a file and gives what was wanted, and how many pictures were told to be done each time.
    fn read(file: &[u8]) -> (Reading, Vec<Range<u64>>, Vec<(usize, usize)>) {
        let mut reading = Reading::begin(file.len() as u64).unwrap();
        let (mut wanted, mut told) = (Vec::new(), Vec::new());
        while let Some(range) = reading.wants() {
            told.push(reading.pictures());
            reading.give(part(file, &range)).unwrap();
            wanted.push(range);
        }
        (reading, wanted, told)
    }

    #[test]
    fn no_more_than_one_member_is_wanted_at_a_time_and_each_once() {
        let (file, pictures) = file();
        let (reading, wanted, _) = read(&file);
        let length = |range: &Range<u64>| range.end - range.start;
        assert_eq!(wanted.iter().map(length).max(), Some(PICTURE as u64));
        let all: u64 = wanted.iter().map(length).sum();
        // Its end is looked at once more than its members, and so are their headers and the list.
        assert!(all < file.len() as u64 + 100_000, "{all} of {}", file.len());
        let checked = reading.checked().unwrap();
        for picture in checked.pictures() {
            let packed = Cow::Owned(part(&file, &picture.range()));
            assert_eq!(picture.unpack(packed).unwrap(), pictures[&picture.digest]);
        }
    }

    #[test]
    fn it_tells_how_many_pictures_are_done() {
        let (file, _) = file();
        let (reading, _, told) = read(&file);
        assert!(told.is_sorted());
        assert!((0..20).all(|done| told.contains(&(done, 20))), "{told:?}");
        assert_eq!(reading.pictures(), (20, 20));
    }

    #[test]
    fn a_file_that_changes_after_it_was_looked_at_is_refused() {
        let (file, _) = file();
        let (reading, ..) = read(&file);
        let checked = reading.checked().unwrap();
        let picture = &checked.pictures()[3];
        let mut packed = part(&file, &picture.range());
        packed[50_000] ^= 1;
        let refused = picture.unpack(Cow::Owned(packed));
        assert!(matches!(refused, Err(Refused::CrcDiffers { .. })));
    }

    #[test]
    fn whoever_hands_over_other_bytes_than_wanted_gets_a_refusal() {
        let (file, _) = file();
        let steps = read(&file).1.len();
        // The beginning is asked about only where there is no end.
        for wrong in 1..steps {
            for bytes in [Vec::new(), vec![0; 7], vec![0xFF; 200_000]] {
                let (whole, right) = given_at(&file, wrong, &bytes);
                assert_eq!(whole, right == bytes, "step {wrong}");
            }
        }
    }

    /// Whether a file holds of which other bytes are handed over at this step, and what would have been right.
    fn given_at(file: &[u8], wrong: usize, bytes: &[u8]) -> (bool, Vec<u8>) {
        let mut reading = Reading::begin(file.len() as u64).unwrap();
        let (mut told, mut step, mut right) = (Ok(()), 0, Vec::new());
        while let (Some(range), Ok(())) = (reading.wants(), &told) {
            let mut given = part(file, &range);
            if step == wrong {
                right = std::mem::replace(&mut given, bytes.to_vec());
            }
            told = reading.give(given);
            step += 1;
        }
        // That no entry speaks of the twenty pictures is all there is to say.
        let checked = reading.checked().map(|one| one.warnings().len());
        (told.is_ok() && checked == Some(20), right)
    }

    #[test]
    fn after_a_refusal_nothing_is_wanted_and_nothing_comes_out() {
        let mut reading = Reading::begin(100).unwrap();
        reading.give(b"Dea".to_vec()).unwrap();
        assert_eq!(reading.give(vec![b'r'; 100]), Err(Refused::NotZip));
        assert_eq!(reading.wants(), None);
        assert_eq!(reading.give(Vec::new()), Ok(()));
        assert!(reading.checked().is_none());
    }
}
