//! Text twice as large on the narrowest phone, the phone turned on its side, and the telephone's own keys in the way:
//! nothing is cut off, nothing reaches out of the screen, everything can be reached. Every screen is looked at with such
//! text in `everyone`.

use cartside_tests::drive::{Browser, Device};
use serde_json::json;

use crate::touch::{self, TOO_WIDE};

const WIDTH: u32 = 320;

/// As a browser does whose user has set text to another than the usual size.
const TEXT_SIZE: &str = "document.documentElement.style.fontSize = arguments[0];";

/// Everything whose words do not fit in it. What the last step came to is cut after two lines on purpose, so that it
/// covers no key, and a field scrolls.
const CUT_OFF: &str = r#"
const cut = (e) => {
  const { overflowX, overflowY, textOverflow } = getComputedStyle(e);
  const wide = e.scrollWidth > e.clientWidth + 1, high = e.scrollHeight > e.clientHeight + 1;
  const hides = (overflow) => ["hidden", "clip"].includes(overflow);
  return e.matches(".key, .item, summary") ? wide || high : (wide && (hides(overflowX) || textOverflow === "ellipsis")) || (high && hides(overflowY));
};
return [...document.body.querySelectorAll("*")]
  .filter((e) => e instanceof HTMLElement && !e.matches(".foot, input, textarea, select") && shown(e) && cut(e))
  .map((e) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40)}” does not fit: ${e.scrollWidth}×${e.scrollHeight} in ${e.clientWidth}×${e.clientHeight} px`)
  .concat([...document.body.querySelectorAll("main *")]
    .filter((e) => shown(e) && e.getBoundingClientRect().left < -0.5 && !e.matches("[type=file]"))
    .map((e) => `${e.tagName.toLowerCase()} “${text(e).slice(0, 40)}” begins left of the screen`));"#;

/// What does not fit when text is twice as large on the narrowest phone, a line each. The phone and its text are then
/// what they were in the walk.
pub async fn cramped(phone: &Browser<'_>) -> Vec<String> {
    phone.be_a_window(WIDTH, 640).await;
    phone.ask(TEXT_SIZE, json!(["200%"])).await;
    let mut faults = Vec::new();
    for (script, arguments) in [(TOO_WIDE, json!([WIDTH])), (CUT_OFF, json!([]))] {
        let found = phone.ask(script, arguments).await;
        let found: Vec<String> = serde_json::from_value(found).expect("lines");
        faults.extend(found.into_iter().map(|fault| format!("twice: {fault}")));
    }
    phone.ask(TEXT_SIZE, json!([""])).await;
    phone.be_a_phone(touch::WIDTH, touch::HEIGHT).await;
    faults
}

/// Each of these that cannot be brought into the window and tapped there.
const OUT_OF_REACH: &str = r#"
return [...document.querySelectorAll(arguments[0])].filter((e) => e.checkVisibility()).filter((e) => {
  e.scrollIntoView({ block: "nearest", behavior: "instant" });
  const { left, top, width, height } = e.getBoundingClientRect();
  const at = document.elementFromPoint(left + width / 2, top + height / 2);
  return !at || !(e === at || e.contains(at));
}).map((e) => `“${text(e)}”`);"#;

#[tokio::test]
async fn a_phone_turned_on_its_side_reaches_every_key_of_the_number_pad() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.be_a_phone(360, 740).await;
    phone.open_question(&cart, "near", "tyre-gap").await;
    phone.tap_key("measure").await;
    phone.tap_digits(&["3"]).await;
    phone.step("turned");
    phone.be_a_phone(740, 360).await;
    phone.see_typed("3").await;
    see_all_in_reach(&phone, "main button, main a[href]").await;
    let wide = phone.ask(TOO_WIDE, json!([740])).await;
    phone.expect_same("too wide", wide, json!([])).await;
    phone.tap_digits(&["/", "3", "2", "in"]).await;
    phone.tap_key("accept").await;
    phone.see_saved("tyre gap").await;
    phone.step("the keys at the cart on its side");
    see_all_in_reach(&phone, "main button, main a[href]").await;
    phone.close().await;
}

async fn see_all_in_reach(phone: &Browser<'_>, css: &str) {
    let missed = phone.ask(OUT_OF_REACH, json!([css])).await;
    phone.expect_same("out of reach", missed, json!([])).await;
}

/// Where the field in focus stands, and how far the page is scrolled.
const STANDS: &str = r#"
const { top, bottom } = document.activeElement.getBoundingClientRect();
const most = document.documentElement.scrollHeight - innerHeight;
return { field: document.activeElement.tagName, top, bottom, scrolled: scrollY, atEnd: scrollY > most - 1 };"#;

/// A telephone's keys take the lower half of the window: as far as a window that grows lower shows it, nothing jumps
/// when they come up and go again, and the field can be brought clear of what sticks to the foot.
#[tokio::test]
async fn nothing_jumps_when_the_telephones_keys_come_up() {
    let device = Device::installed("only").await;
    let phone = device.open().await;
    let cart = phone.begin_a_cart().await;
    phone.be_a_phone(360, 740).await;
    for (page, address, field) in [
        ("vehicle", "", "main input[type=text]"),
        ("part", "/part/near/spoke-3", "main textarea"),
        ("examination", "/examination", "main input[type=text]"),
    ] {
        phone.step(page);
        phone.open_of_vehicle(&cart, address, page).await;
        phone.tap(field).await;
        let before = phone.ask(STANDS, json!([])).await;
        be_so_high(&phone, 400).await;
        let during = phone.ask(STANDS, json!([])).await;
        for where_it in ["field", "top", "scrolled"] {
            phone
                .expect_same(where_it, &during[where_it], &before[where_it])
                .await;
        }
        see_all_in_reach(&phone, ":focus").await;
        let lower = phone.ask(STANDS, json!([])).await;
        be_so_high(&phone, 740).await;
        let after = phone.ask(STANDS, json!([])).await;
        // At its end a page gives way to a higher window.
        let stays = after["atEnd"] == json!(true) || after["top"] == lower["top"];
        let told = format!("where it stands in the lower window: {lower}, then: {after}");
        phone
            .expect(stays && after["field"] == lower["field"], &told)
            .await;
    }
    phone.close().await;
}

async fn be_so_high(phone: &Browser<'_>, height: u32) {
    phone.be_a_phone(360, height).await;
    let painted = r#"
if (innerHeight !== arguments[0]) return false;
return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))));"#;
    phone
        .wait_for("the window so high", painted, json!([height]))
        .await;
}
