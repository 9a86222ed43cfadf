//! What the fuzzer has found: every file of `corpus` and of `crashers` goes through the check it was found by.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use std::collections::BTreeSet;
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};

mod checks;

use checks::CHECKS;

/// The most the corpora may weigh together, so that a checkout stays small: 400 kB.
const MOST_BYTES: usize = 400_000;

fn folder(of: &str, name: &str) -> PathBuf {
    let fuzz = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz");
    fuzz.join(of).join(name)
}

/// The files of a folder with their bytes; none if there is no folder.
fn files(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let listed = fs::read_dir(folder).into_iter().flatten();
    let paths = listed.map(|file| file.unwrap().path());
    paths
        .map(|path| {
            let bytes = fs::read(&path).unwrap();
            (path, bytes)
        })
        .collect()
}

/// Feeds a check with every file of a folder, and names those on which it fails.
fn failing(check: fn(&[u8]), files: &[(PathBuf, Vec<u8>)]) -> Vec<String> {
    let fails = |bytes: &[u8]| catch_unwind(AssertUnwindSafe(|| check(bytes))).is_err();
    let failing = files.iter().filter(|(_, bytes)| fails(bytes));
    failing
        .map(|(path, _)| path.display().to_string())
        .collect()
}

#[test]
fn whatever_the_fuzzer_found_holds() {
    let mut weight = 0;
    for (name, check) in CHECKS {
        let corpus = files(&folder("corpus", name));
        assert!(corpus.len() >= 10, "{name} has {} files", corpus.len());
        weight += corpus.iter().map(|(_, bytes)| bytes.len()).sum::<usize>();
        let crashers = files(&folder("crashers", name));
        for found in [corpus, crashers] {
            assert_eq!(failing(check, &found), Vec::<String>::new());
        }
    }
    assert!(weight <= MOST_BYTES, "the corpora weigh {weight} bytes");
}

/// Every folder is some check's, so that none is forgotten.
#[test]
fn every_folder_is_fed_to_a_check() {
    let names: BTreeSet<String> = CHECKS.iter().map(|(name, _)| (*name).to_owned()).collect();
    for of in ["corpus", "crashers"] {
        for entry in fs::read_dir(folder(of, "")).into_iter().flatten() {
            let name = entry.unwrap().file_name().into_string().unwrap();
            assert!(names.contains(&name), "{of}/{name}");
        }
    }
}

/// Every file of the two folders of the exchange file goes through the check of files too.
#[test]
fn golden_and_broken_files_hold() {
    let exchange = Path::new(env!("CARGO_MANIFEST_DIR")).join("exchange");
    for of in ["good", "broken"] {
        let mut zips = files(&exchange.join(of));
        zips.retain(|(path, _)| path.extension().is_some_and(|ending| ending == "zip"));
        assert!(zips.len() >= 5, "{of}");
        assert_eq!(failing(checks::file, &zips), Vec::<String>::new());
    }
}
