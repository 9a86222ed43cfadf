//! Five hundred pictures, about 250 MB, in, out and in again: how fast, and how much of the app's own memory.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use cartside_core::daybook::Digest;
use cartside_tests::drive::album::album;
use cartside_tests::drive::{Browser, Device, Server};
use serde_json::json;

use crate::figure::{alone, below};

const PICTURES: usize = 500;
const BYTES: usize = 500_000;
/// The most that the app's memory may grow, in MB of 10⁶ bytes.
const LIMIT: f64 = 64.0;
/// The longest that one way may take.
const PATIENCE: Duration = Duration::from_secs(180);

/// Notes the memory of the app, which never shrinks, so that it is the greatest so far.
const WATCH: &str = r#"
for (const name of ["instantiate", "instantiateStreaming"]) {
  const made = WebAssembly[name];
  WebAssembly[name] = async (...given) => {
    const made_now = await made.apply(WebAssembly, given);
    window.appMemory = (made_now.instance ?? made_now).exports.memory;
    return made_now;
  };
}"#;

async fn memory(phone: &Browser<'_>) -> f64 {
    let bytes = "return window.appMemory?.buffer.byteLength ?? null;";
    let bytes = phone.wait_for("the app's memory", bytes, json!([])).await;
    bytes.as_f64().unwrap() / 1e6
}

async fn opened<'d>(device: &'d Device) -> Browser<'d> {
    let phone = device.start().await;
    phone.before_each_page(WATCH).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    phone
}

/// Waits longer than a page usually may take; gives how long it took, in seconds.
async fn until(phone: &Browser<'_>, css: &str) -> f64 {
    let began = Instant::now();
    while !phone.sees(css).await {
        if began.elapsed() > PATIENCE || phone.sees("[data-refused]").await {
            phone.fail(css).await;
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    began.elapsed().as_secs_f64()
}

/// Brings the file in and gives how long reading and storing took, in seconds.
async fn brought_in(phone: &Browser<'_>, file: &Path) -> [f64; 2] {
    phone.choose_to_bring_in(file).await;
    let read = until(phone, &format!("[data-would-add-pictures=\"{PICTURES}\"]")).await;
    phone.tap_words("Bring it in").await;
    let stored = until(phone, &format!("[data-added-pictures=\"{PICTURES}\"]")).await;
    [read, stored]
}

#[tokio::test]
async fn five_hundred_pictures_go_out_and_come_back() {
    let _turn = alone().await;
    let server = Server::start();
    let made = album(PICTURES, BYTES);
    let size = made.file.len() as f64 / 1e6;
    let device = Device::new("first", &server).whole();
    let file = device.downloads().join("album.bin");
    fs::write(&file, &made.file).unwrap();
    let phone = opened(&device).await;
    let rest = memory(&phone).await;
    let [read, stored] = brought_in(&phone, &file).await;
    let after_in = memory(&phone).await;
    fs::remove_file(&file).unwrap();

    phone.go("#/carry-out").await;
    phone.see_page("carry-out").await;
    phone.tap_words("Make the file").await;
    let out = until(&phone, "[data-file]").await;
    let carried = phone.let_the_file_out().await;
    let after_out = memory(&phone).await;
    println!("{size:.0} MB: read in {read:.1} s, stored in {stored:.1} s, made in {out:.1} s");
    println!("figure: pictures in: {:.0} MB/s", size / (read + stored));
    println!("figure: pictures out: {:.0} MB/s", size / out);
    println!(
        "memory in MB: {rest:.1} at rest, {after_in:.1} after the way in, {after_out:.1} after the way out"
    );
    phone.close().await;

    let pictures = carried.pictures();
    let digests: Vec<Digest> = pictures.iter().map(|jpeg| Digest::of(jpeg)).collect();
    assert_eq!(digests, made.pictures);
    drop(pictures);
    let second = Device::new("second", &server).whole();
    let tablet = opened(&second).await;
    let rest_there = memory(&tablet).await;
    brought_in(&tablet, &carried.path).await;
    let grown = memory(&tablet).await - rest_there;
    tablet.close().await;
    let most = (after_in.max(after_out) - rest).max(grown);
    let name = "the app's memory above rest, 500 pictures out and in";
    below(name, most, LIMIT, "MB");
}
