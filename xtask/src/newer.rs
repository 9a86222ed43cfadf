//! A newer build beside the one of `cargo xtask dist`, for tests of what a device does when its host has one.
//!
//! It is the same program with other words in its wasm, another style and another page, under the names a newer build
//! would have, packed and sealed as any build is. To compile the app a second time would take as long as all browser
//! tests and change no more than this does: other code under other names, and a style that has other bytes under its
//! old name, as Trunk's names allow.

use crate::workspace;
use crate::{pack, plain, seal, step};
use anyhow::{Context, Result, bail};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};

/// Where a release build is left as it was before it was packed and sealed.
pub(crate) const UNPACKED: &str = "target/unpacked";
/// Where the newer build is put.
pub(crate) const PLACE: &str = "target/dist-newer";
/// Where both are put once more, with their wasm as it is.
const OLDER_PLAIN: &str = "target/dist-plain";
const NEWER_PLAIN: &str = "target/dist-newer-plain";
/// What the app says above every page, and what the newer one says there.
const WORDS: (&str, &str) = ("Day book", "DAY BOOK");
/// How the page tells a searching machine what it is, and how the newer one ends that.
const PAGE: (&str, &str) = ("without a network.\"", "without a network, newer.\"");
/// What the newer style has beside the old one's.
const STYLE: &str = ":root{--build:newer}";
/// How the names begin that Trunk gives to the app.
const APP: &str = "cartside-app-";
const WASM: &str = "_bg.wasm";

/// `cargo xtask dist-newer`.
pub(crate) fn run() -> Result<()> {
    println!("{}", build(&workspace::root()?)?.display());
    Ok(())
}

/// Makes the newer build of what was built last; its place.
pub(crate) fn build(root: &Path) -> Result<PathBuf> {
    step::run(
        "make a newer build",
        "Run `cargo xtask dist` first.",
        || {
            let place = root.join(PLACE);
            copy(&root.join(UNPACKED), &place)?;
            change(&place)?;
            plain(&root.join(UNPACKED), &root.join(OLDER_PLAIN))?;
            plain(&place, &root.join(NEWER_PLAIN))?;
            let packed = pack::pack(&place)?;
            seal::seal(&place, Some(&packed))?;
            Ok(place)
        },
    )
}

fn plain(from: &Path, place: &Path) -> Result<()> {
    copy(from, place)?;
    plain::seal(place)
}

/// Copies a folder with all that is in it into the place of whatever is at the other.
pub(crate) fn copy(from: &Path, to: &Path) -> Result<()> {
    if to.exists() {
        fs::remove_dir_all(to)?;
    }
    fs::create_dir_all(to)?;
    let listed = fs::read_dir(from).with_context(|| format!("no folder {}", from.display()))?;
    for entry in listed {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

fn change(folder: &Path) -> Result<()> {
    let hash = app_hash(folder)?;
    let new = newer_hash(&hash);
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path.file_name().and_then(|name| name.to_str());
        let name = name.unwrap_or_default().to_owned();
        if path.is_file() {
            let bytes = changed(&name, &fs::read(&path)?, (&hash, &new))?;
            fs::remove_file(&path)?;
            fs::write(folder.join(name.replace(&hash, &new)), bytes)?;
        }
    }
    Ok(())
}

/// The part of the app's names that Trunk changes with the program.
fn app_hash(folder: &Path) -> Result<String> {
    for entry in fs::read_dir(folder)? {
        let name = entry?.file_name().into_string().unwrap_or_default();
        let hash = name.strip_prefix(APP).and_then(|n| n.strip_suffix(WASM));
        if let Some(hash) = hash {
            return Ok(hash.to_owned());
        }
    }
    bail!("{} holds no {APP}…{WASM}", folder.display())
}

fn newer_hash(hash: &str) -> String {
    let mut digest = seal::hex(&Sha256::digest(hash));
    digest.truncate(16);
    digest
}

/// A file of the newer build; names in it are changed with the files'.
fn changed(name: &str, bytes: &[u8], names: (&str, &str)) -> Result<Vec<u8>> {
    let ending = name.rsplit('.').next().unwrap_or_default();
    Ok(match ending {
        "wasm" if name.starts_with(APP) => {
            replaced(bytes, WORDS).with_context(|| name.to_owned())?
        }
        "css" => [bytes, STYLE.as_bytes()].concat(),
        "html" => {
            let page = replaced(bytes, PAGE).with_context(|| name.to_owned())?;
            String::from_utf8(page)?.replace(names.0, names.1).into()
        }
        "js" => std::str::from_utf8(bytes)?.replace(names.0, names.1).into(),
        _ => bytes.to_vec(),
    })
}

/// Every place where the first stands holds the second instead; there must be one.
fn replaced(bytes: &[u8], (old, new): (&str, &str)) -> Result<Vec<u8>> {
    let mut out = Vec::new();
    let mut rest = bytes;
    let mut found = false;
    while let Some((first, after)) = rest.split_first() {
        if let Some(after) = rest.strip_prefix(old.as_bytes()) {
            out.extend(new.as_bytes());
            (rest, found) = (after, true);
        } else {
            out.push(*first);
            rest = after;
        }
    }
    if !found {
        bail!("“{old}” is not there to be changed");
    }
    Ok(out)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    const NAMES: (&str, &str) = ("11", "22");

    fn text(name: &str, was: &str) -> String {
        String::from_utf8(changed(name, was.as_bytes(), NAMES).unwrap()).unwrap()
    }

    #[test]
    fn code_page_and_style_differ_and_names_are_followed() {
        assert_eq!(
            text("cartside-app-11_bg.wasm", "..Day book."),
            "..DAY BOOK."
        );
        assert_eq!(text("a.css", "p{}"), "p{}:root{--build:newer}");
        assert_eq!(text("a.js", "from './app-11.js'"), "from './app-22.js'");
        let page = text("index.html", "works without a network.\"> app-11.js");
        assert_eq!(page, "works without a network, newer.\"> app-22.js");
        assert_eq!(text("a.svg", "11"), "11");
        assert_eq!(text("unpack-33.wasm", "Day book 11"), "Day book 11");
    }

    #[test]
    fn the_words_of_the_wasm_keep_their_length() {
        assert_eq!(WORDS.0.len(), WORDS.1.len());
    }

    #[test]
    fn a_build_that_would_not_differ_is_refused() {
        assert!(changed("cartside-app-11_bg.wasm", b"no such words", NAMES).is_err());
        assert!(changed("index.html", b"no such words", NAMES).is_err());
    }

    #[test]
    fn another_program_has_another_name() {
        assert_eq!(newer_hash("0b3f").len(), 16);
        assert_ne!(newer_hash("0b3f"), "0b3f");
    }
}
