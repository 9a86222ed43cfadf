//! Arriving at a page: its heading takes the focus, unless someone was faster.

use cartside_tests::drive::Engine;
use serde_json::json;

/// Turns to an address, and takes the field there into focus as soon as it stands, before the next frame.
const TURN: &str = r#"
document.title = "";
new MutationObserver((_, watch) => {
  const field = document.querySelector("main textarea");
  if (!field) return;
  field.focus();
  watch.disconnect();
}).observe(document.body, { childList: true, subtree: true });
location.hash = arguments[0];"#;

/// Turns to an address and counts how often the title is told until two frames after it was told first.
const TOLD: &str = r#"
return new Promise((done) => {
  let told = 0;
  const title = document.querySelector("title");
  new MutationObserver((records) => {
    told += records.length;
    requestAnimationFrame(() => requestAnimationFrame(() => done(told)));
  }).observe(title, { childList: true });
  location.hash = arguments[0];
});"#;

pub async fn a_field_that_has_the_focus_keeps_it(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.step("the heading takes the focus");
    phone.see("main h1:focus").await;
    phone.step("one arrives once");
    let address = format!("#/vehicle/{cart}/build/near");
    let told = phone.ask(TOLD, json!([address])).await;
    phone.expect_same("titles told", told, json!(1)).await;
    phone.step("a field had it before");
    let address = format!("#/vehicle/{cart}/part/near/spoke-3");
    phone.ask(TURN, json!([address])).await;
    phone.see_page("part").await;
    // The title is told in the frame in which the heading would take the focus.
    let arrived = "return document.title !== \"\";";
    phone.wait_for("a title", arrived, json!([])).await;
    phone.see("main textarea:focus").await;
    phone.close().await;
}
