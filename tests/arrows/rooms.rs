//! Rooms stand in reading order, and a room uses those above it, never one below.

use crate::source::{Token, core, tokens};

/// The rooms there are to be, in reading order; some may not be built yet.
const HOUSE: [&str; 10] = [
    "quantity",
    "material",
    "wheel",
    "mechanics",
    "tyring",
    "survey",
    "daybook",
    "diagnosis",
    "words",
    "paper",
];

/// The one room that knows how things are written out.
const PAPER: &str = "paper";

/// Words by which a room would write things out itself.
const WRITING_OUT: [&str; 4] = ["serde", "serde_json", "Serialize", "Deserialize"];

/// The rooms a crate declares, in order.
fn declared(lib: &str) -> Vec<String> {
    let (found, _) = tokens(lib);
    let declared = found.windows(4).filter_map(|four| match four {
        [
            Token::Word(public),
            Token::Word(module),
            Token::Word(room),
            Token::Sign(';'),
        ] if public == "pub" && module == "mod" => Some(room.clone()),
        _ => None,
    });
    declared.collect()
}

/// Where a path that starts at the crate leads: the room it names, or `{` where it names many at
/// once.
fn led_to(found: &[Token], depth: usize) -> Vec<String> {
    let mut rooms = Vec::new();
    for (at, token) in found.iter().enumerate() {
        let Some(mut rest) = after_crate(found, at, token, depth) else {
            continue;
        };
        if let [Token::Sign(':'), Token::Sign(':'), further @ ..] = rest {
            rest = further;
            match rest.first() {
                Some(Token::Word(room)) => rooms.push(room.clone()),
                _ => rooms.push("{".to_owned()),
            }
        }
    }
    rooms
}

/// What follows a `crate`, or as many `super` as lead up to the crate.
fn after_crate<'t>(
    found: &'t [Token],
    at: usize,
    token: &Token,
    depth: usize,
) -> Option<&'t [Token]> {
    let is = |token: &Token, word: &str| matches!(token, Token::Word(other) if other == word);
    if is(token, "crate") {
        return found.get(at + 1..);
    }
    let goes_on = at >= 2 && found[at - 2..at] == [Token::Sign(':'), Token::Sign(':')];
    if depth == 0 || goes_on || !is(token, "super") {
        return None;
    }
    let mut rest = found.get(at + 1..)?;
    for _ in 1..depth {
        match rest {
            [Token::Sign(':'), Token::Sign(':'), next, further @ ..] if is(next, "super") => {
                rest = further;
            }
            _ => return None,
        }
    }
    Some(rest)
}

/// Uses of a room by one that stands before it, and uses that do not say of what.
fn breaches(rooms: &[String], room: &str, depth: usize, text: &str) -> Vec<String> {
    let place = |room: &str| rooms.iter().position(|other| other == room);
    let (found, _) = tokens(text);
    let led_to = led_to(&found, depth).into_iter();
    led_to
        .filter(|to| to == "{" || to == "*" || place(to) > place(room))
        .collect()
}

/// Words by which this text writes things out.
fn writes_out(text: &str) -> Vec<String> {
    let (found, _) = tokens(text);
    let words = found.into_iter().filter_map(|token| match token {
        Token::Word(word) if WRITING_OUT.contains(&word.as_str()) => Some(word),
        _ => None,
    });
    words.collect()
}

fn rooms() -> Vec<String> {
    let lib = core()
        .into_iter()
        .find(|file| file.path == "lib.rs")
        .unwrap();
    declared(&lib.text)
}

#[test]
fn rooms_stand_in_reading_order() {
    let rooms = rooms();
    let expected: Vec<&str> = HOUSE
        .into_iter()
        .filter(|room| rooms.iter().any(|other| other == room))
        .collect();
    assert_eq!(rooms, expected);
    for file in core().iter().filter(|file| file.path != "lib.rs") {
        assert!(
            rooms.iter().any(|room| room == file.room()),
            "{} is in no room",
            file.path
        );
    }
}

#[test]
fn no_room_uses_one_that_stands_after_it() {
    let rooms = rooms();
    let mut found = Vec::new();
    for file in core()
        .iter()
        .filter(|file| !file.tests_only() && file.path != "lib.rs")
    {
        for to in breaches(&rooms, file.room(), file.depth(), &file.text) {
            found.push(format!("{} uses crate::{to}", file.path));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn only_paper_knows_how_things_are_written_out() {
    let mut found = Vec::new();
    for file in core()
        .iter()
        .filter(|file| !file.tests_only() && file.room() != PAPER)
    {
        for word in writes_out(&file.text) {
            found.push(format!("{} names {word}", file.path));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn a_use_of_a_later_room_is_found_however_it_is_written() {
    let rooms = declared("pub mod quantity;\npub mod wheel;\nmod hidden;\npub mod paper;\n");
    assert_eq!(rooms, ["quantity", "wheel", "paper"]);
    let lawful = [
        "use crate::quantity::Length;",
        "use crate::wheel::{Rim, Tyre};",
        "use super::position::Position;",
        "use super::super::quantity::Length;",
        "pub(crate) fn f() {}",
        "// crate::paper\nconst A: &str = \"crate::paper\";",
        "#[cfg(test)]\nmod tests { use crate::paper::line; }",
        "#[cfg(test)]\nuse crate::paper::line;",
    ];
    for text in lawful {
        assert!(breaches(&rooms, "wheel", 2, text).is_empty(), "{text}");
    }
    for text in [
        "use crate::paper::line;",
        "use crate :: paper;",
        "fn f() -> crate::paper::Line { todo() }",
        "fn f() { println!(\"{}\", crate::paper::LINE) }",
        "use super::super::paper::line;",
        "use crate::{quantity, wheel};",
        "use crate::*;",
        "use super::super::{quantity, wheel};",
    ] {
        assert_eq!(breaches(&rooms, "wheel", 2, text).len(), 1, "{text}");
    }
    assert_eq!(
        breaches(&rooms, "wheel", 1, "use super::paper::line;"),
        ["paper"]
    );
    assert!(breaches(&rooms, "paper", 2, "use crate::wheel::Rim;").is_empty());
}

#[test]
fn a_room_that_writes_out_is_found() {
    for text in [
        "use serde::Serialize;",
        "#[derive(Clone, Serialize)]\nstruct A;",
        "fn f() { serde_json::to_string(&1) }",
        "#[cfg_attr(feature = \"a\", derive(serde::Deserialize))]\nstruct A;",
    ] {
        assert!(!writes_out(text).is_empty(), "{text}");
    }
    assert!(writes_out("// serde\n#[cfg(test)]\nmod tests { use serde_json::Value; }").is_empty());
}
