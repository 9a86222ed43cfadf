//! Guesses one bit from many contexts: what was seen in each is mixed by weights that learn on the way. Only whole
//! numbers are used, so that every device reckons alike to the last bit.
//!
//! A package of its own because it is where all the time goes when the app is unpacked: it alone is built for speed.
#![no_std]
#![allow(
    clippy::indexing_slicing,
    reason = "places are masked or bounded where they are made; checks of each would take time with every bit"
)]

extern crate alloc;

mod heap;

use crate::heap::many;
use alloc::boxed::Box;

/// How many contexts each byte is guessed from.
pub const CONTEXTS: usize = 10;
/// How many bytes are expected at most, each for a reason of its own.
pub const EXPECTED: usize = 4;
/// Rows of weights for each way of choosing one.
pub const ROWS: usize = 64 << 8;

/// How many kinds of bytes there are.
pub const KINDS: usize = 38;
/// The first node of every tree.
const FIRST: u32 = 1;

/// How many bits number a line of cells.
const LINE_BITS: u32 = 18;
/// How many cells are in a line.
const CELLS: usize = 16;
/// One input for each context and each expected byte, one that is always the same, and one that fills up.
const INPUTS: usize = CONTEXTS + EXPECTED + 2;
/// Ways of choosing a row of weights.
const SETS: usize = 2;
/// A cell that saw nothing: an even chance above, a history of no bits, and no check.
const FRESH: u32 = 0x8000_0100;
/// How far a chance moves, of 32 768, after so many bits; the last for ever.
const STEPS: [u32; 8] = [
    60_690, 35_200, 24_700, 19_000, 15_600, 13_500, 10_000, 1_400,
];
/// A cell whose history holds this many bits does not give way to the next context that comes upon it.
const SEASONED: u32 = 4;
/// How many bits of that it forgets then.
const FORGOTTEN: u32 = 2;
/// The weight that counts once.
const ONE: i32 = 1 << 16;
/// An error below this many of 4096 teaches the weights nothing.
const SKIP: i32 = 48;
/// How sure a guess can be, of 65 536.
const SUREST: u32 = 24;

/// A byte that is expected.
#[derive(Clone, Copy, Default)]
pub struct Hint {
    /// The bit that comes if it is right: 1 or 2 for 0 or 1; 0 if it cannot be right.
    pub bit: u8,
    /// Its reason and how often that was right lately, below 64.
    pub trust: u8,
}

/// Cells that are fetched from memory together.
#[derive(Clone, Copy)]
#[repr(align(64))]
struct Line([u32; CELLS]);

/// All that is learnt.
pub struct Guess {
    /// A hash of each context of the byte that comes.
    pub contexts: [u32; CONTEXTS],
    /// The row of weights by each way of choosing; the first is chosen here.
    pub rows: [usize; SETS],
    /// What is expected.
    pub hints: [Hint; EXPECTED],
    /// The kind of the byte that comes.
    pub kind: usize,
    /// A chance (16 bits), the last bits with a 1 before them (8), and which context it is of (8).
    cells: Box<[Line; 1 << LINE_BITS]>,
    /// The chance after each history of bits, for each context of each kind.
    after: Box<[[[u16; 256]; CONTEXTS]; KINDS]>,
    hinted: [[u16; 64]; EXPECTED],
    weights: Box<[[i32; INPUTS]; SETS * ROWS]>,
    finals: Box<[[i32; SETS]; ROWS]>,
    /// The nodes whose lines are known, and the line of each context with the check of its cells.
    near: u32,
    hashes: [u32; CONTEXTS],
    /// Which cell of each line is met, but for the last bits of the hash.
    cell: u32,
    met: [u32; CONTEXTS],
    inputs: [i32; INPUTS],
    sums: [i32; SETS],
    final_row: usize,
    mixed: u32,
    stretch: Box<[i16; 4096]>,
    squash: Box<[u16; 4096]>,
}

impl Default for Guess {
    fn default() -> Self {
        Self::new()
    }
}

impl Guess {
    /// Nothing is learnt yet.
    #[must_use]
    pub fn new() -> Self {
        let squash = squash();
        Self {
            contexts: [0; CONTEXTS],
            rows: [0; SETS],
            hints: [Hint::default(); EXPECTED],
            kind: 0,
            cells: many(Line([FRESH; CELLS])),
            after: many([core::array::from_fn(|history| at_first(history as u32)); CONTEXTS]),
            hinted: [[0xc000; 64]; EXPECTED],
            weights: many(at_first_weighed()),
            finals: many([ONE / SETS as i32; SETS]),
            near: 0,
            hashes: [0; CONTEXTS],
            cell: 0,
            met: [0; CONTEXTS],
            inputs: [0; INPUTS],
            sums: [0; SETS],
            final_row: 0,
            mixed: 0,
            stretch: stretch(&squash),
            squash,
        }
    }

    /// The chance, of 65 536, that the bit at this node of the byte's tree is 1.
    pub fn chance(&mut self, node: usize) -> u32 {
        self.look_up(node as u32);
        self.weigh_hints();
        self.rows[0] = self.kind << 8 | node;
        self.final_row = self.rows[0];
        let at = self.mix() + 2048;
        self.mixed = u32::from(self.squash[at as usize & 4095]);
        self.mixed.clamp(SUREST, 65_536 - SUREST)
    }

    /// Puts what each context saw at this node among the inputs.
    fn look_up(&mut self, node: u32) {
        // Nodes that follow each other lie in one line of the memory nearest to the processor.
        if node == FIRST || node >> 4 != self.near {
            self.near = node >> 4;
            let high = self.near.wrapping_mul(0x9e37_79b1);
            for (hash, context) in self.hashes.iter_mut().zip(&self.contexts) {
                *hash = context.wrapping_add(high);
                *hash ^= *hash >> 15;
            }
        }
        self.cell = node;
        for n in 0..CONTEXTS {
            let hash = self.hashes[n];
            self.met[n] = self.cells[line(hash)].0[cell(hash, node)];
        }
        for n in 0..CONTEXTS {
            let (hash, found) = (self.hashes[n], self.met[n]);
            let own = FRESH | hash & 255;
            let cell = if (found ^ hash) & 255 == 0 {
                found
            } else {
                own
            };
            self.met[n] = cell;
            let after = self.after[self.kind % KINDS][n][(cell >> 8 & 255) as usize];
            let direct = self.stretch[(cell >> 20) as usize];
            let by_history = self.stretch[usize::from(after >> 4)];
            self.inputs[n] = (i32::from(direct) + i32::from(by_history)) >> 1;
        }
    }

    fn weigh_hints(&mut self) {
        for (n, hint) in self.hints.iter().enumerate() {
            let chance = self.hinted[n][usize::from(hint.trust & 63)];
            let input = i32::from(self.stretch[usize::from(chance >> 4)]);
            self.inputs[CONTEXTS + n] = match hint.bit {
                0 => 0,
                1 => -input,
                _ => input,
            };
        }
        self.inputs[CONTEXTS + EXPECTED] = 256;
    }

    fn mix(&mut self) -> i32 {
        let mut all = 0_i32;
        for set in 0..SETS {
            let weights = &self.weights[set * ROWS + self.rows[set] % ROWS];
            let mut sum = 0_i32;
            for (weight, input) in weights.iter().zip(&self.inputs) {
                sum = sum.wrapping_add(weight.wrapping_mul(*input));
            }
            let sum = (sum >> 16).clamp(-2047, 2047);
            self.sums[set] = sum;
            all = all.wrapping_add(sum.wrapping_mul(self.finals[self.final_row % ROWS][set]));
        }
        (all >> 16).clamp(-2047, 2047)
    }

    /// Learns what the bit was whose chance was asked last.
    pub fn learn(&mut self, bit: bool) {
        self.learn_contexts(bit);
        for (n, hint) in self.hints.iter().enumerate() {
            if hint.bit > 0 {
                let chance = &mut self.hinted[n][usize::from(hint.trust & 63)];
                approach(chance, (hint.bit == 2) == bit, 7);
            }
        }
        self.learn_weights(if bit { 65_535 } else { 0 });
    }

    fn learn_contexts(&mut self, bit: bool) {
        let target = if bit { 65_535 } else { 0 };
        for n in 0..CONTEXTS {
            let met = self.met[n];
            let history = met >> 8 & 255;
            approach(
                &mut self.after[self.kind % KINDS][n][history as usize],
                bit,
                6,
            );
            let seen = 31 - (history | 1).leading_zeros();
            let chance = (met >> 16) as i32;
            let step = (((target - chance) >> 1) * STEPS[seen as usize & 7] as i32) >> 15;
            let chance = (chance + step).clamp(16, 65_519) as u32;
            let history = history << 1 | u32::from(bit) | (history & 128);
            let learnt = chance << 16 | (history & 255) << 8 | met & 255;
            let hash = self.hashes[n];
            let cell = &mut self.cells[line(hash)].0[cell(hash, self.cell)];
            let other = *cell >> 8 & 255;
            // Another context's, which saw much there, stays; it forgets some, so that it gives way in the end.
            let stays = (*cell ^ met) & 255 != 0 && other >> SEASONED > 0;
            let aged = *cell & !0xff00 | other >> FORGOTTEN << 8;
            *cell = if stays { aged } else { learnt };
        }
    }

    fn learn_weights(&mut self, target: i32) {
        let error = (target - self.mixed as i32) >> 4;
        for set in 0..SETS {
            let sum = self.sums[set];
            let own = (target - i32::from(self.squash[(sum + 2048) as usize & 4095])) >> 4;
            if own.abs() < SKIP {
                continue;
            }
            let weights = &mut self.weights[set * ROWS + self.rows[set] % ROWS];
            for (weight, input) in weights.iter_mut().zip(&self.inputs) {
                *weight = weight.wrapping_add((input * (own * 15) + 0x2000) >> 14);
            }
            let weight = &mut self.finals[self.final_row % ROWS][set];
            *weight = weight.wrapping_add((sum * error + 0x2000) >> 14);
        }
    }
}

/// The line that has this hash.
fn line(hash: u32) -> usize {
    (hash >> (32 - LINE_BITS)) as usize
}

/// The cell of this node in the line that has this hash.
fn cell(hash: u32, node: u32) -> usize {
    (hash >> (28 - LINE_BITS) ^ node) as usize % CELLS
}

/// Moves a chance towards what came, by one part of so many powers of two.
fn approach(chance: &mut u16, bit: bool, slowness: u32) {
    let target = if bit { 65_535 } else { 0 };
    *chance = (i32::from(*chance) + ((target - i32::from(*chance)) >> slowness)) as u16;
}

/// The chance after a history of which nothing is known yet but how often each bit stands in it.
fn at_first(history: u32) -> u16 {
    let bits = 31 - (history | 1).leading_zeros();
    let ones = (history & !(1 << bits)).count_ones();
    ((65_536 * (10 * ones + 4)) / (10 * bits + 8)) as u16
}

/// What each input counts before anything was learnt: what is expected more than a context, what is always the same not
/// at all.
fn at_first_weighed() -> [i32; INPUTS] {
    core::array::from_fn(|input| match input {
        ..CONTEXTS => ONE / 8,
        _ if input < CONTEXTS + EXPECTED => ONE / 4,
        _ => 0,
    })
}

/// 65 536 / (1 + e^(-x/256)) for each x from -2048 on.
fn squash() -> Box<[u16; 4096]> {
    let mut table = many(0_u16);
    // e^(-1/256), in 2^-32.
    let step = 4_278_222_805;
    let mut power = 1_u64 << 32;
    for n in 0..2048 {
        let chance = (1 << 48) / ((1 << 32) + power);
        table[2048 + n] = chance.min(65_535) as u16;
        table[2048 - n] = (65_536 - chance).min(65_535) as u16;
        power = (power * step) >> 32;
    }
    table[0] = table[1];
    table
}

/// The inverse of [`squash`], by the first twelve bits of a chance.
fn stretch(squash: &[u16; 4096]) -> Box<[i16; 4096]> {
    let mut table = many(2047_i16);
    let mut from = 0;
    for (n, chance) in squash.iter().enumerate() {
        let until = usize::from(*chance >> 4);
        while from <= until {
            table[from] = n as i16 - 2048;
            from += 1;
        }
    }
    table
}
