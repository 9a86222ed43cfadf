//! Files that are good, and what is said of those that are good but odd.

use cartside_core::daybook::Digest;
use cartside_core::paper::exchange::{Scope, Warning, WhyLeftOut, open};
use serde_json::json;

use crate::book::{
    cart, erasure, files, jpeg, manifest, members, picture_line, picture_name, remark, truthful,
    visit, with, with_lines, with_manifest, with_member, without,
};
use crate::bytes::{Member, zip};

/// The warnings of a file that is good.
fn warnings(bytes: &[u8]) -> Vec<Warning> {
    open(bytes).unwrap().verify().unwrap().warnings().to_vec()
}

fn not_as_listed(name: &str) -> Vec<Warning> {
    let name = name.to_owned();
    vec![Warning::NotAsListed { name }]
}

#[test]
fn a_good_file_shows_its_lines_and_pictures_and_no_warning() {
    let bytes = truthful(&files());
    let verified = open(&bytes).unwrap().verify().unwrap();
    let picture = jpeg("spoke 3");
    let lines = [
        cart(),
        visit(),
        picture_line(&picture, 3),
        remark("Split at the dowel; ½″ long. \"Bad\"", 4),
    ];
    let found: Vec<_> = verified
        .entries()
        .map(|(_, line)| line.to_owned())
        .collect();
    assert_eq!(found, lines);
    for (entry, line) in verified.entries() {
        assert_eq!(entry.id, Digest::of(line.as_bytes()));
    }
    assert_eq!(verified.pictures().len(), 1);
    assert_eq!(verified.pictures()[0].digest, Digest::of(&picture));
    assert_eq!(verified.pictures()[0].bytes, picture);
    assert_eq!(verified.warnings(), []);
    assert_eq!(verified.manifest().made_at, "2024-05-06T17:18:19+01:00");
    assert_eq!(verified.manifest().scope, Some(Scope::Book));
}

#[test]
fn deflated_members_give_the_same() {
    let files = files();
    let mut packed = vec![Member::deflated(
        "manifest.json",
        manifest(&files).to_string().as_bytes(),
    )];
    packed.extend(
        files
            .iter()
            .map(|(name, bytes)| Member::deflated(name, bytes)),
    );
    let bytes = zip(&packed);
    let verified = open(&bytes).unwrap().verify().unwrap();
    assert_eq!(verified.entries().count(), 4);
    assert_eq!(verified.pictures()[0].bytes, jpeg("spoke 3"));
    assert_eq!(verified.warnings(), []);
}

#[test]
fn a_book_without_entries_is_a_book() {
    let empty = vec![("entries.jsonl".to_owned(), Vec::new())];
    let bytes = truthful(&empty);
    assert_eq!(open(&bytes).unwrap().verify().unwrap().entries().count(), 0);
    let files = empty;
    let mut members = members(&manifest(&files), &files);
    members[1] = Member::deflated("entries.jsonl", b"");
    let bytes = zip(&members);
    assert_eq!(open(&bytes).unwrap().verify().unwrap().entries().count(), 0);
}

#[test]
fn the_last_line_feed_may_be_missing() {
    let bytes = truthful(&with(files(), "entries.jsonl", cart().into_bytes()));
    let verified = open(&bytes).unwrap().verify().unwrap();
    assert_eq!(verified.entries().next().unwrap().1, cart());
}

#[test]
fn sixteen_deep_and_sixty_four_kilobytes_are_allowed() {
    let deep = format!("{}1{}", "[".repeat(15), "]".repeat(15));
    let deep = cart().replacen('{', &format!("{{\"later\":{deep},"), 1);
    let around = remark("", 3).len();
    let long = remark(&"x".repeat(65_536 - around), 3);
    assert_eq!(long.len(), 65_536);
    let bytes = truthful(&with_lines(files(), &[cart(), deep, long]));
    assert_eq!(open(&bytes).unwrap().verify().unwrap().entries().count(), 3);
}

#[test]
fn what_stands_before_and_after_the_zip_is_passed_over() {
    let good = truthful(&files());
    let before = [b"#!/bin/sh\n", &good[..]].concat();
    assert_eq!(warnings(&before), []);
    let mut remark = good.clone();
    let length = remark.len();
    remark[length - 2] = 2;
    remark.extend(b"hi");
    assert_eq!(warnings(&remark), []);
}

#[test]
fn folders_are_passed_over() {
    let mut members = members(&manifest(&files()), &files());
    members.push(Member::stored("pictures/", b""));
    assert_eq!(warnings(&zip(&members)), []);
}

#[test]
fn a_member_that_is_not_known_is_left_out() {
    for name in ["sketch.svg", "pictures/cart.jpg"] {
        let bytes = with_manifest(&with(files(), name, jpeg("cart")), |manifest| {
            manifest["pictures"] = 1.into();
        });
        let name = name.to_owned();
        let why = WhyLeftOut::Unknown;
        assert_eq!(warnings(&bytes), [Warning::LeftOut { name, why }]);
    }
}

#[test]
fn a_member_that_is_not_listed_is_left_out_even_when_it_is_a_picture() {
    let picture = jpeg("slipped in");
    let name = picture_name(&picture);
    let mut members = members(&manifest(&files()), &files());
    members.push(Member::stored(&name, &picture));
    let bytes = zip(&members);
    let why = WhyLeftOut::NotListed;
    assert_eq!(warnings(&bytes), [Warning::LeftOut { name, why }]);
    assert_eq!(open(&bytes).unwrap().verify().unwrap().pictures().len(), 1);
}

#[test]
fn an_unlisted_bomb_is_never_unpacked() {
    let mut members = members(&manifest(&files()), &files());
    let mut bomb = Member::deflated("bomb", &[0; 100_000]);
    bomb.size = u32::MAX - 1;
    members.push(bomb);
    let left_out = Warning::LeftOut {
        name: "bomb".to_owned(),
        why: WhyLeftOut::NotListed,
    };
    assert_eq!(warnings(&zip(&members)), [left_out]);
}

#[test]
fn faults_of_members_for_people_only_warn() {
    let changes: [fn(&mut Member); 6] = [
        |member| *member = Member::stored("readings.csv", b"part,SAYS\r\n"),
        |member| *member = Member::stored("readings.csv", b"short"),
        |member| member.crc ^= 1,
        |member| member.flags |= 1,
        |member| member.method = 12,
        |member| member.size = u32::MAX - 1,
    ];
    for (at, change) in changes.into_iter().enumerate() {
        let bytes = with_member(&files(), "readings.csv", change);
        assert_eq!(
            warnings(&bytes),
            not_as_listed("readings.csv"),
            "change {at}"
        );
    }
    let bytes = with_member(&files(), "READ-ME.txt", |member| {
        *member = Member::stored("READ-ME.txt", b"Send money.");
    });
    assert_eq!(warnings(&bytes), not_as_listed("READ-ME.txt"));
}

#[test]
fn members_for_people_may_be_missing() {
    let members: Vec<_> = members(&manifest(&files()), &files())
        .into_iter()
        .filter(|member| member.name != b"READ-ME.txt")
        .collect();
    let name = "READ-ME.txt".to_owned();
    assert_eq!(
        warnings(&zip(&members)),
        [Warning::ListedButAbsent { name }]
    );
    let never_listed = without(without(files(), "READ-ME.txt"), "readings.csv");
    assert_eq!(warnings(&truthful(&never_listed)), []);
}

#[test]
fn a_line_that_stands_twice_is_one_entry() {
    let bytes = truthful(&with_lines(
        without_picture(),
        &[cart(), visit(), cart(), cart()],
    ));
    assert_eq!(warnings(&bytes), [Warning::LinesRepeated { count: 2 }]);
    assert_eq!(open(&bytes).unwrap().verify().unwrap().entries().count(), 2);
}

#[test]
fn a_picture_may_be_absent_unused_or_erased() {
    let picture = jpeg("spoke 3");
    let digest = Digest::of(&picture);
    assert_eq!(
        warnings(&truthful(&without_picture())),
        [Warning::PictureAbsent { digest }]
    );
    let silent = with_lines(files(), &[cart()]);
    assert_eq!(
        warnings(&truthful(&silent)),
        [Warning::PictureUnused { digest }]
    );
    let erased = [cart(), picture_line(&picture, 2), erasure(&picture, 3)];
    let erased = with_lines(without_picture(), &erased);
    assert_eq!(warnings(&truthful(&erased)), []);
}

#[test]
fn a_manifest_may_say_more_than_this_version_knows() {
    let bytes = with_manifest(&files(), |manifest| {
        manifest["weather"] = json!({ "rain": [1, 2] });
        manifest["scope"] = json!({ "parish": "north" });
        manifest["members"][0]["mood"] = json!("fair");
    });
    let verified = open(&bytes).unwrap().verify().unwrap();
    assert_eq!(verified.manifest().scope, None);
    assert_eq!(verified.warnings(), []);
}

#[test]
fn a_manifest_may_hold_a_part_of_a_book() {
    let cart = Digest::of(cart().as_bytes());
    for (written, scope) in [
        (json!({ "vehicle": cart.hex() }), Scope::Vehicle(cart)),
        (json!({ "new_for": "0a" }), Scope::NewFor("0a".to_owned())),
    ] {
        let bytes = with_manifest(&files(), |manifest| manifest["scope"] = written);
        let verified = open(&bytes).unwrap().verify().unwrap();
        assert_eq!(verified.manifest().scope, Some(scope));
    }
}

fn without_picture() -> crate::book::Files {
    without(files(), &picture_name(&jpeg("spoke 3")))
}
