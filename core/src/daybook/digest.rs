//! SHA-256 of some bytes: the name of an entry, and of a picture.

use std::fmt;

use sha2::{Digest as _, Sha256};

/// How many characters a digest has when it is written out.
const HEX_LENGTH: usize = 64;

/// The SHA-256 of some bytes (FIPS 180-4). The same bytes have the same digest on every device.
///
/// Digests are ordered as their written form is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of these bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// The digest of these pieces one after the other, of which only one is looked at at a time.
    pub fn of_pieces<'b>(pieces: impl Iterator<Item = &'b [u8]>) -> Self {
        let mut sha = Sha256::new();
        pieces.for_each(|piece| sha.update(piece));
        Self(sha.finalize().into())
    }

    /// The digest as 64 lower-case hexadecimal digits.
    pub fn hex(&self) -> String {
        self.to_string()
    }

    /// Reads 64 lower-case hexadecimal digits; every other spelling is `None`, so that one digest
    /// has one written form.
    pub fn from_hex(text: &str) -> Option<Self> {
        if text.len() != HEX_LENGTH {
            return None;
        }
        let mut bytes = [0; 32];
        for (byte, pair) in bytes.iter_mut().zip(text.as_bytes().chunks_exact(2)) {
            *byte = pair
                .iter()
                .try_fold(0, |high, digit| Some(high << 4 | nibble(*digit)?))?;
        }
        Some(Self(bytes))
    }

    /// The 32 bytes, first byte first.
    pub fn bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

/// What one lower-case hexadecimal digit is worth.
fn nibble(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Digest({self})")
    }
}

#[cfg(test)]
mod tests {
    use super::Digest;

    /// Published values: NIST, "Examples with Intermediate Values: SHA-256" to FIPS 180-4 (one
    /// block, two blocks), and NIST's additional SHA-256 examples (the empty message, one million
    /// times `a`, which FIPS 180-2 appendix B.3 printed first).
    #[test]
    fn digests_are_the_published_ones() {
        let published = [
            (
                Vec::new(),
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            ),
            (
                b"abc".to_vec(),
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            ),
            (
                b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq".to_vec(),
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
            (
                vec![b'a'; 1_000_000],
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
            ),
        ];
        for (message, digest) in published {
            assert_eq!(Digest::of(&message).hex(), digest);
        }
    }

    #[test]
    fn what_was_written_is_read_back() {
        for seed in 0..=255_u8 {
            let digest = Digest::of(&[seed]);
            assert_eq!(Digest::from_hex(&digest.hex()), Some(digest));
        }
    }

    #[test]
    fn only_sixty_four_lower_case_digits_are_a_digest() {
        let good = Digest::of(b"abc").hex();
        let upper = good.to_uppercase();
        let short = &good[..63];
        let long = format!("{good}0");
        let foreign = format!("g{}", &good[1..]);
        let wide = format!("{}é", &good[..62]);
        for text in ["", &upper, short, &long, &foreign, &wide] {
            assert_eq!(Digest::from_hex(text), None, "{text}");
        }
    }

    #[test]
    fn digests_sort_as_their_written_form_does() {
        let mut digests: Vec<_> = (0..100_u8).map(|seed| Digest::of(&[seed])).collect();
        digests.sort();
        assert!(digests.is_sorted_by_key(Digest::hex));
    }
}
