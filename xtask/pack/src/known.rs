//! What is known when a byte is guessed: what stood before it, what lies on the stack of the machine that will run it,
//! and what is in its locals.

use crate::copies::Copies;
use crate::kind::Kind;
use crate::text::Text;
use crate::types::Types;
use alloc::vec::Vec;

/// Locals beyond this many are known by the last bits of their number alone.
const LOCALS: usize = 256;
/// No function that is packed has a deeper stack; a deeper one is known in part.
const DEEPEST: usize = 1024;
/// Stands for no local.
const NONE: u8 = 255;

/// No text is as long as this.
const LONGEST: u32 = 1 << 12;

/// Whether a number is where data lies: above the stack, which is as large as Rust makes it.
fn is_address(number: u32) -> bool {
    number >> 20 == 1
}

/// Mixes a number into a hash.
pub(crate) fn mix(hash: u32, number: u32) -> u32 {
    (hash ^ number.wrapping_mul(0x85eb_ca6b))
        .wrapping_mul(0x9e37_79b1)
        .rotate_left(13)
}

/// One value on the stack.
#[derive(Clone, Copy, Default)]
pub(crate) struct Value {
    /// The instruction that put it there.
    pub(crate) op: u8,
    /// The last two bits of its type: 3 to 0 for i32, i64, f32, f64.
    pub(crate) ty: u8,
    /// That instruction with its operands, hashed.
    pub(crate) full: u32,
    /// What was done to get it, through locals.
    pub(crate) deep: u32,
}

/// One block that is open.
#[derive(Clone, Copy, Default)]
pub(crate) struct Block {
    pub(crate) op: u8,
    /// The type of its result, if it has one.
    result: Option<u8>,
    /// How many values lay on the stack before it.
    pub(crate) height: usize,
}

/// What stands before the byte that comes.
pub(crate) struct Known {
    /// All bytes before, without the sizes that can be reckoned.
    pub(crate) stream: Vec<u8>,
    pub(crate) types: Types,
    pub(crate) copies: Copies,
    /// The instruction whose operands come; 0 where an instruction comes, 255 where locals are declared.
    pub(crate) op: u8,
    /// The instruction so far, hashed.
    pub(crate) own: u32,
    /// The last eight instructions without their operands.
    pub(crate) ops: u64,
    /// The last eight instructions with their operands, the latest first.
    pub(crate) full: [u32; 8],
    pub(crate) text: Text,
    pub(crate) stack: Vec<Value>,
    pub(crate) blocks: Vec<Block>,
    pub(crate) function: u32,
    /// What is in each local, and of which type it is.
    pub(crate) locals: [(u32, u8); LOCALS],
    /// The local of each type that was not used yet.
    pub(crate) unused: [u8; 4],
    /// The last locals used, with a mark on those that took a value.
    pub(crate) recent: [u32; 3],
    /// The local that took a value last, until it is read.
    pub(crate) unread: u32,
    /// How many instructions the function has so far, and how many since a block began or ended.
    pub(crate) steps: [u32; 2],
    /// One more than the offset last used with each address.
    pub(crate) offsets: [u32; 256],
    /// How far the offset last loaded from, and last stored to, stood from the one before it.
    pub(crate) moved: [u32; 2],
    /// The last two operands of each kind.
    pub(crate) last: [[u32; 2]; Kind::COUNT],
    /// What came of the number that is being read, and how many bits that is.
    pub(crate) so_far: (u32, u32),
    /// Where what an address last led to ends, or begins while its length is not known: what is said next often follows
    /// it in memory. 0 before the first.
    beyond: u32,
}

impl Known {
    pub(crate) fn new() -> Self {
        Self {
            stream: Vec::new(),
            types: Types::default(),
            copies: Copies::new(),
            op: 0,
            own: 0,
            ops: 0,
            full: [0; 8],
            text: Text::default(),
            stack: Vec::new(),
            blocks: Vec::new(),
            function: 0,
            locals: [(0, 0); LOCALS],
            unused: [0; 4],
            recent: [0; 3],
            unread: 0,
            steps: [0; 2],
            offsets: [0; 256],
            moved: [0; 2],
            last: [[0; 2]; Kind::COUNT],
            so_far: (0, 0),
            beyond: 0,
        }
    }

    pub(crate) fn value(&self, under: usize) -> Value {
        let place = self.stack.len().wrapping_sub(1 + under);
        self.stack.get(place).copied().unwrap_or_default()
    }

    /// The one byte that can be reckoned to come: a local not used yet, an offset as far on as the last one moved, or
    /// the address behind the last one.
    pub(crate) fn reckoned(&self, kind: Kind, part: u32) -> Option<u8> {
        let (address, moved) = match kind {
            Kind::Set if part == 0 => {
                let unused = self.unused[usize::from(self.value(0).ty)];
                return (unused != NONE).then_some(unused);
            }
            Kind::Int32 if self.beyond > 0 => return Some(self.of_address()),
            Kind::Load if part == 0 => (self.value(0), self.moved[1]),
            Kind::Store if part == 0 => (self.value(1), self.moved[0]),
            _ => return None,
        };
        let before = self.offsets[address.full as usize & 255];
        let next = before.wrapping_add(moved).wrapping_sub(1);
        (before > 0 && next < 128).then_some(next as u8)
    }

    /// The byte of the address beyond that stands where the number being read has got to.
    fn of_address(&self) -> u8 {
        let rest = self.beyond >> self.so_far.1;
        let goes_on = rest > 63;
        (rest & 127) as u8 | u8::from(goes_on) << 7
    }

    /// In which byte of an address this is, and whether those before it were as reckoned.
    pub(crate) fn way_to_address(&self) -> u8 {
        let (number, bits) = self.so_far;
        let right = self.beyond & ((1 << bits) - 1) == number;
        (bits / 7).min(3) as u8 * 2 + u8::from(right)
    }

    /// One byte of data came.
    pub(crate) fn came(&mut self, byte: u8) {
        self.op = 0;
        self.full.rotate_right(1);
        self.full[0] = u32::from(byte);
        self.text.came(byte);
        self.copies.seek(&self.full, self.stream.len());
    }

    /// An operand came.
    pub(crate) fn told(&mut self, kind: Kind, number: u32) {
        self.own = mix(self.own, number.wrapping_add(1));
        let last = &mut self.last[kind as usize];
        if kind == Kind::Int32 {
            if is_address(number) {
                self.beyond = number;
            } else if is_address(last[0]) && number < LONGEST {
                self.beyond = last[0] + number;
            }
        }
        *last = [number, last[0]];
    }

    /// A function begins; its locals are told by [`Known::declare`].
    pub(crate) fn begin(&mut self, function: u32) {
        self.function = function;
        self.stack.clear();
        self.blocks.clear();
        self.blocks.push(Block::default());
        self.ops = 0x77;
        self.full = [0; 8];
        self.full[0] = self.types.number(function);
        (self.op, self.own) = (255, 0);
        self.recent = [0; 3];
        self.unread = 0;
        self.steps = [0; 2];
        self.offsets = [0; 256];
        self.last = [[0; 2]; Kind::COUNT];
        self.locals = [(0, 0); LOCALS];
        self.unused = [0; 4];
        self.copies.begin_function();
    }

    /// All locals are declared: so many of each type, parameters first.
    pub(crate) fn declare(&mut self, groups: &[(usize, u8)]) {
        self.full[1] = self.own;
        let signature = self.types.of(self.types.number(self.function));
        let given = &signature.parameters[..];
        let mut declared = 0;
        for (n, ty) in given.iter().enumerate().take(LOCALS) {
            self.locals[n] = (0x1000 + n as u32, *ty);
            declared = n + 1;
        }
        let parameters = declared;
        for (count, ty) in groups {
            let end = declared.saturating_add(*count).min(LOCALS);
            for local in &mut self.locals[declared..end] {
                local.1 = *ty;
            }
            declared = end;
        }
        for ty in 0..4 {
            self.look_for_unused(ty, parameters..declared);
        }
    }

    fn look_for_unused(&mut self, ty: u8, mut among: core::ops::Range<usize>) {
        let found = among.find(|local| self.locals[*local].1 == ty);
        self.unused[usize::from(ty)] = found.map_or(NONE, |local| local as u8);
    }

    fn used(&mut self, local: u32) {
        let ty = self.locals[local as usize & 255].1;
        if local == u32::from(self.unused[usize::from(ty)]) {
            self.look_for_unused(ty, local as usize + 1..LOCALS);
        }
    }

    /// An instruction comes.
    pub(crate) fn expect_op(&mut self) {
        self.op = 0;
        self.copies.begin_instruction(self.stream.len());
    }

    /// This instruction came; its operands follow.
    pub(crate) fn expect_operands(&mut self, op: u8) {
        self.op = op;
        self.own = u32::from(op) + 1;
    }

    /// The instruction is over.
    pub(crate) fn end_instruction(&mut self) {
        self.full.rotate_right(1);
        self.full[0] = self.own;
        self.ops = self.ops << 8 | u64::from(self.op);
        self.steps[0] += 1;
        self.steps[1] = if matches!(self.op, 2..=5 | 11) {
            0
        } else {
            self.steps[1] + 1
        };
        self.copies.seek(&self.full, self.stream.len());
        self.copies.end_instruction(&self.stream, self.ops);
    }

    /// True while the function goes on.
    pub(crate) fn is_inside(&self) -> bool {
        !self.blocks.is_empty()
    }

    pub(crate) fn pop(&mut self) -> Value {
        let height = self.blocks.last().map_or(0, |block| block.height);
        if self.stack.len() > height {
            self.stack.pop().unwrap_or_default()
        } else {
            Value::default()
        }
    }

    fn push(&mut self, deep: u32, ty: u8) {
        if self.stack.len() < DEEPEST {
            let (op, full) = (self.op, self.own);
            self.stack.push(Value { op, ty, full, deep });
        }
    }

    /// Takes so many values and puts one in their place, of the type that the instruction gives.
    pub(crate) fn reckon(&mut self, takes: usize) {
        let mut deep = self.own;
        if takes > 0 {
            deep = u32::from(self.op) + 1;
        }
        let ty = if self.op == 0x1b || self.op == 0x1c {
            self.value(2).ty
        } else {
            type_of(self.op)
        };
        for _ in 0..takes {
            deep = mix(deep, u32::from(self.pop().op));
        }
        self.push(deep, ty);
    }

    /// Takes so many values and leaves nothing.
    pub(crate) fn take(&mut self, count: usize) {
        for _ in 0..count {
            self.pop();
        }
    }

    /// A function of this type is called.
    pub(crate) fn call(&mut self, ty: u32) {
        let signature = self.types.of(ty);
        self.take(signature.parameters.len());
        for _ in 0..signature.results {
            self.push(self.own, signature.result);
        }
    }

    /// What follows in this block is not reached.
    pub(crate) fn leave(&mut self) {
        let height = self.blocks.last().map_or(0, |block| block.height);
        self.stack.truncate(height);
    }

    /// A block of this type is opened.
    pub(crate) fn open(&mut self, ty: u32) {
        let result = (ty != 0x40).then_some(ty as u8 & 3);
        let (op, height) = (self.op, self.stack.len());
        self.blocks.push(Block { op, result, height });
    }

    /// The other arm of a block that asks.
    pub(crate) fn other_arm(&mut self) {
        self.leave();
        if let Some(block) = self.blocks.last_mut() {
            block.op = 5;
        }
    }

    pub(crate) fn close(&mut self) {
        self.leave();
        if let Some(ty) = self.blocks.pop().and_then(|block| block.result) {
            self.push(11, ty);
        }
    }

    pub(crate) fn get(&mut self, local: u32) {
        self.recent = [local, self.recent[0], self.recent[1]];
        if self.unread == local.wrapping_add(1) {
            self.unread = 0;
        }
        let (deep, ty) = self.locals[local as usize & 255];
        self.push(deep, ty);
        self.used(local);
    }

    /// A local takes a value, which stays on the stack if it is a *tee*.
    pub(crate) fn set(&mut self, local: u32, stays: bool) {
        self.recent = [local | 256, self.recent[0], self.recent[1]];
        let value = self.pop();
        self.locals[local as usize & 255].0 = value.deep;
        if stays {
            self.push(value.deep, value.ty);
        } else {
            self.unread = local.wrapping_add(1);
        }
        self.used(local);
    }

    pub(crate) fn access(&mut self, offset: u32, stores: bool) {
        let address = self.value(usize::from(stores));
        let before = &mut self.offsets[address.full as usize & 255];
        self.moved[usize::from(stores)] = offset.wrapping_add(1).wrapping_sub(*before);
        *before = offset.wrapping_add(1);
    }
}

/// The last two bits of the type that an instruction gives.
fn type_of(op: u8) -> u8 {
    match op {
        0x23 | 0x28 | 0x2c..=0x2f | 0x41 | 0x45..=0x78 | 0xa7..=0xab | 0xbc | 0xc0 | 0xc1 => 3,
        0x29 | 0x30..=0x35 | 0x42 | 0x79..=0x8a | 0xac..=0xb1 | 0xbd | 0xc2..=0xc4 => 2,
        0x2a | 0x43 | 0x8b..=0x98 | 0xb2..=0xb6 | 0xbe => 1,
        _ => 0,
    }
}
