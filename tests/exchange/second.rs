//! A second reader, in another language's standard library, written from the description of the format: on every file
//! it comes to the same.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use cartside_core::daybook::{Book, Digest, Entry};
use cartside_core::paper::exchange::{Verified, Warning, open};
use serde_json::{Value, json};

use crate::book::{cart, visit};
use crate::book::{erasure, files, jpeg, manifest, members, picture_line, truthful, with_lines};
use crate::bytes::{Member, zip};
use crate::devices::History;
use crate::flipped;
use crate::schema;
use crate::told::Told;

/// What the second reader makes of each file.
fn second(paths: &[PathBuf]) -> Vec<Value> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut child = Command::new("python3")
        .arg(here.join("exchange/reader.py"))
        .arg(here.join("../core/src/paper/entry.schema.json"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("python3 must be on the PATH: install Python 3; only its standard library is used");
    let mut input = child.stdin.take().unwrap();
    let paths: Vec<_> = paths
        .iter()
        .map(|path| path.display().to_string() + "\n")
        .collect();
    // What it prints is read while it is told more, or both would wait for each other.
    let telling = std::thread::spawn(move || input.write_all(paths.concat().as_bytes()));
    let output = child.wait_with_output().unwrap();
    telling.join().unwrap().unwrap();
    assert!(output.status.success(), "python3 failed, see above");
    let lines = String::from_utf8(output.stdout).unwrap();
    lines
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

/// What ours makes of a file, in the second one's words.
fn ours(bytes: &[u8]) -> Value {
    match open(bytes).and_then(|file| file.verify()) {
        Ok(verified) => told(&verified),
        Err(refused) => json!({ "refused": refused.to_string() }),
    }
}

fn told(verified: &Verified<'_>) -> Value {
    let entries = || verified.entries().map(|(entry, _)| entry);
    let told = Told::of(&entries().cloned().collect::<Book>());
    let threads = told.threads.iter().map(|thread| {
        json!([
            hex(&thread.entries),
            hex(&thread.heads),
            hex(&thread.not_here),
            thread.comes_to
        ])
    });
    let newer = |entry: &&Entry| !entry.is_read() || entry.unread_fields > 0;
    json!({
        "ids": hex(&told.ids),
        "threads": sorted(threads.collect()),
        "hidden": sorted(hex(&told.hidden)),
        "erased": hex(&told.erased),
        "newer": sorted(entries().filter(newer).map(|entry| entry.id.hex().into()).collect()),
        "warnings": sorted(verified.warnings().iter().map(warning).collect()),
    })
}

fn hex(ids: &[Digest]) -> Vec<Value> {
    ids.iter().map(|id| id.hex().into()).collect()
}

fn sorted(mut values: Vec<Value>) -> Value {
    values.sort_by_key(Value::to_string);
    values.into()
}

fn warning(warning: &Warning) -> Value {
    match warning {
        Warning::LeftOut { name, .. } => json!(["left out", name]),
        Warning::NotAsListed { name } => json!(["not as listed", name]),
        Warning::ListedButAbsent { name } => json!(["listed but absent", name]),
        Warning::LinesRepeated { count } => json!(["repeated", count.to_string()]),
        Warning::PictureAbsent { digest } => json!(["absent", digest.hex()]),
        Warning::PictureUnused { digest } => json!(["unused", digest.hex()]),
    }
}

/// Puts files into a folder of the test's own and holds both readers beside each other on all of them; how many each
/// of them took.
fn agree_on(name: &str, files: &[(String, Vec<u8>)]) -> (usize, usize) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&folder).unwrap();
    let put = |(at, (_, bytes)): (usize, &(String, Vec<u8>))| {
        let path = folder.join(format!("{at}.zip"));
        fs::write(&path, bytes).unwrap();
        path
    };
    let paths: Vec<PathBuf> = files.iter().enumerate().map(put).collect();
    let theirs = second(&paths);
    assert_eq!(theirs.len(), files.len());
    let mut taken = 0;
    for ((what, bytes), theirs) in files.iter().zip(theirs) {
        let ours = ours(bytes);
        let refused = |told: &Value| told.get("refused").is_some();
        let same = ours == theirs || refused(&ours) && refused(&theirs);
        assert!(same, "{what}\nours:   {ours}\nsecond: {theirs}");
        taken += usize::from(!refused(&ours));
    }
    (taken, files.len())
}

fn in_folder(name: &str) -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("exchange")
        .join(name);
    let paths = fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path());
    let zips = paths.filter(|path| path.extension().is_some_and(|ending| ending == "zip"));
    zips.map(|path| (path.display().to_string(), fs::read(&path).unwrap()))
        .collect()
}

#[test]
fn both_read_the_golden_files_and_refuse_the_broken_ones() {
    let (taken, all) = agree_on("second-good", &in_folder("good"));
    assert!(taken == all && all >= 5);
    let (taken, all) = agree_on("second-broken", &in_folder("broken"));
    assert!(taken == 0 && all >= 50);
}

#[test]
fn both_come_to_the_same_book() {
    let histories: Vec<_> = (0..400)
        .map(|seed| (format!("seed {seed}"), History::of(seed, 20).file()))
        .collect();
    // There is something of everything to agree on.
    let books: Vec<Value> = histories.iter().map(|(_, bytes)| ours(bytes)).collect();
    for field in ["hidden", "erased", "newer", "warnings"] {
        assert!(books.iter().any(|book| book[field] != json!([])), "{field}");
    }
    let text = Value::from(books).to_string();
    for comes_to in ["dispute", "struck", "settled"] {
        assert!(text.contains(comes_to), "{comes_to}");
    }
    assert_eq!(agree_on("second-histories", &histories), (400, 400));
}

#[test]
fn both_take_and_refuse_the_same_lines() {
    let mut lines = schema::hostile();
    lines.extend(schema::later());
    lines.extend(schema::good_outcomes());
    lines.extend(schema::lacking());
    lines.extend(
        include_str!("../../core/src/paper/line/golden.jsonl")
            .lines()
            .map(String::from),
    );
    lines.extend(
        include_str!("../../core/src/paper/line/newer.jsonl")
            .lines()
            .map(String::from),
    );
    let mut all: Vec<_> = lines
        .into_iter()
        .map(|line| {
            (
                line.clone(),
                truthful(&with_lines(files(), &[cart(), visit(), line])),
            )
        })
        .collect();
    let golden: Vec<String> = include_str!("../../core/src/paper/line/golden.jsonl")
        .lines()
        .map(String::from)
        .collect();
    all.push((
        "all golden lines".to_owned(),
        truthful(&with_lines(files(), &golden)),
    ));
    let (taken, all) = agree_on("second-lines", &all);
    assert!(taken > 80 && all - taken > 150, "{taken} of {all}");
}

#[test]
fn both_take_and_refuse_the_same_odd_files() {
    let picture = jpeg("spoke 3");
    let mut listed = members(&manifest(&files()), &files());
    listed.push(Member::stored("pictures/", b""));
    listed.push(Member::stored("letter.txt", b"Dear Sir"));
    let stored = truthful(&files());
    let mut remark = stored.clone();
    let length = remark.len();
    remark[length - 2] = 2;
    remark.extend(b"hi, and more");
    let deflated = files()
        .into_iter()
        .map(|(name, bytes)| Member::deflated(&name, &bytes));
    let json = manifest(&files()).to_string();
    let deflated: Vec<_> = std::iter::once(Member::deflated("manifest.json", json.as_bytes()))
        .chain(deflated)
        .collect();
    let odd = [
        ("a folder and a letter", zip(&listed)),
        ("before it", [b"#!/bin/sh\n", &stored[..]].concat()),
        ("after it", remark),
        ("deflated", zip(&deflated)),
        (
            "erased",
            truthful(&with_lines(
                files(),
                &[cart(), picture_line(&picture, 2), erasure(&picture, 3)],
            )),
        ),
        (
            "repeated",
            truthful(&with_lines(files(), &[cart(), visit(), cart()])),
        ),
        (
            "absent",
            truthful(&with_lines(
                files(),
                &[cart(), picture_line(&jpeg("nave"), 2)],
            )),
        ),
    ];
    let odd = odd.map(|(what, bytes)| (what.to_owned(), bytes));
    assert_eq!(agree_on("second-odd", &odd), (odd.len(), odd.len()));
}

/// Every thirteenth bit, so that over the file all fields and all bits of a byte have their turn.
#[test]
fn both_find_the_same_damage() {
    let good = flipped::small();
    let flips: Vec<_> = (0..good.len() * 8)
        .step_by(13)
        .map(|bit| {
            let mut bytes = good.clone();
            bytes[bit / 8] ^= 1 << (bit % 8);
            (format!("bit {} of byte {}", bit % 8, bit / 8), bytes)
        })
        .collect();
    let (taken, all) = agree_on("second-flips", &flips);
    assert!(taken > 50 && taken < all / 4, "{taken} of {all}");
}
