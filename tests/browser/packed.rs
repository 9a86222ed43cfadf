//! The app's wasm crosses the line packed; a device unpacks it once and keeps it as any browser takes it.

use cartside_tests::drive::{Device, Server, Site, programs};
use serde_json::json;

/// What the page was given to start from, by kind of its name.
const STARTED_FROM: &str = r#"
const names = performance.getEntriesByType("resource").map((entry) => new URL(entry.name).pathname);
return ["_bg.wasm", "_bg.wasm.packed"].filter((ending) => names.some((name) => name.endsWith(ending)));"#;

/// The kept wasm: its type, and whether the browser takes it.
const KEPT: &str = r#"
const found = [];
for (const name of await caches.keys()) {
  const cache = await caches.open(name);
  for (const request of await cache.keys()) {
    if (!request.url.includes("_bg.wasm")) continue;
    const response = await cache.match(request);
    const type = response.headers.get("content-type");
    const valid = WebAssembly.validate(await response.arrayBuffer());
    found.push({ packed: request.url.endsWith(".packed"), type, valid });
  }
}
return found;"#;

/// Throws away everything the worker keeps, as a browser short of room may.
const EVICT: &str = r#"
for (const name of await caches.keys()) await caches.delete(name);
return (await caches.keys()).length;"#;

#[tokio::test]
async fn the_wasm_is_unpacked_once_and_kept() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    phone.step("the first start unpacks");
    let from = phone.ask(STARTED_FROM, json!([])).await;
    phone
        .expect_same("started from", from, json!(["_bg.wasm.packed"]))
        .await;
    let kept = phone.ask(KEPT, json!([])).await;
    let plain = json!([{ "packed": false, "type": "application/wasm", "valid": true }]);
    phone.expect_same("kept", kept, plain).await;
    phone.step("the next start takes what is kept");
    phone.reload().await;
    phone.see_page("book").await;
    let from = phone.ask(STARTED_FROM, json!([])).await;
    phone
        .expect_same("started from", from, json!(["_bg.wasm"]))
        .await;
    phone.step("a start after the browser has thrown away what was kept");
    let left = phone.ask(EVICT, json!([])).await;
    phone.expect_same("caches left", left, json!(0)).await;
    phone.reload().await;
    phone.see_page("book").await;
    let from = phone.ask(STARTED_FROM, json!([])).await;
    phone
        .expect_same("started from", from, json!(["_bg.wasm"]))
        .await;
    phone.step("the worker has fetched it all anew");
    phone.see_ready_without_a_network().await;
    let kept = phone.ask(KEPT, json!([])).await;
    let plain = json!([{ "packed": false, "type": "application/wasm", "valid": true }]);
    phone.expect_same("kept", kept, plain).await;
    phone.close().await;
}

/// Unpacks as a first start does, and leaves what came out to the worker: how many bytes, or what was wrong.
const HAND_OVER: &str = r#"
const { wasm, packed, unpacker } = document.querySelector("script[data-packed]").dataset;
const bytes = await (await fetch(packed)).arrayBuffer();
const worker = new Worker(unpacker);
const told = new Promise((tell) => {
  worker.onmessage = ({ data }) => tell(data.error ?? data.bytes.length);
});
worker.postMessage({ packed: bytes, address: new URL(wasm, location).href, keeps: true }, [bytes]);
return (await told) > 500000;"#;

/// Alters one bit of what was left to the worker.
const DAMAGE: &str = r#"
const cache = await caches.open((await caches.keys()).find((name) => name.endsWith("-handed")));
const [request] = await cache.keys();
const bytes = new Uint8Array(await (await cache.match(request)).arrayBuffer());
bytes[bytes.length >> 1] ^= 1;
await cache.put(request, new Response(bytes));
return bytes.length > 0;"#;

/// Has the worker begin; what it comes to, and how many caches there are then.
const BEGIN: &str = r#"
const { installing } = await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
const ends = ["installed", "activated", "redundant"];
while (!ends.includes(installing.state)) await new Promise((next) => setTimeout(next, 50));
return [installing.state === "redundant", (await caches.keys()).length];"#;

#[tokio::test]
async fn what_the_page_unpacked_is_taken_over_if_it_is_what_was_built() {
    let (site, built) = (Site::of(&programs::dist()), programs::dist());
    site.alter(".css");
    let server = Server::of(&site);
    let device = Device::new("only", &server);
    let phone = device.open().await;
    phone
        .see_words("[data-ready=\"failed\"]", "needs the network")
        .await;
    phone.step("one bit of what is handed over is wrong, and the host has lost the program");
    let handed = phone.ask(HAND_OVER, json!([])).await;
    phone.expect_same("unpacked", handed, json!(true)).await;
    let damaged = phone.ask(DAMAGE, json!([])).await;
    phone.expect_same("damaged", damaged, json!(true)).await;
    site.take_up(&built);
    site.lose(".wasm.packed");
    let came = phone.ask(BEGIN, json!([])).await;
    phone.expect_same("worker", came, json!([true, 0])).await;
    phone.step("what is handed over is right");
    site.take_up(&built);
    let handed = phone.ask(HAND_OVER, json!([])).await;
    phone.expect_same("unpacked", handed, json!(true)).await;
    site.lose(".wasm.packed");
    let came = phone.ask(BEGIN, json!([])).await;
    phone.expect_same("worker", came, json!([false, 1])).await;
    let kept = phone.ask(KEPT, json!([])).await;
    let plain = json!([{ "packed": false, "type": "application/wasm", "valid": true }]);
    phone.expect_same("kept", kept, plain).await;
    phone.close_but_for(&["sw.js", "worker", "404"]).await;
}

/// How the name of the unpacker ends: a build holds no other wasm that is not packed.
const UNPACKER: &str = ".wasm";

#[tokio::test]
async fn without_its_unpacker_it_says_so_and_starts_once_the_host_has_it_again() {
    let (site, built) = (Site::of(&programs::dist()), programs::dist());
    for spoil in [Site::lose, Site::alter] {
        site.take_up(&built);
        spoil(&site, UNPACKER);
        let server = Server::of(&site);
        let device = Device::new("only", &server);
        let phone = device.start().await;
        phone.step("the host has no unpacker, or another");
        phone.go("").await;
        phone.see_words("#reload-panel", "Reload to carry on").await;
        let kept = phone.ask(KEPT, json!([])).await;
        phone.expect_same("kept", kept, json!([])).await;
        phone.step("it has the right one again");
        site.take_up(&built);
        phone.tap_words_in("#reload-panel", "Reload").await;
        phone.see_page("book").await;
        phone.see_ready_without_a_network().await;
        phone
            .close_but_for(&["unpack", "404", "Failed to fetch"])
            .await;
    }
}

/// Counts the pictures the browser paints while the page says that it is getting ready.
const COUNT_PAINTED: &str = r#"
window.painted = 0;
const look = () => {
  const line = document.getElementById("getting-ready");
  if (line && getComputedStyle(line).display !== "none") window.painted += 1;
  requestAnimationFrame(look);
};
requestAnimationFrame(look);"#;

/// Makes the next start a first one.
const FORGET: &str = r#"
for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
for (const name of await caches.keys()) await caches.delete(name);
return true;"#;

/// Whether the page has said often enough that it is getting ready, and whether it still does.
const SAID: &str = r#"
const line = document.getElementById("getting-ready");
return [window.painted > 2, getComputedStyle(line).display !== "none"];"#;

#[tokio::test]
async fn the_first_start_says_so_while_it_unpacks() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    phone.before_each_page(COUNT_PAINTED).await;
    phone.step("a first start");
    let forgot = phone.ask(FORGET, json!([])).await;
    phone.expect_same("forgot", forgot, json!(true)).await;
    phone.reload().await;
    phone.see_page("book").await;
    let said = phone.ask(SAID, json!([])).await;
    phone.expect_same("said", said, json!([true, false])).await;
    phone.see_ready_without_a_network().await;
    phone.step("a later start");
    phone.reload().await;
    phone.see_page("book").await;
    let said = phone.ask(SAID, json!([])).await;
    phone.expect_same("said", said, json!([false, false])).await;
    phone.close().await;
}
