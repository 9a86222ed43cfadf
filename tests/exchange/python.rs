//! Our ZIPs read by another language's standard library, and its ZIPs read by us.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::open;
use serde_json::{Value, json};

use crate::book::{files, jpeg, manifest};
use crate::outgoing::{lines, parcel, pictures, readings};

/// Prints what the ZIP at the path holds, as JSON.
const READER: &str = r#"
import hashlib, json, sys, zipfile
archive = zipfile.ZipFile(sys.argv[1])
members = [
    [info.filename, info.file_size, info.compress_type, info.flag_bits, list(info.date_time),
     hashlib.sha256(archive.read(info)).hexdigest()]
    for info in archive.infolist()
]
print(json.dumps({"bad": archive.testzip(), "members": members}))
"#;

/// Writes a ZIP of the members given as JSON on standard input: names and bytes in hexadecimal.
const WRITER: &str = r#"
import json, sys, zipfile
path, method, seekable = sys.argv[1], getattr(zipfile, sys.argv[2]), sys.argv[3] == "seekable"
class Pipe:
    def __init__(self, file): self.file = file
    def write(self, data): return self.file.write(data)
    def flush(self): self.file.flush()
with open(path, "wb") as file:
    with zipfile.ZipFile(file if seekable else Pipe(file), "w", method) as archive:
        for name, data in json.load(sys.stdin):
            archive.writestr(name, bytes.fromhex(data))
"#;

/// Runs a program of Python's and gives what it prints.
fn python(program: &str, arguments: &[&str], input: &str) -> String {
    let mut child = Command::new("python3")
        .args(["-c", program])
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("python3 must be on the PATH: install Python 3; only its standard library is used");
    child
        .stdin
        .take()
        .unwrap()
        .write_all(input.as_bytes())
        .unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "python3 failed, see above");
    String::from_utf8(output.stdout).unwrap()
}

/// A path of its own for each test.
fn scratch(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name)
}

#[test]
fn python_reads_what_we_write() {
    let (lines, readings) = (lines(), readings());
    let whole = parcel(&lines, &readings).whole(&pictures()).unwrap();
    let path = scratch("ours.zip");
    std::fs::write(&path, &whole).unwrap();
    let found: Value =
        serde_json::from_str(&python(READER, &[path.to_str().unwrap()], "")).unwrap();
    assert_eq!(found["bad"], Value::Null, "every CRC holds");
    let members = found["members"].as_array().unwrap();
    let names: Vec<_> = members
        .iter()
        .map(|member| member[0].as_str().unwrap())
        .collect();
    let picture_names: Vec<_> = pictures()
        .keys()
        .map(|digest| format!("pictures/{digest}.jpg"))
        .collect();
    let mut expected = vec![
        "manifest.json",
        "entries.jsonl",
        "readings.csv",
        "READ-ME.txt",
    ];
    expected.extend(picture_names.iter().map(String::as_str));
    assert_eq!(names, expected);
    for member in members {
        assert_eq!(member[2], 0, "stored");
        assert_eq!(member[3], 1 << 11, "names are UTF-8, nothing else");
        assert_eq!(member[4], json!([1980, 1, 1, 0, 0, 0]), "a fixed date");
    }
    let jsonl: String = lines.iter().map(|(_, line)| format!("{line}\n")).collect();
    assert_eq!(members[1][1], jsonl.len());
    assert_eq!(members[1][5], Digest::of(jsonl.as_bytes()).hex());
    let csv = b"part,says\r\nnear spoke 3,'=loose\r\n";
    assert_eq!(members[2][5], Digest::of(csv).hex());
    for (member, digest) in members[4..].iter().zip(pictures().keys()) {
        assert_eq!(member[5], digest.hex());
    }
}

#[test]
fn python_reads_our_manifest_and_finds_every_digest_true() {
    const AUDITOR: &str = r#"
import hashlib, json, sys, zipfile
archive = zipfile.ZipFile(sys.argv[1])
manifest = json.loads(archive.read("manifest.json"))
for member in manifest["members"]:
    data = archive.read(member["name"])
    assert len(data) == member["bytes"], member
    assert hashlib.sha256(data).hexdigest() == member["sha256"], member
listed = {member["name"] for member in manifest["members"]} | {"manifest.json"}
assert listed == set(archive.namelist())
lines = archive.read("entries.jsonl").decode("utf-8").split("\n")
assert lines.pop() == ""
assert len(lines) == manifest["entries"]
print(manifest["format"], manifest["container"], [json.loads(line)["n"] for line in lines])
"#;
    let (lines, readings) = (lines(), readings());
    let path = scratch("audited.zip");
    std::fs::write(&path, parcel(&lines, &readings).whole(&pictures()).unwrap()).unwrap();
    let said = python(AUDITOR, &[path.to_str().unwrap()], "");
    assert_eq!(said, "cartside exchange 1 [1, 2, 3, 3, 10]\n");
}

#[test]
fn we_read_what_python_writes() {
    let files = files();
    let mut members = vec![json!([
        "manifest.json",
        hex(manifest(&files).to_string().as_bytes())
    ])];
    members.extend(files.iter().map(|(name, bytes)| json!([name, hex(bytes)])));
    for (method, seekable) in [
        ("ZIP_STORED", "seekable"),
        ("ZIP_DEFLATED", "seekable"),
        ("ZIP_STORED", "streamed"),
        ("ZIP_DEFLATED", "streamed"),
    ] {
        let path = scratch(&format!("{method}-{seekable}.zip"));
        let input = Value::from(members.clone()).to_string();
        python(WRITER, &[path.to_str().unwrap(), method, seekable], &input);
        let bytes = std::fs::read(&path).unwrap();
        let verified = open(&bytes).and_then(|file| file.verify());
        let verified = verified.unwrap_or_else(|refused| panic!("{method} {seekable}: {refused}"));
        let lines: String = verified
            .entries()
            .map(|(_, line)| format!("{line}\n"))
            .collect();
        assert_eq!(lines.as_bytes(), files[0].1);
        assert_eq!(verified.pictures()[0].bytes, jpeg("spoke 3"));
        assert_eq!(verified.warnings(), []);
    }
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}
