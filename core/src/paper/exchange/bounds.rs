//! How large an exchange file and its members may be. Sizes are in bytes, and a MB is 10⁶ bytes.
//!
//! The same bounds hold going out and coming in, so that no device writes what another refuses.

/// The whole file, and all its members together once they are unpacked: 1 GB.
pub const FILE_BYTES: u64 = 1_000_000_000;
/// How many members a file may have.
pub const MEMBERS: u64 = 20_000;
/// The list of members at the end of the ZIP: 16 MB. The longest names with a hundred bytes of other writers' fields
/// need 8 MB.
pub const DIRECTORY_BYTES: u64 = 16_000_000;
/// `manifest.json`, unpacked: 8 MB. The longest list of members needs about 4 MB.
pub const MANIFEST_BYTES: u64 = 8_000_000;
/// `entries.jsonl`, unpacked: 256 MB.
pub const ENTRIES_BYTES: u64 = 256_000_000;
/// One picture, unpacked: 16 MB.
pub const PICTURE_BYTES: u64 = 16_000_000;
/// `readings.csv` and `READ-ME.txt`, each, unpacked: 256 MB.
pub const SIDE_BYTES: u64 = 256_000_000;
/// How many times its packed size a member may unpack to. Deflate reaches about 1030 on endless
/// repetition; lines that name digests stay far under 200.
pub const COMPRESSION_RATIO: u64 = 200;
/// The longest name a member may have, in bytes.
pub(super) const NAME_BYTES: usize = 255;
/// The longest `made_at` and `device` a manifest may have, in bytes.
pub(super) const CLAIM_BYTES: usize = 64;
