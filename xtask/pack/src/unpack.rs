//! Unpacks.

use crate::coder::Decoder;
use crate::known::Known;
use crate::trees::{self, Trees};
use crate::walk::{At, Guesser, Walk, Way};
use crate::{Damaged, KINDS};
use alloc::vec;
use alloc::vec::Vec;
use cartside_guess::Guess;

/// The most that is unpacked, in bytes: 8 MB.
pub const MOST: usize = 8_000_000;

/// What was packed. Damaged bytes come out as other bytes or as an error, and take no longer than [`MOST`] bytes do.
///
/// # Errors
/// If it cannot be what was packed.
pub fn unpack(packed: &[u8]) -> Result<Vec<u8>, Damaged> {
    let (whole, rest) = length(packed)?;
    let (before, coded) = length(rest)?;
    if whole > MOST || before > whole {
        return Err(Damaged);
    }
    let mut coder = Decoder::new(coded);
    let mut lengths = vec![0; KINDS << 8];
    trees::code_lengths(&mut coder, &mut lengths);
    let guesser = Guesser {
        coder,
        trees: Trees::new(&lengths)?,
        guess: Guess::new(),
    };
    let mut walk = Walk::new(Unpacking { guesser }, whole, before);
    walk.walk()?;
    walk.finish()
}

fn length(bytes: &[u8]) -> Result<(usize, &[u8]), Damaged> {
    let (length, rest) = bytes.split_first_chunk().ok_or(Damaged)?;
    Ok((u32::from_le_bytes(*length) as usize, rest))
}

/// Unpacks each byte.
struct Unpacking<'c> {
    guesser: Guesser<Decoder<'c>>,
}

impl Way for Unpacking<'_> {
    fn next(&mut self) -> Result<Option<u8>, Damaged> {
        Ok(None)
    }

    fn pass_size(&mut self) -> Result<(), Damaged> {
        Ok(())
    }

    fn byte(&mut self, byte: Option<u8>, known: &mut Known, at: At) -> Result<u8, Damaged> {
        self.guesser.byte(byte, known, at)
    }
}
