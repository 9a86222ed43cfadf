//! The start without a host: a new browser process, the server killed, until the first page takes a tap.

use std::time::Duration;

use cartside_tests::drive::{Device, Server};
use serde_json::json;

use crate::figure::{SLOWER, alone, under};

const LIMIT: f64 = 1000.0;
const TIMES: usize = 5;
/// Until a browser that has just been started is done with its own beginning.
const SETTLED: Duration = Duration::from_secs(3);

/// Notes when the first page stands and has been painted, counted from the start of the navigation: its keys answer
/// from then on, since they are heard before they stand in the page.
const WATCH: &str = r#"
const watch = new MutationObserver(() => {
  if (!document.querySelector("main[data-page=book] a[href='#/begin']")) return;
  watch.disconnect();
  requestAnimationFrame(() => setTimeout(() => { window.shownAfter = performance.now(); }, 0));
});
watch.observe(document, { subtree: true, childList: true });"#;

#[tokio::test]
async fn it_starts_without_a_host() {
    let _turn = alone().await;
    let mut server = Server::start();
    let device = Device::new("only", &server).whole();
    let phone = device.open_ready().await;
    phone.begin_a_cart().await;
    phone.close().await;
    server.kill();
    let mut took = Vec::new();
    for _ in 0..TIMES {
        took.push(start(&device).await);
    }
    println!("started without a host, {SLOWER} times slower, each of {TIMES} in ms: {took:.0?}");
    let slowest = took.into_iter().fold(0.0, f64::max);
    let name = "start without a host in a new browser, slowest of 5, processor 4 times slower";
    under(name, slowest, LIMIT);
}

/// What a browser says when it looks for a newer worker and the host is away.
const UNREACHED: [&str; 2] = ["ERR_CONNECTION_REFUSED", "when fetching the script"];

async fn start(device: &Device) -> f64 {
    let phone = device.start().await;
    tokio::time::sleep(SETTLED).await;
    phone.before_each_page(WATCH).await;
    phone.slow_down(SLOWER).await;
    phone.go("").await;
    let shown = "return window.shownAfter ?? null;";
    let shown = phone
        .wait_for("the first page painted", shown, json!([]))
        .await;
    phone.tap_words("Begin a vehicle").await;
    phone.see_page("begin").await;
    phone.close_but_for(&UNREACHED).await;
    shown.as_f64().expect("a time is a number")
}
