//! Walks through a wasm instruction by instruction, so that each byte is guessed from what it means. The same steps pack
//! and unpack.

use crate::Damaged;
use crate::coder::Coder;
use crate::kind::Kind;
use crate::known::{Known, mix};
use crate::trees::{LEAF, ROOT, Trees};
use crate::types::{Bytes, Types};
use alloc::vec::Vec;
use cartside_guess::{EXPECTED, Guess, Hint};

type Result<T> = core::result::Result<T, Damaged>;

/// The natural alignment of each access to memory, as a power of two, from `i32.load` on.
const NATURAL: [u8; 23] = [
    2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2,
];
const FIRST_ACCESS: u8 = 0x28;
const FIRST_STORE: u8 = 0x36;
const CODE_SECTION: u8 = 10;

/// What is done with each byte on the way.
pub(crate) trait Way {
    /// The byte that comes, if it is known already.
    fn next(&mut self) -> Result<Option<u8>>;
    /// Passes over the size of a body, which is left out.
    fn pass_size(&mut self) -> Result<()>;
    /// Guesses and codes the byte that comes, which [`Way::next`] gave, and gives it.
    fn byte(&mut self, byte: Option<u8>, known: &mut Known, at: At) -> Result<u8>;
}

/// What the byte is that comes.
#[derive(Clone, Copy)]
pub(crate) struct At {
    pub(crate) kind: Kind,
    /// What is changed in it.
    pub(crate) change: u8,
    /// The bytes of the same number before it, hashed; 0 for none.
    pub(crate) part: u32,
}

impl At {
    /// Which tree it has.
    pub(crate) fn tree(self) -> usize {
        (self.kind as usize) << 1 | usize::from(self.part != 0)
    }
}

/// Guesses bytes and codes them.
pub(crate) struct Guesser<C> {
    pub(crate) coder: C,
    pub(crate) trees: Trees,
    pub(crate) guess: Guess,
}

impl<C: Coder> Guesser<C> {
    pub(crate) fn byte(&mut self, byte: Option<u8>, known: &mut Known, at: At) -> Result<u8> {
        let tree = at.tree();
        let reckoned = known.reckoned(at.kind, at.part);
        let way_to = known.way_to_address();
        known
            .copies
            .expect(&known.stream, at.kind, reckoned, way_to);
        known.tell(at.kind, tree, at.part, &mut self.guess);
        let ways = &self.trees.ways[tree << 8..][..256];
        let way = |byte: u8| ways[usize::from(byte ^ at.change)];
        let expected: [u32; EXPECTED] =
            core::array::from_fn(|n| known.copies.expected[n].map_or(0, way));
        let own = byte.map_or(0, way);
        let (mut node, mut gone) = (ROOT, 1_u32);
        while node & LEAF == 0 {
            for (n, way) in expected.iter().enumerate() {
                let bit = next_bit(*way, gone).map_or(0, |bit| 1 + u8::from(bit));
                let trust = known.copies.trust[n];
                self.guess.hints[n] = Hint { bit, trust };
            }
            let chance = self.guess.chance(usize::from(node));
            let bit = next_bit(own, gone).unwrap_or(false);
            let bit = self.coder.code(bit, chance);
            self.guess.learn(bit);
            gone = gone << 1 | u32::from(bit);
            node = self.trees.nodes[tree << 8 | usize::from(node)][usize::from(bit)];
            if node == 0 {
                return Err(Damaged);
            }
        }
        Ok((node & 255) as u8 ^ at.change)
    }
}

/// The bit that follows on a way after what of it is gone; none if it leads elsewhere.
fn next_bit(way: u32, gone: u32) -> Option<bool> {
    let left = gone.leading_zeros().checked_sub(way.leading_zeros())?;
    (left > 0 && way >> left == gone).then_some(way >> (left - 1) & 1 == 1)
}

/// On the way through a wasm.
pub(crate) struct Walk<W> {
    pub(crate) way: W,
    pub(crate) known: Known,
    /// How long the whole wasm is, and what of it stands before the code.
    whole: usize,
    before: usize,
    /// The size of each body.
    sizes: Vec<usize>,
    /// How long what came is with its sizes, but for that of the code.
    length: usize,
}

impl<W: Way> Walk<W> {
    pub(crate) fn new(way: W, whole: usize, before: usize) -> Self {
        Self {
            way,
            known: Known::new(),
            whole,
            before,
            sizes: Vec::new(),
            length: 0,
        }
    }

    /// Walks to the end.
    pub(crate) fn walk(&mut self) -> Result<()> {
        for _ in 0..self.before {
            self.data(Kind::Before)?;
        }
        if self.before < self.whole {
            self.known.types = Types::read(&self.known.stream)?;
            self.code()?;
            while self.length < self.whole {
                self.data(Kind::After)?;
            }
        }
        Ok(())
    }

    /// The wasm, with the sizes that were left out.
    pub(crate) fn finish(self) -> Result<Vec<u8>> {
        let stream = &self.known.stream;
        let (before, mut rest) = stream.split_at_checked(self.before).ok_or(Damaged)?;
        let mut wasm = before.to_vec();
        if self.before < self.whole {
            let mut bytes = Bytes(rest);
            bytes.number()?;
            let (count, bodies) = rest.split_at(rest.len() - bytes.0.len());
            let code: usize = self.sizes.iter().map(|size| leb(*size).len() + size).sum();
            wasm.push(CODE_SECTION);
            wasm.extend(leb(count.len() + code));
            wasm.extend(count);
            rest = bodies;
            for size in &self.sizes {
                let (body, more) = rest.split_at_checked(*size).ok_or(Damaged)?;
                wasm.extend(leb(*size));
                wasm.extend(body);
                rest = more;
            }
            wasm.extend(rest);
        }
        if wasm.len() == self.whole {
            Ok(wasm)
        } else {
            Err(Damaged)
        }
    }

    fn byte(&mut self, kind: Kind, change: u8, part: u32) -> Result<u8> {
        if self.length >= self.whole {
            return Err(Damaged);
        }
        let at = At { kind, change, part };
        let next = self.way.next()?;
        let byte = self.way.byte(next, &mut self.known, at)?;
        self.known.copies.came(&self.known.stream, kind, byte);
        self.known.stream.push(byte);
        self.length += 1;
        Ok(byte)
    }

    fn data(&mut self, kind: Kind) -> Result<()> {
        let byte = self.byte(kind, 0, 0)?;
        self.known.came(byte);
        Ok(())
    }

    fn number(&mut self, kind: Kind) -> Result<u32> {
        let (mut number, mut shift, mut part) = (0_u32, 0, 0);
        loop {
            self.known.so_far = (number, shift.min(28));
            let byte = self.byte(kind, 0, part)?;
            number |= u32::from(byte & 127).checked_shl(shift).unwrap_or(0);
            part = mix(part, u32::from(byte) + 1) | 1;
            shift += 7;
            if byte < 128 {
                self.known.told(kind, number);
                return Ok(number);
            }
        }
    }

    fn numbers(&mut self, kind: Kind, count: u32) -> Result<()> {
        for _ in 0..count {
            self.number(kind)?;
        }
        Ok(())
    }

    fn bytes(&mut self, kind: Kind, count: u32) -> Result<()> {
        let mut part = 0;
        for _ in 0..count {
            let byte = self.byte(kind, 0, part)?;
            part = mix(part, u32::from(byte) + 1) | 1;
        }
        self.known.told(kind, part);
        Ok(())
    }

    fn code(&mut self) -> Result<()> {
        self.known.expect_operands(255);
        let start = self.length;
        let bodies = self.number(Kind::Declared)?;
        for body in 0..bodies {
            self.way.pass_size()?;
            let start = self.length;
            self.body(body)?;
            let size = self.length - start;
            self.sizes.push(size);
            self.length += leb(size).len();
        }
        self.length += 1 + leb(self.length - start).len();
        self.known.expect_op();
        Ok(())
    }

    /// One body: its locals, then its instructions to the end of the outermost block.
    fn body(&mut self, number: u32) -> Result<()> {
        self.known.begin(number);
        let mut groups = Vec::new();
        for _ in 0..self.number(Kind::Declared)? {
            let count = self.number(Kind::Declared)? as usize;
            groups.push((count, self.number(Kind::Declared)? as u8 & 3));
        }
        self.known.declare(&groups);
        while self.known.is_inside() {
            self.known.expect_op();
            let op = self.byte(Kind::Op, 0, 0)?;
            self.known.expect_operands(op);
            self.operands(op)?;
            self.known.end_instruction();
        }
        Ok(())
    }

    fn operands(&mut self, op: u8) -> Result<()> {
        match op {
            0x00 | 0x0f => self.known.leave(),
            0x01 => {}
            0x02..=0x05 | 0x0b..=0x0e => self.control(op)?,
            0x10 => {
                let function = self.number(Kind::Call)?;
                self.known.call(self.known.types.called(function));
            }
            0x11 => {
                let ty = self.number(Kind::Indirect)?;
                self.number(Kind::Indirect)?;
                self.known.pop();
                self.known.call(ty);
            }
            0x1a => self.known.take(1),
            0x1b => self.known.reckon(3),
            0x1c => {
                let types = self.number(Kind::Other)?;
                self.numbers(Kind::Other, types)?;
                self.known.reckon(3);
            }
            0x20..=0x24 => self.variable(op)?,
            FIRST_ACCESS..=0x3e => self.access(op)?,
            0x41 => self.constant(Kind::Int32)?,
            0x42 => self.constant(Kind::Int64)?,
            0x43 | 0x44 => {
                self.bytes(Kind::Float, if op == 0x43 { 4 } else { 8 })?;
                self.known.reckon(0);
            }
            0x45..=0xc4 => self.known.reckon(takes(op)),
            _ => self.rare(op)?,
        }
        Ok(())
    }

    fn control(&mut self, op: u8) -> Result<()> {
        match op {
            0x02..=0x04 => {
                self.known.take(usize::from(op == 0x04));
                let ty = self.number(Kind::Block)?;
                self.known.open(ty);
            }
            0x05 => self.known.other_arm(),
            0x0b => self.known.close(),
            0x0c => {
                self.number(Kind::Branch)?;
                self.known.leave();
            }
            0x0d => {
                self.number(Kind::Branch)?;
                self.known.take(1);
            }
            _ => {
                let targets = self.number(Kind::BranchTable)?;
                self.numbers(Kind::BranchTable, targets)?;
                self.number(Kind::BranchTable)?;
                self.known.leave();
            }
        }
        Ok(())
    }

    fn variable(&mut self, op: u8) -> Result<()> {
        match op {
            0x20 => {
                let local = self.number(Kind::Get)?;
                self.known.get(local);
            }
            0x21 | 0x22 => {
                let local = self.number(Kind::Set)?;
                self.known.set(local, op == 0x22);
            }
            0x23 => self.constant(Kind::Global)?,
            _ => {
                self.number(Kind::Global)?;
                self.known.take(1);
            }
        }
        Ok(())
    }

    fn access(&mut self, op: u8) -> Result<()> {
        let natural = NATURAL[usize::from(op - FIRST_ACCESS)];
        self.byte(Kind::Alignment, natural, 0)?;
        let stores = op >= FIRST_STORE;
        let kind = if stores { Kind::Store } else { Kind::Load };
        let offset = self.number(kind)?;
        self.known.access(offset, stores);
        if stores {
            self.known.take(2);
        } else {
            self.known.pop();
            self.known.reckon(0);
        }
        Ok(())
    }

    /// An operand that is put on the stack.
    fn constant(&mut self, kind: Kind) -> Result<()> {
        self.number(kind)?;
        self.known.reckon(0);
        Ok(())
    }

    /// What is seldom met.
    fn rare(&mut self, op: u8) -> Result<()> {
        let number = if op == 0xd1 {
            0
        } else {
            self.number(Kind::Other)?
        };
        let (operands, takes, gives) = match op {
            0x25 | 0x40 | 0xd1 => (0, 1, true),
            0x26 => (0, 2, false),
            0x3f | 0xd0 | 0xd2 => (0, 0, true),
            0xfc => match number {
                0..=7 => (0, 1, true),
                8 | 10 | 12 | 14 => (2, 3, false),
                9 | 13 => (1, 0, false),
                11 | 17 => (1, 3, false),
                15 => (1, 2, true),
                16 => (1, 0, true),
                _ => return Err(Damaged),
            },
            _ => return Err(Damaged),
        };
        self.numbers(Kind::Other, operands)?;
        self.known.take(takes);
        if gives {
            self.known.reckon(0);
        }
        Ok(())
    }
}

/// How many values a reckoning instruction takes.
fn takes(op: u8) -> usize {
    match op {
        0x45 | 0x50 | 0x67..=0x69 | 0x79..=0x7b | 0x8b..=0x91 | 0x99..=0x9f | 0xa7.. => 1,
        _ => 2,
    }
}

/// A number as wasm writes it.
pub(crate) fn leb(mut number: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    while number > 127 {
        bytes.push(number as u8 | 128);
        number >>= 7;
    }
    bytes.push(number as u8);
    bytes
}
