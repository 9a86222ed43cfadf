//! What is packed comes out again, and what is damaged on the way does no harm.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use cartside_pack::{Damaged, MOST, pack, unpack};
use proptest::prelude::*;
use wasm_encoder::{
    BlockType, CodeSection, ConstExpr, DataSection, Function, FunctionSection, GlobalSection,
    GlobalType, ImportSection, MemArg, MemArgTarget, MemorySection, MemoryType, Module,
    TypeSection, ValType,
};

/// A wasm of so many functions, each a little different from the one before.
fn wasm(functions: u32) -> Vec<u8> {
    let (mut types, mut imports) = (TypeSection::new(), ImportSection::new());
    types
        .ty()
        .function([ValType::I32, ValType::I64], [ValType::I32]);
    types.ty().function([], []);
    imports.import("a", "b", wasm_encoder::EntityType::Function(1));
    let (mut declared, mut code) = (FunctionSection::new(), CodeSection::new());
    for n in 0..functions {
        declared.function(0);
        code.function(&body(n));
    }
    let mut memories = MemorySection::new();
    memories.memory(MemoryType {
        minimum: 1,
        maximum: None,
        memory64: false,
        shared: false,
        page_size_log2: None,
    });
    let mut globals = GlobalSection::new();
    let global = GlobalType {
        val_type: ValType::I32,
        mutable: true,
        shared: false,
    };
    globals.global(global, &ConstExpr::i32_const(0x0010_0000));
    let mut data = DataSection::new();
    data.active(
        0,
        &ConstExpr::i32_const(1024),
        b"What is said here is said twice here.".repeat(9),
    );
    let mut module = Module::new();
    module
        .section(&types)
        .section(&imports)
        .section(&declared)
        .section(&memories)
        .section(&globals)
        .section(&code)
        .section(&data);
    let wasm = module.finish();
    wasmparser::validate(&wasm).unwrap();
    wasm
}

fn body(n: u32) -> Function {
    let at = |offset| MemArg {
        offset,
        align: 2,
        target: MemArgTarget::Memory(0),
        ordering: None,
    };
    let mut body = Function::new([(200, ValType::I32), (2, ValType::I64), (1, ValType::F64)]);
    let number = n as i32;
    body.instructions()
        .global_get(0)
        .i32_const(16 * number)
        .i32_sub()
        .local_tee(2)
        .global_set(0)
        .block(BlockType::Result(ValType::I32))
        .local_get(2)
        .i32_load(at(u64::from(4 * n)))
        .local_tee(2 + n % 200)
        .local_get(0)
        .br_if(0)
        .drop()
        .local_get(2)
        .local_get(2 + n % 200)
        .i32_store(at(u64::from(900 * n)))
        .i64_const(i64::MIN + i64::from(n))
        .local_set(202)
        .f64_const(f64::from(n).into())
        .drop()
        .call(0)
        .local_get(0)
        .local_get(0)
        .br_table([0, 0, 0], 0)
        .end()
        .if_(BlockType::Empty)
        .local_get(0)
        .local_get(1)
        .call(1 + n / 2)
        .drop()
        .else_()
        .unreachable()
        .end()
        .i32_const(0)
        .i32_const(0)
        .i32_const(9)
        .memory_fill(0)
        .local_get(2)
        .local_get(3)
        .local_get(0)
        .select()
        .end();
    body
}

#[test]
fn a_wasm_comes_out_again_and_is_small_between() {
    let wasm = wasm(300);
    let packed = pack(&wasm).unwrap();
    assert!(
        packed.len() < wasm.len() / 10,
        "{} of {}",
        packed.len(),
        wasm.len()
    );
    // The same bytes, but for one that makes them no wasm, are not parted by what they mean.
    let mut plain = wasm.clone();
    plain[8] = 0;
    let plain = pack(&plain).unwrap();
    assert!(
        packed.len() < plain.len(),
        "{} and {}",
        packed.len(),
        plain.len()
    );
    assert_eq!(unpack(&packed).unwrap(), wasm);
}

#[test]
fn nothing_comes_out_again() {
    assert_eq!(unpack(&pack(b"").unwrap()).unwrap(), b"");
}

#[test]
fn what_only_begins_like_a_wasm_comes_out_again() {
    let wasm = wasm(3);
    for length in (0..wasm.len()).step_by(41) {
        let cut = &wasm[..length];
        assert_eq!(unpack(&pack(cut).unwrap()).unwrap(), cut, "cut to {length}");
    }
}

/// Packed, with other lengths of the whole and of what stands before the code.
fn with_lengths(mut packed: Vec<u8>, whole: usize, before: usize) -> Vec<u8> {
    packed[..4].copy_from_slice(&(whole as u32).to_le_bytes());
    packed[4..8].copy_from_slice(&(before as u32).to_le_bytes());
    packed
}

#[test]
fn what_says_that_it_is_too_long_is_refused() {
    // Every byte comes in it, so that what follows its end can be read as some byte without end.
    let all: Vec<u8> = (0..=255).chain(0..=255).collect();
    let packed = pack(&all).unwrap();
    let longer = unpack(&with_lengths(packed.clone(), 9_000, 9_000));
    assert_eq!(longer.map(|bytes| bytes.len()), Ok(9_000));
    let too_long = unpack(&with_lengths(packed.clone(), MOST + 1, MOST + 1));
    assert_eq!(too_long.map(|bytes| bytes.len()), Err(Damaged));
    for before in [513, u32::MAX as usize] {
        let more_before = unpack(&with_lengths(packed.clone(), 512, before));
        assert_eq!(more_before, Err(Damaged), "{before} before the code");
    }
}

#[test]
fn what_says_that_it_is_shorter_is_refused() {
    // Its code comes last, so that only the size of the code tells that it is longer.
    let wasm = wasm(3);
    let wasm = &wasm[..end_of_code(&wasm)];
    let packed = pack(wasm).unwrap();
    assert_eq!(unpack(&packed).as_deref(), Ok(wasm));
    let before = u32::from_le_bytes(packed[4..8].try_into().unwrap()) as usize;
    for missing in 1..6 {
        let shorter = with_lengths(packed.clone(), wasm.len() - missing, before);
        assert_eq!(unpack(&shorter), Err(Damaged), "{missing} bytes shorter");
    }
}

/// Where the code of this wasm ends.
fn end_of_code(wasm: &[u8]) -> usize {
    let parsed = wasmparser::Parser::new(0).parse_all(wasm);
    let mut sections = parsed.filter_map(|payload| payload.unwrap().as_section());
    let (_, code) = sections.find(|(id, _)| *id == 10).unwrap();
    usize::try_from(code.end).unwrap()
}

#[test]
fn what_is_cut_never_passes_for_whole() {
    let wasm = wasm(20);
    let packed = pack(&wasm).unwrap();
    for length in (0..packed.len()).step_by(7) {
        assert_ne!(
            unpack(&packed[..length]).as_deref(),
            Ok(&wasm[..]),
            "cut to {length}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..Default::default() })]

    #[test]
    fn any_bytes_come_out_again(bytes in proptest::collection::vec(any::<u8>(), 0..3000)) {
        prop_assert_eq!(unpack(&pack(&bytes).unwrap()).unwrap(), bytes);
    }

    #[test]
    fn a_damaged_byte_does_no_harm(at in any::<proptest::sample::Index>(), flip in 1_u8..) {
        let wasm = wasm(8);
        let mut packed = pack(&wasm).unwrap();
        // Behind the two lengths, of which the tests above speak.
        let place = 8 + at.index(packed.len() - 8);
        packed[place] ^= flip;
        if let Ok(other) = unpack(&packed) {
            prop_assert_eq!(other.len(), wasm.len());
        }
    }

    #[test]
    fn whatever_is_unpacked_ends(bytes in proptest::collection::vec(any::<u8>(), 0..600), whole in 0_u32..40_000, before in 0_u32..2_000) {
        let mut packed = whole.to_le_bytes().to_vec();
        packed.extend(before.to_le_bytes());
        packed.extend(bytes);
        if let Ok(out) = unpack(&packed) {
            prop_assert_eq!(out.len(), whole as usize);
        }
    }
}
