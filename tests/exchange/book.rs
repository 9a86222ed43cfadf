//! A small book of an invented farm, its members and its manifest, written out by hand.

use cartside_core::daybook::Digest;
use serde_json::{Value, json};

use crate::bytes::{Member, zip};

/// The members of a file other than its manifest, by name.
pub(crate) type Files = Vec<(String, Vec<u8>)>;

/// A book with a cart, a picture of a spoke, a remark and the examination they belong to.
pub(crate) fn files() -> Files {
    let picture = jpeg("spoke 3");
    let lines = [
        cart(),
        visit(),
        picture_line(&picture, 3),
        remark("Split at the dowel; ½″ long. \"Bad\"", 4),
    ];
    vec![
        ("entries.jsonl".to_owned(), jsonl(&lines)),
        (picture_name(&picture), picture),
        ("readings.csv".to_owned(), b"part,says\r\n".to_vec()),
        (
            "READ-ME.txt".to_owned(),
            b"A wheelwright's book.\n".to_vec(),
        ),
    ]
}

pub(crate) fn cart() -> String {
    line(
        "vehicle",
        None,
        "vehicle",
        &json!({ "kind": "cart", "name": "Tip cart" }),
        1,
    )
}

pub(crate) fn visit() -> String {
    belonging("visit", "visit", &json!({ "place": "Long Barn" }), 2)
}

pub(crate) fn picture_line(picture: &[u8], n: u64) -> String {
    let says = json!({
        "sha256": Digest::of(picture).hex(), "width": 4, "height": 3, "bytes": picture.len(),
    });
    belonging("picture", "near/spoke-3", &says, n)
}

pub(crate) fn erasure(picture: &[u8], n: u64) -> String {
    belonging("erasure", &Digest::of(picture).hex(), &json!({}), n)
}

pub(crate) fn remark(text: &str, n: u64) -> String {
    belonging("remark", "near/felloe-2", &json!({ "text": text }), n)
}

/// A line that belongs to the cart.
fn belonging(kind: &str, slot: &str, says: &Value, n: u64) -> String {
    line(kind, Some(Digest::of(cart().as_bytes())), slot, says, n)
}

fn line(kind: &str, vehicle: Option<Digest>, slot: &str, says: &Value, n: u64) -> String {
    let vehicle = vehicle.map_or(String::new(), |id| format!(r#""vehicle":"{id}","#));
    format!(
        r#"{{"cartside":1,"kind":"{kind}",{vehicle}"slot":"{slot}","says":{says},"by":"A. Wright","device":"0f1e","at":"2024-05-06T07:08:09+01:00","n":{n}}}"#
    )
}

/// Bytes that begin as a JPEG does, different for each word.
pub(crate) fn jpeg(word: &str) -> Vec<u8> {
    [&[0xFF, 0xD8, 0xFF, 0xE0], word.as_bytes(), &[0xFF, 0xD9]].concat()
}

pub(crate) fn picture_name(picture: &[u8]) -> String {
    format!("pictures/{}.jpg", Digest::of(picture))
}

pub(crate) fn jsonl(lines: &[String]) -> Vec<u8> {
    lines
        .iter()
        .flat_map(|line| [line.as_bytes(), b"\n"].concat())
        .collect()
}

/// The same files with these bytes for the member of this name, which is added when it is new.
pub(crate) fn with(mut files: Files, name: &str, bytes: Vec<u8>) -> Files {
    files.retain(|(other, _)| other != name);
    files.push((name.to_owned(), bytes));
    files
}

/// The same files with other lines.
pub(crate) fn with_lines(files: Files, lines: &[String]) -> Files {
    with(files, "entries.jsonl", jsonl(lines))
}

pub(crate) fn without(mut files: Files, name: &str) -> Files {
    files.retain(|(other, _)| other != name);
    files
}

/// What a true manifest of these files says.
pub(crate) fn manifest(files: &Files) -> Value {
    let lines = |bytes: &Vec<u8>| {
        bytes
            .split(|byte| *byte == b'\n')
            .filter(|line| !line.is_empty())
            .count()
    };
    let entries: usize = files
        .iter()
        .filter(|(name, _)| name == "entries.jsonl")
        .map(|(_, bytes)| lines(bytes))
        .sum();
    let pictures = files
        .iter()
        .filter(|(name, _)| name.starts_with("pictures/"))
        .count();
    let members: Vec<_> = files
        .iter()
        .map(|(name, bytes)| {
            json!({ "name": name, "bytes": bytes.len(), "sha256": Digest::of(bytes).hex() })
        })
        .collect();
    json!({
        "format": "cartside exchange",
        "container": 1,
        "made_at": "2024-05-06T17:18:19+01:00",
        "device": "0f1e",
        "scope": "book",
        "entries": entries,
        "pictures": pictures,
        "members": members,
    })
}

/// The manifest and the files as stored members.
pub(crate) fn members(manifest: &Value, files: &Files) -> Vec<Member> {
    let json = manifest.to_string();
    std::iter::once(Member::stored("manifest.json", json.as_bytes()))
        .chain(
            files
                .iter()
                .map(|(name, bytes)| Member::stored(name, bytes)),
        )
        .collect()
}

/// A true file of these members.
pub(crate) fn truthful(files: &Files) -> Vec<u8> {
    zip(&members(&manifest(files), files))
}

/// A file whose manifest has been changed.
pub(crate) fn with_manifest(files: &Files, change: impl FnOnce(&mut Value)) -> Vec<u8> {
    let mut manifest = manifest(files);
    change(&mut manifest);
    zip(&members(&manifest, files))
}

/// A file one of whose members has been changed after the manifest was made.
pub(crate) fn with_member(files: &Files, name: &str, change: impl FnOnce(&mut Member)) -> Vec<u8> {
    let mut members = members(&manifest(files), files);
    let member = members
        .iter_mut()
        .find(|member| member.name == name.as_bytes());
    change(member.expect("a member of this name"));
    zip(&members)
}
