//! What is no line, and the sentence that says why.

use proptest::prelude::*;

use super::golden::{GOLDEN, NEWER};
use crate::daybook::entry::GREATEST_N;
use crate::daybook::report::LONGEST_REPORT;
use crate::daybook::{Digest, Hand, Kind, Report, Says, Stamp, Unwritten};
use crate::paper::line::{self, DEEPEST, LONGEST_LINE, LineRefusal, MOST_REPLACED};
use crate::quantity::length::millimetres;
use crate::survey::{Answer, Question, Reading, Slot};
use crate::wheel::{Part, Place, Position};

const ID: &str = "00000000000000000000000000000000000000000000000000000000000000aa";

/// A remark, into which other text is put.
fn remark() -> String {
    format!(
        r#"{{"cartside":1,"kind":"remark","vehicle":"{ID}","slot":"vehicle","says":{{"text":"wet"}},"by":"","device":"d","at":"2026-11-25T10:03:00+00:00","n":1}}"#
    )
}

fn with(from: &str, to: &str) -> String {
    let line = remark();
    assert!(line.contains(from), "{from}");
    line.replacen(from, to, 1)
}

/// A reading that says this.
fn reading(says: &str) -> String {
    with(
        r#""kind":"remark""#,
        &format!(r#""kind":"reading","visit":"{ID}""#),
    )
    .replacen(
        r#""slot":"vehicle""#,
        r#""slot":"near/spoke-3/spoke-foot""#,
        1,
    )
    .replacen(r#"{"text":"wet"}"#, says, 1)
}

fn sentence(line: &str) -> String {
    line::read(line).unwrap_err().to_string()
}

#[test]
fn the_plain_line_is_read() {
    let entry = line::read(&remark()).unwrap();
    assert_eq!(entry.says, Says::Remark(Part::Vehicle, "wet".to_owned()));
}

#[test]
fn each_refusal_has_its_sentence() {
    use insta::assert_snapshot as shows;
    let long = with("wet", &"w".repeat(LONGEST_LINE));
    shows!(sentence(&long), @"the line has 65739 bytes; at most 65536 are allowed");
    shows!(sentence(&with("wet", "w\net")), @"the line holds a line break; an entry is one line");
    let deep = with(
        r#""n""#,
        &format!(r#""x":{}1{},"n""#, "[".repeat(16), "]".repeat(16)),
    );
    shows!(sentence(&deep), @"the line is nested 17 deep; at most 16 is allowed");
    shows!(sentence("{"), @"the line is not JSON: a text was expected at byte 1");
    shows!(sentence("[1]"), @"the line is JSON but not an object; an entry is one object");
    shows!(sentence(&with(r#""n":1"#, r#""n":1,"n":2"#)), @"the field “n” stands twice; each may stand once");
    shows!(sentence(&with(r#""kind":"remark","#, "")), @"the field “kind” is missing");
    shows!(sentence(&with(r#""n":1"#, r#""n":0"#)), @"the field “n” holds “0”; allowed is 1 to 1000000000000");
    shows!(sentence(&with(r#""n":1"#, r#""n":1.5"#)), @"the field “n” holds “1.5”; allowed is a whole number from 0");
    shows!(sentence(&with(r#""cartside":1"#, r#""cartside":0"#)), @"the field “cartside” holds “0”; allowed is 1 or more");
    shows!(sentence(&with("2026-11-25", "yesterday")), @"the field “at” holds “yesterdayT10:03:00+00:00”; allowed is a time like 2026-11-25T10:03:00+00:00");
    shows!(sentence(&with(r#""by":"""#, r#""by":null"#)), @"the field “by” holds “null”; allowed is a text");
    shows!(sentence(&with(r#""by""#, r#""struck":"yes","by""#)), @"the field “struck” holds “\"yes\"”; allowed is true or false");
    shows!(sentence(&with(r#"{"text":"wet"}"#, r#""wet""#)), @"the field “says” holds “\"wet\"”; allowed is an object");
    shows!(sentence(&with(ID, "AA")), @"the field “vehicle” holds “AA”; allowed is 64 hexadecimal digits in lower case");
    shows!(sentence(&with(r#""n""#, r#""replaces":"x","n""#)), @"the field “replaces” holds “\"x\"”; allowed is a list of digests");
    let many = format!(
        r#""replaces":[{}],"n""#,
        [format!("\"{ID}\"").as_str(); 65].join(",")
    );
    shows!(sentence(&with(r#""n""#, &many)), @"the line replaces 65 entries; at most 64 are allowed");
    shows!(sentence(&with(r#""by""#, r#""struck":true,"by""#)), @"the line both says something and strikes out; it may do one of them");
    let wheel = remark()
        .replace("remark", "wheel")
        .replace(r#""slot":"vehicle""#, r#""slot":"near""#);
    let rim =
        |felloes: &str| wheel.replace(r#"{"text":"wet"}"#, &format!(r#"{{"felloes":{felloes}}}"#));
    shows!(sentence(&rim("2")), @"the field “felloes” holds “2”; allowed is a list of whole numbers");
    shows!(sentence(&rim("[2,-1]")), @"the field “felloes” holds “-1”; allowed is a list of whole numbers");
    shows!(sentence(&rim("[2,70000]")), @"the field “felloes” holds “[2, 70000]”; allowed is 1 to 32 felloes that carry 3 to 64 spokes, each at least one");
    shows!(sentence(&reading(r#"{"answer":"over","mm":20000.01}"#)), @"the field “mm” holds “20000.01”; allowed is -20000 to 20000 millimetres");
    shows!(sentence(&reading(r#"{"answer":"over","mm":"5"}"#)), @"the field “mm” holds “\"5\"”; allowed is a number");
    shows!(sentence(&reading(r#"{"answer":"length","mm":5,"doubt_mm":-1}"#)), @"the field “doubt_mm” holds “-1”; allowed is a length from 0");
    shows!(sentence(&reading(r#"{"answer":"share","percent":100.01}"#)), @"the field “percent” holds “100.01”; allowed is 0 to 100");
    shows!(sentence(&reading(r#"{"answer":"share"}"#)), @"the field “percent” is missing");
    let sized = |sizes: &str| rim("[2,2]").replace("]}", &format!(r#"],"sizes_mm":{sizes}}}"#));
    shows!(sentence(&sized(r#"{"dish":"12"}"#)), @r#"the field “dish” holds “"12"”; allowed is a number"#);
    shows!(sentence(&sized(r#"{"dish":-20000.5}"#)), @"the field “dish” holds “-20000.5”; allowed is -20000 to 20000 millimetres");
    shows!(sentence(&sized("12")), @"the field “sizes_mm” holds “12”; allowed is an object");
    shows!(sentence(&remark().replace("remark", "erasure")), @"the field “slot” holds “vehicle”; allowed is 64 hexadecimal digits in lower case");
    let limit = |says: &str| {
        let line = with(&format!(r#""vehicle":"{ID}","#), "").replace("remark", "limit");
        let line = line.replace(r#""slot":"vehicle""#, r#""slot":"tyre-gap/note/sum""#);
        line.replace(r#"{"text":"wet"}"#, says)
    };
    shows!(sentence(&limit("{}")), @"the field “mm, percent, count or off” is missing");
    shows!(sentence(&limit(r#"{"mm":1,"off":true}"#)), @"the field “says” holds “mm, off”; allowed is one of mm, percent, count and off");
    shows!(sentence(&limit(r#"{"percent":101}"#)), @"the field “percent” holds “101”; allowed is 0 to 100");
    shows!(sentence(&limit(r#"{"off":false}"#)), @"the field “off” holds “false”; allowed is true");
    let work = remark().replace("remark", "work");
    shows!(sentence(&work.replace(r#"{"text":"wet"}"#, r#"{"did":["cut",1]}"#)), @"the field “did” holds “[\"cut\",1]”; allowed is a list of texts");
    let decided = work.replace(r#""work""#, &format!(r#""decision","visit":"{ID}""#));
    let decided = decided.replace(r#""slot":"vehicle""#, r#""slot":"near/whole/decision""#);
    let says =
        r#"{"standing":"keep-empty","proposed":"keep-empty","look_again":"May","signed":""}"#;
    shows!(sentence(&decided.replace(r#"{"text":"wet"}"#, says)), @"the field “look_again” holds “May”; allowed is a day like 2026-11-25");
    let much = "7".repeat(41);
    shows!(sentence(&with("2026-11-25T10:03:00+00:00", &much)), @"the field “at” holds “7777777777777777777777777777777777777777…”; allowed is a time like 2026-11-25T10:03:00+00:00");
}

#[test]
fn what_a_line_must_hold() {
    for field in ["cartside", "kind", "slot", "by", "device", "at", "n"] {
        let without = with(&format!("\"{field}\":"), &format!("\"no-{field}\":"));
        assert_eq!(line::read(&without), Err(LineRefusal::Missing(field)));
    }
    let no_vehicle = with("\"vehicle\":", "\"no-vehicle\":");
    assert_eq!(
        line::read(&no_vehicle),
        Err(LineRefusal::Missing("vehicle"))
    );
    let no_visit = reading(r#"{"answer":"yes"}"#).replace("\"visit\":", "\"no-visit\":");
    assert_eq!(line::read(&no_visit), Err(LineRefusal::Missing("visit")));
    let silent = with(r#""says":{"text":"wet"},"#, "");
    assert_eq!(line::read(&silent), Err(LineRefusal::Missing("says")));
}

#[test]
fn the_longest_line_is_read_and_one_byte_more_is_not() {
    let padding = LONGEST_LINE - remark().len() + "wet".len();
    let longest = with("wet", &"w".repeat(padding));
    assert_eq!(longest.len(), LONGEST_LINE);
    assert!(line::read(&longest).is_ok());
    let longer = with("wet", &"w".repeat(padding + 1));
    assert_eq!(
        line::read(&longer),
        Err(LineRefusal::TooLong(LONGEST_LINE + 1))
    );
    let bytes_not_characters = with("wet", &"é".repeat(padding / 2 + 1));
    assert!(matches!(
        line::read(&bytes_not_characters),
        Err(LineRefusal::TooLong(_))
    ));
}

#[test]
fn brackets_may_be_nested_sixteen_deep() {
    let nested = |open: &str, close: &str, deep: usize| {
        // The line itself is the first bracket.
        let (open, close) = (open.repeat(deep - 1), close.repeat(deep - 1));
        line::read(&with(r#""n""#, &format!(r#""x":{open}1{close},"n""#)))
    };
    for (open, close) in [("[", "]"), (r#"{"x":"#, "}")] {
        assert_eq!(nested(open, close, DEEPEST).unwrap().unread_fields, 1);
        assert_eq!(
            nested(open, close, DEEPEST + 1),
            Err(LineRefusal::TooDeep(DEEPEST + 1))
        );
    }
    let in_text = with("wet", &"[{\\\"[".repeat(100));
    assert!(line::read(&in_text).is_ok(), "brackets in a text are text");
    let hostile = "[".repeat(LONGEST_LINE);
    assert_eq!(
        line::read(&hostile),
        Err(LineRefusal::TooDeep(LONGEST_LINE))
    );
}

#[test]
fn counters_and_forms_keep_to_their_range() {
    let n = |n: &str| line::read(&with(r#""n":1"#, &format!(r#""n":{n}"#)));
    assert_eq!(n(&GREATEST_N.to_string()).unwrap().n, GREATEST_N);
    let beyond = (GREATEST_N + 1).to_string();
    for given in [
        beyond.as_str(),
        "0",
        "-1",
        "1.0",
        "1e3",
        "18446744073709551616",
        "\"1\"",
    ] {
        assert!(
            matches!(n(given), Err(LineRefusal::Wrong { field: "n", .. })),
            "{given}"
        );
    }
    let newest = with(r#""cartside":1"#, &format!(r#""cartside":{}"#, u64::MAX));
    assert_eq!(line::read(&newest).unwrap().says, Says::Unread);
}

#[test]
fn a_field_that_stands_twice_is_refused_wherever_it_stands() {
    let twice = |line: &str, field: &str| {
        assert_eq!(
            line::read(line),
            Err(LineRefusal::Twice(field.to_owned())),
            "{line}"
        );
    };
    twice(&with(r#""by":"""#, r#""by":"","by":"""#), "by");
    twice(&with(r#""by":"""#, r#""by":"","\u0062y":"x""#), "by");
    twice(
        &with(r#"{"text":"wet"}"#, r#"{"text":"wet","text":"dry"}"#),
        "text",
    );
    twice(
        &with(r#""n":1"#, r#""new":[{"a":{"b":1,"b":1}}],"n":1"#),
        "b",
    );
    let apart = with(r#""n":1"#, r#""new":[{"a":1},{"a":1}],"a":{"a":1},"n":1"#);
    assert_eq!(line::read(&apart).unwrap().unread_fields, 2);
}

#[test]
fn a_text_may_hold_any_character_that_json_lets_it_hold() {
    let text = |json: &str| line::read(&with("wet", json)).map(|entry| entry.says);
    let said = |text: &str| Ok(Says::Remark(Part::Vehicle, text.to_owned()));
    assert_eq!(
        text("\u{2028}\u{2029}\u{feff}\u{7f}"),
        said("\u{2028}\u{2029}\u{feff}\u{7f}")
    );
    assert_eq!(text(r"\u0000\n\r\u2028"), said("\0\n\r\u{2028}"));
    assert_eq!(text(r"\ud83d\udedE"), said("\u{1f6de}"));
    for control in ["\0", "\t", "\u{1f}"] {
        assert!(
            matches!(text(control), Err(LineRefusal::NotJson(_))),
            "{control:?}"
        );
    }
    for lone in [r"\ud83d", r"\ude9e", r"\ud83d\ud83d", r"\ud83dx", r"\u12"] {
        assert!(matches!(text(lone), Err(LineRefusal::NotJson(_))), "{lone}");
    }
}

#[test]
fn nothing_but_the_object_stands_on_a_line() {
    let line = remark();
    for odd in [
        format!("\u{feff}{line}"),
        format!("{line}{line}"),
        format!("{line},"),
        format!("{line}\0"),
        String::new(),
        with(r#""n":1"#, r#""n":1,"#),
        with(r#""n":1"#, r#""n":NaN"#),
        with(r#""n":1"#, r#""x":1e999,"n":1"#),
    ] {
        assert!(
            matches!(line::read(&odd), Err(LineRefusal::NotJson(_))),
            "{odd}"
        );
    }
    assert_eq!(line::read("null"), Err(LineRefusal::NotAnObject));
    let spaced = format!(" {line}\t");
    assert_ne!(
        line::read(&spaced).unwrap().id,
        line::read(&line).unwrap().id
    );
}

fn hand() -> Hand {
    Hand {
        by: String::new(),
        device: "d".to_owned(),
        at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
        n: 1,
    }
}

/// What cannot be read back is not written: not a text too long, not a length without end, not what
/// was never read, not what stands in a slot that is none.
#[test]
fn what_could_not_be_read_back_is_not_written() {
    let id = Digest::from_hex(ID).unwrap();
    let over = |v| {
        let slot = Slot {
            position: Position::Near,
            place: Place::Joint(1),
            question: Question::JointGap,
        };
        let answer = Answer::Over(millimetres(v));
        let written = String::new();
        let says = Says::Reading(Reading {
            slot,
            answer,
            written,
        });
        Unwritten::new(Some(id), says).unwrap().in_visit(id)
    };
    let write = |entry: &Unwritten| line::write(entry, &hand());
    assert!(write(&over(20_000.0)).is_ok());
    for v in [20_000.01, f64::NAN, f64::INFINITY] {
        assert!(
            matches!(write(&over(v)), Err(LineRefusal::Wrong { field: "mm", .. })),
            "{v}"
        );
    }
    let long = Says::Remark(Part::Vehicle, "w".repeat(LONGEST_LINE));
    let long = Unwritten::new(Some(id), long).unwrap();
    assert!(matches!(write(&long), Err(LineRefusal::TooLong(_))));
    let unread = Unwritten {
        says: Says::Unread,
        ..over(1.0)
    };
    assert_eq!(write(&unread), Err(LineRefusal::Missing("says")));
    let unknown = Unwritten {
        kind: Kind::Unknown("weather".to_owned()),
        ..unread
    };
    assert_eq!(write(&unknown), Err(LineRefusal::Unreadable));
    let astray = Unwritten {
        slot: "near/hub/joint-gap".to_owned(),
        ..over(1.0)
    };
    assert_eq!(write(&astray), Err(LineRefusal::Unreadable));
    let nobody = Unwritten {
        vehicle: None,
        ..over(1.0)
    };
    assert_eq!(write(&nobody), Err(LineRefusal::Missing("vehicle")));
    let replaces = vec![id; MOST_REPLACED + 1];
    assert_eq!(
        write(&over(1.0).replacing(replaces)),
        Err(LineRefusal::ReplacesTooMany(65))
    );
}

/// A report is refused before it is written when its text is longer than is kept, though the line
/// would hold it; a shorter one that fills the line with marks to be written twice is too.
#[test]
fn a_report_that_is_too_long_is_not_written() {
    let id = Digest::from_hex(ID).unwrap();
    let write = |text: String| {
        let (to, core) = (String::new(), String::new());
        let report = Says::Report(Report { text, to, core });
        let entry = Unwritten::new(Some(id), report).unwrap();
        line::write(&entry.in_visit(id), &hand())
    };
    let longest = write("é".repeat(LONGEST_REPORT / 2)).unwrap();
    assert!(longest.len() < LONGEST_LINE);
    let refusal = write("w".repeat(LONGEST_REPORT + 1)).unwrap_err();
    assert_eq!(refusal, LineRefusal::ReportTooLong(LONGEST_REPORT + 1));
    insta::assert_snapshot!(refusal, @"the report has 40961 bytes of text; at most 40960 are kept");
    assert!(matches!(
        write("\"".repeat(LONGEST_REPORT)),
        Err(LineRefusal::TooLong(_))
    ));
    let longer = longest.replacen("é", "ééé", 1);
    assert!(line::read(&longer).is_ok(), "what is written is read");
}

/// A golden line with a stretch of it cut out, doubled, or put elsewhere.
fn damaged() -> impl Strategy<Value = String> {
    let lines: Vec<&str> = GOLDEN.lines().chain(NEWER.lines()).collect();
    let stretch = (any::<prop::sample::Index>(), any::<prop::sample::Index>());
    let with = prop_oneof![
        any::<String>(),
        Just(String::new()),
        "[\\[\\]{}\",:0-9eE+.\\\\-]{1,3}"
    ];
    (proptest::sample::select(lines), stretch, with).prop_map(|(line, (one, other), with)| {
        let places: Vec<usize> = (0..=line.len())
            .filter(|at| line.is_char_boundary(*at))
            .collect();
        let (one, other) = (*one.get(&places), *other.get(&places));
        let mut damaged = line.to_owned();
        damaged.replace_range(one.min(other)..one.max(other), &with);
        damaged
    })
}

proptest! {
    #[test]
    fn no_text_brings_the_reader_down(text in any::<String>()) {
        let _ = line::read(&text);
    }

    #[test]
    fn no_bytes_bring_the_reader_down(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let _ = line::read(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn no_damaged_line_brings_the_reader_down(damaged in damaged()) {
        match line::read(&damaged) {
            Ok(entry) => prop_assert_eq!(entry.id, Digest::of(damaged.as_bytes())),
            Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
        }
    }
}
