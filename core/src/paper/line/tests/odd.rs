//! What a newer version wrote: kept, never read by half.

use crate::daybook::{Kind, Says};
use crate::paper::line;

use super::golden::GOLDEN;

/// The golden line that holds this text, with the text replaced.
fn newer(holds: &str, to: &str) -> String {
    let golden = GOLDEN.lines().find(|line| line.contains(holds)).unwrap();
    golden.replacen(holds, to, 1)
}

#[test]
fn a_kind_that_is_not_known_is_kept_by_its_name() {
    let entry = line::read(&newer(r#""kind":"remark""#, r#""kind":"weather""#)).unwrap();
    assert_eq!(entry.kind, Kind::Unknown("weather".to_owned()));
    assert_eq!(
        (entry.says, entry.unread_fields),
        (Says::Unread, 1),
        "its text was not read"
    );
    let silent = r#"{"cartside":1,"kind":"weather","slot":"","by":"","device":"","at":"2026-11-25T10:03:00+00:00","n":1}"#;
    assert_eq!(line::read(silent).unwrap().says, Says::Unread);
}

#[test]
fn a_slot_that_is_not_known_is_kept_as_it_stands() {
    for (holds, slot) in [
        (
            r#""slot":"near/spoke-3/spoke-foot""#,
            "near/spoke-3/spoke-smell",
        ),
        (
            r#""slot":"near/spoke-3/spoke-foot""#,
            "near/joint-3/spoke-foot",
        ),
        (r#""slot":"near""#, "third"),
        (r#""slot":"off/felloe-2""#, "off/strake-2"),
        (r#""slot":"near/nave""#, "near/nave/bond-1"),
        (r#""slot":"visit""#, "visit/second"),
        (r#""slot":"near/whole/decision""#, "vehicle/decision"),
        (r#""slot":"joint-gap/light-work-only/sum""#, "joint-gap"),
        (r#""slot":"vehicle/report""#, "near/report"),
    ] {
        let entry = line::read(&newer(holds, &format!("\"slot\":\"{slot}\""))).unwrap();
        assert_eq!((entry.says, entry.slot.as_str()), (Says::Unread, slot));
    }
}

#[test]
fn a_word_that_is_not_known_leaves_all_that_is_said_unread() {
    for (holds, to) in [
        (r#""answer":"yes""#, r#""answer":"maybe""#),
        (r#""kind":"cart""#, r#""kind":"sledge""#),
        (r#""rim":"sawn""#, r#""rim":"glued""#),
        (r#""tyre":"hoop""#, r#""tyre":"rope""#),
        (r#""arm":"iron""#, r#""arm":"bronze""#),
        (r#""keeper":"linch-pin""#, r#""keeper":"wedge""#),
        (r#""used_for":["goods""#, r#""used_for":["racing""#),
        (r#""stage":"tyre-off""#, r#""stage":"in-the-fire""#),
        (r#""standing":"keep-empty""#, r#""standing":"half-good""#),
        (r#""proposed":"keep-empty""#, r#""proposed":"half-good""#),
        (r#""did":["re-seated""#, r#""did":["painted""#),
    ] {
        assert_eq!(
            line::read(&newer(holds, to)).unwrap().says,
            Says::Unread,
            "{to}"
        );
    }
}

#[test]
fn a_field_that_is_not_known_is_counted_and_the_rest_is_read() {
    for to in [r#""new":1,"by""#, r#""new":{"a":[null,true]},"by""#] {
        let entry = line::read(&newer(r#""by""#, to)).unwrap();
        assert!(entry.is_read());
        assert_eq!(entry.unread_fields, 1);
    }
    let size = r#""keeper":"linch-pin","sizes_mm":{"dish":-12,"hub-length":300}"#;
    let sized = line::read(&newer(r#""keeper":"linch-pin""#, size)).unwrap();
    assert_eq!((sized.is_read(), sized.unread_fields), (true, 1));
    let inner = line::read(&newer(
        r#""answer":"yes""#,
        r#""answer":"yes","mm":3,"by":"me""#,
    ))
    .unwrap();
    assert_eq!((inner.is_read(), inner.unread_fields), (true, 2));
}

#[test]
fn a_newer_form_is_not_read_whatever_it_says() {
    for golden in GOLDEN.lines() {
        let newer = golden.replacen(r#""cartside":1"#, r#""cartside":2"#, 1);
        let entry = line::read(&newer).unwrap();
        let struck = golden.contains(r#""struck":true"#);
        assert_eq!(entry.says, if struck { Says::Struck } else { Says::Unread });
    }
    let shape = newer(r#"{"text":"stood"#, r#"{"words":["stood"],"text":"stood"#);
    assert!(line::read(&shape.replacen(":1,", ":2,", 1)).is_ok());
}

/// Of a form that is known, a field that is known keeps its form: it is never guessed at.
#[test]
fn a_known_field_of_another_form_is_refused() {
    for (holds, to) in [
        (r#""felloes":[2"#, r#""felloes":["2""#),
        (r#""place":"#, r#""place":7,"was":"#),
        (r#""width":1600"#, r#""width":-1600"#),
        (r#""width":1600"#, r#""width":4294967296"#),
        (r#""written":"""#, r#""written":null"#),
    ] {
        assert!(line::read(&newer(holds, to)).is_err(), "{to}");
    }
}
