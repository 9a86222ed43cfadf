//! Packs the app's wasm tighter than a host would: LZMA takes a fifth less than gzip, and a tenth of that again once
//! the code is parted into streams. The page and the service worker
//! unpack it with `public/unpack.js`.

use crate::streams;
use anyhow::{Context, Result, bail};
use lzma_rust2::{LzmaOptions, LzmaWriter};
use std::fs;
use std::io::Write;
use std::path::Path;

const PAGE: &str = "index.html";
/// What is added to the name of a packed file.
const ENDING: &str = ".lzma";
/// Every setting of the bits of context and position that is tried; which packs best changes with the code.
const SETTINGS: [(u32, u32, u32); 4] = [(3, 0, 0), (4, 0, 0), (3, 0, 2), (0, 0, 0)];

/// A file that the folder holds only packed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Packed {
    /// The name it would have unpacked.
    pub(crate) name: String,
    /// Its bytes unpacked.
    pub(crate) bytes: Vec<u8>,
}

impl Packed {
    /// Its name as it lies in the folder.
    pub(crate) fn packed_name(&self) -> String {
        format!("{}{ENDING}", self.name)
    }
}

/// Puts the packed wasm in the place of the plain one, and has the page start from it.
pub(crate) fn pack(folder: &Path) -> Result<Packed> {
    let name = wasm_in(folder)?;
    let bytes = fs::read(folder.join(&name))?;
    let packed = Packed { name, bytes };
    fs::write(
        folder.join(packed.packed_name()),
        smallest(&streams::parted(&packed.bytes)?)?,
    )?;
    fs::remove_file(folder.join(&packed.name))?;
    let page = fs::read_to_string(folder.join(PAGE))?;
    fs::write(folder.join(PAGE), start_from_packed(&page, &packed)?)?;
    Ok(packed)
}

fn wasm_in(folder: &Path) -> Result<String> {
    for entry in fs::read_dir(folder)? {
        if let Ok(name) = entry?.file_name().into_string()
            && name.ends_with(".wasm")
        {
            return Ok(name);
        }
    }
    bail!("Trunk left no wasm")
}

fn smallest(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut tried = Vec::new();
    for setting in SETTINGS {
        tried.push(compressed(bytes, setting)?);
    }
    let smallest = tried.into_iter().min_by_key(Vec::len);
    smallest.context("no setting is tried")
}

fn compressed(bytes: &[u8], (lc, lp, pb): (u32, u32, u32)) -> Result<Vec<u8>> {
    let mut options = LzmaOptions::with_preset(9);
    (options.lc, options.lp, options.pb) = (lc, lp, pb);
    (options.nice_len, options.depth_limit) = (273, 4096);
    let mut writer = LzmaWriter::new_use_header(Vec::new(), &options, Some(bytes.len() as u64))?;
    writer.write_all(bytes)?;
    Ok(writer.finish()?)
}

/// The page as Trunk wrote it, but with the wasm that `start.js` fetches: its tag is told both names, and the browser
/// is no longer told to fetch the plain one early.
fn start_from_packed(page: &str, packed: &Packed) -> Result<String> {
    let (plain, name) = (format!("'./{}'", packed.name), &packed.name);
    let page = once(page, &plain, "self.cartsideWasm")?;
    let page = without_preload(&page, name)?;
    let told = format!(
        "<script data-wasm=\"./{name}\" data-packed=\"./{}\" src=\"./start-",
        packed.packed_name()
    );
    once(&page, "<script src=\"./start-", &told)
}

fn once(page: &str, old: &str, new: &str) -> Result<String> {
    if page.matches(old).count() != 1 {
        bail!("{PAGE} should hold `{old}` exactly once");
    }
    Ok(page.replace(old, new))
}

fn without_preload(page: &str, name: &str) -> Result<String> {
    let start = format!("<link rel=\"preload\" href=\"./{name}\"");
    let (before, rest) = page
        .split_once(&start)
        .with_context(|| format!("{PAGE} should hold `{start}`"))?;
    let (_, after) = rest.split_once('>').context("a tag that never ends")?;
    Ok(format!("{before}{after}"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]
    use super::*;
    use lzma_rust2::LzmaReader;
    use std::io::Read;

    fn packed() -> Packed {
        Packed {
            name: "a_bg.wasm".to_owned(),
            bytes: vec![],
        }
    }

    const PAGE_TEXT: &str = "<head><script src=\"./start-1.js\"></script>\
        <script type=\"module\">await init({ module_or_path: './a_bg.wasm' });</script>\
        <link rel=\"preload\" href=\"./a_bg.wasm\" as=\"fetch\"></head>";

    #[test]
    fn what_is_packed_comes_out_again() {
        let bytes: Vec<u8> = (0..50_000_u32).map(|i| ((i * i) >> 7) as u8).collect();
        for setting in SETTINGS {
            let small = compressed(&bytes, setting).unwrap();
            assert!(small.len() < bytes.len() / 2, "{}", small.len());
            // The size stands in the header, where the unpacker looks for it.
            assert_eq!(small[5..13], (bytes.len() as u64).to_le_bytes());
            let mut out = Vec::new();
            let mut reader = LzmaReader::new_mem_limit(&small[..], u32::MAX, None).unwrap();
            reader.read_to_end(&mut out).unwrap();
            assert_eq!(out, bytes);
        }
    }

    #[test]
    fn the_page_starts_from_the_packed_file() {
        assert_eq!(
            start_from_packed(PAGE_TEXT, &packed()).unwrap(),
            "<head><script data-wasm=\"./a_bg.wasm\" data-packed=\"./a_bg.wasm.lzma\" \
             src=\"./start-1.js\"></script>\
             <script type=\"module\">await init({ module_or_path: self.cartsideWasm });</script></head>"
        );
    }

    #[test]
    fn a_page_of_another_form_is_refused() {
        for lost in ["'./a_bg.wasm'", "rel=\"preload\"", "./start-"] {
            let page = PAGE_TEXT.replace(lost, "");
            assert!(start_from_packed(&page, &packed()).is_err(), "{lost}");
        }
    }
}
