//! The driver's own press: a page that moves under it is pressed where it was meant to be, or nowhere.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

/// Two keys, of which the first jumps away from under the pointer, once, and leaves its place to the other.
const JUMPING: &str = r#"
document.body.innerHTML = `<main><button id=meant>Meant</button><button id=other>Other</button></main>`;
Object.assign(document.getElementById("other").style, { position: "fixed", inset: "0" });
Object.assign(document.getElementById("meant").style, { position: "relative", zIndex: "1" });
window.presses = { meant: 0, other: 0 };
for (const name in window.presses) document.getElementById(name).addEventListener("click", () => window.presses[name]++);
document.getElementById("other").addEventListener("pointerdown", () => window.presses.other++);
addEventListener("mousemove", () => { document.getElementById("meant").style.marginTop = "200px"; }, { once: true });"#;

/// The key is drawn anew while it is held down, once.
const REPLACED: &str = r#"
addEventListener("mousedown", () => {
  const old = document.getElementById("meant"), fresh = old.cloneNode(true);
  fresh.addEventListener("click", () => window.presses.meant++);
  old.replaceWith(fresh);
}, { once: true });"#;

#[tokio::test]
async fn what_moves_away_under_a_press_is_pressed_where_it_went_and_nothing_else_is() {
    let device = Device::installed("only").await;
    let phone = device.start().await;
    phone.go_where_nothing_runs().await;
    phone.ask(JUMPING, json!([])).await;
    phone.tap("#meant").await;
    see_presses(&phone, 1).await;
    phone.tap("#meant").await;
    see_presses(&phone, 2).await;
    phone.step("another of its kind takes its place before the press is let go");
    phone.ask(REPLACED, json!([])).await;
    phone.tap("#meant").await;
    see_presses(&phone, 3).await;
    phone.close_but_for(&["favicon.ico"]).await;
}

/// That the meant key was pressed so often, and the other never.
async fn see_presses(phone: &Browser<'_>, meant: u32) {
    let presses = phone.ask("return window.presses;", json!([])).await;
    let expected = json!({ "meant": meant, "other": 0 });
    phone.expect_same("presses", presses, expected).await;
}
