//! The way through the questions: what was answered can be corrected where it was answered, the next question comes by
//! itself and undo reaches back over it, a question can be passed, and the keys that matter are in sight.

use cartside_core::survey::Question;
use cartside_tests::drive::{Browser, Device};
use serde_json::json;

/// Whether all of this is in sight at once, above what sticks at the foot of the window.
const IN_SIGHT: &str = r#"
const foot = [...document.querySelectorAll(".foot, .bottom-keys")]
  .filter((e) => getComputedStyle(e).position === "sticky" && getComputedStyle(e).visibility !== "hidden")
  .map((e) => e.getBoundingClientRect().top);
const lowest = Math.min(innerHeight, ...foot);
return scrollY === 0 && arguments[0].every((css) => {
  const box = find(css)?.getBoundingClientRect();
  return box && box.top >= 0 && box.bottom <= lowest + 0.5;
});"#;

#[tokio::test]
async fn an_answer_is_corrected_where_it_was_given() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "joint-gap", "joint-2")
        .await;
    phone.answer("joint-2", "3", "joint 2").await;
    phone.see_at("joint-3").await;
    phone.tap_key("rest-shut").await;
    phone.see_answered("joint-gap").await;
    phone.step("what was answered, alike together");
    phone.open_question(&cart, "near", "joint-gap").await;
    phone.see_at("none").await;
    phone.see_so_many(2, "[data-answered]").await;
    phone.see_words("[data-answered]", "3 mm").await;
    phone
        .see_words("[data-answered]", "joints 1 and 3 to 6")
        .await;
    phone.step("the single one");
    phone.tap_words("Change").await;
    phone.see_at("joint-2").await;
    phone.see_words(".already", "Written: 3 mm").await;
    phone.answer("joint-2", "0", "corrects").await;
    phone.see_at("none").await;
    phone.see_so_many(1, "[data-answered]").await;
    phone.step("one of several");
    phone.tap_words("Change one").await;
    phone.tap("[data-go-to=joint-4]").await;
    phone.answer("joint-4", "5", "corrects").await;
    phone.see_at("none").await;
    phone.see_words("[data-answered]", "5 mm").await;
    phone.close().await;
}

#[tokio::test]
async fn the_next_question_comes_by_itself_and_undo_leads_back() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    let before = phone.count_everything_written(&cart).await;
    phone.open_question(&cart, "near", "keeper-present").await;
    phone.see("[data-key=undo]:disabled").await;
    phone.step("a bad answer");
    phone
        .answer("whole", "no", "keeper not there – not on this wheel")
        .await;
    phone.see_question("keeper-right").await;
    phone.step("undo over the page");
    phone.see_words("[data-key=undo]", "Undo: keeper").await;
    phone.tap_key("undo").await;
    phone.see_question("keeper-present").await;
    phone.see_at("whole").await;
    phone.see_saved("undone").await;
    phone.see_no(".already").await;
    phone.see("[data-key=undo]:disabled").await;
    phone.step("a second tap meets a key of the next question, and is none");
    phone
        .ask(
            r#"
const tap = (key) => document.querySelector(`[data-key=${key}]`).click();
tap("yes");
const again = setInterval(() => {
  if (document.querySelector("[data-question=keeper-right]")) { clearInterval(again); tap("no"); }
}, 2);"#,
            json!([]),
        )
        .await;
    phone.see_question("keeper-right").await;
    phone.see_at("whole").await;
    // What was undone is written twice, and the answer that stands once.
    let now = phone.count_everything_written(&cart).await;
    phone.expect_same("lines written", now, before + 3).await;
    phone.step("the answer shows how bad it is");
    phone.open_question(&cart, "near", "keeper-secured").await;
    phone.answer("whole", "no", "not on this wheel").await;
    phone.see_question("keeper-worn").await;
    phone.open_question(&cart, "near", "keeper-secured").await;
    phone
        .see("[data-answered] [data-mark=not-on-this-wheel]")
        .await;
    phone.tap_words("Change").await;
    phone.see(".already [data-mark=not-on-this-wheel]").await;
    phone.close().await;
}

#[tokio::test]
async fn a_question_is_passed_and_the_decision_offered() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    let before = phone.count_everything_written(&cart).await;
    phone.open_question(&cart, "near", "rot-felloe").await;
    phone.tap_key("rest-sound").await;
    phone.see_question("moisture").await;
    phone.tap_key("not-today").await;
    phone.see_question("spoke-foot").await;
    let now = phone.count_everything_written(&cart).await;
    phone.expect_same("lines written", now, before + 6).await;
    phone.step("the whole wheel but for what was passed");
    let asked = phone.asked_of(&cart, "near").await;
    phone
        .see_words("[data-ask=moisture]", "0 of 6, not today")
        .await;
    phone.see("[data-next].key-main").await;
    phone.see_no(".key-main[data-key=decide]").await;
    let left: Vec<_> = asked
        .into_iter()
        .filter(|question| {
            ![Question::Moisture, Question::RotFelloe, Question::Shake].contains(question)
        })
        .collect();
    phone.look_over(&cart, "near", &left).await;
    phone.step("the last that a standing needs");
    phone.look_over(&cart, "near", &[Question::Shake]).await;
    phone.see_at("none").await;
    phone.see(".key-main[data-key=decide]").await;
    phone.see_no("[data-next=moisture]").await;
    phone.open_wheel(&cart, "near").await;
    phone.see_missing(&[]).await;
    phone.see_so_many(1, "[data-key=decide]").await;
    phone.tap(".key-main[data-key=decide]").await;
    phone.see_page("decide").await;
    phone.step("signed, the way leads to the report");
    phone.tap_choice("standing", "no-fault-found").await;
    phone.write_into("Signed, name", "A. Field").await;
    phone.tap_key("sign").await;
    phone.see_saved("no fault found").await;
    phone.open_wheel(&cart, "near").await;
    phone.see_no(".way-on [data-next]").await;
    phone.see_no(".way-on [data-key=decide]").await;
    phone.tap(".way-on [data-key=report]").await;
    phone.see_page("report").await;
    phone.step("outgrown by what is found after it, it is to be decided anew");
    phone
        .open_question_at(&cart, "near", "keeper-present", "whole")
        .await;
    phone.answer("whole", "no", "keeper").await;
    phone.open_wheel(&cart, "near").await;
    phone.see(".way-on .key-main[data-key=decide]").await;
    phone.close().await;
}

#[tokio::test]
async fn what_answers_is_in_sight_on_a_small_phone() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.be_a_phone(360, 740).await;
    for (question, rest) in [
        ("joint-gap", "rest-shut"),
        ("crack-felloe", "rest-whole"),
        ("rot-felloe", "rest-sound"),
        ("stand-off", "rest-home"),
        ("spoke-foot", "rest-tight"),
    ] {
        phone.open_question(&cart, "near", question).await;
        let rest = format!("[data-key={rest}]");
        see_at_once(&phone, question, &["h1", ".place", &rest]).await;
    }
    let pad = [
        "h1",
        ".place",
        "[data-typed]",
        "[data-digit]",
        "[data-key=accept]",
    ];
    phone.open_question(&cart, "near", "dish").await;
    see_at_once(&phone, "dish", &pad).await;
    phone.step("a fraction by keys alone");
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.tap_key("measure").await;
    see_at_once(&phone, "a measured gap", &pad).await;
    phone.tap_digits(&["9", "9", "9", "9"]).await;
    phone.tap_key("accept").await;
    phone.see_words("[role=alert]", "9999").await;
    for _ in 0..4 {
        phone.tap_key("erase").await;
    }
    phone.see_no("[role=alert]").await;
    phone.tap_digits(&["3", "/", "3", "2", "in"]).await;
    phone.see_typed("3/32 in").await;
    phone.tap_key("accept").await;
    phone.see_saved("tyre gap ≈ 2.38 mm").await;
    phone.step("a tapped key looks like the others on the next place");
    phone.open_question(&cart, "near", "spoke-foot").await;
    phone.answer("spoke-1", "tight", "spoke 1").await;
    phone.see_at("spoke-2").await;
    let ring =
        "return getComputedStyle(document.querySelector(\"[data-key=tight]\")).outlineStyle;";
    let ring = phone.ask(ring, json!([])).await;
    phone
        .expect_same("the ring round the key", ring, json!("none"))
        .await;
    phone.close().await;
}

async fn see_at_once(phone: &Browser<'_>, what: &str, all: &[&str]) {
    let expected = format!("{what}: {all:?} in sight at once");
    phone.wait_for(&expected, IN_SIGHT, json!([all])).await;
}
