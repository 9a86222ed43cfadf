//! *Saved* is said when the browser has completed the transaction, and at no other time.

use std::time::{Duration, Instant};

use cartside_tests::drive::{Browser, Device, Engine};
use serde_json::json;

/// Keeps every writing transaction open from the moment `window.held` is set: its requests succeed, but it
/// does not complete before `held` is taken back, and not at all once `refused` is set.
pub const HOLD: &str = r#"
const begin = IDBDatabase.prototype.transaction;
IDBDatabase.prototype.transaction = function (...given) {
  const transaction = begin.apply(this, given);
  if (given[1] === "readwrite" && (window.held || window.refused)) hold(transaction);
  return transaction;
};
function hold(transaction) {
  const turns = { left: 30 };
  const turn = () => {
    if (window.refused && turns.left-- === 0) { window.aborted = (window.aborted ?? 0) + 1; return transaction.abort(); }
    if (!window.held && !window.refused) return;
    const request = transaction.objectStore(transaction.objectStoreNames[0]).count();
    request.onsuccess = () => { window.turned = (window.turned ?? 0) + 1; turn(); };
  };
  turn();
}"#;

pub async fn saved_is_said_only_after_the_transaction_is_complete(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(HOLD).await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    // Opened anew, so that nothing saved before is still said.
    phone.reload().await;
    phone.see_at("spoke-3").await;
    let said = phone.notice().await;
    phone
        .expect_same("the notice", said.as_str(), "quiet")
        .await;

    phone.step("the transaction is held open");
    phone.ask("window.held = true;", json!([])).await;
    phone.tap_key("loose").await;
    phone
        .wait_for(
            "a transaction held open",
            "return window.turned > 5;",
            json!([]),
        )
        .await;
    see_nothing_saved_for(&phone, Duration::from_millis(1500)).await;
    phone.step("the transaction may complete");
    phone.ask("window.held = false;", json!([])).await;
    phone.see_saved("spoke 3: foot loose").await;
    phone.close().await;
}

async fn see_nothing_saved_for(phone: &Browser<'_>, long: Duration) {
    let until = Instant::now() + long;
    while Instant::now() < until {
        let notice = phone.notice().await;
        let stays = phone.sees("[data-at=\"spoke-3\"]").await;
        let holds = notice == "saving" && stays && !phone.sees_words("main", "foot loose").await;
        phone
            .expect(
                holds,
                "“saving”, and nothing of the step, while the transaction is open",
            )
            .await;
    }
}

pub async fn a_step_that_was_not_stored_is_trouble_and_leaves_nothing(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(HOLD).await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    let before = phone.count_everything_written(&cart).await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.step("the transaction is aborted after its requests succeeded");
    phone.ask("window.refused = true;", json!([])).await;
    phone.tap_key("loose").await;
    phone.see_trouble("not saved").await;
    phone.see_trouble("is kept").await;
    phone
        .wait_for(
            "an aborted transaction",
            "return window.aborted > 0;",
            json!([]),
        )
        .await;
    phone.see_at("spoke-3").await;

    phone.step("nothing of it is in the book");
    phone.leave().await;
    let now = phone.count_everything_written(&cart).await;
    phone.expect_same("lines written", now, before).await;
    phone.open_wheel(&cart, "near").await;
    phone.see_findings(&[]).await;
    phone.step("and the rest goes on");
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone
        .answer("spoke-3", "loose", "spoke 3: foot loose")
        .await;
    let now = phone.count_everything_written(&cart).await;
    phone.expect_same("lines written", now, before + 1).await;
    phone.close().await;
}

pub async fn what_was_said_to_be_saved_outlives_a_kill(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone
        .answer("spoke-3", "loose", "spoke 3: foot loose")
        .await;
    phone.kill();

    let phone = device.open().await;
    phone.step("after the kill");
    phone.see_vehicles(1).await;
    phone.open_wheel(&cart, "near").await;
    phone
        .see_findings(&[("spoke-foot", "light-work-only")])
        .await;
    phone.close().await;
}

#[tokio::test]
async fn a_key_pressed_twice_before_it_is_saved_saves_once() {
    let device = Device::installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(HOLD).await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.write_into("Remark", "Once").await;
    phone.ask("window.held = true;", json!([])).await;
    phone.tap_words("Save the remark").await;
    phone.tap_words("Save the remark").await;
    phone.ask("window.held = false;", json!([])).await;
    phone.see_saved("Once").await;
    phone.step("and once more, when it is said again after that");
    phone.remark("Once").await;
    phone.see_so_many(2, "[data-remark]").await;
    phone.close().await;
}
