//! The taking of the pictures: a telephone at the cart in the sun and in the barn, and the page of a report.

use std::fs;
use std::path::Path;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use cartside_tests::drive::{Browser, Device, Server};
use serde_json::{Value, json};

use super::made_from;

/// What each picture is called.
pub(crate) const NAMES: [&str; 4] = ["question-sun", "wheel-barn", "marks-sun", "report"];

/// The telephone, and a sheet of A4 at 96 dots to the inch.
const PHONE: (u32, u32) = (360, 740);
const SHEET: (u32, u32) = (794, 1123);

#[tokio::test]
#[ignore = "cargo xtask pictures runs it"]
async fn take_the_pictures() {
    let folder = std::env::var_os("CARTSIDE_PICTURES");
    let folder = folder.expect("CARTSIDE_PICTURES names the folder to put them in");
    let folder = Path::new(&folder);
    fs::create_dir_all(folder).unwrap();
    let server = Server::start();
    let device = Device::new("shown", &server).whole();
    let phone = device.open_ready().await;
    let cart = hay_cart(&phone).await;
    phone.be_a_phone(PHONE.0, PHONE.1).await;
    light(&phone, "light").await;
    phone
        .open_question_at(&cart, "near", "tyre-gap", "between-4")
        .await;
    take(&phone, folder, NAMES[0], "main").await;
    light(&phone, "dark").await;
    phone.open_wheel(&cart, "near").await;
    phone.see("[data-drawing=wheel]").await;
    take(&phone, folder, NAMES[1], ".drawing").await;
    light(&phone, "light").await;
    marked(&phone, &cart).await;
    take(&phone, folder, NAMES[2], ".board").await;
    phone.tap_key("save-marks").await;
    phone.see_saved("pin 1").await;
    phone.be_a_phone(SHEET.0, SHEET.1).await;
    phone.open_report(&cart, "owner").await;
    look(&phone, json!({ "media": "print" })).await;
    take(&phone, folder, NAMES[3], ".paper").await;
    phone.close().await;
    made_from::note(folder);
}

/// Opens the demonstration and gives its hay cart.
async fn hay_cart(phone: &Browser<'_>) -> String {
    phone.tap_words("Open the demonstration").await;
    phone.see_the_demonstration().await;
    let script = r#"
const all = [...document.querySelectorAll("[data-vehicle]")];
return all.find((e) => like(e, "hay cart"))?.dataset.vehicle ?? null;"#;
    let cart = phone.wait_for("the hay cart", script, json!([])).await;
    cart.as_str().unwrap().to_owned()
}

/// The crack of the demonstration's picture, ringed and pinned.
async fn marked(phone: &Browser<'_>, cart: &str) {
    phone.open_part(cart, "near/spoke-3").await;
    phone.open_picture().await;
    phone.choose_to_draw("ring").await;
    phone.draw(&[(0.44, 0.36), (0.62, 0.92)]).await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.53, 0.42)]).await;
    phone.write_into("Written at pin 1", "a hand long").await;
}

/// Has the browser say that its user wants it light or dark.
async fn light(phone: &Browser<'_>, scheme: &str) {
    let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
    look(phone, json!({ "features": features })).await;
}

/// Has the page laid out for other eyes, or for paper.
async fn look(phone: &Browser<'_>, media: Value) {
    phone.below("Emulation.setEmulatedMedia", media).await;
}

/// Takes what the screen shows once every picture is there: the middle of what matches, or its top if it is higher than
/// the screen.
async fn take(phone: &Browser<'_>, folder: &Path, name: &str, css: &str) {
    let script = r#"
document.activeElement?.blur();
const shown_here = document.querySelector(arguments[0]);
const block = shown_here.getBoundingClientRect().height < innerHeight ? "center" : "start";
if (shown_here.matches("main")) window.scrollTo(0, 0);
else shown_here.scrollIntoView({ block, behavior: "instant" });
return Promise.all([document.fonts.ready, ...[...document.images].map((e) => e.decode())]).then(() => true);"#;
    phone
        .wait_for("every picture of the page", script, json!([css]))
        .await;
    let taken = phone
        .below("Page.captureScreenshot", json!({ "format": "png" }))
        .await;
    let data = taken["data"].as_str().expect("the browser gives a picture");
    let bytes = STANDARD.decode(data).expect("it is base64");
    assert!(bytes.len() > 10_000, "{name} shows something");
    fs::write(folder.join(format!("{name}.png")), bytes).unwrap();
    println!("taken: {name}");
}
