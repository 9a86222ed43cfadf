//! Packs the app's wasm far tighter than a host would (`xtask/pack` tells how). The page and the service worker unpack it
//! with `public/unpack.js`.

use crate::once::replace_once;
use crate::unpacker;
use anyhow::{Context, Result, anyhow, bail};
use std::fs;
use std::path::Path;

const PAGE: &str = "index.html";
/// How the name of the app's wasm begins, and how it ends.
const APP: (&str, &str) = ("cartside-app-", "_bg.wasm");
/// What is added to the name of a packed file.
const ENDING: &str = ".packed";

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
    put(folder, |bytes| {
        let small = cartside_pack::pack(bytes);
        small.map_err(|damaged| anyhow!("packed, the app cannot be unpacked: {damaged:?}"))
    })
}

/// The same with another way to pack it.
pub(crate) fn put(folder: &Path, pack: impl Fn(&[u8]) -> Result<Vec<u8>>) -> Result<Packed> {
    let name = file_in(folder, APP)?;
    let script = file_in(folder, unpacker::NAME)?;
    let bytes = fs::read(folder.join(&name))?;
    let small = pack(&bytes)?;
    let packed = Packed { name, bytes };
    fs::write(folder.join(packed.packed_name()), small)?;
    fs::remove_file(folder.join(&packed.name))?;
    let page = fs::read_to_string(folder.join(PAGE))?;
    fs::write(
        folder.join(PAGE),
        start_from_packed(&page, &packed, &script)?,
    )?;
    Ok(packed)
}

/// The file of a folder whose name begins and ends like this.
pub(crate) fn file_in(folder: &Path, (begins, ends): (&str, &str)) -> Result<String> {
    for entry in fs::read_dir(folder)? {
        if let Ok(name) = entry?.file_name().into_string()
            && name.starts_with(begins)
            && name.ends_with(ends)
        {
            return Ok(name);
        }
    }
    bail!("the build has no {begins}…{ends}")
}

/// The page as Trunk wrote it, but with the wasm that `start.js` fetches: its tag is told both names
/// and that of the script that unpacks, and the browser is no longer told to fetch the plain one early.
fn start_from_packed(page: &str, packed: &Packed, script: &str) -> Result<String> {
    let (plain, name) = (format!("'./{}'", packed.name), &packed.name);
    let page = replace_once(PAGE, page, &plain, "self.cartsideWasm")?;
    let page = without_preload(&page, name)?;
    let told = format!(
        "<script data-wasm=\"./{name}\" data-packed=\"./{}\" data-unpacker=\"./{script}\" src=\"./start-",
        packed.packed_name()
    );
    replace_once(PAGE, &page, "<script src=\"./start-", &told)
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
    fn the_page_starts_from_the_packed_file() {
        assert_eq!(
            start_from_packed(PAGE_TEXT, &packed(), "unpack-2.js").unwrap(),
            "<head><script data-wasm=\"./a_bg.wasm\" data-packed=\"./a_bg.wasm.packed\" \
             data-unpacker=\"./unpack-2.js\" src=\"./start-1.js\"></script>\
             <script type=\"module\">await init({ module_or_path: self.cartsideWasm });</script></head>"
        );
    }

    #[test]
    fn a_page_of_another_form_is_refused() {
        for lost in ["'./a_bg.wasm'", "rel=\"preload\"", "./start-"] {
            let page = PAGE_TEXT.replace(lost, "");
            assert!(
                start_from_packed(&page, &packed(), "unpack-2.js").is_err(),
                "{lost}"
            );
        }
    }
}
