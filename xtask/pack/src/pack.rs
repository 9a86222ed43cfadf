//! Packs: counts how often each byte comes, then guesses each.

use crate::coder::Encoder;
use crate::known::Known;
use crate::trees::{self, Trees};
use crate::types::Bytes;
use crate::walk::{At, Guesser, Walk, Way};
use crate::{Damaged, KINDS, unpack};
use alloc::vec;
use alloc::vec::Vec;
use cartside_guess::Guess;

const CODE_SECTION: u8 = 10;

/// The bytes packed. What is no wasm, or one that says things in more bytes than it needs, is packed as any bytes are.
///
/// # Errors
/// If it does not unpack to the same again, which is a fault of this package.
pub fn pack(bytes: &[u8]) -> Result<Vec<u8>, Damaged> {
    if let Some(before) = before_code(bytes)
        && let Ok(packed) = packed(bytes, before)
        && unpack(&packed).as_deref() == Ok(bytes)
    {
        return Ok(packed);
    }
    let packed = packed(bytes, bytes.len())?;
    match unpack(&packed) {
        Ok(same) if same == bytes => Ok(packed),
        _ => Err(Damaged),
    }
}

/// How much stands before the code section.
fn before_code(wasm: &[u8]) -> Option<usize> {
    let mut rest = Bytes(wasm.get(8..)?);
    loop {
        let before = wasm.len() - rest.0.len();
        let section = rest.byte().ok()?;
        let size = rest.number().ok()?;
        if section == CODE_SECTION {
            return Some(before);
        }
        rest.take(size as usize).ok()?;
    }
}

fn packed(bytes: &[u8], before: usize) -> Result<Vec<u8>, Damaged> {
    let mut counts = vec![0; KINDS << 8];
    let from = From::new(bytes, before)?;
    Walk::new(
        Counting {
            from,
            counts: &mut counts,
        },
        bytes.len(),
        before,
    )
    .walk()?;
    let mut lengths = trees::lengths(&counts);
    let mut coder = Encoder::new();
    trees::code_lengths(&mut coder, &mut lengths);
    let guesser = Guesser {
        coder,
        trees: Trees::new(&lengths)?,
        guess: Guess::new(),
    };
    let from = From::new(bytes, before)?;
    let mut walk = Walk::new(Packing { from, guesser }, bytes.len(), before);
    walk.walk()?;
    let mut packed = Vec::new();
    for length in [bytes.len(), before] {
        packed.extend(u32::try_from(length).map_err(|_| Damaged)?.to_le_bytes());
    }
    packed.extend(walk.way.guesser.coder.finish());
    Ok(packed)
}

/// What is to be packed, without the size of the code.
struct From<'b> {
    before: Bytes<'b>,
    rest: Bytes<'b>,
}

impl<'b> From<'b> {
    fn new(bytes: &'b [u8], before: usize) -> Result<Self, Damaged> {
        let (before, rest) = bytes.split_at_checked(before).ok_or(Damaged)?;
        let mut rest = Bytes(rest);
        if !rest.0.is_empty() {
            rest.byte()?;
            rest.number()?;
        }
        Ok(Self {
            before: Bytes(before),
            rest,
        })
    }

    fn next(&mut self) -> Result<Option<u8>, Damaged> {
        self.before.byte().or_else(|_| self.rest.byte()).map(Some)
    }
}

/// Counts how often each byte of each kind comes.
struct Counting<'b> {
    from: From<'b>,
    counts: &'b mut [u32],
}

impl Way for Counting<'_> {
    fn next(&mut self) -> Result<Option<u8>, Damaged> {
        self.from.next()
    }

    fn pass_size(&mut self) -> Result<(), Damaged> {
        self.from.rest.number().map(|_| ())
    }

    fn byte(&mut self, byte: Option<u8>, _: &mut Known, at: At) -> Result<u8, Damaged> {
        let byte = byte.ok_or(Damaged)?;
        self.counts[at.tree() << 8 | usize::from(byte ^ at.change)] += 1;
        Ok(byte)
    }
}

/// Packs each byte.
struct Packing<'b> {
    from: From<'b>,
    guesser: Guesser<Encoder>,
}

impl Way for Packing<'_> {
    fn next(&mut self) -> Result<Option<u8>, Damaged> {
        self.from.next()
    }

    fn pass_size(&mut self) -> Result<(), Damaged> {
        self.from.rest.number().map(|_| ())
    }

    fn byte(&mut self, byte: Option<u8>, known: &mut Known, at: At) -> Result<u8, Damaged> {
        self.guesser.byte(byte, known, at)
    }
}
