//! A picture as a phone's camera gives it: a JPEG that tells where and which way up it was taken.

use jpeg_encoder::{ColorType, Encoder};

/// Width of the picture as its bytes lie, in pixels.
pub const WIDTH: u16 = 160;
/// Height of the picture as its bytes lie, in pixels.
pub const HEIGHT: u16 = 120;

/// A JPEG with a place (GPS) and an orientation (turn by a quarter) in its EXIF part.
pub fn photograph() -> Vec<u8> {
    another(0)
}

/// The same of something else for each number.
pub fn another(number: u8) -> Vec<u8> {
    let pixels: Vec<u8> = (0..HEIGHT)
        .flat_map(|y| {
            (0..WIDTH).flat_map(move |x| [x as u8 ^ number.rotate_right(2), y as u8, (x ^ y) as u8])
        })
        .collect();
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, 90);
    encoder
        .add_app_segment(1, exif())
        .expect("an EXIF part fits");
    encoder
        .encode(&pixels, WIDTH, HEIGHT, ColorType::Rgb)
        .expect("the pixels are as many as said");
    jpeg
}

/// Whether the bytes hold an EXIF part anywhere.
pub fn tells_where(jpeg: &[u8]) -> bool {
    jpeg.windows(6).any(|window| window == b"Exif\0\0")
}

/// Width and height that a JPEG's frame header names (ISO/IEC 10918-1, B.2.2).
pub fn size(jpeg: &[u8]) -> Option<(u16, u16)> {
    let mut at = 2;
    loop {
        let [0xFF, marker, high, low] = *jpeg.get(at..at + 4)? else {
            return None;
        };
        if matches!(marker, 0xC0..=0xC2) {
            let word = |at| Some(u16::from_be_bytes([*jpeg.get(at)?, *jpeg.get(at + 1)?]));
            return Some((word(at + 7)?, word(at + 5)?));
        }
        at += 2 + usize::from(u16::from_be_bytes([high, low]));
    }
}

/// An EXIF part (Exif 2.3, 4.5 and 4.6): orientation 6, and a latitude of 52° 30′ 0″ north.
fn exif() -> Vec<u8> {
    const SHORT: u16 = 3;
    const LONG: u16 = 4;
    const ASCII: u16 = 2;
    const RATIONAL: u16 = 5;
    let mut tiff = b"II*\0\x08\0\0\0".to_vec();
    let first = [field(0x0112, SHORT, 1, 6), field(0x8825, LONG, 1, 38)];
    tiff.extend(directory(&first));
    let north = u32::from(b'N');
    let place = [field(1, ASCII, 2, north), field(2, RATIONAL, 3, 68)];
    tiff.extend(directory(&place));
    for part in [52_u32, 1, 30, 1, 0, 1] {
        tiff.extend(part.to_le_bytes());
    }
    [b"Exif\0\0", tiff.as_slice()].concat()
}

fn field(tag: u16, kind: u16, count: u32, value: u32) -> Vec<u8> {
    let head = [tag.to_le_bytes(), kind.to_le_bytes()].concat();
    [head, count.to_le_bytes().into(), value.to_le_bytes().into()].concat()
}

fn directory(fields: &[Vec<u8>]) -> Vec<u8> {
    let count = fields.len() as u16;
    [count.to_le_bytes().to_vec(), fields.concat(), vec![0; 4]].concat()
}
