//! The app's wasm crosses the line packed; a device unpacks it once and keeps it as any browser takes it.

use cartside_tests::drive::{Device, Server};
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
