//! The tyring sheet: lengths first, then heat, then what gives first and the year; refusals in sentences; what is typed
//! outlasts a reload; and it is reckoned without making a tap wait.

use cartside_tests::drive::{Browser, Device, Server};
use serde_json::json;

/// The longest that a figure typed on the sheet may take until all of it is reckoned anew, at full speed, in milliseconds.
/// It took 7 ms here; the rest is for a busy machine.
const RECKONED: f64 = 100.0;
/// The longest that one slice of it may hold up a tap, in milliseconds; it took 4 ms.
const SLICE: f64 = 50.0;

async fn fill(phone: &Browser<'_>, field: &str, text: &str) {
    let script = r#"
const input = find(`[data-field="${arguments[0]}"] input`);
if (!input) return null;
input.focus();
input.value = arguments[1];
input.dispatchEvent(new Event("input", { bubbles: true }));
return true;"#;
    phone
        .wait_for(&format!("the field {field}"), script, json!([field, text]))
        .await;
}

/// A wheel of which every size is said, on its tyring sheet: the demonstration has one.
async fn on_the_sheet(phone: &Browser<'_>) -> String {
    phone.tap_words("Open the demonstration").await;
    phone.see_the_demonstration().await;
    phone.see("[data-vehicle]").await;
    let find = "return [...document.querySelectorAll('[data-vehicle]')]\
        .find((e) => e.textContent.includes('Hay cart')).dataset.vehicle;";
    let cart = phone.ask(find, json!([])).await;
    let cart = cart.as_str().unwrap().to_owned();
    phone.go(&format!("#/vehicle/{cart}/tyring/off")).await;
    phone.see_page("tyring").await;
    cart
}

#[tokio::test]
async fn a_sheet_leads_from_rounds_to_the_fire() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open().await;
    phone.be_a_phone(360, 740).await;
    let cart = on_the_sheet(&phone).await;
    phone
        .see_words("[data-sheet=lengths]", "type the wheel's round")
        .await;
    phone.step("a tyre that is too large");
    fill(&phone, "traveller", "628").await;
    fill(&phone, "wheel", "6 + 471; 6 + 472").await;
    fill(&phone, "tyre", "6 + 478; 6 + 477.5").await;
    phone
        .see_words("[data-sheet=lengths]", "larger round than the wheel")
        .await;
    phone.see_no("[data-sheet=grip]").await;
    phone.step("the draw that is wanted");
    fill(&phone, "draw", "14").await;
    phone
        .see_words("[data-sheet=lengths]", "20.5 mm must come off")
        .await;
    phone
        .see_words("[data-sheet=heat]", "Cut a stick 1352.5 mm long")
        .await;
    phone.see("[data-sheet=heat][data-verdict=enough]").await;
    phone
        .see_words("[data-sheet=grip]", "What gives first")
        .await;
    phone
        .see_words("[data-sheet=year]", "in the driest month")
        .await;
    phone.step("no time left");
    fill(&phone, "carry", "590").await;
    phone
        .see("[data-sheet=heat][data-verdict=do-not-try]")
        .await;
    fill(&phone, "carry", "").await;
    phone.see("[data-sheet=heat][data-verdict=enough]").await;
    phone.step("too much draw");
    fill(&phone, "draw", "60").await;
    phone.see("[data-sheet=heat] [role=alert]").await;
    fill(&phone, "draw", "14").await;
    phone.see("[data-sheet=year]").await;
    phone.step("no number");
    fill(&phone, "wheel", "six turns").await;
    phone
        .see_words("[data-sheet=lengths] [role=alert]", "six turns")
        .await;
    fill(&phone, "wheel", "6 + 471; 6 + 472").await;
    phone.see("[data-sheet=year]").await;
    phone.step("another place makes another year");
    let before = phone.words("[data-sheet=year]").await;
    let choose = r#"
const select = [...document.querySelectorAll("main select")]
  .find((e) => [...e.options].some((o) => o.value === "phoenix"));
select.value = "phoenix";
select.dispatchEvent(new Event("change", { bubbles: true }));
return true;"#;
    phone.ask(choose, json!([])).await;
    phone.see_words("[data-sheet=year]", "Wood Handbook").await;
    let after = phone.words("[data-sheet=year]").await;
    phone.expect(before != after, "another year").await;
    phone.step("the fire");
    phone
        .see_words("[data-sheet=fire]", "Nobody inside the ring")
        .await;
    phone.tap_key("out-of-the-fire").await;
    phone.see("[data-clock=left]").await;
    phone.see_words("[role=timer]", "0:01").await;
    phone.tap_key("it-lies").await;
    phone.see("[data-key=out-of-the-fire]").await;
    phone.step("written down");
    phone.tap_key("write-down").await;
    phone.see_saved("written down as work").await;
    phone.go(&format!("#/vehicle/{cart}/work/off")).await;
    phone.see_words("[data-work]", "draw wanted 14 mm").await;
    phone.close().await;
}

#[tokio::test]
async fn what_is_typed_on_the_sheet_outlasts_a_reload() {
    let server = Server::start();
    let device = Device::new("only", &server);
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see_page("tyring").await;
    phone
        .see_words("[data-sheet=missing]", "until these sizes are said")
        .await;
    phone.write_into("Wheel, round the sole", "4241").await;
    phone
        .see_words("[data-sheet=lengths]", "4241 mm round")
        .await;
    // A draft is written a moment after the last letter.
    tokio::time::sleep(std::time::Duration::from_millis(800)).await;
    phone.reload().await;
    phone.see_page("tyring").await;
    phone
        .see_words("[data-sheet=lengths]", "4241 mm round")
        .await;
    phone.step("a wheel without a hoop");
    phone
        .say_how_it_is_built(&cart, "near", &["tyre=strakes"])
        .await;
    phone.go(&format!("#/vehicle/{cart}/tyring/near")).await;
    phone.see("[data-no-sheet]").await;
    phone.close().await;
}

/// Writes another draw, and how long it takes until the year is there again and how long no tap would be heard.
const TIME: &str = r#"
const input = find("[data-field=draw] input");
window.sheet = { longest: 0, last: performance.now(), done: null };
const before = document.querySelector("[data-sheet=year]").textContent;
let gone = false;
const look = () => {
  const now = performance.now();
  window.sheet.longest = Math.max(window.sheet.longest, now - window.sheet.last);
  window.sheet.last = now;
  const year = document.querySelector("[data-sheet=year]");
  gone = gone || !year;
  if (gone && year) { window.sheet.done = now - began; return; }
  setTimeout(look, 0);
};
const began = performance.now();
input.value = "9";
input.dispatchEvent(new Event("input", { bubbles: true }));
look();
return true;"#;

/// Runs with nothing beside it.
mod alone {
    use super::*;

    #[tokio::test]
    async fn a_sheet_is_reckoned_without_holding_up_a_tap() {
        let server = Server::start();
        let device = Device::new("only", &server);
        let phone = device.open().await;
        on_the_sheet(&phone).await;
        fill(&phone, "wheel", "4241").await;
        fill(&phone, "draw", "14").await;
        phone.see("[data-sheet=year]").await;
        phone.ask(TIME, json!([])).await;
        let done = "return window.sheet.done !== null && window.sheet;";
        let told = phone
            .wait_for("the year reckoned anew", done, json!([]))
            .await;
        let [all, longest] = ["done", "longest"].map(|name| told[name].as_f64().unwrap());
        println!(
            "a sheet with bands and twelve months: {all:.0} ms, the longest slice {longest:.0} ms"
        );
        phone
            .expect(
                all < RECKONED,
                &format!("the sheet within {RECKONED} ms, not {all}"),
            )
            .await;
        phone
            .expect(
                longest < SLICE,
                &format!("no slice longer than {SLICE} ms, not {longest}"),
            )
            .await;
        phone.close().await;
    }
}
