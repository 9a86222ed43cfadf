//! A newer build at the host: it waits, says so, and takes over when told; one that is not whole changes nothing; and
//! what was damaged on the device is mended.
//!
//! There are two builds whose pages, styles and programs differ: see `xtask/src/newer.rs`.

use std::fs;
use std::path::Path;
use std::time::Duration;

use cartside_tests::drive::{Browser, Device, Engine, Server, Site, Theme, programs};
use serde_json::json;

use super::saving::HOLD;

/// What a browser says when it looks for a newer worker and the host is away.
const UNREACHED: [&str; 2] = ["ERR_CONNECTION_REFUSED", "when fetching the script"];

const STYLE: &str = ".css";
/// The script between the program and the browser, by its name.
const GLUE: &str = "cartside-app-[0-9a-f]+[.]js$";

/// Whether the page, its style and its program are all of this build.
const RUNNING: &str = r#"
const program = document.querySelector("header a")?.textContent === "DAY BOOK";
const style = getComputedStyle(document.documentElement).getPropertyValue("--build").trim() === "newer";
const page = document.querySelector("meta[name=description]").content.endsWith("newer.");
return [page, style, program].every((newer) => newer === (arguments[0] === "newer"));"#;

/// The builds that are kept, by their digests.
const KEPT: &str = r#"
return caches.keys().then((names) => names.map((name) => name.split("-").pop()));"#;

/// Has the browser look for a newer worker, and tells what became of the one it found.
const LOOK: &str = r#"
return navigator.serviceWorker.getRegistration().then((registration) =>
  registration.update().catch(() => {}).then(() => {
    const worker = registration.installing;
    if (!worker) return registration.waiting ? "installed" : "none";
    return new Promise((done) => worker.addEventListener("statechange", () => done(worker.state)));
  }));"#;

async fn see_running(phone: &Browser<'_>, build: &str) {
    let expected = format!("page, style and program of the {build} build");
    phone.wait_for(&expected, RUNNING, json!([build])).await;
}

/// Lets nothing wait for longer than half a second.
const HURRY: &str = r#"
const wait = window.setTimeout;
window.setTimeout = (act, time) => wait(act, Math.min(time, 500));"#;

/// Counts how often the page has the browser look for a newer worker.
const COUNT: &str = r#"
window.looks = 0;
const update = ServiceWorkerRegistration.prototype.update;
ServiceWorkerRegistration.prototype.update = function () {
  window.looks += 1;
  return update.call(this);
};"#;

/// Sets the page's clock on by this many minutes, as if it had stayed open.
const LATER: &str = r#"
const [minutes] = arguments;
const now = window.Date.now;
window.Date.now = () => now() + minutes * 60000;"#;

/// Tells the page that it comes back into sight, and tells how often it has looked after that.
const BACK_IN_SIGHT: &str = r#"
document.dispatchEvent(new Event("visibilitychange"));
return new Promise((done) => setTimeout(() => done(window.looks), 50));"#;

/// Has what is done again and again done ten times a second.
const HOURS: &str = r#"
const again = window.setInterval;
window.setInterval = (act) => again(act, 100);"#;

/// The digest of a build, as its worker holds it.
fn digest(build: &Path) -> String {
    let worker = fs::read_to_string(build.join("sw.js")).unwrap();
    let (_, after) = worker.split_once("\"digest\": \"").unwrap();
    after.split('"').next().unwrap().to_owned()
}

async fn see_kept(phone: &Browser<'_>, builds: &[&Path]) {
    let mut found = phone.ask(KEPT, json!([])).await;
    found
        .as_array_mut()
        .unwrap()
        .sort_by_key(|name| name.to_string());
    let mut expected: Vec<String> = builds.iter().map(|build| digest(build)).collect();
    expected.sort();
    phone
        .expect_same("builds kept", found, json!(expected))
        .await;
}

async fn see_newer_waits(phone: &Browser<'_>) {
    phone
        .see_words("[data-ready=\"waiting\"]", "a newer Cartside waits")
        .await;
}

/// Looks for a newer worker, which comes to this.
async fn look_for_newer(phone: &Browser<'_>, comes_to: &str) {
    let found = phone.ask(LOOK, json!([])).await;
    phone
        .expect_same("the worker found", found, json!(comes_to))
        .await;
}

async fn see_typed(phone: &Browser<'_>, text: &str) {
    let script = "return field(\"Remark\")?.value === arguments[0];";
    let expected = format!("“{text}” still typed");
    phone.wait_for(&expected, script, json!([text])).await;
}

/// That everyone can use the page while a newer build waits.
async fn audit(phone: &Browser<'_>) {
    phone.be_a_phone(360, 740).await;
    for theme in Theme::BOTH {
        phone.prefer_still(theme).await;
        let found = phone.audit().await;
        phone.expect_same("found by axe", found, Vec::new()).await;
    }
}

pub async fn a_newer_build_waits_says_so_and_takes_over_when_told(engine: Engine) {
    // Once with builds as they are put up.
    let (older, newer) = match engine {
        Engine::Chromium => (programs::dist(), programs::newer()),
        Engine::Firefox | Engine::WebKit => programs::plain(),
    };
    let site = Site::of(&older);
    let mut server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written with the older").await;
    see_running(&phone, "older").await;
    see_kept(&phone, &[&older]).await;

    phone.step("the host has a newer build");
    site.take_up(&newer);
    phone.reload().await;
    see_newer_waits(&phone).await;
    phone.see("[data-key=take-over]").await;
    if engine == Engine::Chromium {
        audit(&phone).await;
    }
    phone.step("the older works on, without a network too");
    server.kill();
    phone.reload().await;
    see_newer_waits(&phone).await;
    see_running(&phone, "older").await;
    see_kept(&phone, &[&older, &newer]).await;
    phone.remark("Written while the newer waits").await;

    phone.step("take over");
    phone.write_into("Remark", "Typed and not yet saved").await;
    phone.tap_key("take-over").await;
    see_running(&phone, "newer").await;
    phone.see_ready_without_a_network().await;
    phone.see_so_many(2, "[data-remark]").await;
    see_typed(&phone, "Typed and not yet saved").await;
    see_kept(&phone, &[&newer]).await;
    phone.step("the newer starts without a network");
    phone.open_tab().await;
    phone.go("").await;
    see_running(&phone, "newer").await;
    phone.see_vehicles(1).await;
    phone.see_ready_without_a_network().await;
    phone.close_but_for(&UNREACHED).await;
}

pub async fn a_page_that_stays_open_looks_for_a_newer_build(engine: Engine) {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.start().await;
    phone.before_each_page(COUNT).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    site.take_up(&newer);
    phone.step("it comes back into sight within the hour");
    phone.ask(LATER, json!([55])).await;
    see_looks(&phone, 0).await;
    phone.step("and after it");
    phone.ask(LATER, json!([6])).await;
    see_looks(&phone, 1).await;
    see_newer_waits(&phone).await;
    phone.step("and at once again");
    see_looks(&phone, 1).await;
    phone.close().await;
}

async fn see_looks(phone: &Browser<'_>, so_many: u32) {
    let looks = phone.ask(BACK_IN_SIGHT, json!([])).await;
    phone.expect_same("looks", looks, json!(so_many)).await;
}

#[tokio::test]
async fn a_page_that_is_never_left_looks_as_the_hours_go_by() {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = Device::new("only", &server);
    let phone = device.start().await;
    phone.before_each_page(HOURS).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    site.take_up(&newer);
    phone.ask(LATER, json!([61])).await;
    see_newer_waits(&phone).await;
    phone.close().await;
}

#[tokio::test]
async fn a_newer_build_that_does_not_answer_at_first_is_asked_again() {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    site.take_up(&newer);
    let asked = "type === \"is-ready\" && ";
    site.reword("sw.js", asked, &format!("{asked}self.asked++ && "));
    site.reword("sw.js", "const BUILD", "self.asked = 0;\nconst BUILD");
    // The page waits for the answer as long as a slow device may need; not so long here.
    phone.before_each_page(HURRY).await;
    phone.reload().await;
    see_newer_waits(&phone).await;
    phone.close().await;
}

pub async fn two_tabs_change_to_the_newer_each_in_its_own_time(engine: Engine) {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.open_part(&cart, "near/spoke-3").await;
    site.take_up(&newer);
    phone.reload().await;
    see_newer_waits(&phone).await;
    phone.write_into("Remark", "Typed in the first tab").await;

    phone.step("the second tab lets it take over");
    let first = phone.open_tab().await;
    phone.go("").await;
    see_newer_waits(&phone).await;
    see_running(&phone, "older").await;
    phone.tap_key("take-over").await;
    see_running(&phone, "newer").await;
    phone.step("the first is left as it was, and says so");
    let second = phone.turn_to(first).await;
    see_newer_waits(&phone).await;
    see_running(&phone, "older").await;
    see_typed(&phone, "Typed in the first tab").await;
    phone.tap_words("Save the remark").await;
    phone
        .see_words("[data-remark]", "Typed in the first tab")
        .await;
    phone.write_into("Remark", "Typed thereafter").await;
    phone.step("it changes when told");
    phone.tap_key("take-over").await;
    see_running(&phone, "newer").await;
    phone.see_ready_without_a_network().await;
    see_typed(&phone, "Typed thereafter").await;
    phone.step("and the second shows what the first wrote");
    phone.turn_to(second).await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone
        .see_words("[data-remark]", "Typed in the first tab")
        .await;
    phone.close().await;
}

pub async fn a_newer_build_takes_over_only_when_what_is_typed_is_kept(engine: Engine) {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.start().await;
    phone.before_each_page(HOLD).await;
    phone.go("").await;
    phone.see_ready_without_a_network().await;
    let cart = phone.begin_a_cart().await;
    site.take_up(&newer);
    look_for_newer(&phone, "installed").await;
    phone.open_part(&cart, "near/spoke-3").await;
    see_newer_waits(&phone).await;
    phone.step("what is typed is long in being kept");
    phone.ask("window.held = true;", json!([])).await;
    phone.write_into("Remark", "Typed and not yet kept").await;
    phone.tap_key("take-over").await;
    tokio::time::sleep(Duration::from_millis(800)).await;
    see_running(&phone, "older").await;
    phone.step("it is kept");
    phone.ask("window.held = false;", json!([])).await;
    see_running(&phone, "newer").await;
    see_typed(&phone, "Typed and not yet kept").await;
    phone.close().await;
}

pub async fn a_newer_build_that_is_not_whole_keeps_the_older(engine: Engine) {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let mut server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("a file of the newer build answers 404");
    site.take_up(&newer);
    site.lose(STYLE);
    look_for_newer(&phone, "redundant").await;
    see_the_older_alone(&phone, &older).await;
    phone.step("a file of the newer build has other bytes than its list says");
    site.take_up(&newer);
    site.alter(STYLE);
    look_for_newer(&phone, "redundant").await;
    see_the_older_alone(&phone, &older).await;
    phone.step("so has its program");
    site.take_up(&newer);
    site.alter(".wasm.packed");
    look_for_newer(&phone, "redundant").await;
    see_the_older_alone(&phone, &older).await;

    phone.step("without a network");
    server.kill();
    phone.reload().await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone.remark("Written with the older").await;
    see_the_older_alone(&phone, &older).await;
    phone.step("the host mends its build");
    site.take_up(&newer);
    let _server = server.start_again();
    look_for_newer(&phone, "installed").await;
    see_newer_waits(&phone).await;
    phone.tap_key("take-over").await;
    see_running(&phone, "newer").await;
    phone
        .see_words("[data-remark]", "Written with the older")
        .await;
    let expected = [&UNREACHED[..], &["404", "sw.js"]].concat();
    phone.close_but_for(&expected).await;
}

async fn see_the_older_alone(phone: &Browser<'_>, older: &Path) {
    phone.see_ready_without_a_network().await;
    see_running(phone, "older").await;
    see_kept(phone, &[older]).await;
}

pub async fn a_first_build_that_is_not_whole_says_that_it_needs_the_network(engine: Engine) {
    let (older, _) = programs::plain();
    let site = Site::of(&older);
    site.alter(STYLE);
    let server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.open().await;
    phone
        .see_words("[data-ready=\"failed\"]", "needs the network")
        .await;
    see_kept(&phone, &[]).await;
    let cart = phone.begin_a_cart().await;
    phone.step("the host mends it");
    site.take_up(&older);
    phone.reload().await;
    phone.see_ready_without_a_network().await;
    see_kept(&phone, &[&older]).await;
    phone.open_vehicle(&cart).await;
    phone.close_but_for(&["sw.js", "worker"]).await;
}

/// What a browser says of a page that could not start without a network.
const STOPPED: [&str; 5] = [
    UNREACHED[0],
    UNREACHED[1],
    "Failed to fetch",
    "Failed to load",
    "sw.js",
];

/// Alters one bit in the middle of the file with this pattern in its name, as this build is kept; how many there were.
const DAMAGE: &str = r#"
return (async () => {
  const [digest, ending] = arguments;
  const cache = await caches.open((await caches.keys()).find((name) => name.endsWith(digest)));
  const requests = (await cache.keys()).filter((request) => new RegExp(ending).test(request.url));
  for (const request of requests) {
    const kept = await cache.match(request);
    const bytes = new Uint8Array(await kept.arrayBuffer());
    bytes[bytes.length >> 1] ^= 1;
    await cache.put(request, new Response(bytes, { headers: kept.headers }));
  }
  return requests.length;
})();"#;

async fn damage(phone: &Browser<'_>, build: &Path, ending: &str) {
    let damaged = phone.ask(DAMAGE, json!([digest(build), ending])).await;
    let what = format!("kept files …{ending}");
    phone.expect_same(&what, damaged, json!(1)).await;
}

pub async fn what_is_damaged_on_the_device_is_fetched_anew(engine: Engine) {
    let (older, _) = programs::plain();
    let site = Site::of(&older);
    let mut server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let mut phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    for ending in ["index.html", STYLE, "_bg.wasm"] {
        phone.step(&format!("{ending} is damaged"));
        damage(&phone, &older, ending).await;
        phone.reload().await;
        phone.see_page("vehicle").await;
        phone.see_ready_without_a_network().await;
    }
    phone.step("all is whole, without a network too");
    server.kill();
    phone.reload().await;
    phone.see_page("vehicle").await;
    phone.see_ready_without_a_network().await;

    phone.step("a damaged file that is only shown is missed");
    damage(&phone, &older, "wheel.svg").await;
    phone.reload().await;
    phone
        .see_words("[data-ready=\"failed\"]", "needs the network")
        .await;
    for needed in [GLUE, "_bg.wasm"] {
        phone.step("a damaged file that is needed is not started from without a network");
        damage(&phone, &older, needed).await;
        // A browser may go on with what it has in memory; a new process has nothing there.
        phone.close_but_for(&STOPPED).await;
        phone = device.open().await;
        phone
            .see_words("#reload-panel", "Everything it said was saved is kept")
            .await;
        phone.step("with a network it comes back");
        server = server.start_again();
        if engine == Engine::WebKit && needed == GLUE {
            // A script that failed once fails in WebKit for as long as the process lives.
            phone.close().await;
            phone = device.open().await;
        } else {
            phone.tap_words_in("#reload-panel", "Reload").await;
        }
        phone.see_ready_without_a_network().await;
        server.kill();
    }
    phone.open_vehicle(&cart).await;
    phone.close_but_for(&STOPPED).await;
}

pub async fn a_damaged_build_gives_way_to_a_newer_one(engine: Engine) {
    let (older, newer) = programs::plain();
    let site = Site::of(&older);
    let server = Server::of(&site);
    let device = engine.never_at("only", &server).await;
    let phone = device.open_ready().await;
    let cart = phone.begin_a_cart().await;
    phone.step("the host has a newer build, and the older is damaged");
    site.take_up(&newer);
    look_for_newer(&phone, "installed").await;
    damage(&phone, &older, "_bg.wasm").await;
    phone.reload().await;
    phone
        .see_words("#reload-panel", "Everything it said was saved is kept")
        .await;
    phone.tap_words_in("#reload-panel", "Reload").await;
    see_running(&phone, "newer").await;
    phone.see_ready_without_a_network().await;
    phone.open_vehicle(&cart).await;
    phone.close_but_for(&["404", "Failed"]).await;
}
