//! The keys of a question: a measured play with its typed text, a refusal, the bulk key, undo.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

#[tokio::test]
async fn a_play_is_measured_refused_answered_in_bulk_and_undone() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    let before = phone.count_everything_written(&cart).await;
    measure(&phone, &cart).await;
    see_written(&phone, &cart, before + 1).await;
    answer_the_rest(&phone, &cart).await;
    // The measured one, and the eleven feet of the bulk key.
    see_written(&phone, &cart, before + 12).await;
    phone.open_wheel(&cart, "near").await;
    phone.see_no("[data-missing=\"spoke-feet\"]").await;
    undo(&phone, &cart).await;
    phone.close().await;
}

/// 1½ mm or more of play at a foot is *keep empty* by the house limits.
async fn measure(phone: &Browser<'_>, cart: &str) {
    phone.step("a measured play");
    phone
        .open_question_at(cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.tap_key("measure").await;
    phone.tap_digits(&["9", "9", "9", "9"]).await;
    phone.tap_key("accept").await;
    phone.see_words("[role=alert]", "9999").await;
    phone.see_typed("9999").await;
    phone.step("the refused one taken back, the right one typed");
    phone
        .open_question_at(cart, "near", "spoke-foot", "spoke-4")
        .await;
    phone.tap_key("measure").await;
    phone.tap_digits(&["1", ".", "5"]).await;
    phone.see_typed("1.5").await;
    phone.tap_key("accept").await;
    phone.see_saved("spoke 4").await;
    phone.open_wheel(cart, "near").await;
    phone.see_findings(&[("spoke-foot", "keep-empty")]).await;
}

async fn answer_the_rest(phone: &Browser<'_>, cart: &str) {
    phone.step("the rest are tight");
    phone
        .open_question_at(cart, "near", "spoke-foot", "spoke-1")
        .await;
    phone.tap_key("rest-tight").await;
    phone.see_saved("").await;
}

async fn undo(phone: &Browser<'_>, cart: &str) {
    phone.step("undo");
    phone
        .open_question_at(cart, "near", "spoke-broken", "spoke-1")
        .await;
    phone.answer("spoke-1", "yes", "spoke 1: broken").await;
    phone.tap_key("undo").await;
    phone.see_saved("").await;
    phone.open_wheel(cart, "near").await;
    phone.see_no("[data-finding=\"spoke-broken\"]").await;
    phone.see("[data-missing=\"spokes-whole\"]").await;
}

async fn see_written(phone: &Browser<'_>, cart: &str, lines: usize) {
    let now = phone.count_everything_written(cart).await;
    phone.expect_same("lines written", now, lines).await;
}

#[tokio::test]
async fn what_was_saved_is_said_until_one_goes_elsewhere() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("worn").await;
    phone.see_saved("worn").await;
    phone.tap_words("To the wheel").await;
    phone.see_page("wheel").await;
    phone.see("[data-next]").await;
    let notice = "return document.querySelector('[data-notice]').dataset.notice;";
    let notice = phone.ask(notice, json!([])).await;
    phone.expect_same("notice", notice, json!("quiet")).await;
    phone.close().await;
}
