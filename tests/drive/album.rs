//! A book of one cart with many pictures, as a real exchange file. Its pictures are real JPEGs made as large as wanted
//! by remarks of random bytes, which no packing makes smaller.

use std::collections::BTreeMap;

use cartside_core::daybook::{Digest, EntryId, Hand, Picture, Says, Stamp, Unwritten};
use cartside_core::paper::exchange::{OutgoingEntry, OutgoingPicture, Parcel, Scope};
use cartside_core::paper::line;
use cartside_core::wheel::{Part, Vehicle, VehicleKind};

use super::camera::{self, HEIGHT, WIDTH};

/// The longest remark a JPEG can have (ISO/IEC 10918-1, B.2.4.5).
const REMARK: usize = 65_533;

/// A file with so many pictures of about so many bytes, each spoken of by one entry after the one that begins the cart.
pub struct Album {
    /// Its bytes.
    pub file: Vec<u8>,
    /// The digests of its pictures, in order.
    pub pictures: Vec<Digest>,
    /// The cart.
    pub cart: String,
    /// How many entries it has.
    pub entries: usize,
}

/// Makes one; the same numbers make the same file.
pub fn album(count: usize, bytes: usize) -> Album {
    let photograph = camera::photograph();
    let mut seed = 0x2545_F491_4F6C_DD1D;
    let jpegs: BTreeMap<Digest, Vec<u8>> = (0..count)
        .map(|_| padded(&photograph, bytes, &mut seed))
        .map(|jpeg| (Digest::of(&jpeg), jpeg))
        .collect();
    let lines = lines(&jpegs);
    let entries = lines
        .iter()
        .enumerate()
        .map(|(at, (id, line))| OutgoingEntry {
            n: at as u64 + 1,
            id: *id,
            line,
        });
    let parcel = Parcel {
        made_at: "2026-11-25T10:03:00+00:00",
        device: "0f1e0f1e0f1e0f1e0f1e0f1e0f1e0f1e",
        scope: Scope::Book,
        entries: entries.collect(),
        pictures: jpegs
            .values()
            .map(|jpeg| OutgoingPicture::of(jpeg))
            .collect(),
        readings: &[],
        read_me: "A cart of an invented farm, and its pictures.\n",
    };
    Album {
        file: parcel.whole(&jpegs).expect("the album can be written"),
        pictures: jpegs.keys().copied().collect(),
        cart: lines[0].0.hex(),
        entries: lines.len(),
    }
}

fn lines(jpegs: &BTreeMap<Digest, Vec<u8>>) -> Vec<(EntryId, String)> {
    let name = "Hay cart".to_owned();
    let kind = VehicleKind::Cart;
    let begun = Unwritten::new(None, Says::Vehicle(Vehicle { kind, name }));
    let mut lines = vec![written(&begun.expect("a beginning"), 1)];
    let cart = lines[0].0;
    for (digest, jpeg) in jpegs {
        let says = Says::Picture(Picture {
            part: Part::Vehicle,
            digest: *digest,
            width: u32::from(WIDTH),
            height: u32::from(HEIGHT),
            bytes: u32::try_from(jpeg.len()).expect("a picture is short"),
        });
        let entry = Unwritten::new(Some(cart), says).expect("a picture");
        lines.push(written(&entry, lines.len() as u64 + 1));
    }
    lines
}

fn written(entry: &Unwritten, n: u64) -> (EntryId, String) {
    let hand = Hand {
        by: "A. Wright".to_owned(),
        device: "0f1e0f1e0f1e0f1e0f1e0f1e0f1e0f1e".to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").expect("a time"),
        n,
    };
    let line = line::write(entry, &hand).expect("the entry can be written");
    (EntryId::of(line.as_bytes()), line)
}

/// The same picture with remarks right after its beginning, until it has about so many bytes.
fn padded(jpeg: &[u8], bytes: usize, seed: &mut u64) -> Vec<u8> {
    let (beginning, rest) = jpeg.split_at(2);
    let mut padded = beginning.to_vec();
    while padded.len() + rest.len() < bytes {
        let length = REMARK.min(bytes - padded.len() - rest.len()).max(8);
        padded.extend([0xFF, 0xFE]);
        padded.extend(
            u16::try_from(length + 2)
                .expect("a remark is short")
                .to_be_bytes(),
        );
        padded.extend((0..length).map(|_| random(seed)));
    }
    padded.extend(rest);
    padded
}

/// George Marsaglia's "Xorshift RNGs" (Journal of Statistical Software 8, 2003): 13, 7, 17.
fn random(seed: &mut u64) -> u8 {
    *seed ^= *seed << 13;
    *seed ^= *seed >> 7;
    *seed ^= *seed << 17;
    seed.to_le_bytes()[3]
}
