//! One member as it lies in the file, packed: where, how, and how it is unpacked within bounds.

use std::borrow::Cow;
use std::ops::Range;

use miniz_oxide::inflate::{TINFLStatus, decompress_slice_iter_to_slice};
use rawzip::{CompressionMethod, ZipFileHeaderRecord, ZipSliceArchive};

use super::bounds::COMPRESSION_RATIO;
use super::crc::crc32;
use super::refused::Refused;

/// A member that has not been unpacked. What it says of itself has been checked against its own
/// header and against nothing else.
#[derive(Clone, Debug)]
pub(super) struct Packed<'a> {
    pub(super) name: String,
    /// Where its packed bytes lie in the file.
    pub(super) range: Range<u64>,
    /// What it says it unpacks to, in bytes.
    pub(super) size: u64,
    data: &'a [u8],
    deflated: bool,
    crc: u32,
}

impl<'a> Packed<'a> {
    /// Finds a member of the list in the file.
    pub(super) fn find(
        archive: &ZipSliceArchive<&'a [u8]>,
        record: &ZipFileHeaderRecord<'_>,
        name: &str,
    ) -> Result<Self, Refused> {
        let broken = || Refused::MemberBroken {
            name: name.to_owned(),
        };
        let entry = archive
            .get_entry(record.wayfinder())
            .map_err(|_| broken())?;
        let own = entry.local_header();
        if own.flags().is_encrypted() || record.flags().is_encrypted() {
            return Err(Refused::Encrypted {
                name: name.to_owned(),
            });
        }
        let agrees = own.file_path().as_ref() == name.as_bytes()
            && own.compression_method() == record.compression_method();
        let (start, end) = entry.compressed_data_range();
        let data = slice(archive.get_ref(), start, end);
        Ok(Self {
            name: name.to_owned(),
            range: start..end,
            size: record.uncompressed_size_hint(),
            data: data.filter(|_| agrees).ok_or_else(broken)?,
            deflated: is_deflated(record.compression_method(), name)?,
            crc: record.crc32(),
        })
    }

    /// The bytes of the member: its size, its ratio and its CRC hold.
    pub(super) fn unpack(&self, allowed: u64) -> Result<Cow<'a, [u8]>, Refused> {
        self.judge_size(allowed)?;
        let bytes = if self.deflated {
            Cow::Owned(self.inflate()?)
        } else {
            Cow::Borrowed(self.data)
        };
        if bytes.len() as u64 != self.size {
            return Err(self.size_differs());
        }
        if crc32(&bytes) != self.crc {
            return Err(Refused::CrcDiffers {
                name: self.name.clone(),
            });
        }
        Ok(bytes)
    }

    /// Refuses what is too large before a byte of it is unpacked.
    fn judge_size(&self, allowed: u64) -> Result<(), Refused> {
        let name = || self.name.clone();
        if self.size > allowed {
            return Err(Refused::MemberTooLarge {
                name: name(),
                bytes: self.size,
                allowed,
            });
        }
        let packed = self.data.len() as u64;
        if self.size > packed.saturating_mul(COMPRESSION_RATIO) {
            return Err(Refused::TooCompressed {
                name: name(),
                packed,
                unpacked: self.size,
            });
        }
        Ok(())
    }

    /// Inflates into as many bytes as the member says it has, and not one more.
    fn inflate(&self) -> Result<Vec<u8>, Refused> {
        let size = usize::try_from(self.size).map_err(|_| self.size_differs())?;
        let mut bytes = vec![0; size];
        let packed = std::iter::once(self.data);
        match decompress_slice_iter_to_slice(&mut bytes, packed, false, true) {
            Ok(length) if length == size => Ok(bytes),
            Ok(_) | Err(TINFLStatus::HasMoreOutput) => Err(self.size_differs()),
            Err(_) => Err(Refused::MemberBroken {
                name: self.name.clone(),
            }),
        }
    }

    fn size_differs(&self) -> Refused {
        Refused::SizeDiffers {
            name: self.name.clone(),
            said: self.size,
        }
    }
}

fn slice(bytes: &[u8], start: u64, end: u64) -> Option<&[u8]> {
    bytes.get(usize::try_from(start).ok()?..usize::try_from(end).ok()?)
}

fn is_deflated(method: CompressionMethod, name: &str) -> Result<bool, Refused> {
    match method {
        CompressionMethod::STORE => Ok(false),
        CompressionMethod::DEFLATE => Ok(true),
        other => Err(Refused::UnknownMethod {
            name: name.to_owned(),
            method: other.as_u16(),
        }),
    }
}
