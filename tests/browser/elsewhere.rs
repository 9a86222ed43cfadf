//! Nothing is fetched from elsewhere, and the page's policy sees to it.

use cartside_tests::drive::{Device, Server};
use serde_json::json;

/// Tries to reach another origin in the three ways a page can, and notes what the policy says of each.
const TRY: &str = r#"
const refused = [];
document.addEventListener("securitypolicyviolation", (event) => refused.push(event.effectiveDirective));
const image = new Image();
image.src = arguments[0] + "x.png";
const script = document.createElement("script");
script.src = arguments[0] + "x.js";
document.head.append(script);
return fetch(arguments[0] + "x", { mode: "no-cors" })
  .then(() => "answered", () => "refused")
  .then((fetched) => new Promise((done) => setTimeout(() => done({ fetched, refused: refused.sort() }), 300)));"#;

/// The hosts of everything the page asked for, but its own and the one that was tried.
const OTHERS: &str = r#"
const tried = new URL(arguments[0]).origin;
return performance.getEntriesByType("resource")
  .map((entry) => new URL(entry.name).origin)
  .filter((origin) => origin !== location.origin && origin !== tried);"#;

#[tokio::test]
async fn the_page_reaches_nobody_but_its_own_host() {
    let server = Server::start();
    // Another port is another origin, and here it would even answer.
    let elsewhere = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    phone.see_page("book").await;
    phone.step("the policy");
    let policy = phone
        .attributes("meta[http-equiv=\"Content-Security-Policy\"]", "content")
        .await;
    phone.expect_same("policies", policy.len(), 1).await;
    let open = ["unsafe-inline", "'unsafe-eval'"];
    let strict = !open.iter().any(|word| policy[0].contains(word));
    phone
        .expect(strict, &format!("a policy without {open:?}: {policy:?}"))
        .await;
    phone.step("a fetch, a picture and a script from elsewhere");
    let tried = phone.ask(TRY, json!([elsewhere.address()])).await;
    let expected =
        json!({ "fetched": "refused", "refused": ["connect-src", "img-src", "script-src-elem"] });
    phone.expect_same("what came of it", tried, expected).await;
    phone.step("everything the page did fetch came from its own host");
    let others = phone.ask(OTHERS, json!([elsewhere.address()])).await;
    phone.expect_same("other hosts", others, json!([])).await;
    phone.close_but_for(&["Content Security Policy"]).await;
}
