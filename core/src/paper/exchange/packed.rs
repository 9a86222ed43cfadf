//! One member as it lies in the file, packed: where, how, and how it is unpacked within bounds.

use std::borrow::Cow;
use std::ops::Range;

use miniz_oxide::inflate::{TINFLStatus, decompress_slice_iter_to_slice};

use super::bounds::COMPRESSION_RATIO;
use super::crc::crc32;
use super::directory::Record;
use super::fields::word;
use super::refused::Refused;

/// How long a member's own header is without its name.
const HEADER: u64 = 30;
/// The bit of a member that is locked (APPNOTE 4.4.4).
const LOCKED: u16 = 1;
const STORED: u16 = 0;
const DEFLATED: u16 = 8;

/// A member that has not been unpacked. What it says of itself is checked against its own header and against nothing
/// else.
#[derive(Clone, Debug)]
pub(super) struct Packed {
    pub(super) name: String,
    /// Where its packed bytes lie in the file; nowhere before [`find`](Self::find).
    pub(super) range: Range<u64>,
    /// What it says it unpacks to, in bytes.
    pub(super) size: u64,
    header: u64,
    length: u64,
    flags: u16,
    method: u16,
    crc: u32,
}

impl Packed {
    /// A member of the list; its name has been judged.
    pub(super) fn of(record: &Record, name: &str) -> Self {
        Self {
            name: name.to_owned(),
            range: 0..0,
            size: record.size,
            header: record.header,
            length: record.packed,
            flags: record.flags,
            method: record.method,
            crc: record.crc,
        }
    }

    /// Where its own header lies.
    pub(super) fn header(&self) -> Range<u64> {
        self.header..self.header + HEADER + self.name.len() as u64
    }

    /// Looks at its own header, as much as there is of it, and learns where its bytes lie in a file of this size.
    pub(super) fn find(&mut self, header: &[u8], file: u64) -> Result<(), Refused> {
        let own = self.own(header).ok_or_else(|| self.broken());
        let (flags, method, agrees) = own?;
        if (flags | self.flags) & LOCKED != 0 {
            let name = self.name.clone();
            return Err(Refused::Encrypted { name });
        }
        let extra = word(header, 28).map_or(0, u64::from);
        let start = self.header().end + extra;
        let end = start + self.length;
        if !agrees || method != self.method || end > file {
            return Err(self.broken());
        }
        if ![STORED, DEFLATED].contains(&method) {
            let name = self.name.clone();
            return Err(Refused::UnknownMethod { name, method });
        }
        self.range = start..end;
        Ok(())
    }

    /// Its flags and method by its own header, and whether that has the same name.
    fn own(&self, header: &[u8]) -> Option<(u16, u16, bool)> {
        let fields = header.strip_prefix(b"PK\x03\x04").map(|_| header)?;
        let name = fields.get(HEADER as usize..)?;
        let agrees = usize::from(word(fields, 26)?) == name.len() && name == self.name.as_bytes();
        Some((word(fields, 6)?, word(fields, 8)?, agrees))
    }

    /// Refuses what is too large before a byte of it is read.
    pub(super) fn judge_size(&self, allowed: u64) -> Result<(), Refused> {
        let name = || self.name.clone();
        if self.size > allowed {
            return Err(Refused::MemberTooLarge {
                name: name(),
                bytes: self.size,
                allowed,
            });
        }
        let (packed, unpacked) = (self.length, self.size);
        if self.size > packed.saturating_mul(COMPRESSION_RATIO) {
            let name = name();
            return Err(Refused::TooCompressed {
                name,
                packed,
                unpacked,
            });
        }
        if self.method == STORED && packed != unpacked {
            return Err(self.size_differs());
        }
        // Deflate adds five bytes to every 65 535 that it cannot make smaller (RFC 1951, 3.2.4), and writers may stop
        // sooner; more than that is no packing.
        if packed > unpacked + unpacked / 16 + 64 {
            return Err(self.broken());
        }
        Ok(())
    }

    /// The bytes of the member from its packed bytes: its size, its ratio and its CRC hold.
    pub(super) fn unpack<'b>(
        &self,
        packed: Cow<'b, [u8]>,
        allowed: u64,
    ) -> Result<Cow<'b, [u8]>, Refused> {
        self.judge_size(allowed)?;
        let bytes = match self.method {
            STORED => packed,
            _ => Cow::Owned(self.inflate(&packed)?),
        };
        if crc32(&bytes) != self.crc {
            let name = self.name.clone();
            return Err(Refused::CrcDiffers { name });
        }
        Ok(bytes)
    }

    /// Inflates into as many bytes as the member says it has, and not one more.
    fn inflate(&self, packed: &[u8]) -> Result<Vec<u8>, Refused> {
        let size = usize::try_from(self.size).map_err(|_| self.size_differs())?;
        let mut bytes = vec![0; size];
        let packed = std::iter::once(packed);
        match decompress_slice_iter_to_slice(&mut bytes, packed, false, true) {
            Ok(length) if length == size => Ok(bytes),
            Ok(_) | Err(TINFLStatus::HasMoreOutput) => Err(self.size_differs()),
            Err(_) => Err(self.broken()),
        }
    }

    fn broken(&self) -> Refused {
        let name = self.name.clone();
        Refused::MemberBroken { name }
    }

    fn size_differs(&self) -> Refused {
        Refused::SizeDiffers {
            name: self.name.clone(),
            said: self.size,
        }
    }
}
