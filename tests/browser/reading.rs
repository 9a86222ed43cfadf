//! The order in which a screen reader reads: on every screen its rules, on the wheel, at the cart and in the report what
//! is read. After a change that is meant, `INSTA_UPDATE=always` writes what is read now.

use cartside_tests::drive::Device;
use cartside_tests::drive::reading::{Read, lines};

/// What breaks the rules: the band above comes first, one heading of level 1 leads the page, no level is left out, every
/// control has a name, and something tells of changes by itself.
pub fn disorder(read: &[Read]) -> Vec<String> {
    let mut faults = Vec::new();
    let mut must = |holds: bool, rule: &str| {
        if !holds {
            faults.push(format!("{rule}; read is:\n{}", lines(read)));
        }
    };
    let count = |role: &str| read.iter().filter(|it| it.role == role).count();
    let levels: Vec<u64> = headings(read).collect();
    must(
        levels.first() == Some(&1),
        "a heading of level 1 comes first",
    );
    let ones = levels.iter().filter(|level| **level == 1).count();
    must(ones == 1, "there is one heading of level 1");
    let skips = levels.windows(2).find(|pair| pair[1] > pair[0] + 1);
    must(
        skips.is_none(),
        &format!("no level is left out as in {skips:?}"),
    );
    let nameless = read.iter().find(|it| it.is_control() && it.name.is_empty());
    must(nameless.is_none(), "every control has a name");
    must(read.iter().any(|it| it.live), "something tells of changes");
    // The panel of a stop stands alone.
    if count("main") > 0 {
        let first = read.first().map(|it| it.role.as_str());
        must(first == Some("banner"), "the band above is read first");
        must(count("main") == 1, "there is one main part");
        let main = read.iter().position(|it| it.role == "main");
        let heading = read.iter().position(|it| it.role == "heading");
        must(main < heading, "the heading stands in the main part");
    }
    faults
}

fn headings(read: &[Read]) -> impl Iterator<Item = u64> {
    read.iter()
        .filter(|it| it.role == "heading")
        .map(|it| it.level)
}

#[tokio::test]
async fn the_wheel_the_question_and_the_report_are_read_in_order() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "loose", "foot loose").await;
    phone.see_at("spoke-4").await;
    insta::assert_snapshot!("the_question", lines(&phone.read_aloud().await));
    phone.open_wheel(&cart, "near").await;
    insta::assert_snapshot!("the_wheel", lines(&phone.read_aloud().await));
    phone.open_report(&cart, "owner").await;
    insta::assert_snapshot!("the_report", lines(&phone.read_aloud().await));
    phone.close().await;
}

#[test]
fn each_rule_of_the_order_is_seen_broken() {
    let one = |role: &str, level, name: &str| Read {
        role: role.to_owned(),
        name: name.to_owned(),
        level,
        live: role == "status",
    };
    let sound = [
        one("banner", 0, ""),
        one("main", 0, ""),
        one("heading", 1, "Near wheel"),
        one("heading", 2, "Findings"),
        one("button", 0, "Undo"),
        one("status", 0, ""),
    ];
    assert_eq!(disorder(&sound), Vec::<String>::new());
    let broken = |at: usize, by: Read, rule: &str| {
        let mut read = sound.clone();
        read[at] = by;
        let faults = disorder(&read);
        assert!(
            faults.iter().any(|fault| fault.contains(rule)),
            "{faults:#?}"
        );
    };
    let heading = |level| one("heading", level, "Near wheel");
    broken(0, one("main", 0, ""), "the band above is read first");
    broken(0, one("main", 0, ""), "one main part");
    broken(0, heading(1), "one heading of level 1");
    broken(0, heading(1), "in the main part");
    broken(2, heading(2), "level 1 comes first");
    broken(3, heading(3), "no level is left out");
    broken(4, one("button", 0, ""), "every control has a name");
    broken(5, one("image", 0, ""), "tells of changes");
}
