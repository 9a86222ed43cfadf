//! What a browser asks for before it offers to install: a manifest, icons of their sizes, a worker.

use cartside_tests::drive::{Device, Server};
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
  await image.decode();
  return { ok: answer.ok, type: answer.headers.get("content-type"), width: image.naturalWidth, height: image.naturalHeight };
};
return Promise.all(arguments[0].map(look));"#;

#[tokio::test]
async fn a_browser_finds_all_it_needs_to_install() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open_ready().await;
    phone.step("the manifest");
    let manifest = phone.ask(MANIFEST, json!([])).await;
    for field in ["name", "short_name", "start_url", "scope", "id"] {
        assert!(manifest[field].is_string(), "{field} in {manifest}");
    }
    assert_eq!(manifest["display"], "standalone");
    phone.step("the icons");
    let icons = manifest["icons"].as_array().cloned().unwrap_or_default();
    let found = phone.ask(ICONS, json!([icons])).await;
    for (icon, found) in icons.iter().zip(found.as_array().unwrap()) {
        see_icon(icon, found);
    }
    let big = |purpose: &str| {
        let fits = |icon: &&Value| icon["purpose"] == purpose && icon["sizes"] == "512x512";
        icons.iter().filter(fits).count()
    };
    assert_eq!((big("any"), big("maskable")), (1, 1), "{icons:#?}");
    phone.step("what the browser itself says");
    let said = phone.below("Page.getInstallabilityErrors", json!({})).await;
    let errors = said["installabilityErrors"].as_array().cloned();
    assert_eq!(errors, Some(vec![]), "the browser would not install it");
    let said = phone.below("Page.getAppManifest", json!({})).await;
    assert_eq!(
        said["errors"],
        json!([]),
        "the browser reads the manifest whole"
    );
    phone.close().await;
}

fn see_icon(icon: &Value, found: &Value) {
    assert_eq!(found["ok"], json!(true), "{icon} is there");
    assert_eq!(found["type"], icon["type"], "{icon} has its type");
    let (width, height) = (&found["width"], &found["height"]);
    let size = format!("{width}x{height}");
    assert!(
        icon["sizes"] == "any" || icon["sizes"] == size.as_str(),
        "{icon} is {size}"
    );
}
