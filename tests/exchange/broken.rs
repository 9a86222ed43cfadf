//! Broken files: each is refused for its own reason, in its own sentence, and nothing panics.

use std::collections::BTreeSet;
use std::mem::discriminant;

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::{Counted, Refused, UnsafeName, open};
use cartside_core::paper::line::LineRefusal;

use crate::book::{
    cart, files, jpeg, jsonl, manifest, members, picture_name, remark, truthful, with, with_lines,
    with_manifest, with_member, without,
};
use crate::bytes::{Member, counted_zip, zip};

/// A broken file: what to call it, its bytes, why it is refused, and words of the sentence.
pub(crate) struct Broken {
    pub(crate) name: &'static str,
    pub(crate) bytes: Vec<u8>,
    refused: Refused,
    words: &'static str,
}

fn broken(name: &'static str, bytes: Vec<u8>, refused: Refused, words: &'static str) -> Broken {
    Broken {
        name,
        bytes,
        refused,
        words,
    }
}

/// Every broken file there is.
pub(crate) fn all() -> Vec<Broken> {
    [
        not_zips(),
        manifests(),
        names(),
        packings(),
        contents(),
        lines(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Why a file is refused, whichever of the two steps refuses it.
pub(crate) fn refusal(bytes: &[u8]) -> Option<Refused> {
    open(bytes).and_then(|file| file.verify()).err()
}

#[test]
fn every_broken_file_is_refused_for_its_own_reason_in_its_own_sentence() {
    for Broken {
        name,
        bytes,
        refused,
        words,
    } in all()
    {
        let found = refusal(&bytes);
        assert_eq!(found.as_ref(), Some(&refused), "{name}");
        let sentence = refused.to_string();
        assert!(sentence.contains(words), "{name}: {sentence}");
        let end = "Nothing was brought in; your book is as it was.";
        assert!(sentence.ends_with(end), "{name}: {sentence}");
    }
}

#[test]
fn different_reasons_have_different_sentences() {
    let all = all();
    for one in &all {
        for other in &all {
            let same_reason = discriminant(&one.refused) == discriminant(&other.refused);
            assert!(
                same_reason || one.refused.to_string() != other.refused.to_string(),
                "{} and {}",
                one.name,
                other.name
            );
        }
    }
    let names: BTreeSet<_> = all.iter().map(|broken| broken.name).collect();
    assert_eq!(names.len(), all.len(), "names stand once");
}

#[test]
fn a_list_of_too_many_members_is_refused() {
    let many: Vec<_> = (0..20_000)
        .map(|n| Member::stored(&format!("{n}"), b""))
        .chain(members(&manifest(&files()), &files()))
        .collect();
    let said = many.len() as u64;
    let whole = zip(&many);
    assert_eq!(refusal(&whole), Some(Refused::TooManyMembers { said }));
    let said = 20_001;
    let understated = counted_zip(&many, 5);
    assert_eq!(
        refusal(&understated),
        Some(Refused::TooManyMembers { said })
    );
}

fn not_zips() -> Vec<Broken> {
    let good = truthful(&files());
    let half = good[..good.len() / 2].to_vec();
    let mut second_record = good.clone();
    let record = find(&good, b"PK\x01\x02", 1);
    second_record[record] = b'X';
    let count = members(&manifest(&files()), &files()).len() as u64;
    let members = members(&manifest(&files()), &files());
    vec![
        broken("empty", Vec::new(), Refused::Empty, "is empty"),
        broken("jpeg", jpeg("a cart"), Refused::Jpeg, "is a JPEG picture"),
        broken(
            "text",
            b"Dear Sir".to_vec(),
            Refused::NotZip,
            "is not a ZIP",
        ),
        broken("truncated", half, Refused::CutShort, "its end is missing"),
        broken(
            "directory-damaged",
            second_record,
            Refused::DirectoryBroken,
            "list of members at the end of this ZIP is damaged",
        ),
        broken(
            "one-more-said",
            counted_zip(&members, 6),
            Refused::DirectoryCount {
                said: 6,
                found: count,
            },
            "says it has 6 members and lists 5",
        ),
    ]
}

/// Where the pattern stands in the bytes for the time after `skip` times.
pub(crate) fn find(bytes: &[u8], pattern: &[u8], skip: usize) -> usize {
    let mut places = (0..bytes.len()).filter(|at| bytes[*at..].starts_with(pattern));
    places.nth(skip).expect("the pattern is there")
}

fn manifests() -> Vec<Broken> {
    let unreadable = |why: &str| Refused::ManifestUnreadable {
        why: why.to_owned(),
    };
    let alone = |json: &[u8]| zip(&[Member::stored("manifest.json", json)]);
    let mut strange = members(&manifest(&files()), &files());
    strange[0] = Member::stored(
        "manifest.json",
        br#"{"format":"cartside exchange","container":2,"members":17}"#,
    );
    strange.push(Member::stored("../entries.jsonl", b""));
    strange.push(Member::stored("../entries.jsonl", b""));
    vec![
        broken(
            "no-manifest",
            zip(&[Member::stored("letter.txt", b"Dear Sir")]),
            Refused::NoManifest,
            "it has no manifest.json",
        ),
        broken(
            "manifest-not-json",
            alone(b"{\"format\":"),
            unreadable("a value was expected at byte 10"),
            "cannot be read (a value",
        ),
        broken(
            "manifest-not-utf8",
            alone(b"\xFF{}"),
            unreadable("invalid utf-8 sequence of 1 bytes from index 0"),
            "invalid utf-8",
        ),
        broken(
            "manifest-without-members",
            with_manifest(&files(), |manifest| {
                manifest.as_object_mut().unwrap().remove("members");
            }),
            Refused::ManifestUnreadable {
                why: "the field \"members\" is not a list".to_owned(),
            },
            "\"members\" is not a list",
        ),
        broken(
            "manifest-with-a-short-digest",
            with_manifest(&files(), |manifest| {
                manifest["members"][0]["sha256"] = "abc".into();
            }),
            unreadable("a sha256 is \"abc\""),
            "a sha256 is \"abc\"",
        ),
        broken(
            "another-format",
            with_manifest(&files(), |manifest| manifest["format"] = "letters".into()),
            Refused::OtherFormat {
                format: "letters".to_owned(),
            },
            "says this file is a \"letters\"",
        ),
        broken(
            "newer-container",
            zip(&strange),
            Refused::NewerContainer { found: 2 },
            "written by a newer version",
        ),
        broken(
            "container-nought",
            with_manifest(&files(), |manifest| manifest["container"] = 0.into()),
            Refused::NoSuchContainer { found: 0 },
            "there are only 1 to 1",
        ),
        broken(
            "long-made-at",
            with_manifest(&files(), |manifest| {
                manifest["made_at"] = "9".repeat(65).into()
            }),
            Refused::ClaimTooLong {
                field: "made_at",
                bytes: 65,
            },
            "made_at has 65 bytes",
        ),
        broken(
            "listed-twice",
            with_manifest(&files(), |manifest| {
                let twice = manifest["members"][0].clone();
                manifest["members"].as_array_mut().unwrap().push(twice);
            }),
            Refused::ListedTwice {
                name: "entries.jsonl".to_owned(),
            },
            "lists \"entries.jsonl\" twice",
        ),
        broken(
            "entries-not-listed",
            with_manifest(&files(), |manifest| {
                manifest["members"].as_array_mut().unwrap().remove(0);
            }),
            Refused::EntriesNotListed,
            "does not list entries.jsonl",
        ),
        broken(
            "one-entry-fewer",
            with_manifest(&files(), |manifest| manifest["entries"] = 5.into()),
            Refused::CountDiffers {
                what: Counted::Entries,
                said: 5,
                found: 4,
            },
            "counts 5 entries",
        ),
        broken(
            "one-picture-more",
            with_manifest(&files(), |manifest| manifest["pictures"] = 0.into()),
            Refused::CountDiffers {
                what: Counted::Pictures,
                said: 0,
                found: 1,
            },
            "counts 0 pictures",
        ),
    ]
}

fn names() -> Vec<Broken> {
    let extra = |name: &[u8]| {
        let mut members = members(&manifest(&files()), &files());
        members.push(Member::stored("x", b"x").named(name));
        zip(&members)
    };
    let refused = |name: &str, fault| Refused::NameUnsafe {
        name: name.to_owned(),
        fault,
    };
    let unsafe_name = |case, name: &str, fault, words| {
        broken(case, extra(name.as_bytes()), refused(name, fault), words)
    };
    let long = "a".repeat(256);
    let picture = picture_name(&jpeg("spoke 3"));
    let missing = |name: &str| Refused::Missing {
        name: name.to_owned(),
    };
    let left_out = |name: &str| {
        let members = members(&manifest(&files()), &files());
        let kept: Vec<_> = members
            .into_iter()
            .filter(|member| member.name != name.as_bytes())
            .collect();
        zip(&kept)
    };
    vec![
        broken(
            "duplicate-name",
            extra(b"entries.jsonl"),
            Refused::DuplicateName {
                name: "entries.jsonl".to_owned(),
            },
            "Two members are named",
        ),
        broken(
            "duplicate-manifest",
            extra(b"manifest.json"),
            Refused::DuplicateName {
                name: "manifest.json".to_owned(),
            },
            "Two members are named \"manifest.json\"",
        ),
        unsafe_name(
            "parent",
            "pictures/../../a.jpg",
            UnsafeName::Parent,
            "climbs out",
        ),
        unsafe_name(
            "absolute",
            "/etc/passwd",
            UnsafeName::Absolute,
            "root of a disk",
        ),
        unsafe_name("drive", "C:/a.jpg", UnsafeName::Absolute, "root of a disk"),
        unsafe_name(
            "backslash",
            "..\\a.jpg",
            UnsafeName::Backslash,
            "holds a backslash",
        ),
        unsafe_name(
            "control",
            "a\u{7}.jpg",
            UnsafeName::Control,
            "does not print",
        ),
        unsafe_name("nameless", "", UnsafeName::Empty, "is no name"),
        broken(
            "long-name",
            extra(long.as_bytes()),
            refused(&long[..255], UnsafeName::TooLong),
            "longer than the 255 bytes",
        ),
        broken(
            "name-not-utf8",
            extra(b"ca\xFFrt"),
            Refused::NameNotText {
                name: "ca\u{FFFD}rt".to_owned(),
            },
            "is not UTF-8 text",
        ),
        broken(
            "missing-picture",
            left_out(&picture),
            missing(&picture),
            "is missing",
        ),
        broken(
            "missing-entries",
            left_out("entries.jsonl"),
            missing("entries.jsonl"),
            "\"entries.jsonl\" is missing",
        ),
        broken(
            "no-entries-at-all",
            truthful(&without(files(), "entries.jsonl")),
            missing("entries.jsonl"),
            "\"entries.jsonl\" is missing",
        ),
    ]
}

fn packings() -> Vec<Broken> {
    let entries = || "entries.jsonl".to_owned();
    let changed = |change: fn(&mut Member)| with_member(&files(), "entries.jsonl", change);
    let size = u32::try_from(files()[0].1.len()).unwrap();
    let differs = |said: u32| Refused::SizeDiffers {
        name: entries(),
        said: u64::from(said),
    };
    let deflated = |say: u32| {
        with_member(&files(), "entries.jsonl", |member| {
            *member = Member::deflated("entries.jsonl", &files()[0].1);
            member.size = say;
        })
    };
    let member_broken = || Refused::MemberBroken { name: entries() };
    vec![
        broken(
            "locked",
            changed(|member| member.flags |= 1),
            Refused::Encrypted { name: entries() },
            "locked with a password",
        ),
        broken(
            "another-method",
            changed(|member| member.method = 12),
            Refused::UnknownMethod {
                name: entries(),
                method: 12,
            },
            "packed by method 12",
        ),
        bomb(),
        large_picture(),
        large_manifest(),
        many_large_pictures(),
        overlapping(),
        broken(
            "says-less",
            deflated(size - 1),
            differs(size - 1),
            "does not unpack to the",
        ),
        broken(
            "says-more",
            deflated(size + 1),
            differs(size + 1),
            "does not unpack to the",
        ),
        broken(
            "stored-says-more",
            changed(|member| member.size += 1),
            differs(size + 1),
            "does not unpack to the",
        ),
        broken(
            "not-deflated",
            changed(|member| {
                member.method = 8;
                member.packed = vec![0xFF; 64];
            }),
            member_broken(),
            "is damaged and cannot be unpacked",
        ),
        broken(
            "own-name-differs",
            changed(|member| member.own_name = b"another.jsonl".to_vec()),
            member_broken(),
            "is damaged and cannot be unpacked",
        ),
        broken(
            "lies-outside",
            changed(|member| member.claimed_offset = Some(0x7FFF_FFFF)),
            member_broken(),
            "is damaged and cannot be unpacked",
        ),
        broken(
            "crc-differs",
            changed(|member| member.crc ^= 1),
            Refused::CrcDiffers { name: entries() },
            "its CRC differs",
        ),
    ]
}

fn bomb() -> Broken {
    let zeros = vec![b' '; 1_000_000];
    let packed = Member::deflated("entries.jsonl", &zeros);
    let bytes = with_member(
        &with(files(), "entries.jsonl", zeros),
        "entries.jsonl",
        |member| {
            *member = packed.clone();
        },
    );
    let refused = Refused::TooCompressed {
        name: "entries.jsonl".to_owned(),
        packed: packed.packed.len() as u64,
        unpacked: 1_000_000,
    };
    broken("bomb", bytes, refused, "times the packed size is believed")
}

fn large_picture() -> Broken {
    let name = picture_name(&jpeg("spoke 3"));
    let bytes = with_member(&files(), &name, |member| member.size = 16_000_001);
    let refused = Refused::MemberTooLarge {
        name,
        bytes: 16_000_001,
        allowed: 16_000_000,
    };
    broken("large-picture", bytes, refused, "at most 16 MB are allowed")
}

fn large_manifest() -> Broken {
    let bytes = with_member(&files(), "manifest.json", |member| member.size = 8_000_001);
    let refused = Refused::MemberTooLarge {
        name: "manifest.json".to_owned(),
        bytes: 8_000_001,
        allowed: 8_000_000,
    };
    broken(
        "large-manifest",
        bytes,
        refused,
        "at most 8000 kB are allowed",
    )
}

/// Sixty-three pictures that each say they have as much as a picture may, which is too much
/// together.
fn many_large_pictures() -> Broken {
    let mut files = files();
    for n in 0..62 {
        let picture = jpeg(&n.to_string());
        files.push((picture_name(&picture), picture));
    }
    let mut members = members(&manifest(&files), &files);
    let mut bytes = 0;
    for member in members
        .iter_mut()
        .filter(|member| member.name.starts_with(b"pictures/"))
    {
        member.size = 16_000_000;
        bytes += 16_000_000;
    }
    let bytes = bytes + files[0].1.len() as u64;
    let refused = Refused::UnpacksTooLarge { bytes };
    broken(
        "large-together",
        zip(&members),
        refused,
        "at most 1000 MB are read",
    )
}

/// A picture that lies inside another one's bytes.
fn overlapping() -> Broken {
    let inner = jpeg("inner");
    let inner_member = Member::stored(&picture_name(&inner), &inner);
    let outer = [&jpeg("outer")[..], &inner_member.local()].concat();
    let (inner_name, outer_name) = (picture_name(&inner), picture_name(&outer));
    let files = with(
        with(files(), &outer_name, outer.clone()),
        &inner_name,
        inner,
    );
    let mut members = members(&manifest(&files), &files);
    let lies_at = |bytes: &[u8]| u32::try_from(find(bytes, &outer, 0)).unwrap();
    let start = lies_at(&zip(&members)) + u32::try_from(jpeg("outer").len()).unwrap();
    let last = members.last_mut().unwrap();
    last.claimed_offset = Some(start);
    last.only_listed = true;
    let refused = Refused::Overlap {
        name: outer_name,
        other: inner_name,
    };
    broken(
        "overlapping",
        zip(&members),
        refused,
        "share the same bytes",
    )
}

fn contents() -> Vec<Broken> {
    let picture = picture_name(&jpeg("spoke 3"));
    let other = jpeg("spoke 4");
    let text = b"no picture".to_vec();
    let named = |name: &str| name.to_owned();
    let swapped = |name: &str, bytes: &[u8]| {
        with_member(&files(), name, |member| {
            *member = Member::stored(name, bytes)
        })
    };
    let mut same_size = files()[0].1.clone();
    *same_size.iter_mut().rfind(|byte| **byte == b'4').unwrap() = b'5';
    let misnamed = picture_name(b"another");
    vec![
        broken(
            "another-size-listed",
            swapped(&picture, &jpeg("spoke 33")),
            Refused::ListedSizeDiffers {
                name: picture.clone(),
                listed: 13,
                found: 14,
            },
            "has 14 bytes; the manifest lists 13 bytes",
        ),
        broken(
            "wrong-digest-of-entries",
            swapped("entries.jsonl", &same_size),
            Refused::DigestDiffers {
                name: named("entries.jsonl"),
            },
            "\"entries.jsonl\" is not the one the manifest lists",
        ),
        broken(
            "wrong-digest-of-a-picture",
            swapped(&picture, &other),
            Refused::DigestDiffers {
                name: picture.clone(),
            },
            "is not the one the manifest lists",
        ),
        broken(
            "misnamed-picture",
            truthful(&with(files(), &misnamed, other.clone())),
            Refused::PictureMisnamed {
                name: misnamed,
                found: Digest::of(&other),
            },
            "a picture is named by its SHA-256",
        ),
        broken(
            "picture-not-jpeg",
            truthful(&with(files(), &picture_name(&text), text.clone())),
            Refused::PictureNotJpeg {
                name: picture_name(&text),
            },
            "does not begin as a JPEG",
        ),
        broken(
            "entries-not-utf8",
            truthful(&with(
                files(),
                "entries.jsonl",
                b"{\"a\":\"\xFF\"}\n".to_vec(),
            )),
            Refused::EntriesNotText { at: 6 },
            "stops being UTF-8 text at byte 6",
        ),
    ]
}

fn lines() -> Vec<Broken> {
    let nested = |depth: usize| {
        let says = format!("{}1{}", "[".repeat(depth), "]".repeat(depth));
        cart().replacen('{', &format!("{{\"later\":{says},"), 1)
    };
    let second = |line: String| truthful(&with_lines(files(), &[cart(), line]));
    let refused = |why| Refused::Line { number: 2, why };
    let not_json = |why: &str| refused(LineRefusal::NotJson(why.to_owned()));
    let long = remark(&"x".repeat(65_536), 2);
    let blank = truthful(&with(
        files(),
        "entries.jsonl",
        [&jsonl(&[cart()])[..], b"\n"].concat(),
    ));
    vec![
        broken(
            "line-too-long",
            second(long.clone()),
            refused(LineRefusal::TooLong(long.len())),
            "at most 65536 are allowed",
        ),
        broken(
            "seventeen-deep",
            second(nested(16)),
            refused(LineRefusal::TooDeep(17)),
            "nested 17 deep",
        ),
        broken(
            "blank-line",
            blank,
            not_json("a value was expected at byte 0"),
            "Line 2 of entries.jsonl",
        ),
        broken(
            "line-not-an-object",
            second("[]".to_owned()),
            refused(LineRefusal::NotAnObject),
            "not an object",
        ),
        broken(
            "two-objects-on-a-line",
            second(cart() + &cart()),
            not_json(&format!("the end was expected at byte {}", cart().len())),
            "the end was expected",
        ),
        broken(
            "carriage-return",
            second(cart() + "\r"),
            refused(LineRefusal::LineBreak),
            "holds a line break",
        ),
        broken(
            "line-without-a-kind",
            second(cart().replace(r#""kind":"vehicle","#, "")),
            refused(LineRefusal::Missing("kind")),
            "“kind” is missing",
        ),
    ]
}
