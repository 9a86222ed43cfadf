//! A build with its wasm as it is where the packed one belongs, and an unpacker that gives it back. Page, script and worker
//! go through the same steps as with a packed one, but for seconds of a processor: for the tests of what a device does
//! when its host has a newer build, which start many builds for the first time. That the packed one is unpacked has
//! tests of its own.

use crate::once::replace_once;
use crate::unpacker::{self, NAME, WASM_ENDING};
use crate::{pack, seal};
use anyhow::Result;
use std::fs;
use std::path::Path;
use wasm_encoder::{
    CodeSection, ConstExpr, ExportKind, ExportSection, Function, FunctionSection, GlobalSection,
    GlobalType, MemorySection, MemoryType, Module, TypeSection, ValType,
};

/// Where the unpacker lets the packed bytes be put: at its second page of memory.
const PLACE: i32 = 1 << 16;

/// Makes such a build of a folder that is neither packed nor sealed.
pub(crate) fn seal(folder: &Path) -> Result<()> {
    let (wasm, script) = (file_in(folder, WASM_ENDING)?, file_in(folder, NAME.1)?);
    let unpacker = unpacker();
    let text = fs::read_to_string(folder.join(&script))?;
    let text = told(&text, &fs::read(folder.join(&wasm))?, &unpacker)?;
    fs::write(folder.join(&script), text)?;
    fs::write(folder.join(&wasm), unpacker)?;
    let packed = pack::put(folder, |bytes| Ok(bytes.to_vec()))?;
    seal::seal(folder, Some(&packed))
}

/// The script with the digest of another unpacker than it was told.
fn told(script: &str, before: &[u8], now: &[u8]) -> Result<String> {
    let [before, now] = [before, now].map(unpacker::digest);
    replace_once("the script that unpacks", script, &before, &now)
}

fn file_in(folder: &Path, ending: &str) -> Result<String> {
    pack::file_in(folder, (NAME.0, ending))
}

/// A wasm that answers like the real one and gives back what it was given.
fn unpacker() -> Vec<u8> {
    let (mut types, mut functions) = (TypeSection::new(), FunctionSection::new());
    types.ty().function([ValType::I32], [ValType::I32]);
    types.ty().function([], [ValType::I32]);
    for kind in [0, 1, 1] {
        functions.function(kind);
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
    let length = GlobalType {
        val_type: ValType::I32,
        mutable: true,
        shared: false,
    };
    globals.global(length, &ConstExpr::i32_const(0));
    let mut exports = ExportSection::new();
    exports.export("memory", ExportKind::Memory, 0);
    for (at, name) in (0..).zip(["take", "unpack", "given"]) {
        exports.export(name, ExportKind::Func, at);
    }
    let mut take = Function::new([]);
    let mut into = take.instructions();
    into.local_get(0).global_set(0);
    into.local_get(0).i32_const(16).i32_shr_u();
    into.i32_const(1).i32_add().memory_grow(0).drop();
    into.i32_const(PLACE).end();
    let (mut unpack, mut given) = (Function::new([]), Function::new([]));
    unpack.instructions().global_get(0).end();
    given.instructions().i32_const(PLACE).end();
    let mut code = CodeSection::new();
    for function in [take, unpack, given] {
        code.function(&function);
    }
    let mut module = Module::new();
    module.section(&types).section(&functions);
    module.section(&memories).section(&globals);
    module.section(&exports).section(&code);
    module.finish()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn the_unpacker_is_sound() {
        wasmparser::validate(&unpacker()).unwrap();
    }

    #[test]
    fn the_script_is_told_the_digest_of_another() {
        let script = format!("integrity: \"{}\"", unpacker::digest(b"abc"));
        let expected = format!("integrity: \"{}\"", unpacker::digest(b"d"));
        assert_eq!(told(&script, b"abc", b"d").unwrap(), expected);
        assert!(told(&script, b"d", b"abc").is_err());
    }
}
