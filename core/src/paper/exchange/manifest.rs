//! `manifest.json`: what the file is, who made it and when, and the list of its members.
//!
//! Fields this version does not know are passed over, so that a later one may add some.

use serde::Serialize;

use crate::daybook::Digest;

use crate::paper::json::Json;

use super::bounds::CLAIM_BYTES;
use super::names::Names;
use super::refused::Refused;

/// The name by which a manifest says that the file is ours.
pub const FORMAT: &str = "cartside exchange";
/// The version of the container that this version writes, and the newest that it reads.
pub const CONTAINER: u64 = 1;

/// What a file claims about itself. Nothing is decided by it: it is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Manifest {
    /// When it was made, by the clock of the device that made it: local time with its offset.
    pub made_at: String,
    /// The device that made it, in hexadecimal.
    pub device: String,
    /// Which part of the book it holds; `None` when a later version divides books in a way that
    /// this one does not know.
    pub scope: Option<Scope>,
    /// How many lines `entries.jsonl` has.
    pub entries: u64,
    /// How many pictures there are.
    pub pictures: u64,
}

/// Which part of a book a file holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Scope {
    /// All of it.
    Book,
    /// One vehicle, by the id of the entry that began it.
    Vehicle(Digest),
    /// What has arrived since the last file made for this device, in hexadecimal.
    NewFor(String),
}

/// The size and digest that a manifest lists for a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Listed {
    pub(super) bytes: u64,
    pub(super) digest: Digest,
}

/// The members a manifest lists, each once, with their names.
pub(super) type List = Vec<(String, Listed)>;

#[derive(Serialize)]
struct Written<'a> {
    format: &'static str,
    container: u64,
    made_at: &'a str,
    device: &'a str,
    scope: WrittenScope<'a>,
    entries: u64,
    pictures: u64,
    members: Vec<WrittenMember<'a>>,
}

#[derive(Serialize)]
#[serde(untagged)]
enum WrittenScope<'a> {
    Word(&'static str),
    Vehicle { vehicle: String },
    NewFor { new_for: &'a str },
    Unknown(()),
}

#[derive(Serialize)]
struct WrittenMember<'a> {
    name: &'a str,
    bytes: u64,
    sha256: String,
}

/// Refuses another format, and a newer container, whatever else the manifest holds.
pub(super) fn judge_version(json: &[u8]) -> Result<(), Refused> {
    let opening = parse(json)?;
    let format = text(&opening, "format")?;
    if format != FORMAT {
        let format = format.to_owned();
        return Err(Refused::OtherFormat { format });
    }
    match whole(&opening, "container")? {
        CONTAINER => Ok(()),
        0 => Err(Refused::NoSuchContainer { found: 0 }),
        found => Err(Refused::NewerContainer { found }),
    }
}

/// Reads a manifest whose version has been judged.
pub(super) fn read(json: &[u8]) -> Result<(Manifest, List), Refused> {
    let written = parse(json)?;
    let manifest = Manifest {
        made_at: short(&written, "made_at")?,
        device: short(&written, "device")?,
        scope: written.get("scope").and_then(scope),
        entries: whole(&written, "entries")?,
        pictures: whole(&written, "pictures")?,
    };
    match written.get("members") {
        Some(Json::List(members)) => Ok((manifest, list(members)?)),
        _ => Err(lacks("members", "a list")),
    }
}

/// The names of a list.
pub(super) fn names(list: &List) -> Names<'_> {
    list.iter().map(|(name, _)| name.as_str()).collect()
}

/// Writes a manifest; the members stand in it by name.
pub(super) fn write(manifest: &Manifest, list: &List) -> Vec<u8> {
    let written = Written {
        format: FORMAT,
        container: CONTAINER,
        made_at: &manifest.made_at,
        device: &manifest.device,
        scope: manifest
            .scope
            .as_ref()
            .map_or(WrittenScope::Unknown(()), written_scope),
        entries: manifest.entries,
        pictures: manifest.pictures,
        members: names(list)
            .iter()
            .filter_map(|(_, at)| list.get(*at))
            .map(written_member)
            .collect(),
    };
    // Text, numbers and lists of them always have a JSON form; writing to memory cannot fail.
    serde_json::to_vec(&written).unwrap_or_default()
}

fn parse(json: &[u8]) -> Result<Json, Refused> {
    let text = std::str::from_utf8(json).map_err(|error| unreadable(error.to_string()))?;
    Json::read(text).map_err(|fault| unreadable(fault.to_string()))
}

fn unreadable(why: String) -> Refused {
    Refused::ManifestUnreadable { why }
}

fn lacks(field: &str, what: &str) -> Refused {
    unreadable(format!("the field \"{field}\" is not {what}"))
}

fn text<'j>(object: &'j Json, field: &str) -> Result<&'j str, Refused> {
    let text = object.get(field).and_then(Json::text);
    text.ok_or_else(|| lacks(field, "a text"))
}

fn whole(object: &Json, field: &str) -> Result<u64, Refused> {
    let whole = object.get(field).and_then(Json::whole);
    whole.ok_or_else(|| lacks(field, "a whole number"))
}

fn short(object: &Json, field: &'static str) -> Result<String, Refused> {
    let text = text(object, field)?;
    if text.len() <= CLAIM_BYTES {
        return Ok(text.to_owned());
    }
    Err(Refused::ClaimTooLong {
        field,
        bytes: text.len(),
    })
}

fn list(members: &[Json]) -> Result<List, Refused> {
    let mut list = List::new();
    let listing = members.iter().try_for_each(|member| {
        list.push(listed(member)?);
        Ok(())
    });
    // A name met again is told before what is wrong further down.
    match names(&list).twice() {
        Some(name) => Err(Refused::ListedTwice { name }),
        None => listing.map(|()| list),
    }
}

fn listed(member: &Json) -> Result<(String, Listed), Refused> {
    let (name, sha256) = (text(member, "name")?, text(member, "sha256")?);
    let bytes = whole(member, "bytes")?;
    let digest = Digest::from_hex(sha256).ok_or_else(|| {
        unreadable(format!(
            "a sha256 is \"{}\"",
            super::sentence::shown(sha256)
        ))
    })?;
    Ok((name.to_owned(), Listed { bytes, digest }))
}

fn scope(value: &Json) -> Option<Scope> {
    if value.text() == Some("book") {
        return Some(Scope::Book);
    }
    let part = |key| value.get(key).and_then(Json::text);
    if let Some(vehicle) = part("vehicle") {
        return Digest::from_hex(vehicle).map(Scope::Vehicle);
    }
    let device = part("new_for")?;
    (device.len() <= CLAIM_BYTES).then(|| Scope::NewFor(device.to_owned()))
}

fn written_scope(scope: &Scope) -> WrittenScope<'_> {
    match scope {
        Scope::Book => WrittenScope::Word("book"),
        Scope::Vehicle(id) => WrittenScope::Vehicle { vehicle: id.hex() },
        Scope::NewFor(device) => WrittenScope::NewFor { new_for: device },
    }
}

fn written_member((name, listed): &(String, Listed)) -> WrittenMember<'_> {
    WrittenMember {
        name,
        bytes: listed.bytes,
        sha256: listed.digest.hex(),
    }
}

#[cfg(test)]
mod tests {
    use super::{List, Listed, Manifest, Refused, Scope, judge_version, read, write};
    use crate::daybook::Digest;

    fn manifest(scope: Option<Scope>) -> Manifest {
        Manifest {
            made_at: "2024-05-06T07:08:09+01:00".to_owned(),
            device: "00ff".to_owned(),
            scope,
            entries: 2,
            pictures: 1,
        }
    }

    #[test]
    fn what_is_written_is_read_back() {
        let listed = Listed {
            bytes: 3,
            digest: Digest::of(b"abc"),
        };
        let list = List::from([("entries.jsonl".to_owned(), listed)]);
        for scope in [
            Some(Scope::Book),
            Some(Scope::Vehicle(Digest::of(b"cart"))),
            Some(Scope::NewFor("0a0b".to_owned())),
            None,
        ] {
            let json = write(&manifest(scope.clone()), &list);
            assert_eq!(judge_version(&json), Ok(()));
            assert_eq!(read(&json), Ok((manifest(scope), list.clone())));
        }
    }

    #[test]
    fn a_manifest_looks_like_this() {
        let listed = Listed {
            bytes: 3,
            digest: Digest::of(b"abc"),
        };
        let list = List::from([("entries.jsonl".to_owned(), listed)]);
        let json = String::from_utf8(write(&manifest(Some(Scope::Book)), &list)).unwrap();
        insta::assert_snapshot!(json, @r#"{"format":"cartside exchange","container":1,"made_at":"2024-05-06T07:08:09+01:00","device":"00ff","scope":"book","entries":2,"pictures":1,"members":[{"name":"entries.jsonl","bytes":3,"sha256":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"}]}"#);
    }

    #[test]
    fn fields_of_a_later_version_are_passed_over() {
        let json = String::from_utf8(write(&manifest(Some(Scope::Book)), &List::new())).unwrap();
        let later = json
            .replacen('{', r#"{"smell":["tar",{"oak":1}],"#, 1)
            .replace(r#""book""#, r#"{"parish":"north"}"#);
        assert_eq!(read(later.as_bytes()).unwrap().0, manifest(None));
    }

    #[test]
    fn a_name_listed_twice_is_told_before_what_is_wrong_after_it() {
        let digest = Digest::of(b"abc").hex();
        let member = |name: &str| format!(r#"{{"name":"{name}","bytes":3,"sha256":"{digest}"}}"#);
        let told = |members: &[String]| {
            let json = String::from_utf8(write(&manifest(None), &List::new())).unwrap();
            let list = format!(r#""members":[{}]"#, members.join(","));
            read(json.replace(r#""members":[]"#, &list).as_bytes()).map(|(_, list)| list.len())
        };
        let (a, b, wrong) = (member("a"), member("b"), "{}".to_owned());
        let twice = |name: &str| {
            let name = name.to_owned();
            Err(Refused::ListedTwice { name })
        };
        assert_eq!(told(&[b.clone(), a.clone()]), Ok(2));
        let met_again = [b.clone(), a.clone(), a.clone(), wrong.clone(), b.clone()];
        assert_eq!(told(&met_again), twice("a"));
        let wrong_first = told(&[b.clone(), wrong, b]);
        assert!(matches!(
            wrong_first,
            Err(Refused::ManifestUnreadable { .. })
        ));
    }

    #[test]
    fn a_newer_container_is_judged_before_all_else() {
        let json = br#"{"format":"cartside exchange","container":2,"members":"elsewhere"}"#;
        assert_eq!(
            judge_version(json),
            Err(Refused::NewerContainer { found: 2 })
        );
    }
}
