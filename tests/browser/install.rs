//! What a browser asks for before it offers to install: a manifest, icons of their sizes, a worker.

use cartside_tests::drive::{Browser, Device, Server};
use serde_json::{Value, json};

const MANIFEST: &str = r#"
const link = document.querySelector("link[rel=manifest]");
return fetch(link.href).then((answer) => answer.ok ? answer.json() : null);"#;

/// What each icon named by the manifest turns out to be.
const ICONS: &str = r#"
const look = async (icon) => {
  const answer = await fetch(icon.src);
  const image = new Image();
  image.src = icon.src;
  await image.decode().catch(() => {});
  return { ok: answer.ok, type: answer.headers.get("content-type"), width: image.naturalWidth, height: image.naturalHeight };
};
return Promise.all(arguments[0].map(look));"#;

#[tokio::test]
async fn a_browser_finds_all_it_needs_to_install() {
    let server = Server::start();
    let device = Device::new("only", &server).whole();
    let phone = device.open_ready().await;
    see_manifest(&phone).await;
    phone.step("what the browser itself says");
    let said = phone.below("Page.getInstallabilityErrors", json!({})).await;
    let errors = said["installabilityErrors"].clone();
    phone
        .expect_same("what hinders installing", errors, json!([]))
        .await;
    let said = phone.below("Page.getAppManifest", json!({})).await;
    let errors = said["errors"].clone();
    phone
        .expect_same("faults of the manifest", errors, json!([]))
        .await;
    phone.close().await;
}

async fn see_manifest(phone: &Browser<'_>) {
    phone.step("the manifest");
    let manifest = phone.ask(MANIFEST, json!([])).await;
    for field in ["name", "short_name", "start_url", "scope", "id"] {
        let expected = format!("{field} in {manifest}");
        phone.expect(manifest[field].is_string(), &expected).await;
    }
    let display = manifest["display"].clone();
    phone
        .expect_same("display", display, json!("standalone"))
        .await;
    phone.step("the icons");
    let icons = manifest["icons"].as_array().cloned().unwrap_or_default();
    let found = phone.ask(ICONS, json!([icons])).await;
    for (icon, found) in icons.iter().zip(found.as_array().unwrap()) {
        let expected = format!("{icon}; found: {found}");
        phone.expect(is_as_said(icon, found), &expected).await;
    }
    for purpose in ["any", "maskable"] {
        let big = icons
            .iter()
            .filter(|icon| icon["purpose"] == purpose && icon["sizes"] == "512x512");
        phone.expect_same(purpose, big.count(), 1).await;
    }
}

fn is_as_said(icon: &Value, found: &Value) -> bool {
    let size = format!("{}x{}", found["width"], found["height"]);
    found["ok"] == json!(true)
        && found["type"] == icon["type"]
        && (icon["sizes"] == "any" || icon["sizes"] == size.as_str())
}
