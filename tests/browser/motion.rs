//! Where the device asks for less motion, nothing moves by itself.

use cartside_tests::drive::Browser;
use serde_json::json;

/// Everything that moves or would move.
const MOVING: &str = r#"
const told = (e, how) => `${e.tagName.toLowerCase()}.${e.className.baseVal ?? e.className}: ${how}`;
const moving = document.getAnimations().map((one) => told(one.effect.target, "runs now"));
const lasts = (times) => times.split(",").some((time) => parseFloat(time) > 0);
for (const e of document.querySelectorAll("*")) {
  for (const pseudo of [undefined, "::before", "::after"]) {
    const { transitionDuration, animationName, animationDuration, scrollBehavior } = getComputedStyle(e, pseudo);
    if (lasts(transitionDuration)) moving.push(told(e, `changes over ${transitionDuration}`));
    if (animationName !== "none" && lasts(animationDuration)) moving.push(told(e, `is moved by ${animationName}`));
    if (!pseudo && scrollBehavior === "smooth") moving.push(told(e, "scrolls smoothly"));
  }
}
return [...new Set(moving)];"#;

/// What moves although the device asks for less.
pub async fn moving(phone: &Browser<'_>) -> Vec<String> {
    let found = phone.ask(MOVING, json!([])).await;
    serde_json::from_value(found).expect("lines")
}
