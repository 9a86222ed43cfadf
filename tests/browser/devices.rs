//! Two devices that know little of each other: a clock that is ten years off, a profile copied from another device,
//! one cart begun on both.

use cartside_tests::drive::{Browser, Engine};
use serde_json::Value;

/// Makes the device's clock ten years slow: that of the page's own window, since in Firefox a script before each page has a
/// global object of its own.
const SLOW: &str = r#"
const Honest = window.Date, TEN_YEARS = 10 * 365.25 * 86400e3;
window.Date = class extends Honest {
  constructor(...given) { given.length ? super(...given) : super(Honest.now() - TEN_YEARS); }
  static now() { return Honest.now() - TEN_YEARS; }
};"#;

pub async fn a_clock_ten_years_off_decides_nothing(engine: Engine) {
    let (first, second) = (
        engine.installed("first").await,
        engine.installed("second").await,
    );
    let phone = first.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.answer("between-1", "0.25", "¼ mm").await;
    let book = phone.carry_out().await;

    let tablet = second.start().await;
    tablet.before_each_page(SLOW).await;
    tablet.go("").await;
    tablet.bring_in(&book.path, book.lines().len(), 0).await;
    tablet.step("corrected by a clock that is ten years slow");
    correct_the_gap(&tablet, &cart, "3").await;
    let corrected = tablet.carry_out().await;
    let slow = corrected
        .lines()
        .difference(&book.lines())
        .cloned()
        .collect::<Vec<_>>();
    let [slow] = slow.as_slice() else {
        panic!("one line more, not {slow:?}")
    };
    let (of_slow, of_first) = (year(slow), year(book.lines().first().unwrap()));
    assert!(
        of_first - of_slow >= 9,
        "the clock is slow: {of_slow}, {of_first}"
    );

    phone.step("the correction holds here");
    phone.bring_in(&corrected.path, 1, 0).await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[("tyre-gap", "keep-empty")]).await;
    phone.step("and a correction of it holds there");
    correct_the_gap(&phone, &cart, "0.25").await;
    let again = phone.carry_out().await;
    tablet.bring_in(&again.path, 1, 0).await;
    tablet.open_wheel(&cart, "near").await;
    tablet.see_findings(&[("tyre-gap", "note")]).await;
    tablet.open_vehicle(&cart).await;
    tablet.see_no("[data-disputes]").await;
    assert_eq!(tablet.carry_out().await.lines(), again.lines());
    tablet.close().await;
    phone.close().await;
}

async fn correct_the_gap(browser: &Browser<'_>, cart: &str, key: &str) {
    browser.open_part(cart, "near/between-1").await;
    browser.correct("tyre-gap").await;
    // By the slow clock the examination is one of another day.
    if browser.device_name() == "second" {
        browser.tap_words("Go on with that one").await;
    }
    browser.answer("between-1", key, "near wheel").await;
}

fn year(line: &str) -> i32 {
    field(line, "at").get(..4).unwrap().parse().unwrap()
}

fn field(line: &str, name: &str) -> String {
    let line: Value = serde_json::from_str(line).unwrap();
    line[name].as_str().unwrap().to_owned()
}

pub async fn a_device_copied_from_another_takes_a_name_of_its_own(engine: Engine) {
    let first = engine.installed("first").await;
    let phone = first.open().await;
    let cart = phone.begin_a_cart().await;
    phone.close().await;
    let copy = first.copied_as("copy").await;

    let phone = first.open().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written on the first").await;
    let double = copy.open().await;
    double.step("on the copy");
    double.open_part(&cart, "near/spoke-3").await;
    double.remark("Written on the copy").await;
    let of_copy = double.carry_out().await;
    let one_name = of_copy
        .lines()
        .iter()
        .map(|line| field(line, "device"))
        .collect::<Vec<_>>();
    assert!(
        one_name.windows(2).all(|two| two[0] == two[1]),
        "the copy goes by the same name"
    );

    phone.step("the first meets its own name");
    phone.choose_to_bring_in(&of_copy.path).await;
    phone.see_words("main", "take a new name").await;
    phone.tap_words("Bring it in").await;
    phone.see_words("main", "has taken a new name").await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.see_so_many(2, "[data-remark]").await;
    phone.remark("Written after that").await;
    let after = phone.carry_out().await;
    let written = |words: &str| {
        let lines = after.lines();
        let line = lines.iter().find(|line| line.contains(words)).unwrap();
        field(line, "device")
    };
    assert_eq!(
        written("Written on the copy"),
        written("Written on the first")
    );
    assert_ne!(
        written("Written after that"),
        written("Written on the copy")
    );
    phone.close().await;
    double.close().await;
}

pub async fn a_cart_begun_on_two_devices_is_shown_as_one(engine: Engine) {
    let (first, second) = (
        engine.installed("first").await,
        engine.installed("second").await,
    );
    let phone = first.open().await;
    let one = phone.begin_a_cart().await;
    phone.name_it("Tip cart").await;
    phone.open_part(&one, "near/spoke-3").await;
    phone.remark("Seen in the barn").await;
    let tablet = second.open().await;
    let other = tablet.begin_a_cart().await;
    tablet.name_it("Bess’s cart").await;
    tablet.open_part(&other, "near/spoke-3").await;
    tablet.remark("Seen in the shop").await;
    let carried = tablet.carry_out().await;
    phone
        .bring_in(&carried.path, carried.lines().len(), 0)
        .await;
    phone.open_day_book().await;
    phone.see_vehicles(2).await;

    phone.step("the two are one");
    phone.open_of_vehicle(&one, "/same-as", "same-as").await;
    phone.tap(&format!("[data-same=\"{other}\"]")).await;
    phone.see_saved("one vehicle").await;
    phone.open_day_book().await;
    phone.see_vehicles(1).await;
    for id in [&one, &other] {
        phone.open_part(id, "near/spoke-3").await;
        phone.see_so_many(2, "[data-remark]").await;
    }
    phone.step("their names differ, which is settled");
    phone.open_disputes(&one, 1).await;
    phone.say_holds("vehicle", "Tip cart").await;
    phone.see_so_many(0, "[data-side]").await;
    phone.open_day_book().await;
    phone.see_words("[data-vehicle]", "Tip cart").await;

    phone.step("the other device learns of it");
    let settled = phone.carry_out().await;
    let new = settled.lines().difference(&carried.lines()).count();
    tablet.bring_in(&settled.path, new, 0).await;
    tablet.open_day_book().await;
    tablet.see_vehicles(1).await;
    tablet.see_words("[data-vehicle]", "Tip cart").await;

    phone.step("it is taken back");
    phone.open_of_vehicle(&one, "/same-as", "same-as").await;
    phone.tap_words_in("[data-same-as]", "Strike out").await;
    phone.open_day_book().await;
    phone.see_vehicles(2).await;
    phone.open_part(&one, "near/spoke-3").await;
    phone.see_so_many(1, "[data-remark]").await;
    phone.reload().await;
    phone.see_so_many(1, "[data-remark]").await;
    phone.step("and said once more");
    phone.open_of_vehicle(&other, "/same-as", "same-as").await;
    phone.tap(&format!("[data-same=\"{one}\"]")).await;
    phone.see_saved("one vehicle").await;
    phone.leave().await;
    phone.open_day_book().await;
    phone.see_vehicles(1).await;
    phone.close().await;
    tablet.close().await;
}
