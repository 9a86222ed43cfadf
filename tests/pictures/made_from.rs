//! What the pictures were made from: a list of files with their digests, which stands beside them.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use cartside_core::daybook::Digest;

/// Where the pictures lie, with the list.
const PLACE: &str = "public/pictures";
const LIST: &str = "made-from.txt";

/// What those screens are made of: style, shell, the pages shown, what they share, the demonstration and all words.
const SOURCES: [&str; 13] = [
    "public/style.css",
    "app/src/shell.rs",
    "app/src/album.rs",
    "app/src/component",
    "app/src/demonstration",
    "app/src/page/ask",
    "app/src/page/ask.rs",
    "app/src/page/picture",
    "app/src/page/picture.rs",
    "app/src/page/report",
    "app/src/page/wheel",
    "app/src/page/wheel.rs",
    "core/src/words",
];

/// The folder of the workspace.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every source under a path, or the file itself; those that only test are left out, and what tools leave behind.
fn files(path: &Path, found: &mut Vec<PathBuf>) {
    if path.is_dir() {
        let inner = fs::read_dir(path).unwrap();
        inner.for_each(|one| files(&one.unwrap().path(), found));
    } else if path
        .extension()
        .is_some_and(|kind| kind == "rs" || kind == "css")
        && !path.ends_with("tests.rs")
    {
        found.push(path.to_owned());
    }
}

fn now() -> BTreeMap<String, String> {
    let root = root();
    let mut found = Vec::new();
    for source in SOURCES {
        let path = root.join(source);
        assert!(
            path.exists(),
            "{source} is not there any more: name what took its place"
        );
        files(&path, &mut found);
    }
    let digest = |path: PathBuf| {
        let name = path.strip_prefix(&root).unwrap().display().to_string();
        (name, Digest::of(&fs::read(&path).unwrap()).hex())
    };
    found.into_iter().map(digest).collect()
}

/// Says that the pictures of this folder were made from the files as they are now.
pub(crate) fn note(folder: &Path) {
    let lines = now()
        .into_iter()
        .map(|(name, digest)| format!("{digest}  {name}\n"));
    fs::write(folder.join(LIST), lines.collect::<String>()).unwrap();
}

fn noted() -> BTreeMap<String, String> {
    let list = fs::read_to_string(root().join(PLACE).join(LIST)).unwrap();
    let line = |line: &str| {
        let (digest, name) = line.split_once("  ").unwrap();
        (name.to_owned(), digest.to_owned())
    };
    list.lines().map(line).collect()
}

#[test]
fn the_pictures_are_not_older_than_the_screens_they_show() {
    let (now, then) = (now(), noted());
    let names = now.keys().chain(then.keys());
    let mut changed: Vec<&String> = names
        .filter(|name| now.get(*name) != then.get(*name))
        .collect();
    changed.sort();
    changed.dedup();
    assert!(
        changed.is_empty(),
        "since the README's pictures were taken these have changed: {changed:#?}\nRun `cargo xtask pictures` and look at them."
    );
}

#[test]
fn the_readme_shows_each_picture_and_none_is_kept_for_an_installed_app() {
    let readme = fs::read_to_string(root().join("README.md")).unwrap();
    for name in super::taking::NAMES {
        let file = format!("{PLACE}/{name}.png");
        assert!(readme.contains(&file), "{file} in the README");
        assert!(root().join(&file).exists(), "{file}");
    }
    let page = fs::read_to_string(root().join("app/index.html")).unwrap();
    assert!(
        !page.contains("pictures"),
        "what the build copies has no pictures"
    );
}
