//! Every page on a small phone: nothing too small for a glove, nothing wider than the screen.

use std::fs;

use cartside_tests::drive::{Browser, Device, Server, camera};
use serde_json::{Value, json};

const WIDTH: u32 = 360;
const HEIGHT: u32 = 740;

/// Every control in sight that is lower than 56 pixels. Parts of the drawing are left out: the list beside it
/// has a control for each. A field inside its label is as high as the label.
const TOO_LOW: &str = r#"
const controls = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [role=button], [role=radio]")];
const target = (e) => (e.matches("input") && e.closest("label")) || e;
return [...new Set(controls.filter((e) => !e.closest("svg")).map(target))]
  .filter(shown)
  .map((e) => [e, e.getBoundingClientRect().height])
  .filter(([, height]) => height < 55.5)
  .map(([e, height]) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40) || e.name || e.className}” is ${height.toFixed(1)} px high`);"#;

/// By how much the page is wider than the screen, and what reaches out.
const TOO_WIDE: &str = r#"
const wide = document.documentElement.scrollWidth - arguments[0];
if (wide <= 0) return [];
return [...document.querySelectorAll("body *")]
  .filter((e) => shown(e) && e.getBoundingClientRect().right > arguments[0] + 0.5)
  .map((e) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40)}” reaches ${e.getBoundingClientRect().right.toFixed(0)} px`)
  .concat([`the page is ${wide} px wider than the screen`]);"#;

#[tokio::test]
async fn every_page_fits_a_glove_and_a_small_screen() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.be_a_phone(WIDTH, HEIGHT).await;
    phone
        .name_it("Harvest cart of the farm beyond the ford, second from the left")
        .await;
    phone.open_part(&cart, "near/spoke-3").await;
    phone
        .remark("Paintbrokenattheshoulderandthefootwornthinonthefaceside, all of it")
        .await;
    let taken = device.downloads().join("camera.jpg");
    fs::write(&taken, camera::photograph()).unwrap();
    phone.take_picture(&taken).await;
    phone.open_picture().await;
    phone.choose_to_draw("pin").await;
    phone.draw(&[(0.9, 0.1)]).await;
    phone.save_marks("pin 1").await;
    let picture = phone.hash().await;
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "loose", "foot loose").await;
    let vehicle = |rest: &str| format!("#/vehicle/{cart}{rest}");
    let pages = [
        ("book", "#/".to_owned()),
        ("begin", "#/begin".to_owned()),
        ("vehicle", vehicle("")),
        ("entries", vehicle("/entries")),
        ("disputes", vehicle("/disputes")),
        ("wheel", vehicle("/wheel/near")),
        ("build", vehicle("/build/near")),
        ("examination", vehicle("/examination")),
        ("first-look", vehicle("/first-look")),
        ("decide", vehicle("/decide/near")),
        ("work", vehicle("/work/near")),
        ("part", vehicle("/part/near/spoke-3")),
        ("part", vehicle("/part/vehicle")),
        ("picture", picture),
        ("ask", vehicle("/ask/near/keeper-present")),
        ("ask", vehicle("/ask/near/tyre-gap")),
        ("ask", vehicle("/ask/near/spoke-foot")),
        ("carry-out", "#/carry-out".to_owned()),
        ("bring-in", "#/bring-in".to_owned()),
        ("preferences", "#/preferences".to_owned()),
        ("unknown", "#/nowhere".to_owned()),
    ];
    let mut faults = Vec::new();
    for (page, address) in pages {
        phone.go(&address).await;
        phone.see_page(page).await;
        faults.extend(look_at(&phone, page).await);
    }
    phone.go(&vehicle("/ask/near/spoke-foot/spoke-5")).await;
    phone.tap_key("measure").await;
    phone.see("[data-digit]").await;
    faults.extend(look_at(&phone, "ask, own numbers").await);
    let expected =
        format!("every control 56 px high and no page wider than the screen; {faults:#?}");
    phone.expect(faults.is_empty(), &expected).await;
    phone.close().await;
}

async fn look_at(phone: &Browser<'_>, page: &str) -> Vec<String> {
    let low = phone.ask(TOO_LOW, json!([])).await;
    let wide = phone.ask(TOO_WIDE, json!([WIDTH])).await;
    let found = [low, wide].into_iter().filter_map(|found| match found {
        Value::Array(found) => Some(found),
        _ => None,
    });
    found
        .flatten()
        .map(|fault| format!("{page}: {}", fault.as_str().unwrap_or_default()))
        .collect()
}
