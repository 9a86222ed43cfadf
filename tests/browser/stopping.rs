//! A long bringing in or carrying out tells how far it is and can be stopped; after that, and after a kill, nothing of
//! it is left.

use std::fs;
use std::path::{Path, PathBuf};

use cartside_tests::drive::album::{Album, album};
use cartside_tests::drive::{Browser, Device};
use serde_json::{Value, json};

/// So many that a batch has been put down before the fortieth.
const PICTURES: usize = 60;
const BYTES: usize = 300_000;

/// Holds the page at one picture of a stage, or presses *Stop* there; `at` says which. From then on no piece of the
/// file is read.
const WATCH: &str = r#"
window.at = null;
window.seen = [];
let held = false;
const read = Blob.prototype.arrayBuffer;
Blob.prototype.arrayBuffer = function () {
  if (!held) return read.call(this);
  return new Promise((go) => {
    window.go = () => { held = false; window.at = null; go(read.call(this)); };
  });
};
new MutationObserver(() => {
  const said = document.querySelector("[data-busy]")?.innerText ?? "";
  const bar = document.querySelector("[data-busy] progress");
  if (bar) window.seen.push([bar.value, bar.max]);
  if (!window.at || held || !said.includes(window.at.stage) || !said.includes(window.at.figure)) return;
  if (window.at.hold) held = true;
  else document.querySelector("[data-key=stop]").click();
}).observe(document, { subtree: true, childList: true, characterData: true });"#;

/// How many records each store holds.
const COUNT: &str = r#"
window.counted = null;
const asked = indexedDB.open("cartside");
asked.onsuccess = () => {
  const told = {};
  const turn = asked.result.transaction(["entries", "pictures", "drafts", "summaries"]);
  for (const name of turn.objectStoreNames) {
    turn.objectStore(name).count().onsuccess = (event) => { told[name] = event.target.result; };
  }
  turn.oncomplete = () => { asked.result.close(); window.counted = told; };
};
return true;"#;

async fn counted(phone: &Browser<'_>) -> Value {
    phone.ask(COUNT, json!([])).await;
    phone
        .wait_for("the records", "return window.counted;", json!([]))
        .await
}

fn nothing() -> Value {
    json!({ "entries": 0, "pictures": 0, "drafts": 0, "summaries": 0 })
}

async fn see_nothing_stored(phone: &Browser<'_>) {
    let found = counted(phone).await;
    phone.expect_same("what is stored", found, nothing()).await;
}

async fn opened<'d>(device: &'d Device) -> Browser<'d> {
    let phone = device.start().await;
    phone.before_each_page(WATCH).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    phone
}

async fn stop_at(phone: &Browser<'_>, stage: &str, figure: &str) {
    let at = "window.at = { stage: arguments[0], figure: arguments[1], hold: false }; return true;";
    phone.ask(at, json!([stage, figure])).await;
}

async fn hold_at(phone: &Browser<'_>, stage: &str, figure: &str) {
    let at = "window.at = { stage: arguments[0], figure: arguments[1], hold: true }; return true;";
    phone.ask(at, json!([stage, figure])).await;
}

/// Waits until the page asks for a piece of the file that it is not given.
async fn see_held(phone: &Browser<'_>) {
    phone
        .wait_for("the page held", "return !!window.go;", json!([]))
        .await;
    phone.see_words("[data-figure]", "of 60").await;
}

async fn run_free(phone: &Browser<'_>) {
    phone.ask("window.at = null; return true;", json!([])).await;
}

fn written(device: &Device) -> (PathBuf, Album) {
    let album = album(PICTURES, BYTES);
    let file = device.downloads().join("album.zip");
    fs::write(&file, &album.file).unwrap();
    (file, album)
}

async fn see_stopped(phone: &Browser<'_>) {
    phone
        .see_words("[data-stopped]", "Nothing was changed")
        .await;
    phone.see_no("[data-busy]").await;
}

/// Chooses the file again, so far that it could be brought in.
async fn foresee(phone: &Browser<'_>, file: &Path, album: &Album) {
    phone.choose_to_bring_in(file).await;
    phone.see_it_would_add(album.entries, PICTURES).await;
}

#[tokio::test]
async fn bringing_in_stops_where_it_is_told_to_and_leaves_nothing() {
    let device = Device::installed("only").await;
    let (file, album) = written(&device);
    let phone = opened(&device).await;
    phone.step("while the file is read");
    stop_at(&phone, "Reading the file", "picture 20 of 60").await;
    phone.choose_to_bring_in(&file).await;
    see_stopped(&phone).await;
    phone.see_no("[data-would-add]").await;
    see_nothing_stored(&phone).await;
    phone.step("while pictures are put down");
    run_free(&phone).await;
    foresee(&phone, &file, &album).await;
    hold_at(&phone, "Bringing it in", "picture 40 of 60").await;
    phone.tap_words("Bring it in").await;
    see_held(&phone).await;
    let beside = counted(&phone).await;
    phone
        .expect(beside["pictures"].as_u64() > Some(20), "a batch put down")
        .await;
    phone
        .expect_same("entries", &beside["entries"], &json!(0))
        .await;
    phone.tap_words("Stop").await;
    phone.ask("window.go(); return true;", json!([])).await;
    see_stopped(&phone).await;
    see_nothing_stored(&phone).await;
    phone.step("the bar told how far it was");
    let told = "return window.seen.some(([done, of]) => done === 19 && of === 60);";
    let told = phone.ask(told, json!([])).await;
    phone.expect_same("told", told, json!(true)).await;
    phone.step("nothing stands in the way of bringing it in after all");
    phone.reload().await;
    foresee(&phone, &file, &album).await;
    phone.tap_words("Bring it in").await;
    phone
        .see(&format!("[data-added=\"{}\"]", album.entries))
        .await;
    let found = counted(&phone).await;
    phone
        .expect_same("pictures", &found["pictures"], &json!(PICTURES))
        .await;
    phone
        .expect_same("entries", &found["entries"], &json!(album.entries))
        .await;
    phone.step("carrying out stops too");
    run_free(&phone).await;
    phone.open_day_book().await;
    phone.tap_words("Carry out").await;
    phone.see_page("carry-out").await;
    stop_at(&phone, "Making the file", "picture 20 of 60").await;
    phone.tap_words("Make the file").await;
    see_stopped(&phone).await;
    phone.see_no("[data-file]").await;
    let after = counted(&phone).await;
    phone.expect_same("what is stored", after, found).await;
    phone.close().await;
}

#[tokio::test]
async fn a_kill_while_pictures_are_put_down_leaves_nothing() {
    let device = Device::installed("only").await;
    let (file, album) = written(&device);
    let phone = opened(&device).await;
    foresee(&phone, &file, &album).await;
    hold_at(&phone, "Bringing it in", "picture 40 of 60").await;
    phone.tap_words("Bring it in").await;
    see_held(&phone).await;
    let beside = counted(&phone).await;
    phone
        .expect(beside["pictures"].as_u64() > Some(20), "a batch put down")
        .await;
    phone.kill();

    let phone = device.open().await;
    phone.step("started again");
    phone.see_vehicles(0).await;
    see_nothing_stored(&phone).await;
    phone.bring_in(&file, album.entries, PICTURES).await;
    let found = counted(&phone).await;
    phone
        .expect_same("pictures", &found["pictures"], &json!(PICTURES))
        .await;
    phone.close().await;
}

#[tokio::test]
async fn pictures_cleared_away_by_another_tab_refuse_the_whole_step() {
    let device = Device::installed("only").await;
    let (file, album) = written(&device);
    let phone = opened(&device).await;
    foresee(&phone, &file, &album).await;
    hold_at(&phone, "Bringing it in", "picture 40 of 60").await;
    phone.tap_words("Bring it in").await;
    see_held(&phone).await;
    let first = phone.open_tab().await;
    phone.step("another tab opens the book");
    phone.go("").await;
    phone.see_vehicles(0).await;
    see_nothing_stored(&phone).await;
    let second = phone.turn_to(first).await;
    phone.step("the first goes on");
    phone.ask("window.go(); return true;", json!([])).await;
    phone
        .see_refused("Another tab has cleared away the pictures")
        .await;
    phone.see_refused("the book is as it was").await;
    see_nothing_stored(&phone).await;
    phone.turn_to(second).await;
    phone.close().await;
}
