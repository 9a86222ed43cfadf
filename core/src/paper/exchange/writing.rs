//! A ZIP written in parts: a header for each member, and what stands at the end.
//!
//! Members are stored, never compressed: pictures do not shrink, and lines are few beside them.
//! An own writer for that adds about 1 kB to the download where the `zip` crate adds about 100,
//! and it gives the ZIP in parts, so that a file of pictures can be put together from headers and
//! from bytes that stay in storage. PKWARE's APPNOTE 6.3.3 names the fields.

use super::bounds::{FILE_BYTES, MEMBERS};
use super::member;
use super::unwritable::Unwritable;

/// Version 2.0 of the ZIP format, which every reader knows (APPNOTE 4.4.3).
const VERSION: u16 = 20;
/// Names are UTF-8 (APPNOTE 4.4.4, bit 11).
const UTF8_NAMES: u16 = 1 << 11;
/// Stored (APPNOTE 4.4.5).
const STORED: u16 = 0;
/// Midnight: a file must not differ by the second in which it was made.
const TIME: u16 = 0;
/// 1 January 1980, the first day a ZIP can name; the manifest says when the file was made.
const DATE: u16 = (1 << 5) | 1;
/// How long a local header is without its name.
const LOCAL_HEADER: u64 = 30;
/// How long an entry of the list at the end is without its name.
const LISTED_HEADER: u64 = 46;
/// How long the end of a ZIP is.
const END: u64 = 22;

/// A ZIP being written. Bytes go out in this order: for each member its header and then its bytes,
/// which the caller has; at last what [`finish`](Self::finish) gives.
#[derive(Debug, Default)]
pub struct Writing {
    /// How many bytes have gone out, those of the last member included.
    offset: u64,
    /// The list at the end, as far as it goes.
    list: Vec<u8>,
    /// In order. Members come nearly so, and a name then goes in near the end.
    names: Vec<String>,
}

impl Writing {
    /// A ZIP without members.
    pub fn new() -> Self {
        Self::default()
    }

    /// The header that goes out just before the bytes of a member: `bytes` of them, with the CRC
    /// that [`crc32`](super::crc32) gives.
    ///
    /// # Errors
    ///
    /// When no reader would take the member: its name, one member or one byte too many. The
    /// writing is then as it was.
    pub fn member(&mut self, name: &str, bytes: u64, crc32: u32) -> Result<Vec<u8>, Unwritable> {
        let fields = self.fields(name, bytes, crc32)?;
        let offset = self.offset as u32;
        self.offset += LOCAL_HEADER + name.len() as u64 + bytes;
        if let Err(at) = self.find(name) {
            self.names.insert(at, name.to_owned());
        }
        self.enlist(&fields, name, offset);
        let mut header = b"PK\x03\x04".to_vec();
        header.extend(&fields);
        header.extend(name.as_bytes());
        Ok(header)
    }

    /// The list of members and the end of the ZIP.
    pub fn finish(self) -> Vec<u8> {
        let members = (self.names.len() as u16).to_le_bytes();
        let length = (self.list.len() as u32).to_le_bytes();
        let mut tail = self.list;
        tail.extend(b"PK\x05\x06");
        tail.extend([0; 4]); // this disk, and the disk of the list: there is one disk
        tail.extend(members);
        tail.extend(members);
        tail.extend(length);
        tail.extend((self.offset as u32).to_le_bytes());
        tail.extend([0; 2]); // no remark
        tail
    }

    /// The fields that a local header and the list have in common, version to length of the extra
    /// field. The bounds of a file keep every number within its field.
    fn fields(&self, name: &str, bytes: u64, crc32: u32) -> Result<Vec<u8>, Unwritable> {
        self.judge(name, bytes)?;
        let size = (bytes as u32).to_le_bytes();
        let mut fields = Vec::new();
        for word in [VERSION, UTF8_NAMES, STORED, TIME, DATE] {
            fields.extend(word.to_le_bytes());
        }
        fields.extend(crc32.to_le_bytes());
        fields.extend(size);
        fields.extend(size);
        fields.extend((name.len() as u16).to_le_bytes());
        fields.extend([0; 2]); // no extra field
        Ok(fields)
    }

    fn judge(&self, name: &str, bytes: u64) -> Result<(), Unwritable> {
        if member::name(name.as_bytes()).is_err() {
            return Err(Unwritable::Name {
                name: name.to_owned(),
            });
        }
        if self.find(name).is_ok() {
            return Err(Unwritable::NameTwice {
                name: name.to_owned(),
            });
        }
        if self.names.len() as u64 >= MEMBERS {
            return Err(Unwritable::TooManyMembers);
        }
        let headers = LOCAL_HEADER + LISTED_HEADER + 2 * name.len() as u64;
        let whole = [bytes, headers, self.offset, self.list.len() as u64, END]
            .into_iter()
            .fold(0, u64::saturating_add);
        if whole > FILE_BYTES {
            return Err(Unwritable::FileTooLarge);
        }
        Ok(())
    }

    /// The place of a name, or where it would go in.
    fn find(&self, name: &str) -> Result<usize, usize> {
        self.names
            .binary_search_by(|known| known.as_str().cmp(name))
    }

    fn enlist(&mut self, fields: &[u8], name: &str, offset: u32) {
        self.list.extend(b"PK\x01\x02");
        self.list.extend(VERSION.to_le_bytes()); // made by; the high byte 0 is plain files
        self.list.extend(fields);
        self.list.extend([0; 10]); // no remark, first disk, no attributes
        self.list.extend(offset.to_le_bytes());
        self.list.extend(name.as_bytes());
    }
}

#[cfg(test)]
mod tests {
    use super::{FILE_BYTES, MEMBERS, Unwritable, Writing};

    #[test]
    fn the_bytes_are_those_of_the_format() {
        let mut writing = Writing::new();
        let header = writing.member("a", 3, 0x3524_41C2).unwrap();
        let fields = [
            20, 0, 0, 8, 0, 0, 0, 0, 0x21, 0, 0xC2, 0x41, 0x24, 0x35, 3, 0, 0, 0, 3, 0, 0, 0, 1, 0,
            0, 0,
        ];
        assert_eq!(header, [b"PK\x03\x04", &fields[..], b"a"].concat());
        let list = [b"PK\x01\x02\x14\0", &fields[..], &[0; 14], b"a"].concat();
        let end = [
            b"PK\x05\x06\0\0\0\0\x01\0\x01\0",
            &[47, 0, 0, 0, 34, 0, 0, 0, 0, 0][..],
        ];
        assert_eq!(writing.finish(), [list, end.concat()].concat());
    }

    #[test]
    fn a_name_stands_once_and_leads_nowhere() {
        let mut writing = Writing::new();
        writing.member("a", 0, 0).unwrap();
        let name = || "a".to_owned();
        assert_eq!(
            writing.member("a", 0, 0),
            Err(Unwritable::NameTwice { name: name() })
        );
        let name = || "../a".to_owned();
        assert_eq!(
            writing.member("../a", 0, 0),
            Err(Unwritable::Name { name: name() })
        );
    }

    #[test]
    fn the_largest_file_is_as_large_as_a_file_may_be() {
        let around = 30 + 1 + 46 + 1 + 22;
        for (bytes, fits) in [
            (FILE_BYTES - around, true),
            (FILE_BYTES - around + 1, false),
            (u64::MAX, false),
        ] {
            assert_eq!(
                Writing::new().member("a", bytes, 0).is_ok(),
                fits,
                "{bytes}"
            );
        }
    }

    #[test]
    fn members_are_counted() {
        let mut writing = Writing::new();
        for member in 0..MEMBERS {
            writing.member(&member.to_string(), 0, 0).unwrap();
        }
        assert_eq!(
            writing.member("one more", 0, 0),
            Err(Unwritable::TooManyMembers)
        );
    }
}
