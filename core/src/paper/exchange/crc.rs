//! The CRC-32 that a ZIP keeps of each member (polynomial EDB88320, reflected).
//!
//! Written here because the ones of `rawzip` and `crc32fast` carry 16 kB of tables that do not
//! compress, and the SHA-256 beside it is slower anyway; this one carries 1 kB.

/// What one byte does to a running CRC.
static TABLE: [u32; 256] = table();

/// The CRC-32 of these bytes, as a ZIP wants it.
pub fn crc32(bytes: &[u8]) -> u32 {
    crc32_on(0, bytes)
}

/// The CRC-32 of bytes of which those before these have this one; that of none is 0.
pub(super) fn crc32_on(before: u32, bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!before, |crc, byte| {
        let low = crc.to_le_bytes()[0] ^ byte;
        let folded = TABLE.get(usize::from(low)).copied().unwrap_or_default();
        (crc >> 8) ^ folded
    })
}

#[allow(clippy::indexing_slicing)] // Iterators are not const yet, and the index runs to 255.
const fn table() -> [u32; 256] {
    let mut table = [0; 256];
    let mut byte = 0_u32;
    while byte < 256 {
        let mut crc = byte;
        let mut bit = 0;
        while bit < 8 {
            crc = if crc & 1 == 1 {
                (crc >> 1) ^ 0xEDB8_8320
            } else {
                crc >> 1
            };
            bit += 1;
        }
        table[byte as usize] = crc;
        byte += 1;
    }
    table
}

#[cfg(test)]
mod tests {
    use super::{crc32, crc32_on};

    /// The check value of this CRC in Greg Cook's "Catalogue of parametrised CRC algorithms"
    /// (CRC-32/ISO-HDLC), over the nine digits.
    #[test]
    fn the_published_check_value_comes_out() {
        assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
        assert_eq!(crc32(b""), 0);
        assert_eq!(crc32_on(crc32(b"1234"), b"56789"), 0xCBF4_3926);
    }
}
