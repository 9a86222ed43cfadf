//! From the start of a navigation to the list of a big book, in a browser that has the app.

use std::fs;
use std::time::Instant;

use cartside_tests::drive::{Browser, Device, Server};
use serde_json::json;

use crate::big_book::{self, ENTRIES, VEHICLES};
use crate::figure::{SLOWER, alone, below, under};

const LIMIT: f64 = 1000.0;
const TIMES: usize = 5;

/// Notes when the whole list stands in the page and has been painted, counted from the start of the navigation.
const WATCH: &str = r#"
const watch = new MutationObserver(() => {
  if (document.querySelectorAll("[data-vehicle]").length < 50) return;
  watch.disconnect();
  requestAnimationFrame(() => setTimeout(() => { window.shownAfter = performance.now(); }, 0));
});
watch.observe(document, { subtree: true, childList: true });"#;

/// The book is brought in through the page, from a real file written by the core.
#[tokio::test]
async fn a_big_book_opens() {
    let _turn = alone().await;
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    let file = device.downloads().join("big.zip");
    fs::write(&file, big_book::file()).unwrap();
    let began = Instant::now();
    phone.choose_to_bring_in(&file).await;
    phone.see_it_would_add(ENTRIES, 0).await;
    let foreseen = began.elapsed().as_secs_f64();
    phone.tap_words("Bring it in").await;
    phone.see(&format!("[data-added=\"{ENTRIES}\"]")).await;
    let stored = began.elapsed().as_secs_f64() - foreseen;
    println!(
        "book brought in, at full speed: foreseen in {foreseen:.1} s, stored in {stored:.1} s"
    );
    below("10 000 entries brought in", foreseen + stored, 15.0, "s");
    phone.before_each_page(WATCH).await;
    phone.slow_down(SLOWER).await;
    let mut took = Vec::new();
    for _ in 0..TIMES {
        took.push(open(&phone).await);
    }
    println!("book opened, {SLOWER} times slower, each of {TIMES} in ms: {took:.0?}");
    let slowest = took.into_iter().fold(0.0, f64::max);
    let name =
        "book of 10 000 entries in 50 vehicles opened, slowest of 5, processor 4 times slower";
    under(name, slowest, LIMIT);
    phone.close().await;
}

async fn open(phone: &Browser<'_>) -> f64 {
    phone.leave().await;
    phone.go("#/").await;
    phone.see_vehicles(VEHICLES).await;
    let shown = phone
        .wait_for(
            "the list painted",
            "return window.shownAfter ?? null;",
            json!([]),
        )
        .await;
    shown.as_f64().expect("a time is a number")
}
