//! Makes what Trunk built trustworthy: a policy in the page, the list of all files in the service worker.

use crate::once::replace_once;
use crate::pack::Packed;
use crate::unpacker;
use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const PAGE: &str = "index.html";
/// The service worker.
pub(crate) const WORKER: &str = "sw.js";
const NO_LIST: &str = "const BUILD = null;";
const HEAD: &str = "<head>";
/// How the names of icons end that only an installing browser asks for.
const INSTALLED_ICONS: [&str; 2] = [".png", "-maskable.svg"];

/// Each file of a build with the SHA-256 of its bytes, by its path with forward slashes.
pub(crate) type BuildList = BTreeMap<String, String>;

/// Seals a folder in place. A dev build, where nothing is packed, gets no list: its worker then installs nothing and
/// hides no change.
pub(crate) fn seal(folder: &Path, packed: Option<&Packed>) -> Result<()> {
    let page = read(folder, PAGE)?;
    fs::write(folder.join(PAGE), with_policy(&page)?)?;
    if let Some(packed) = packed {
        let worker = read(folder, WORKER)?;
        let list = build_list(folder)?;
        fs::write(folder.join(WORKER), with_list(&worker, &list, packed)?)?;
    }
    Ok(())
}

fn read(folder: &Path, name: &str) -> Result<String> {
    fs::read_to_string(folder.join(name)).with_context(|| format!("Trunk left no {name}"))
}

/// Every file the service worker keeps: all but itself, and the icons that a browser fetches once when it installs
/// the app and then keeps by itself; a poor line need not carry them before the app is ready.
pub(crate) fn build_list(folder: &Path) -> Result<BuildList> {
    let mut list = files(folder)?;
    list.retain(|path, _| {
        path != WORKER && !INSTALLED_ICONS.iter().any(|ending| path.ends_with(ending))
    });
    Ok(list)
}

/// Every file of a folder.
pub(crate) fn files(folder: &Path) -> Result<BuildList> {
    let mut list = BuildList::new();
    add_folder(folder, "", &mut list)?;
    Ok(list)
}

fn add_folder(folder: &Path, before: &str, list: &mut BuildList) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().into_string();
        let Ok(name) = name else {
            bail!("{:?} is not a name every host can serve", entry.path());
        };
        let path = format!("{before}{name}");
        if entry.file_type()?.is_dir() {
            add_folder(&entry.path(), &format!("{path}/"), list)?;
        } else {
            list.insert(path, hex(&Sha256::digest(fs::read(entry.path())?)));
        }
    }
    Ok(())
}

/// Bytes as text, two signs each.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The worker with its list, named by a digest that changes when any file or the worker itself does.
fn with_list(worker: &str, list: &BuildList, packed: &Packed) -> Result<String> {
    let mut whole = Sha256::new();
    whole.update(worker);
    for (path, digest) in list {
        whole.update(format!("{digest}  {path}\n"));
    }
    let (begins, ends) = unpacker::NAME;
    let is_script = |path: &&String| path.starts_with(begins) && path.ends_with(ends);
    let unpacker = list.keys().find(is_script);
    let unpacker = unpacker.with_context(|| format!("the build has no {begins}…{ends}"))?;
    let plain = json!({ "path": packed.name, "sha256": hex(&Sha256::digest(&packed.bytes)) });
    let build = json!({
        "digest": hex(&whole.finalize()),
        "files": list,
        "unpacked": { packed.packed_name(): plain },
        "unpacker": unpacker,
    });
    let build = serde_json::to_string_pretty(&build)?;
    replace_once(WORKER, worker, NO_LIST, &format!("const BUILD = {build};"))
}

/// The page with its Content Security Policy, before anything the policy governs.
fn with_policy(page: &str) -> Result<String> {
    let Some((before, after)) = page.split_once(HEAD) else {
        bail!("{PAGE} should hold {HEAD}");
    };
    let content = policy(page);
    let meta = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{content}\">");
    Ok(format!("{before}{HEAD}\n    {meta}{after}"))
}

/// Only our own files, and the very scripts that stand in the page; nothing from elsewhere.
fn policy(page: &str) -> String {
    let scripts: String = inline_scripts(page)
        .map(|script| format!(" 'sha256-{}'", STANDARD.encode(Sha256::digest(script))))
        .collect();
    format!(
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'{scripts}; \
         style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; \
         object-src 'none'; base-uri 'self'; form-action 'self'"
    )
}

fn inline_scripts(page: &str) -> impl Iterator<Item = &str> {
    page.split("<script").skip(1).filter_map(|rest| {
        let (attributes, rest) = rest.split_once('>')?;
        let (script, _) = rest.split_once("</script>")?;
        (!attributes.contains(" src=")).then_some(script)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    const WORKER_TEXT: &str = "\"use strict\";\nconst BUILD = null;\nrest();\n";

    fn list(files: &[(&str, &str)]) -> BuildList {
        let owned = |(path, digest): &(&str, &str)| (path.to_string(), digest.to_string());
        files.iter().map(owned).collect()
    }

    fn packed() -> Packed {
        let (name, bytes) = ("a.wasm".to_owned(), b"abc".to_vec());
        Packed { name, bytes }
    }

    fn sealed(worker: &str, files: &[(&str, &str)]) -> Result<String> {
        let mut files = list(files);
        files.insert("unpack-0.wasm".to_owned(), "32".to_owned());
        files.insert("unpack-1.js".to_owned(), "33".to_owned());
        with_list(worker, &files, &packed())
    }

    fn digest_in(worker: &str) -> &str {
        let after = worker.split("\"digest\": \"").nth(1).unwrap();
        after.split('"').next().unwrap()
    }

    #[test]
    fn every_file_but_the_worker_and_an_installers_icons_is_listed_with_its_digest() {
        let folder = std::env::temp_dir().join(format!("cartside-seal-{}", std::process::id()));
        fs::create_dir_all(folder.join("icons")).unwrap();
        fs::write(folder.join("sw.js"), "").unwrap();
        fs::write(folder.join("icons/a.txt"), "abc").unwrap();
        fs::write(folder.join("icons/a-512.png"), "large").unwrap();
        let found = build_list(&folder);
        fs::remove_dir_all(&folder).unwrap();
        // The published SHA-256 example for the message "abc" (FIPS 180-4).
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(found.unwrap(), list(&[("icons/a.txt", abc)]));
    }

    #[test]
    fn the_worker_holds_the_list() {
        let sealed = sealed(WORKER_TEXT, &[("index.html", "aa")]).unwrap();
        assert!(!sealed.contains(NO_LIST));
        assert!(sealed.contains("\"index.html\": \"aa\""));
        assert!(sealed.contains("\"unpacker\": \"unpack-1.js\""));
        let unpacked = sealed.split("\"a.wasm.packed\": {").nth(1).unwrap();
        assert!(unpacked.trim_start().starts_with("\"path\": \"a.wasm\""));
        // SHA-256 of "abc" (FIPS 180-4).
        assert!(unpacked.contains("\"sha256\": \"ba7816bf8f01cfea"));
        assert_eq!(digest_in(&sealed).len(), 64);
    }

    #[test]
    fn any_change_gives_another_digest() {
        let files = [("a", "11"), ("b", "22")];
        let first = sealed(WORKER_TEXT, &files).unwrap();
        let same = sealed(WORKER_TEXT, &files).unwrap();
        let other_bytes = sealed(WORKER_TEXT, &[("a", "11"), ("b", "23")]).unwrap();
        let other_worker = sealed(&format!("{WORKER_TEXT}more();"), &files).unwrap();
        assert_eq!(first, same);
        assert_ne!(digest_in(&first), digest_in(&other_bytes));
        assert_ne!(digest_in(&first), digest_in(&other_worker));
    }

    #[test]
    fn a_worker_without_its_place_is_refused() {
        assert!(sealed("nothing here", &[]).is_err());
        assert!(sealed(&WORKER_TEXT.repeat(2), &[]).is_err());
    }

    #[test]
    fn a_build_without_its_unpacker_is_refused() {
        for others in [[("a", "11")], [("unpack-0.wasm", "11")]] {
            assert!(with_list(WORKER_TEXT, &list(&others), &packed()).is_err());
        }
    }

    #[test]
    fn the_policy_admits_the_pages_own_script_only() {
        let page = "<html><head><meta charset=\"utf-8\"></head>\
                    <script type=\"module\">abc</script><script src=\"x.js\"></script></html>";
        let sealed = with_policy(page).unwrap();
        // The digest of "abc", as OpenSSL writes it in base 64.
        let abc = "'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='";
        assert!(sealed.contains(&format!("script-src 'self' 'wasm-unsafe-eval' {abc};")));
        assert_eq!(sealed.matches("sha256-").count(), 1);
        assert!(!sealed.contains("unsafe-inline") && !sealed.contains("'unsafe-eval'"));
        assert!(sealed.find("Content-Security-Policy") < sealed.find("charset"));
    }

    #[test]
    fn a_page_without_a_head_is_refused() {
        assert!(with_policy("<html></html>").is_err());
    }
}
