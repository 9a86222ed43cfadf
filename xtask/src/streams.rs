//! Parts the code of a wasm into streams by kind, instructions here, numbers of locals there, and joins them again:
//! parted, it packs a tenth smaller, since each kind follows its own kind. `public/unpack.js` joins it on the device.
//!
//! A parted file is the length of the whole wasm, then that of what stands before the code section, of what stands
//! after it and of each stream (each four bytes, little-endian), then those pieces in the same order. What can be
//! reckoned is left out: the sizes of the section and of each body.

use anyhow::{Context, Result, bail, ensure};
use std::ops::Range;
use wasmparser::{Parser, Payload};

/// The kinds of bytes in code; a stream each, in this order.
#[derive(Clone, Copy)]
enum Kind {
    /// Instructions, and the functions they call.
    Instruction,
    /// How many functions there are, and the locals that each declares.
    Declared,
    Block,
    Branch,
    BranchTable,
    Get,
    Set,
    Global,
    /// How the alignment of an access differs from the natural one.
    Alignment,
    LoadOffset,
    StoreOffset,
    Int32,
    Int64,
    Float,
    Indirect,
    Other,
}

const KINDS: usize = Kind::Other as usize + 1;
/// What comes before the pieces: the length of the whole, and of each piece.
const LENGTHS: usize = 3 + KINDS;
const CODE_SECTION: u8 = 10;
/// The natural alignment of each access to memory, as a power of two, from `i32.load` on.
const NATURAL: [u8; 23] = [
    2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2,
];
const FIRST_ACCESS: u8 = 0x28;
const FIRST_STORE: u8 = 0x36;

/// The wasm with its code parted.
pub(crate) fn parted(wasm: &[u8]) -> Result<Vec<u8>> {
    let code = code_section(wasm)?;
    let before = wasm.get(..code.header).context("no code section")?;
    let after = wasm.get(code.content.end..).unwrap_or_default();
    let content = wasm.get(code.content).context("a cut code section")?;
    let mut parting = Parting {
        from: content,
        streams: std::array::from_fn(|_| Vec::new()),
    };
    let bodies = parting.number(Kind::Declared)?;
    for _ in 0..bodies {
        let size = parting.size()?;
        let before = parting.from.len();
        body(&mut parting)?;
        ensure!(
            before - parting.from.len() == size,
            "a body of another size"
        );
    }
    let mut lengths = vec![wasm.len(), before.len(), after.len()];
    lengths.extend(parting.streams.iter().map(Vec::len));
    let mut file = Vec::new();
    for length in lengths {
        file.extend(u32::try_from(length)?.to_le_bytes());
    }
    file.extend_from_slice(before);
    file.extend_from_slice(after);
    file.extend(parting.streams.concat());
    ensure!(joined(&file)? == wasm, "parted, the wasm cannot be joined");
    Ok(file)
}

/// The wasm that a parted file was made of; the twin of what the device does.
fn joined(file: &[u8]) -> Result<Vec<u8>> {
    let (lengths, mut rest) = file.split_at_checked(4 * LENGTHS).context("a cut file")?;
    let mut pieces = Vec::new();
    for length in lengths.chunks(4).skip(1) {
        let length = u32::from_le_bytes(length.try_into()?) as usize;
        let (piece, more) = rest.split_at_checked(length).context("a cut file")?;
        (rest, _) = (more, pieces.push(piece));
    }
    let mut pieces = pieces.into_iter();
    let (before, after) = (pieces.next(), pieces.next());
    let mut joining = Joining {
        streams: std::array::from_fn(|_| pieces.next().unwrap_or_default()),
        into: Vec::new(),
    };
    let bodies = joining.number(Kind::Declared)?;
    for _ in 0..bodies {
        let at = joining.into.len();
        body(&mut joining)?;
        let size = leb(joining.into.len() - at);
        joining.into.splice(at..at, size);
    }
    let mut wasm = before.unwrap_or_default().to_vec();
    wasm.push(CODE_SECTION);
    wasm.extend(leb(joining.into.len()));
    wasm.extend(joining.into);
    wasm.extend_from_slice(after.unwrap_or_default());
    Ok(wasm)
}

/// Where the code section begins, and where its content lies.
struct Code {
    header: usize,
    content: Range<usize>,
}

fn code_section(wasm: &[u8]) -> Result<Code> {
    for payload in Parser::new(0).parse_all(wasm) {
        if let Payload::CodeSectionStart {
            unchecked_range: range,
            ..
        } = payload?
        {
            let content = usize::try_from(range.start)?..usize::try_from(range.end)?;
            let header = content.start.checked_sub(1 + leb(content.len()).len());
            return Ok(Code {
                header: header.context("no code section")?,
                content,
            });
        }
    }
    bail!("no code section")
}

/// Moves bytes from where they are to where they belong; the same steps part and join.
trait Move {
    /// Moves one byte of a kind, changed by `change` on the way, and gives it as it was found.
    fn byte(&mut self, kind: Kind, change: u8) -> Result<u8>;

    /// Moves one number and gives it.
    fn number(&mut self, kind: Kind) -> Result<u64> {
        let (mut number, mut shift) = (0, 0);
        loop {
            let byte = self.byte(kind, 0)?;
            number |= u64::from(byte & 0x7f).checked_shl(shift).unwrap_or(0);
            shift += 7;
            if byte < 0x80 {
                return Ok(number);
            }
        }
    }

    fn numbers(&mut self, kind: Kind, count: u64) -> Result<()> {
        for _ in 0..count {
            self.number(kind)?;
        }
        Ok(())
    }

    fn bytes(&mut self, kind: Kind, count: usize) -> Result<()> {
        for _ in 0..count {
            self.byte(kind, 0)?;
        }
        Ok(())
    }
}

struct Parting<'w> {
    from: &'w [u8],
    streams: [Vec<u8>; KINDS],
}

impl Parting<'_> {
    /// The size of a body, which is left out.
    fn size(&mut self) -> Result<usize> {
        let (mut size, mut shift) = (0, 0);
        loop {
            let (byte, rest) = self.from.split_first().context("a cut body")?;
            self.from = rest;
            size |= usize::from(byte & 0x7f) << shift;
            shift += 7;
            if *byte < 0x80 {
                return Ok(size);
            }
        }
    }
}

impl Move for Parting<'_> {
    fn byte(&mut self, kind: Kind, change: u8) -> Result<u8> {
        let (byte, rest) = self.from.split_first().context("a cut body")?;
        self.from = rest;
        let stream = self.streams.get_mut(kind as usize);
        stream.context("no such stream")?.push(byte ^ change);
        Ok(*byte)
    }
}

struct Joining<'f> {
    streams: [&'f [u8]; KINDS],
    into: Vec<u8>,
}

impl Move for Joining<'_> {
    fn byte(&mut self, kind: Kind, change: u8) -> Result<u8> {
        let stream = self.streams.get_mut(kind as usize);
        let stream = stream.context("no such stream")?;
        let (byte, rest) = stream.split_first().context("a cut stream")?;
        *stream = rest;
        self.into.push(byte ^ change);
        Ok(*byte)
    }
}

/// One body: its locals, then its instructions to the end of the outermost block.
fn body(moving: &mut dyn Move) -> Result<()> {
    let groups = moving.number(Kind::Declared)?;
    for _ in 0..groups {
        moving.number(Kind::Declared)?;
        moving.byte(Kind::Declared, 0)?;
    }
    let mut depth = 1_u32;
    while depth > 0 {
        let instruction = moving.byte(Kind::Instruction, 0)?;
        match instruction {
            0x02..=0x04 => depth += 1,
            0x0b => depth -= 1,
            _ => {}
        }
        operands(moving, instruction)?;
    }
    Ok(())
}

fn operands(moving: &mut dyn Move, instruction: u8) -> Result<()> {
    match instruction {
        0x02..=0x04 => moving.numbers(Kind::Block, 1),
        0x0c | 0x0d => moving.numbers(Kind::Branch, 1),
        0x0e => {
            let targets = moving.number(Kind::BranchTable)?;
            moving.numbers(Kind::BranchTable, targets + 1)
        }
        0x10 => moving.numbers(Kind::Instruction, 1),
        0x11 => moving.numbers(Kind::Indirect, 2),
        0x1c => {
            let types = moving.number(Kind::Other)?;
            moving.numbers(Kind::Other, types)
        }
        0x20 => moving.numbers(Kind::Get, 1),
        0x21 | 0x22 => moving.numbers(Kind::Set, 1),
        0x23 | 0x24 => moving.numbers(Kind::Global, 1),
        0x28..=0x3e => access(moving, instruction),
        0x41 => moving.numbers(Kind::Int32, 1),
        0x42 => moving.numbers(Kind::Int64, 1),
        0x43 => moving.bytes(Kind::Float, 4),
        0x44 => moving.bytes(Kind::Float, 8),
        0x25 | 0x26 | 0x3f | 0x40 | 0xd0 | 0xd2 => moving.numbers(Kind::Other, 1),
        0xfc => {
            let further = moving.number(Kind::Other)?;
            let operands = match further {
                0..=7 => 0,
                9 | 11 | 13 | 15..=17 => 1,
                8 | 10 | 12 | 14 => 2,
                _ => bail!("instruction 0xfc {further:#x} is not known here"),
            };
            moving.numbers(Kind::Other, operands)
        }
        0x00 | 0x01 | 0x05 | 0x0b | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => Ok(()),
        _ => bail!("instruction {instruction:#x} is not known here"),
    }
}

fn access(moving: &mut dyn Move, instruction: u8) -> Result<()> {
    let natural = NATURAL.get(usize::from(instruction - FIRST_ACCESS));
    moving.byte(Kind::Alignment, *natural.context("no access")?)?;
    let store = instruction >= FIRST_STORE;
    let offset = if store {
        Kind::StoreOffset
    } else {
        Kind::LoadOffset
    };
    moving.numbers(offset, 1)
}

/// A number as wasm writes it, as short as can be.
fn leb(mut number: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    loop {
        let low = (number & 0x7f) as u8;
        number >>= 7;
        if number == 0 {
            bytes.push(low);
            return bytes;
        }
        bytes.push(low | 0x80);
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use wasm_encoder::{
        CodeSection, CustomSection, Function, FunctionSection, Instruction, MemArg, Module,
        TypeSection, ValType,
    };

    /// A wasm with one body of these instructions, and a section before and after.
    fn wasm(instructions: &[Instruction<'_>]) -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut functions = FunctionSection::new();
        functions.function(0);
        let mut code = CodeSection::new();
        let mut function = Function::new([(300, ValType::I32), (1, ValType::F64)]);
        for instruction in instructions {
            function.instruction(instruction);
        }
        code.function(&function);
        let last = CustomSection {
            name: "last".into(),
            data: (&b"abc"[..]).into(),
        };
        let mut module = Module::new();
        module.section(&types).section(&functions);
        module.section(&code).section(&last);
        module.finish()
    }

    const FAR: MemArg = MemArg {
        offset: 70_000,
        align: 1,
        target: wasm_encoder::MemArgTarget::Memory(0),
        ordering: None,
    };

    #[test]
    fn what_is_parted_joins_again() {
        use Instruction::*;
        let whole = wasm(&[
            Block(wasm_encoder::BlockType::Empty),
            Loop(wasm_encoder::BlockType::Result(ValType::I32)),
            LocalGet(299),
            LocalSet(1),
            LocalTee(2),
            BrTable((&[0, 1, 0][..]).into(), 1),
            BrIf(0),
            I32Const(-5),
            I64Const(i64::MIN),
            F32Const(1.5.into()),
            F64Const(0.1.into()),
            I32Load(FAR),
            I64Store8(FAR),
            MemoryGrow(0),
            MemoryCopy {
                src_mem: 0,
                dst_mem: 0,
            },
            I32TruncSatF64U,
            Call(200),
            CallIndirect {
                type_index: 0,
                table_index: 0,
            },
            TypedSelect(ValType::EXTERNREF),
            RefFunc(0),
            GlobalGet(0),
            End,
            End,
            I32Add,
            End,
        ]);
        let parted = parted(&whole).unwrap();
        assert_ne!(parted, whole);
        assert_eq!(joined(&parted).unwrap(), whole);
    }

    #[test]
    fn an_instruction_that_is_not_known_is_refused() {
        for instruction in [Instruction::V128Const(1), Instruction::Throw(0)] {
            assert!(parted(&wasm(&[instruction, Instruction::End])).is_err());
        }
        assert!(parted(b"no wasm").is_err());
    }

    #[test]
    fn a_natural_alignment_leaves_nothing_to_say() {
        let natural = |align| MemArg { align, ..FAR };
        let whole = wasm(&[
            Instruction::I32Load(natural(2)),
            Instruction::I64Load32U(natural(2)),
            Instruction::I64Store32(natural(2)),
            Instruction::F64Store(natural(3)),
            Instruction::End,
        ]);
        let parted = parted(&whole).unwrap();
        let length = |at: usize| parted.get(4 * at..4 * at + 4).unwrap().to_vec();
        let at = 3 + Kind::Alignment as usize;
        assert_eq!(length(at), 4_u32.to_le_bytes());
        // The four of them are noughts side by side.
        assert!(parted.windows(4).any(|four| four == [0; 4]));
    }
}
