//! The end of a ZIP and its list of members, read field by field (PKWARE's APPNOTE 6.3.3, 4.3.12 and 4.3.16).
//!
//! A file of pictures is larger than the memory it may take, so only its end and its list are looked at here; where
//! the members lie comes out. No file within our bounds needs the longer fields of ZIP64, and none is read.

use std::ops::Range;

use super::bounds::{DIRECTORY_BYTES, MEMBERS};
use super::fields::{long, word};
use super::refused::Refused;

/// How long the end is without its remark.
const END: usize = 22;
/// How long an entry of the list is without its name.
const RECORD: usize = 46;

/// Where the list of members lies, which is just before the end; how many there are said to be; and how many bytes
/// stand before the ZIP, such as another file that it was put behind.
#[derive(Clone, Debug)]
pub(super) struct End {
    pub(super) list: Range<u64>,
    pub(super) said: u64,
    pub(super) before: u64,
}

/// A member as the list names it.
#[derive(Clone, Debug)]
pub(super) struct Record {
    pub(super) name: Vec<u8>,
    pub(super) flags: u16,
    pub(super) method: u16,
    pub(super) crc: u32,
    /// How many bytes it has as packed.
    pub(super) packed: u64,
    /// How many bytes it says it unpacks to.
    pub(super) size: u64,
    /// Where its own header lies.
    pub(super) header: u64,
}

/// The members up to the first fault of the list, and that fault.
#[derive(Clone, Debug)]
pub(super) struct Directory {
    pub(super) records: Vec<Record>,
    pub(super) fault: Option<Refused>,
}

/// Where the end of a file of this size lies, with the longest remark there can be.
pub(super) fn tail(size: u64) -> Range<u64> {
    size.saturating_sub(END as u64 + u64::from(u16::MAX))..size
}

/// The end that stands last in the tail of a file.
pub(super) fn end(tail: &[u8], begins: u64) -> Option<End> {
    let at = last_end(tail)?;
    let fields = tail.get(at..)?;
    let (length, start) = (u64::from(long(fields, 12)?), u64::from(long(fields, 16)?));
    let remark = usize::from(word(fields, 20)?);
    let whole = fields.len() >= END + remark;
    let stands = begins + at as u64;
    let list = stands.checked_sub(length)?..stands;
    whole.then_some(End {
        before: list.start.checked_sub(start)?,
        said: u64::from(word(fields, 10)?),
        list,
    })
}

fn last_end(tail: &[u8]) -> Option<usize> {
    let places = 0..tail.len();
    places.rev().find(|at| {
        tail.get(*at..)
            .is_some_and(|end| end.starts_with(b"PK\x05\x06"))
    })
}

impl End {
    /// Refuses a list that is longer than any honest one.
    pub(super) fn judge(&self) -> Result<(), Refused> {
        match self.list.end - self.list.start {
            length if length > DIRECTORY_BYTES => Err(Refused::DirectoryBroken),
            _ => Ok(()),
        }
    }
}

impl Directory {
    /// Reads the list as far as it goes.
    pub(super) fn read(mut list: &[u8], end: &End) -> Self {
        let said = end.said;
        let mut records = Vec::new();
        let mut fault = None;
        while !list.is_empty() && fault.is_none() {
            let found = (records.len() as u64 + 1).max(said);
            match record(list) {
                _ if found > MEMBERS => fault = Some(Refused::TooManyMembers { said: found }),
                None => fault = Some(Refused::DirectoryBroken),
                Some((mut record, after)) => {
                    record.header += end.before;
                    records.push(record);
                    list = after;
                }
            }
        }
        let found = records.len() as u64;
        if fault.is_none() && found != said {
            fault = Some(Refused::DirectoryCount { said, found });
        }
        Self { records, fault }
    }
}

/// The first member of a list, and the list after it.
fn record(list: &[u8]) -> Option<(Record, &[u8])> {
    let fields = list.strip_prefix(b"PK\x01\x02").map(|_| list)?;
    let lengths = [word(fields, 28)?, word(fields, 30)?, word(fields, 32)?].map(usize::from);
    let [name, extra, remark] = lengths;
    let record = Record {
        name: fields.get(RECORD..RECORD + name)?.to_vec(),
        flags: word(fields, 8)?,
        method: word(fields, 10)?,
        crc: long(fields, 16)?,
        packed: u64::from(long(fields, 20)?),
        size: u64::from(long(fields, 24)?),
        header: u64::from(long(fields, 42)?),
    };
    Some((record, fields.get(RECORD + name + extra + remark..)?))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::indexing_slicing)]

    use super::{Directory, End, Refused, end, tail};
    use crate::paper::exchange::Writing;
    use proptest::prelude::*;
    use rawzip::ZipArchive;

    /// What both readers tell of a member: name, flags, method, CRC, packed and unpacked size, place of its header.
    type Told = (Vec<u8>, bool, u16, u32, u64, u64, u64);

    /// By our reader, for which only the tail and the list are cut out.
    fn ours(file: &[u8]) -> Option<Vec<Told>> {
        let tail = tail(file.len() as u64);
        let end = end(&file[tail.start as usize..], tail.start)?;
        let list = Directory::read(&file[end.list.start as usize..end.list.end as usize], &end);
        let told = list.records.into_iter().map(|record| {
            let locked = record.flags & 1 != 0;
            let (packed, size) = (record.packed, record.size);
            (
                record.name,
                locked,
                record.method,
                record.crc,
                packed,
                size,
                record.header,
            )
        });
        let told = told.collect();
        list.fault.is_none().then_some(told)
    }

    /// By `rawzip`, which has the whole file.
    fn theirs(file: &[u8]) -> Option<Vec<Told>> {
        let archive = ZipArchive::from_slice(file).ok()?;
        let told = archive.entries().map(|record| {
            let record = record.ok()?;
            Some((
                record.file_path().as_bytes().to_vec(),
                record.flags().is_encrypted(),
                record.compression_method().as_u16(),
                record.crc32(),
                record.compressed_size_hint(),
                record.uncompressed_size_hint(),
                record.local_header_offset(),
            ))
        });
        let told: Option<Vec<Told>> = told.collect();
        told.filter(|told| told.len() as u64 == archive.entries_hint())
    }

    /// A ZIP behind so many other bytes, of members with these names.
    fn zip(before: usize, names: &[String], remark: &[u8]) -> Vec<u8> {
        let mut writing = Writing::new();
        let mut file = vec![b'.'; before];
        for (at, name) in names.iter().enumerate() {
            if let Ok(header) = writing.member(name, at as u64, at as u32) {
                file.extend(header);
                file.extend(vec![b'x'; at]);
            }
        }
        file.extend(writing.finish());
        let length = file.len();
        file[length - 2..].copy_from_slice(&(remark.len() as u16).to_le_bytes());
        file.extend(remark);
        file
    }

    proptest! {
        #[test]
        fn another_reader_reads_the_same_list(
            names in prop::collection::vec("[a-zé][a-z/é]{0,11}", 0..12),
            remark in prop::collection::vec(any::<u8>(), 0..40),
            before in 0_usize..50,
        ) {
            // Nothing in front of an empty list tells where it begins.
            let before = if names.is_empty() { 0 } else { before };
            let file = zip(before, &names, &remark);
            let ours = ours(&file);
            prop_assert!(ours.is_some());
            prop_assert_eq!(ours, theirs(&file));
        }

        #[test]
        fn what_is_read_of_a_damaged_list_another_reader_reads_the_same(
            names in prop::collection::vec("[a-z]{1,12}", 1..6),
            at in any::<prop::sample::Index>(),
            change in 1_u8..,
        ) {
            let mut file = zip(0, &names, b"");
            let at = at.index(file.len());
            file[at] ^= change;
            if let Some(ours) = ours(&file) {
                prop_assert_eq!(Some(ours), theirs(&file));
            }
        }

        #[test]
        fn nothing_at_all_makes_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..200), said: u64) {
            let _ = end(&bytes, 0);
            let end = End { list: 0..0, said, before: 0 };
            let _ = Directory::read(&bytes, &end);
            let _ = Directory::read(&[b"PK\x01\x02", bytes.as_slice()].concat(), &end);
        }
    }

    #[test]
    fn an_end_points_before_itself_and_its_remark_is_whole() {
        let file = zip(0, &["a".to_owned(), "b".to_owned()], b"a remark");
        assert!(end(&file, 0).is_some());
        assert!(end(&file[..file.len() - 1], 0).is_none());
        let mut late = file.clone();
        let at = file.len() - 8 - 22 + 16;
        late[at] += 1;
        assert!(end(&late, 0).is_none());
        // The same end further on in a larger file.
        assert_eq!(end(&late, 1).map(|end| end.before), Some(0));
        assert_eq!(end(&file, 1).map(|end| end.before), Some(1));
    }

    #[test]
    fn a_list_longer_than_any_honest_one_is_refused_unread() {
        let mut tail = b"PK\x05\x06".to_vec();
        tail.extend([0; 4]);
        tail.extend([1, 0, 1, 0]);
        tail.extend(16_000_001_u32.to_le_bytes());
        tail.extend([0; 6]);
        let end = end(&tail, 20_000_000).map(|end| end.judge());
        assert_eq!(end, Some(Err(Refused::DirectoryBroken)));
    }
}
