//! What is expected because it stood there before: after the same instructions, or in a function that resembles this.

use crate::kind::Kind;
use crate::known::mix;
use alloc::boxed::Box;
use alloc::vec;
use alloc::vec::Vec;
use cartside_guess::EXPECTED;

/// How many bits number a place where something was last seen.
const PLACE_BITS: u32 = 18;
/// A local that was not met yet.
const UNMET: u8 = 255;
/// The instructions that name a local.
const LOCAL: core::ops::RangeInclusive<u8> = 0x20..=0x22;

/// Where the same stood before.
pub(crate) struct Copies {
    /// The bytes that are expected: after the same three instructions, after the same eight, in the twin, and reckoned.
    pub(crate) expected: [Option<u8>; EXPECTED],
    /// How far each is to be trusted, below 64.
    pub(crate) trust: [u8; EXPECTED],
    /// How long each of the first two has been right; 0 where there is none.
    pub(crate) lengths: [u32; 2],
    places: [usize; 2],
    /// Where what followed some instructions was last seen, for each of the first two.
    seen: Box<[u32]>,
    /// Where each instruction begins.
    instructions: Vec<u32>,
    /// The instruction that is expected to be this one's twin, and 0 for none. What follows it differs from what
    /// follows this one by the numbers of locals, and here and there.
    twin: usize,
    /// Whether it was right, a bit for each of the last instructions.
    hits: u8,
    /// Whether it was right so far in this instruction.
    right: bool,
    /// The instruction after which the last eight instructions without operands last stood.
    by_ops: Box<[u32]>,
    /// What each local of the twin is called here.
    renamed: [u8; 256],
    /// The first instruction of the function before, or of this one.
    function: usize,
    begun: usize,
    /// Whether what was reckoned was right, a bit for each of the last times, for each kind.
    reckoned: [u8; Kind::COUNT],
}

impl Copies {
    pub(crate) fn new() -> Self {
        Self {
            expected: [None; EXPECTED],
            trust: [0; EXPECTED],
            lengths: [0; 2],
            places: [0; 2],
            seen: vec![0; 2 << PLACE_BITS].into_boxed_slice(),
            instructions: vec![0],
            twin: 0,
            hits: 0,
            right: true,
            by_ops: vec![0; 1 << PLACE_BITS].into_boxed_slice(),
            renamed: [UNMET; 256],
            function: 0,
            begun: 0,
            reckoned: [0; Kind::COUNT],
        }
    }

    /// Looks up what is expected after this stream. An address has come a way that says how far it is to be trusted.
    pub(crate) fn expect(&mut self, stream: &[u8], kind: Kind, reckoned: Option<u8>, way: u8) {
        for n in 0..2 {
            let place = self.places[n];
            self.expected[n] = stream.get(place).copied().filter(|_| self.lengths[n] > 0);
            let op = if kind == Kind::Op { 32 } else { 0 };
            self.trust[n] = self.lengths[n].min(31) as u8 | op;
        }
        self.expected[2] = None;
        if kind.is_code()
            && let Some(byte) = self.in_twin(stream)
        {
            let (byte, class) = self.called_here(kind, byte);
            self.expected[2] = Some(byte);
            self.trust[2] = self.hits & 15 | class << 4;
        }
        self.expected[3] = reckoned;
        let lately = self.reckoned[kind as usize];
        self.trust[3] = match kind {
            Kind::Int32 => 32 | way << 2 | lately & 3,
            Kind::Set => 8 | lately & 7,
            Kind::Load => 16 | lately & 7,
            _ => 24 | lately & 7,
        };
    }

    fn in_twin(&self, stream: &[u8]) -> Option<u8> {
        if self.twin == 0 || !self.right {
            return None;
        }
        let begin = *self.instructions.get(self.twin)? as usize;
        let place = begin + stream.len().checked_sub(self.begun)?;
        stream.get(place).copied().filter(|_| place < self.begun)
    }

    /// A byte of the twin, with what it stands for here if it is a local; and which class of bytes it is.
    fn called_here(&self, kind: Kind, byte: u8) -> (u8, u8) {
        match kind {
            Kind::Op => (byte, 0),
            Kind::Get | Kind::Set => match self.renamed[usize::from(byte)] {
                UNMET => (byte, 1),
                renamed => (renamed, 2),
            },
            _ => (byte, 3),
        }
    }

    /// This byte came after the stream.
    pub(crate) fn came(&mut self, stream: &[u8], kind: Kind, byte: u8) {
        if let Some(reckoned) = self.expected[3] {
            let right = &mut self.reckoned[kind as usize];
            *right = *right << 1 | u8::from(reckoned == byte);
        }
        self.right = self.right && self.in_twin(stream) == Some(byte);
        for n in 0..2 {
            if self.expected[n] == Some(byte) {
                self.lengths[n] += 1;
                self.places[n] += 1;
            } else {
                self.lengths[n] = 0;
            }
        }
    }

    /// Remembers what stands before this place, and looks where the same stood before.
    pub(crate) fn seek(&mut self, full: &[u32; 8], length: usize) {
        let mut hash = 0;
        for (n, instruction) in full.iter().enumerate() {
            hash = mix(hash, *instruction);
            if n == 2 {
                self.seek_one(0, hash, length);
            }
        }
        self.seek_one(1, hash, length);
    }

    fn seek_one(&mut self, n: usize, hash: u32, length: usize) {
        let hash = hash.wrapping_mul(0x9e37_79b1) >> (32 - PLACE_BITS);
        let seen = &mut self.seen[n << PLACE_BITS | hash as usize];
        if self.lengths[n] == 0 {
            self.places[n] = *seen as usize;
            self.lengths[n] = u32::from(*seen > 0);
        }
        *seen = length as u32;
    }

    /// A function begins: the one before it is the one that resembles it most.
    pub(crate) fn begin_function(&mut self) {
        self.twin = self.function;
        self.function = self.instructions.len();
        self.renamed = [UNMET; 256];
        self.hits = 0;
    }

    pub(crate) fn begin_instruction(&mut self, length: usize) {
        self.begun = length;
        self.right = true;
    }

    pub(crate) fn end_instruction(&mut self, stream: &[u8], ops: u64) {
        if self.twin > 0 {
            self.compare(stream);
        }
        self.instructions.push(self.begun as u32);
        let hash = mix(ops as u32, (ops >> 32) as u32).wrapping_mul(0x9e37_79b1);
        let seen = &mut self.by_ops[(hash >> (32 - PLACE_BITS)) as usize];
        if self.twin == 0 {
            self.twin = *seen as usize;
            self.hits = 0;
            self.renamed = [UNMET; 256];
        }
        *seen = self.instructions.len() as u32;
        if self.twin >= self.instructions.len() {
            self.twin = 0;
        }
    }

    /// Holds the instruction that came beside its twin.
    fn compare(&mut self, stream: &[u8]) {
        let begin = self.instructions[self.twin] as usize;
        let own = stream.get(self.begun..).unwrap_or_default();
        let twin = stream.get(begin..begin + own.len()).unwrap_or_default();
        let mut right = own == twin;
        let same = own.first() == twin.first();
        if let ([op, new, ..], [_, old, ..]) = (own, twin)
            && same
            && LOCAL.contains(op)
        {
            let renamed = &mut self.renamed[usize::from(*old)];
            right = *renamed == *new || *renamed == UNMET && old == new;
            *renamed = *new;
        }
        self.hits = self.hits << 1 | u8::from(right);
        self.twin = if same { self.twin + 1 } else { 0 };
    }
}
