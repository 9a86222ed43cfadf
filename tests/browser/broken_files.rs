//! A broken file is refused in its own sentence, and the book is as it was.

use std::fs;

use cartside_tests::drive::{Browser, Engine, camera};

pub async fn a_broken_file_is_refused_and_nothing_of_it_is_stored(engine: Engine) {
    let giver = engine.installed("giving").await;
    let phone = giver.open().await;
    phone.begin_a_cart().await;
    let good = phone.carry_out().await.bytes();
    phone.close().await;

    let taker = engine.installed("taking").await;
    let tablet = taker.open().await;
    for (name, bytes, words) in broken(&good) {
        tablet.step(name);
        let path = taker.downloads().join(format!("{name}.zip"));
        fs::write(&path, bytes).unwrap();
        tablet.choose_to_bring_in(&path).await;
        tablet.see_refused(words).await;
        tablet.see_refused("your book is as it was").await;
        see_nothing_to_bring_in(&tablet).await;
    }
    tablet.step("nothing is stored");
    tablet.open_day_book().await;
    tablet.see_vehicles(0).await;
    tablet.step("the good file still comes in");
    let path = taker.downloads().join("good.zip");
    fs::write(&path, &good).unwrap();
    tablet.bring_in(&path, 4, 0).await;
    tablet.open_day_book().await;
    tablet.see_vehicles(1).await;
    tablet.close().await;
}

async fn see_nothing_to_bring_in(tablet: &Browser<'_>) {
    tablet.see_no("[data-would-add]").await;
    let offered = tablet.sees_control("Bring it in").await;
    tablet
        .expect(!offered, "no button that brings a refused file in")
        .await;
}

fn broken(good: &[u8]) -> Vec<(&'static str, Vec<u8>, &'static str)> {
    let at = find(good, br#""kind":"cart""#);
    let mut flipped = good.to_vec();
    flipped[at + 8] ^= 1;
    vec![
        ("empty", Vec::new(), "is empty"),
        ("picture", camera::photograph(), "is a JPEG picture"),
        (
            "cut-short",
            good[..good.len() / 2].to_vec(),
            "its end is missing",
        ),
        ("one-bit-flipped", flipped, "entries.jsonl"),
    ]
}

fn find(bytes: &[u8], pattern: &[u8]) -> usize {
    let mut windows = bytes.windows(pattern.len());
    let at = windows.position(|window| window == pattern);
    at.expect("the good file holds the cart")
}
