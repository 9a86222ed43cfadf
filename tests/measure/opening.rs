//! From the start of a navigation to the list of a big book, or to a vehicle of as many entries, in a browser that has the
//! app.

use std::fs;
use std::time::Instant;

use cartside_tests::drive::{Browser, Device, Server};
use serde_json::json;

use crate::big_book::{self, ENTRIES, VEHICLES};
use crate::figure::{SLOWER, alone, below, under};

const LIMIT: f64 = 1000.0;
/// In seconds, of one vehicle with as many entries, on a machine that does other things too. A second is what is wanted:
/// reading every line takes most of that, and a page still makes a view of all entries for each part that asks on its own.
const LIMIT_OF_ONE: f64 = 5.0;
const TIMES: usize = 5;

/// Notes when so many of these stand in the page and have been painted, counted from the start of the navigation.
fn watch(css: &str, count: usize) -> String {
    WATCH
        .replace("CSS", css)
        .replace("COUNT", &count.to_string())
}

const WATCH: &str = r#"
const watch = new MutationObserver(() => {
  if (document.querySelectorAll("CSS").length < COUNT) return;
  watch.disconnect();
  requestAnimationFrame(() => setTimeout(() => { window.shownAfter = performance.now(); }, 0));
});
watch.observe(document, { subtree: true, childList: true });"#;

/// The book is brought in through the page, from a real file written by the core.
#[tokio::test]
async fn a_big_book_opens() {
    let _turn = alone().await;
    let server = Server::start();
    let device = Device::new("only", &server).whole();
    let phone = device.open_ready().await;
    let file = device.downloads().join("big.zip");
    fs::write(&file, big_book::file(VEHICLES)).unwrap();
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
    phone
        .before_each_page(&watch("[data-vehicle]", VEHICLES))
        .await;
    phone.slow_down(SLOWER).await;
    let mut took = Vec::new();
    for _ in 0..TIMES {
        took.push(open(&phone, "#/").await);
    }
    println!("book opened, {SLOWER} times slower, each of {TIMES} in ms: {took:.0?}");
    let slowest = took.into_iter().fold(0.0, f64::max);
    let name =
        "book of 10 000 entries in 50 vehicles opened, slowest of 5, processor 4 times slower";
    under(name, slowest, LIMIT);
    phone.close().await;
}

/// One vehicle with thirty examinations: its page, and the page of one of its wheels with the standing that all of them come
/// to.
#[tokio::test]
async fn a_vehicle_of_10_000_entries_opens() {
    let _turn = alone().await;
    let server = Server::start();
    let device = Device::new("only", &server).whole();
    let phone = device.open_ready().await;
    let file = device.downloads().join("old.zip");
    fs::write(&file, big_book::file(1)).unwrap();
    phone.bring_in(&file, ENTRIES, 0).await;
    phone.open_day_book().await;
    let cart = phone.attribute("[data-vehicle]", "data-vehicle").await;
    phone.close().await;
    for (page, css, after) in [
        ("vehicle", "main[data-page=vehicle]", ""),
        (
            "wheel",
            "main[data-page=wheel] [data-standing]",
            "/wheel/near",
        ),
    ] {
        let phone = device.open().await;
        phone.before_each_page(&watch(css, 1)).await;
        phone.slow_down(SLOWER).await;
        let mut took = Vec::new();
        for _ in 0..TIMES {
            took.push(open(&phone, &format!("#/vehicle/{cart}{after}")).await);
        }
        println!("{page} opened, {SLOWER} times slower, each of {TIMES} in ms: {took:.0?}");
        let slowest = took.into_iter().fold(0.0, f64::max);
        let name = format!(
            "{page} of a vehicle of 10 000 entries opened, slowest of 5, processor 4 times slower"
        );
        below(&name, slowest / 1000.0, LIMIT_OF_ONE, "s");
        phone.close().await;
    }
}

async fn open(phone: &Browser<'_>, page: &str) -> f64 {
    phone.leave().await;
    phone.go(page).await;
    let shown = phone
        .wait_for(
            "the page painted",
            "return window.shownAfter ?? null;",
            json!([]),
        )
        .await;
    shown.as_f64().expect("a time is a number")
}
