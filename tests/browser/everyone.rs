//! Every screen in both themes on a small phone, in one walk: by the rules of WCAG 2.2 AA, with text at 7 to 1, targets
//! large enough for a glove, nothing wider than the screen, read in order, still where less motion is asked for, and whole
//! with text twice as large.

use cartside_tests::drive::{Browser, Device, Theme};
use serde_json::json;

use crate::contrast::faint;
use crate::motion::moving;
use crate::reading::disorder;
use crate::screens::walk;
use crate::touch::{self, look_at};
use crate::zoom::cramped;

#[tokio::test]
async fn every_screen_is_for_everyone_in_both_themes() {
    let device = Device::installed("only").await;
    let phone = device.open_ready().await;
    phone.be_a_phone(touch::WIDTH, touch::HEIGHT).await;
    let mut faults = Vec::new();
    walk(&phone, &device, async |screen: &str| {
        let found = everything_wrong(&phone).await.into_iter();
        faults.extend(found.map(|fault| format!("{screen}: {fault}")));
    })
    .await;
    let expected = format!("nothing wrong on any screen; {faults:#?}");
    phone.expect(faults.is_empty(), &expected).await;
    phone.close().await;
}

/// What is wrong with the screen in hand, a line each.
async fn everything_wrong(phone: &Browser<'_>) -> Vec<String> {
    let mut faults = Vec::new();
    for theme in Theme::BOTH {
        phone.prefer_still(theme).await;
        let mut found = phone.audit().await;
        found.extend(faint(phone).await);
        faults.extend(found.into_iter().map(|fault| format!("{theme:?}: {fault}")));
    }
    faults.extend(look_at(phone).await);
    faults.extend(disorder(&phone.read_aloud().await));
    faults.extend(moving(phone).await);
    faults.extend(cramped(phone).await);
    faults
}

/// One of each fault that the walk looks for.
const PLANT: &str = r##"
const main = document.querySelector("main");
const plant = (tag, words, style, attributes) => {
  const e = Object.assign(document.createElement(tag), { textContent: words });
  Object.assign(e.style, style);
  for (const [name, value] of Object.entries(attributes ?? {})) e.setAttribute(name, value);
  main.append(e);
};
plant("p", "Too faint to read", { color: "light-dark(#808080, #707070)" });
plant("p", "Faint in glare", { color: "light-dark(#666, #999)" });
plant("b", "7", { color: "light-dark(#666, #999)" });
const small = { width: "20px", height: "20px", padding: "0", margin: "0 0 -24px" };
plant("button", "", small);
plant("button", "+", { ...small, margin: "0" });
plant("img", "", {}, { src: "icons/wheel.svg" });
plant("input", "", {});
plant("h4", "A level left out", {});
plant("p", "Moves", { transition: "color 1s" });
plant("p", "Wide", { width: "500px" });
plant("p", "Cut off when it is large", { height: "30px", overflow: "hidden" });
const pad = Object.assign(document.createElement("div"), { className: "pad" });
plant("div", "", {}, { class: "ask" });
main.lastChild.append(pad);
pad.append(Object.assign(document.createElement("button"), { className: "key", textContent: "Slim" }));
pad.lastChild.style.width = "80px";"##;

/// What must be found of them, in both themes where it is of colours.
const FOUND: [&str; 17] = [
    "Sun: color-contrast:",
    "Barn: color-contrast:",
    "Sun: color-contrast-enhanced:",
    "Barn: color-contrast-enhanced:",
    "Sun: b. “7”",
    "Barn: b. “7”",
    "button-name:",
    "image-alt:",
    "label:",
    "target-size:",
    "20.0 px wide and 20.0 px high",
    "the great key “Slim” is 80.0 px wide",
    "px wider than the screen",
    "no level is left out",
    "changes over 1s",
    "twice: the page is",
    "“Cut off when it is large” does not fit",
];

#[tokio::test]
async fn each_fault_that_is_planted_is_found() {
    let device = Device::installed("only").await;
    let phone = device.open_ready().await;
    phone.be_a_phone(touch::WIDTH, touch::HEIGHT).await;
    phone.go("#/kept").await;
    phone.see_page("kept").await;
    let sound = everything_wrong(&phone).await;
    phone.expect_same("faults", sound, Vec::new()).await;
    phone.ask(PLANT, json!([])).await;
    let found = everything_wrong(&phone).await;
    for words in FOUND {
        let told = found.iter().any(|fault| fault.contains(words));
        phone.expect(told, &format!("{words} in {found:#?}")).await;
    }
    phone.close().await;
}
