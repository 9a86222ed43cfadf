//! From the tap that accepts a reading to the word *saved* on the page.

use cartside_tests::drive::{Browser, Device, Server};
use serde_json::json;

use crate::figure::{SLOWER, alone, p95, under};

const LIMIT: f64 = 100.0;

/// Notes how long each step takes from the press to the moment *saved* stands in the page.
const WATCH: &str = r#"
window.took = [];
let pressed = null;
addEventListener("click", () => { pressed = performance.now(); }, true);
new MutationObserver(() => {
  const notice = document.querySelector("[data-notice]");
  if (pressed !== null && notice?.dataset.notice === "saved") {
    window.took.push(performance.now() - pressed);
    pressed = null;
  }
}).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });"#;

#[tokio::test]
async fn from_accept_to_saved() {
    let _turn = alone().await;
    let server = Server::start();
    let device = Device::new("only", &server).whole();
    let phone = device.start().await;
    phone.before_each_page(WATCH).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    let waggon = phone.begin("waggon", "all", "12", "6").await;
    phone.slow_down(SLOWER).await;
    let mut took = Vec::new();
    for wheel in [
        "near-fore",
        "off-fore",
        "near-hind",
        "off-hind",
        "near-fore",
    ] {
        let question = if took.len() < 48 {
            "spoke-foot"
        } else {
            "spoke-rim-end"
        };
        phone
            .open_question_at(&waggon, wheel, question, "spoke-1")
            .await;
        took.extend(answer_twelve(&phone).await);
    }
    assert_eq!(took.len(), 60, "so many readings were timed");
    println!("accept to saved, {SLOWER} times slower, each of 60 readings in ms: {took:.0?}");
    under(
        "accept to saved, 95 of 100, processor 4 times slower",
        p95(took),
        LIMIT,
    );
    phone.close().await;
}

async fn answer_twelve(phone: &Browser<'_>) -> Vec<f64> {
    phone.ask("window.took.length = 0;", json!([])).await;
    for spoke in 1..=12 {
        phone.see_at(&format!("spoke-{spoke}")).await;
        phone.tap_key("just-moves").await;
        let done = "return window.took.length === arguments[0];";
        phone
            .wait_for("the reading timed until it is saved", done, json!([spoke]))
            .await;
    }
    let took = phone.ask("return window.took;", json!([])).await;
    serde_json::from_value(took).expect("times are numbers")
}
