//! The device is full, storage is refused, the connection is lost, another tab is newer: each has its sentence and its
//! way out, and nothing that was said to be saved is lost.

use std::fs;

use cartside_tests::drive::{Device, Engine, Server, Site, camera, programs};
use serde_json::json;

use crate::saving::HOLD;

/// What the browser is told that the app may keep: what it fetches for itself, and a little more.
const QUOTA: u64 = 4_000_000;

/// Fills what room there is, in a database of its own, down to the last few bytes.
const FILL: &str = r#"
const opened = (name) => new Promise((done, failed) => {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore("junk", { autoIncrement: true });
  request.onsuccess = () => done(request.result);
  request.onerror = () => failed(request.error);
});
const put = (database, bytes) => new Promise((done) => {
  const transaction = database.transaction("junk", "readwrite");
  transaction.objectStore("junk").add(crypto.getRandomValues(new Uint8Array(bytes)));
  transaction.oncomplete = () => done(true);
  transaction.onabort = () => done(false);
});
return opened("junk").then(async (database) => {
  for (const bytes of [60000, 8000, 800, 100, 10]) while (await put(database, bytes));
  database.close();
  return "full";
});"#;

#[tokio::test]
async fn a_full_device_keeps_what_was_saved_and_what_is_typed() {
    let device = Device::installed("only").await;
    let phone = device.start().await;
    let origin = device.address().trim_end_matches('/');
    // Told before the page is opened: the browser asks how much room there is only now and then.
    let quota = json!({ "origin": origin, "quotaSize": QUOTA });
    phone.below("Storage.overrideQuotaForOrigin", quota).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Kept before the device was full").await;
    let before = phone.count_everything_written(&cart).await;

    phone.step("no room for a picture");
    phone.open_part(&cart, "near/spoke-3").await;
    let full = phone.ask(FILL, json!([])).await;
    phone.expect_same("the device", full, json!("full")).await;
    let taken = device.downloads().join("camera.jpg");
    fs::write(&taken, camera::photograph()).unwrap();
    phone.see_words("main", "Take a picture").await;
    phone.give_file(&taken).await;
    phone.see_trouble("no room left").await;
    phone.see_no("img[data-picture]").await;
    phone.step("nor for a remark, which stays in its field");
    // What the notice says of the picture is not to be taken for what it says of the remark.
    phone.reload().await;
    phone.see_words("main", "Take a picture").await;
    phone
        .write_into("Remark", "Typed when there was no room")
        .await;
    phone.tap_words("Save the remark").await;
    phone.see_trouble("The last step was not saved").await;
    let field = phone
        .ask(
            "return document.querySelector('textarea').value;",
            json!([]),
        )
        .await;
    phone
        .expect_same("in the field", field, json!("Typed when there was no room"))
        .await;

    phone.step("room again");
    phone
        .below(
            "Storage.overrideQuotaForOrigin",
            json!({ "origin": origin }),
        )
        .await;
    phone.tap_words("Save the remark").await;
    phone
        .see_words("[data-remark]", "Typed when there was no room")
        .await;
    phone.take_picture(&taken).await;
    let now = phone.count_everything_written(&cart).await;
    phone
        .expect_same("lines: a remark and a picture more", now, before + 2)
        .await;
    phone.close_but_for(&["Quota", "quota"]).await;
}

/// Makes every opening of a database fail as a browser does that grants no storage.
const REFUSE: &str = r#"
IDBFactory.prototype.open = () => { throw new DOMException("storage is switched off", "SecurityError"); };"#;

pub async fn where_storage_is_refused_it_says_so_and_takes_nothing(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(REFUSE).await;
    phone.go("").await;
    phone.see_page("refused").await;
    phone
        .see_words("[role=alert]", "no place to keep the book")
        .await;
    phone
        .see_words("[role=alert]", "Nothing new was saved")
        .await;
    let offered = phone.sees_control("Begin a vehicle").await;
    phone.expect(!offered, "no key that would write").await;
    phone.close().await;
}

pub async fn in_a_private_window_it_works_and_promises_nothing(engine: Engine) {
    // Kept by no private window, so each would unpack it.
    let (plain, _) = programs::plain();
    let site = Site::of(&plain);
    let server = Server::of(&site);
    let device = engine.device("private", &server).private().whole();
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written in a private window").await;
    phone.go("#/kept").await;
    // WebKitGTK has no way to ask.
    let promised = match engine {
        Engine::WebKit => "unknown",
        _ => "no",
    };
    phone.see(&format!("[data-promised={promised}]")).await;
    phone.see("[data-only-here=\"5\"]").await;
    phone.close().await;
    let phone = device.open().await;
    phone.step("the window was closed, and the browser has forgotten all");
    phone.see_vehicles(0).await;
    phone.close().await;
}

/// Keeps every connection, so that one can be ended as a browser does that was told to free it.
const CONNECTIONS: &str = r#"
window.connections = [];
const open = IDBFactory.prototype.open;
IDBFactory.prototype.open = function (...given) {
  const request = open.apply(this, given);
  request.addEventListener("success", () => window.connections.push(request.result));
  if (window.shut) request.addEventListener("success", (event) => request.result.close());
  return request;
};"#;

pub async fn a_lost_connection_is_opened_once_more(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone.before_each_page(CONNECTIONS).await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.step("the connection is closed under the page");
    phone
        .ask(
            "for (const one of window.connections) one.close();",
            json!([]),
        )
        .await;
    phone.remark("Written over a new connection").await;
    phone.step("and again, with every new one closed too");
    phone
        .ask(
            "window.shut = true; for (const one of window.connections) one.close();",
            json!([]),
        )
        .await;
    phone.write_into("Remark", "Not to be lost").await;
    phone.tap_words("Save the remark").await;
    phone.see_trouble("would not open it again").await;
    phone.step("what is in memory goes out as a file");
    phone.tap("[data-key=from-memory]").await;
    phone.see_trouble("went out as a file").await;
    let rescued = phone.in_the_downloads("cartside-vehicle-….zip").await;
    let lines = rescued.lines();
    assert_eq!(
        lines.len(),
        6,
        "cart, two wheels, examination, both remarks: {lines:#?}"
    );
    for words in ["Written over a new connection", "Not to be lost"] {
        assert!(lines.iter().any(|line| line.contains(words)), "{words}");
    }
    phone.step("until it lets it be open again");
    phone.ask("window.shut = false;", json!([])).await;
    phone.tap_words("Save the remark").await;
    phone.see_words("[data-remark]", "Not to be lost").await;
    phone.reload().await;
    phone.see_so_many(2, "[data-remark]").await;
    phone.close().await;
}

/// The step is let be done once the page is shown again, if it ever is: WebKit keeps a page that is left, and its step.
const SHOWN_AGAIN: &str =
    r#"addEventListener("pageshow", (event) => { if (event.persisted) window.held = false; });"#;

pub async fn a_page_left_in_the_middle_of_a_step_holds_nobody_up(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.start().await;
    phone
        .before_each_page(&format!("{HOLD}{SHOWN_AGAIN}"))
        .await;
    phone.go("").await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.ask("window.held = true;", json!([])).await;
    phone.write_into("Remark", "Cut short").await;
    phone.tap_words("Save the remark").await;
    let turned = "return window.turned > 5;";
    phone
        .wait_for("a transaction held open", turned, json!([]))
        .await;
    phone.step("the page is left before it is saved");
    phone.leave().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written meanwhile").await;
    if engine == Engine::WebKit {
        phone.step("the page that was left is shown again, and does what it was at");
        phone.go_back(2).await;
        phone.see_words("[data-remark]", "Cut short").await;
        phone.see_words("[data-remark]", "Written meanwhile").await;
        phone.leave().await;
        phone.open_part(&cart, "near/spoke-3").await;
        phone.see_so_many(2, "[data-remark]").await;
    }
    phone.close().await;
}

/// Gives the book a newer form from another tab.
const NEWER: &str = r#"
return indexedDB.databases().then((all) => new Promise((done) => {
  const own = all.find((one) => !one.name.includes("demonstration"));
  const request = indexedDB.open(own.name, own.version + 1);
  request.onsuccess = () => { request.result.close(); done(own.name); };
  request.onerror = () => done("error: " + request.error);
  request.onblocked = () => done("blocked");
}));"#;

pub async fn a_newer_tab_is_never_blocked_and_this_one_says_so(engine: Engine) {
    let device = engine.installed("only").await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.step("another tab gives the book a newer form");
    let done = phone.ask(NEWER, json!([])).await;
    let name = done.as_str().unwrap_or_default();
    phone
        .expect(
            name != "blocked" && !name.starts_with("error"),
            &format!("the newer form is taken at once; it says {name:?}"),
        )
        .await;
    phone.see_trouble("newer Cartside").await;
    phone.step("nothing more is written here");
    phone.write_into("Remark", "Too late").await;
    phone.tap_words("Save the remark").await;
    phone.see_trouble("newer Cartside").await;
    phone.see_no("[data-remark]").await;
    phone.close_but_for(&["VersionError", "version"]).await;
}

#[tokio::test]
async fn a_book_that_does_not_open_is_not_waited_for_in_silence() {
    let device = Device::installed("only").await;
    let phone = device.start().await;
    phone
        .before_each_page(&format!("{HOLD} window.held = true;"))
        .await;
    phone.go("").await;
    phone.see_page("wait").await;
    let late = phone.sees(".late").await;
    phone.expect(!late, "nothing more is said at once").await;
    phone
        .see_words(".late", "Close all windows of the browser")
        .await;
    phone.see_words(".late", "is kept").await;
    phone.ask("window.held = false;", json!([])).await;
    phone.see_page("book").await;
    phone.close().await;
}
