//! Pressing what a page shows, as a finger does: in the middle of it, where nothing lies over it.

use std::time::Duration;

use serde_json::{Value, json};

use super::browser::Browser;
use super::engine::Engine;
use super::sight::{Patience, brief};

/// How long WebKit is given to show what was scrolled.
const STEADY: Duration = Duration::from_millis(50);
/// What is tapped is scrolled clear of what stands fixed at the screen's edges, as a thumb would, and must not be disabled.
const IN_REACH: &str = r#"
if (!found) return "it is not there";
if (found.matches(":disabled")) return "it is disabled";
found.scrollIntoView({ block: "center", inline: "nearest", behavior: "instant" });"#;

/// Where what is in reach is pressed: the middle of its first piece, as the driver's own command has it, unless something
/// else lies over it there. The page may move under the press that follows, or put another in its place before it is let go: a
/// press or click that meets anything else is let come to nothing, and said in `window.pressed`.
const MIDDLE: &str = r#"
const box = found.getClientRects()[0];
if (!box) return "it has no place";
const inside = (from, length, end) => (Math.max(from, 0) + Math.min(from + length, end)) / 2;
const [x, y] = [inside(box.x, box.width, innerWidth), inside(box.y, box.height, innerHeight)];
const over = (there) => found.contains(there) ? null : `${there?.outerHTML.slice(0, 80) ?? "nothing"} lies over it`;
const lies = over(document.elementFromPoint(x, y));
if (lies) return lies;
window.pressed = "the press did not arrive";
const kinds = ["pointerdown", "mousedown", "pointerup", "mouseup", "click"];
const letGo = () => kinds.forEach((kind) => removeEventListener(kind, window.meets, true));
letGo();
let missed = null;
const meet = (event) => {
  const isClick = event.type === "click";
  if (isClick || event.type === "pointerdown") missed ??= over(event.target);
  window.pressed = isClick ? missed : missed ?? "nothing came of the press";
  if (missed) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
  if (isClick) letGo();
};
window.meets = meet;
kinds.forEach((kind) => addEventListener(kind, meet, true));
return { x, y };"#;
/// What became of the press. A page that it led away from says nothing any more.
const PRESSED: &str = "return window.pressed;";

impl Browser<'_> {
    /// Taps the first that matches.
    pub async fn tap(&self, css: &str) {
        self.tap_found(css, "return find(arguments[0]);", json!([css]))
            .await;
    }

    /// Taps the button or link with these words.
    pub async fn tap_words(&self, words: &str) {
        let script = "return control(arguments[0]);";
        self.tap_found(&format!("“{words}”"), script, json!([words]))
            .await;
    }

    /// Taps the button or link with these words inside the first that matches.
    pub async fn tap_words_in(&self, css: &str, words: &str) {
        let script =
            "const within = find(arguments[0]); return within && control(arguments[1], within);";
        let what = format!("“{words}” in {css}");
        self.tap_found(&what, script, json!([css, words])).await;
    }

    /// A real press at the middle of what the script finds, refused if it is disabled or something else lies over it.
    async fn tap_found(&self, what: &str, script: &str, arguments: Value) {
        let find = format!("const found = (() => {{ {script} }})();{IN_REACH}");
        let mut patience = Patience::begins();
        loop {
            let tapped = match self.device.engine() {
                Engine::Chromium => self.press_below(&find, &arguments).await,
                Engine::Firefox | Engine::WebKit => self.press_by_driver(&find, &arguments).await,
            };
            let Err(said) = tapped else { return };
            if patience.is_over(self).await {
                self.fail(&format!("{what} can be tapped; {said}")).await;
            }
            patience.pause().await;
        }
    }

    /// Presses it by the driver's own command.
    async fn press_by_driver(&self, find: &str, arguments: &Value) -> Result<(), String> {
        let script = format!("{find} return found;");
        let element = self.try_element(&script, arguments.clone()).await?;
        if self.device.engine() == Engine::WebKit {
            // Its driver presses where the element was before the scrolling is shown.
            tokio::time::sleep(STEADY).await;
        }
        element.click().await.map_err(|error| brief(&error))
    }

    /// The same by the browser's own mouse: the driver's command looks the element over by scripts of many times the length
    /// of all of ours.
    async fn press_below(&self, find: &str, arguments: &Value) -> Result<(), String> {
        let middle = self
            .ask_below(&format!("{find}{MIDDLE}"), arguments)
            .await?;
        if let Some(said) = middle.as_str() {
            return Err(said.to_owned());
        }
        let (x, y) = (&middle["x"], &middle["y"]);
        for (kind, button, buttons) in [
            ("mouseMoved", "none", 0),
            ("mousePressed", "left", 1),
            ("mouseReleased", "left", 0),
        ] {
            let event = json!({ "type": kind, "x": x, "y": y, "button": button, "buttons": buttons, "clickCount": 1 });
            self.below("Input.dispatchMouseEvent", event).await;
        }
        let met = self.ask_below(PRESSED, &json!([])).await;
        met.ok()
            .and_then(|met| met.as_str().map(str::to_owned))
            .map_or(Ok(()), Err)
    }
}
