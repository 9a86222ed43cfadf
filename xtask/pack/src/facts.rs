//! What each byte may depend on: facts, and for each kind the contexts that they are put together to.

use crate::contexts::OF_KINDS;
use crate::kind::Kind;
use crate::known::{Known, Value, mix};
use cartside_guess::{Guess, ROWS};

/// A fact; a context is three of them.
#[derive(Clone, Copy)]
#[allow(
    dead_code,
    reason = "the next wasm may be packed better by those that this one does without"
)]
pub(crate) enum Fact {
    /// Nothing: a context of fewer facts, or of its kind alone.
    No,
    /// The byte that is expected after the same three instructions, after the same eight, in the twin, and reckoned.
    After3,
    After8,
    Twin,
    Reckoned,
    /// How far the twin is to be trusted, and how long the first of these has been right.
    Trust,
    Long,
    /// The last one to four instructions without their operands, the last six, the last eight.
    Ops1,
    Ops2,
    Ops3,
    Ops4,
    Ops6,
    Ops8,
    /// The last instruction with its operands, the last two, three and four; the one before the last, and that with
    /// the one before it.
    Full1,
    Full2,
    Full3,
    Full4,
    Before1,
    Before2,
    /// The function, and its type.
    Function,
    Type,
    /// The block that is open, how many are, and how many values lie on its stack.
    Block,
    Open,
    Depth,
    /// How many instructions the function has, and how many since a block began or ended, up to a few.
    Steps,
    Since,
    /// The last operand of this kind, and the one before it.
    Last1,
    Last2,
    /// The last function called, local read, local written, constant, offset loaded from, offset stored to.
    Call,
    Get,
    Set,
    Constant,
    Load,
    Store,
    /// The last local used, the last two, the last three; the one that was written and not read since.
    Local1,
    Local2,
    Local3,
    Unread,
    /// The value on the stack, the one below it and the one below that: what put it there, what was done to get it.
    Full,
    FullUnder,
    Deep,
    DeepUnder,
    DeepLowest,
    /// The instructions that put the three there, and of which types two of them are.
    Puts,
    Types,
    /// The offset last used with the value as an address, and with the one below it.
    Offset,
    OffsetUnder,
}

/// How many facts there are of code.
const OF_CODE: usize = Fact::OffsetUnder as usize + 1;

/// A fact of data.
#[derive(Clone, Copy)]
#[allow(
    dead_code,
    reason = "the next wasm may be packed better by those that this one does without"
)]
pub(crate) enum Datum {
    No,
    /// The byte that is expected after the same three bytes, and after the same eight; how long the first was right.
    After3,
    After8,
    Long,
    /// The last byte, the last two, and so on.
    Bytes1,
    Bytes2,
    Bytes3,
    Bytes4,
    Bytes5,
    Bytes6,
    Bytes8,
    /// The byte before the last, with the one before it.
    Before2,
    /// The byte so many before.
    Back4,
    Back8,
    Back12,
    Back16,
    /// Where it stands among four bytes.
    Quarter,
    /// Of which classes the last six bytes are.
    Classes,
    /// The word so far, of which class what stands before it is, the last two words, the tag.
    Word,
    BeforeWord,
    Word1,
    Word2,
    Tag,
}

/// How many facts there are at most.
const FACTS: usize = OF_CODE;

impl Known {
    /// Tells the guess all that the byte that comes may depend on.
    pub(crate) fn tell(&self, kind: Kind, tree: usize, part: u32, guess: &mut Guess) {
        let mut facts = [0; FACTS];
        let row = if kind.is_code() {
            self.of_code(kind, &mut facts);
            self.row(part, &facts)
        } else {
            self.of_data(&mut facts);
            self.full[0] as usize & 255
        };
        let here = mix(mix(tree as u32, part), u32::from(self.op));
        for (n, context) in OF_KINDS[kind as usize].iter().enumerate() {
            let mut hash = mix(here, n as u32 + 1);
            for fact in context {
                hash = mix(hash, facts[usize::from(*fact)]);
            }
            guess.contexts[n] = (hash ^ hash >> 15).wrapping_mul(0x2c1b_3c6d);
        }
        guess.kind = tree;
        guess.rows[1] = row % ROWS;
    }

    /// The row of weights that suits these facts.
    fn row(&self, part: u32, facts: &[u32; FACTS]) -> usize {
        let before = if self.op == 0 { self.ops & 255 } else { 0 };
        let op = usize::from(self.op) << 1 | usize::from(part != 0) | (before as usize) << 2;
        let expected = usize::from(facts[Fact::After8 as usize] > 0);
        256 + (op << 3 | (facts[Fact::Trust as usize] as usize) << 1 | expected)
    }

    fn of_code(&self, kind: Kind, facts: &mut [u32; FACTS]) {
        let ops = |count: u32| (self.ops & ((1 << (8 * count)) - 1)) as u32;
        let last = |kind: Kind| self.last[kind as usize][0];
        let [one, two, three] = [0, 1, 2].map(|under| self.value(under));
        let top = self.blocks.last().copied().unwrap_or_default();
        let expected = |n: usize| self.copies.expected[n].map_or(0, |byte| u32::from(byte) + 1);
        let twin = self.copies.expected[2];
        let [first, second, third, fourth, ..] = self.full;
        let [local, local_before, local_third] = self.recent;
        let puts = u32::from(one.op) | u32::from(two.op) << 8 | u32::from(three.op) << 16;
        let under = mix(second, third);
        *facts = [
            0,
            expected(0),
            expected(1),
            expected(2),
            expected(3),
            twin.map_or(4, |_| u32::from(self.copies.trust[2]) & 3),
            self.copies.lengths[0].min(15),
            ops(1),
            ops(2),
            ops(3),
            self.ops as u32,
            mix(self.ops as u32, (self.ops >> 32) as u32 & 0xffff),
            mix(self.ops as u32, (self.ops >> 32) as u32),
            first,
            mix(first, second),
            mix(first, under),
            mix(mix(first, under), fourth),
            second,
            under,
            self.function,
            self.types.number(self.function),
            u32::from(top.op),
            self.blocks.len() as u32,
            self.stack.len().wrapping_sub(top.height) as u32,
            self.steps[0].min(15),
            self.steps[1].min(9),
            last(kind),
            self.last[kind as usize][1],
            last(Kind::Call),
            last(Kind::Get),
            last(Kind::Set),
            last(Kind::Int32),
            last(Kind::Load),
            last(Kind::Store),
            local,
            mix(local, local_before),
            mix(mix(local, local_before), local_third),
            self.unread,
            one.full,
            two.full,
            one.deep,
            two.deep,
            three.deep,
            puts,
            u32::from(one.ty) << 2 | u32::from(two.ty),
            self.at_address(one),
            self.at_address(two),
        ];
    }

    /// The address with the offset last used with it.
    fn at_address(&self, address: Value) -> u32 {
        mix(address.full, self.offsets[address.full as usize & 255])
    }

    fn of_data(&self, facts: &mut [u32; FACTS]) {
        let length = self.stream.len();
        let back = |n: usize| {
            let place = length.wrapping_sub(n);
            u32::from(self.stream.get(place).copied().unwrap_or(0))
        };
        let expected = |n: usize| self.copies.expected[n].map_or(0, |byte| u32::from(byte) + 1);
        let four = back(1) | back(2) << 8 | back(3) << 16 | back(4) << 24;
        let six = mix(four, back(5) | back(6) << 8);
        let classes = (1..7).fold(0, |classes, n| classes << 4 | class(back(n)));
        let text = &self.text;
        let found = [
            0,
            expected(0),
            expected(1),
            self.copies.lengths[0].min(15),
            back(1),
            four & 0xffff,
            four & 0xff_ffff,
            four,
            mix(four, back(5)),
            six,
            mix(six, back(7) | back(8) << 8),
            back(2) | back(3) << 8,
            back(4),
            back(8),
            back(12),
            back(16),
            length as u32 & 3,
            classes,
            text.word,
            class(u32::from(text.before)),
            text.words[0],
            text.words[1],
            text.tag,
        ];
        facts[..found.len()].copy_from_slice(&found);
    }
}

/// Of which class a byte of text is.
fn class(byte: u32) -> u32 {
    match byte as u8 {
        b'a'..=b'z' => 1,
        b'A'..=b'Z' => 2,
        b'0'..=b'9' => 3,
        b' ' => 4,
        b'<' => 5,
        b'>' => 6,
        b'=' => 7,
        b'"' => 8,
        b'{' | b'}' => 9,
        0 => 10,
        1..32 => 11,
        b'.' | b',' | b';' | b':' => 12,
        b'/' | b'-' => 13,
        128.. => 14,
        _ => 15,
    }
}
