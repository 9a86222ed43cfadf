//! A small phone: nothing too small for a glove, nothing wider than the screen, whatever was written. Every screen is
//! looked at so in `everyone`.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

/// The width of a small phone.
pub const WIDTH: u32 = 360;
/// Its height.
pub const HEIGHT: u32 = 640;

/// Every control in sight that is lower or narrower than 56 pixels. Parts of the drawing are left out: the list beside
/// it has a control for each. A field inside its label is as large as the label.
const TOO_SMALL: &str = r#"
const controls = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [role=button], [role=radio]")];
const target = (e) => (e.matches("input") && e.closest("label")) || e;
return [...new Set(controls.filter((e) => !e.closest("svg")).map(target))]
  .filter(shown)
  .map((e) => [e, e.getBoundingClientRect()])
  .filter(([, { width, height }]) => Math.min(width, height) < 55.5)
  .map(([e, { width, height }]) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40) || e.name || e.className}” is ${width.toFixed(1)} px wide and ${height.toFixed(1)} px high`);"#;

/// Every great key at the cart that is narrower than a third of the screen less what lies between.
const TOO_NARROW: &str = r#"
return [...document.querySelectorAll(".ask .pad:not(.digits, .pad-wide, .thirds) > .key:not(.key-small)")]
  .filter(shown)
  .map((e) => [e, e.getBoundingClientRect().width])
  .filter(([, width]) => width < 100)
  .map(([e, width]) => `the great key “${text(e)}” is ${width.toFixed(1)} px wide`);"#;

/// By how much the page is wider than the screen, and what reaches out.
pub const TOO_WIDE: &str = r#"
const wide = document.documentElement.scrollWidth - arguments[0];
if (wide <= 0) return [];
return [...document.querySelectorAll("body *")]
  .filter((e) => shown(e) && e.getBoundingClientRect().right > arguments[0] + 0.5)
  .map((e) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40)}” reaches ${e.getBoundingClientRect().right.toFixed(0)} px`)
  .concat([`the page is ${wide} px wider than the screen`]);"#;

#[tokio::test]
async fn long_words_make_no_page_wider_than_a_small_screen() {
    let device = Device::installed("only").await;
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
    phone
        .open_question_at(&cart, "near", "spoke-foot", "spoke-3")
        .await;
    phone.answer("spoke-3", "loose", "foot loose").await;
    let vehicle = format!("#/vehicle/{cart}");
    let mut faults = Vec::new();
    for (page, address) in [
        ("book", "#/".to_owned()),
        ("vehicle", vehicle.clone()),
        ("entries", format!("{vehicle}/entries")),
        ("wheel", format!("{vehicle}/wheel/near")),
        ("part", format!("{vehicle}/part/near/spoke-3")),
        ("report", format!("{vehicle}/report/full")),
    ] {
        phone.go(&address).await;
        phone.see_page(page).await;
        let found = look_at(&phone).await.into_iter();
        faults.extend(found.map(|fault| format!("{page}: {fault}")));
    }
    let expected = format!("every page as wide as the screen; {faults:#?}");
    phone.expect(faults.is_empty(), &expected).await;
    phone.close().await;
}

/// What is too small for a glove, and what is wider than the screen.
pub async fn look_at(phone: &Browser<'_>) -> Vec<String> {
    let mut faults = Vec::new();
    for (script, arguments) in [
        (TOO_SMALL, json!([])),
        (TOO_NARROW, json!([])),
        (TOO_WIDE, json!([WIDTH])),
    ] {
        let found = phone.ask(script, arguments).await;
        let found: Vec<String> = serde_json::from_value(found).expect("lines");
        faults.extend(found);
    }
    faults
}
