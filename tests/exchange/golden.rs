//! Files that lie in folders: every one in `good/` must be read as it was when it was put there,
//! and every one in `broken/` refused in the words it was refused in then. Beside each ZIP lies a
//! text of what is to be found.
//!
//! With `CARTSIDE_WRITE_GOLDEN` set, files that are not there yet are written; none is ever
//! written over, because a file that once left a device stays as it is for ever.

use std::fs;
use std::path::{Path, PathBuf};

use cartside_core::paper::exchange::open;

use crate::book::{cart, files, manifest, members, truthful, with, with_lines};
use crate::broken::{self, refusal};
use crate::bytes::{Member, zip};
use crate::outgoing::{lines, parcel, pictures, readings};

/// What the file brings in, or why it does not.
fn found(bytes: &[u8]) -> String {
    let verified = match open(bytes).and_then(|unverified| unverified.verify()) {
        Ok(verified) => verified,
        Err(refused) => return format!("{refused}\n"),
    };
    let entries = verified
        .entries()
        .map(|(entry, line)| format!("entry {} {line}\n", entry.id));
    let pictures = verified.pictures().iter();
    let pictures = pictures
        .map(|picture| format!("picture {} {} bytes\n", picture.digest, picture.bytes.len()));
    let warnings = verified
        .warnings()
        .iter()
        .map(|warning| format!("warning {warning}\n"));
    entries.chain(pictures).chain(warnings).collect()
}

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("exchange")
        .join(name)
}

/// The ZIPs of a folder, which must not be empty.
fn zips(name: &str) -> Vec<PathBuf> {
    let all = fs::read_dir(folder(name))
        .unwrap()
        .map(|file| file.unwrap().path());
    let zips: Vec<_> = all
        .filter(|path| path.extension().is_some_and(|ext| ext == "zip"))
        .collect();
    assert!(!zips.is_empty(), "no ZIP in {name}/");
    zips
}

fn write_if_new(folder_name: &str, name: &str, bytes: &[u8]) {
    let path = folder(folder_name).join(name).with_extension("zip");
    if std::env::var_os("CARTSIDE_WRITE_GOLDEN").is_some() && !path.exists() {
        fs::write(&path, bytes).unwrap();
        fs::write(path.with_extension("txt"), found(bytes)).unwrap();
    }
}

fn check(path: &Path) {
    let text = fs::read_to_string(path.with_extension("txt"));
    let text =
        text.unwrap_or_else(|error| panic!("{}: no text beside it: {error}", path.display()));
    assert_eq!(found(&fs::read(path).unwrap()), text, "{}", path.display());
}

#[test]
fn good_files_are_read_as_they_were() {
    for (name, bytes) in good() {
        write_if_new("good", name, &bytes);
    }
    for path in zips("good") {
        assert_eq!(
            refusal(&fs::read(&path).unwrap()),
            None,
            "{}",
            path.display()
        );
        check(&path);
    }
}

#[test]
fn broken_files_are_refused_as_they_were() {
    for broken in broken::all() {
        write_if_new("broken", broken.name, &broken.bytes);
    }
    for path in zips("broken") {
        assert_ne!(
            refusal(&fs::read(&path).unwrap()),
            None,
            "{}",
            path.display()
        );
        check(&path);
    }
}

fn good() -> Vec<(&'static str, Vec<u8>)> {
    let (lines, readings) = (lines(), readings());
    let ours = parcel(&lines, &readings).whole(&pictures()).unwrap();
    let files = files();
    let mut deflated = members(&manifest(&files), &files);
    for (member, (name, bytes)) in deflated.iter_mut().skip(1).zip(&files) {
        *member = Member::deflated(name, bytes);
    }
    let later = cart().replace(r#""kind":"vehicle""#, r#""kind":"song""#);
    vec![
        ("ours", ours),
        ("stored", truthful(&files)),
        ("deflated", zip(&deflated)),
        (
            "with-a-later-kind",
            truthful(&with_lines(files.clone(), &[cart(), later])),
        ),
        (
            "with-a-sketch",
            truthful(&with(files, "sketch.svg", b"<svg/>".to_vec())),
        ),
    ]
}
