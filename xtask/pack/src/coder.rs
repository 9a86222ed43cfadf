//! Codes one bit after another, each in as much room as its chance asks for: a range coder with carry.

use alloc::vec;
use alloc::vec::Vec;

/// Codes bits one way or the other.
pub(crate) trait Coder {
    /// Codes a bit whose chance to be 1 is this many of 65 536, and gives it. A reader finds the bit itself.
    fn code(&mut self, bit: bool, chance: u32) -> bool;
}

/// Writes the bits that it is given.
pub(crate) struct Encoder {
    low: u64,
    range: u32,
    out: Vec<u8>,
}

impl Encoder {
    pub(crate) fn new() -> Self {
        // The carry of the first byte has somewhere to go.
        Self {
            low: 0,
            range: u32::MAX,
            out: vec![0],
        }
    }

    pub(crate) fn finish(mut self) -> Vec<u8> {
        for _ in 0..4 {
            self.shift();
        }
        self.out
    }

    fn shift(&mut self) {
        self.out.push((self.low >> 24) as u8);
        self.low = (self.low << 8) & 0xffff_ffff;
    }

    fn carry(&mut self) {
        if self.low >> 32 == 1 {
            self.low &= 0xffff_ffff;
            for byte in self.out.iter_mut().rev() {
                *byte = byte.wrapping_add(1);
                if *byte != 0 {
                    break;
                }
            }
        }
    }
}

impl Coder for Encoder {
    fn code(&mut self, bit: bool, chance: u32) -> bool {
        let bound = (self.range >> 16) * chance;
        if bit {
            self.range = bound;
        } else {
            self.low += u64::from(bound);
            self.range -= bound;
            self.carry();
        }
        while self.range < 1 << 24 {
            self.range <<= 8;
            self.shift();
        }
        bit
    }
}

/// Reads the bits that an [`Encoder`] wrote; past their end it reads zeros.
pub(crate) struct Decoder<'c> {
    range: u32,
    code: u32,
    coded: &'c [u8],
}

impl<'c> Decoder<'c> {
    pub(crate) fn new(coded: &'c [u8]) -> Self {
        let mut decoder = Self {
            range: u32::MAX,
            code: 0,
            coded,
        };
        for _ in 0..5 {
            decoder.next();
        }
        decoder
    }

    fn next(&mut self) {
        let (byte, rest) = self.coded.split_first().unwrap_or((&0, &[]));
        self.coded = rest;
        self.code = self.code << 8 | u32::from(*byte);
    }
}

impl Coder for Decoder<'_> {
    #[inline]
    fn code(&mut self, _: bool, chance: u32) -> bool {
        let bound = (self.range >> 16) * chance;
        let bit = self.code < bound;
        if bit {
            self.range = bound;
        } else {
            self.range -= bound;
            self.code -= bound;
        }
        while self.range < 1 << 24 {
            self.range <<= 8;
            self.next();
        }
        bit
    }
}
