//! The contrast of every text with what it stands on, at least 7 to 1 (WCAG 2.2, 1.4.6, as for text of any size).
//!
//! axe-core leaves undecided what is a single character, drawn, or partly covered, and passes over what is disabled; on
//! this app's plain grounds the ratio can be worked out for all of it.

use cartside_tests::drive::Browser;
use serde_json::json;

/// Every text in sight whose ratio is under the limit, and every one whose ratio cannot be told.
const FAINT: &str = r#"
const parts = (colour) => {
  if (!/^rgba?\(/.test(colour)) return null;
  const [r, g, b, a = 1] = colour.match(/[\d.]+/g).map(Number);
  return { rgb: [r, g, b], a };
};
// Relative luminance as WCAG 2.2 defines it.
const luminance = ({ rgb }) => {
  const [r, g, b] = rgb.map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const ratio = (one, other) => {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
};
const style = (e, pseudo) => getComputedStyle(e, pseudo);
const ground = (e) => {
  for (let at = e; at; at = at.parentElement) {
    const { backgroundColor, backgroundImage, opacity } = style(at);
    if (backgroundImage !== "none" || opacity !== "1") return null;
    const colour = parts(backgroundColor);
    if (!colour || (colour.a > 0 && colour.a < 1)) return null;
    if (colour.a === 1) return colour;
  }
  return null;
};
const words = (e) => [...e.childNodes].filter((n) => n.nodeType === 3).map((n) => n.data).join("").trim();
const texts = [];
for (const e of document.body.querySelectorAll("*")) {
  if (!shown(e) || /^(script|style|noscript|title|option)$/i.test(e.tagName)) continue;
  const drawn = e instanceof SVGElement;
  const said = e.matches("input:not([type=file]), textarea") ? e.value : words(e);
  if (said && drawn) {
    // Drawn over a line of its own, it stands on that.
    const { fill, stroke, paintOrder } = style(e);
    const halo = stroke !== "none" && paintOrder.startsWith("stroke");
    texts.push([e, said, parts(fill), halo ? parts(stroke) : ground(e)]);
  } else if (said) {
    texts.push([e, said, parts(style(e).color), ground(e)]);
  }
  for (const pseudo of drawn ? [] : ["::before", "::after"]) {
    const { content, color } = style(e, pseudo);
    if (!["none", "normal", '""'].includes(content)) texts.push([e, content, parts(color), ground(e)]);
  }
}
const faint = texts
  .map(([e, said, ink, on]) => [e, said, ink && on && ink.a === 1 ? ratio(ink, on) : 0])
  .filter(([, , found]) => found < 7)
  .map(([e, said, found]) => `${e.tagName.toLowerCase()}.${e.className.baseVal ?? e.className} “${said.slice(0, 40)}”: ${found ? `${found.toFixed(2)} to 1` : "a contrast that cannot be told"}`);
return { looked: texts.length, faint: [...new Set(faint)] };"#;

/// What is too faint to be read in glare.
pub async fn faint(phone: &Browser<'_>) -> Vec<String> {
    let told = phone.ask(FAINT, json!([])).await;
    let looked = told["looked"].as_u64() > Some(0);
    phone.expect(looked, "a page with words on it").await;
    serde_json::from_value(told["faint"].clone()).expect("lines")
}
