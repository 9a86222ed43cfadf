//! A keyboard in the place of a finger: where the focus is, and what the keys lead to.

use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::{Key, TypingData};

use super::browser::Browser;

/// The most stops that one way over a page may have.
const MOST: usize = 250;
/// How long the focus may be nowhere while a page changes.
const PATIENCE: Duration = Duration::from_secs(2);

/// What has the focus: its words, whether it shows that it has it, whether anything of it is in sight and uncovered.
const FOCUS: &str = r#"
const e = document.activeElement;
if (!e || e === document.body || e === document.documentElement) return null;
const words = e.getAttribute("aria-label") ?? (text(e) || e.closest("label")?.innerText || e.name);
const lined = (of) => {
  const { outlineStyle, outlineWidth } = getComputedStyle(of);
  return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
};
const target = e.querySelector(":scope > .target");
const drawn = target && parseFloat(getComputedStyle(target).strokeWidth) >= 2 && getComputedStyle(target).stroke !== "none";
const label = e.closest("label");
const heading = /^H[1-6]$/.test(e.tagName);
const marked = heading || lined(e) || drawn || (label && label !== e && lined(label));
const seen = (label ?? e);
const { left, top, width, height } = seen.getBoundingClientRect();
const twelfths = [6, 1, 2, 3, 4, 5, 7, 8, 9, 10, 11];
// A drawn part may lie anywhere within its box.
const uncovered = twelfths.some((x) => twelfths.some((y) => {
  const found = document.elementFromPoint(left + (x * width) / 12, top + (y * height) / 12);
  return found && (found === seen || seen.contains(found));
}));
return { words: words.trim(), tag: e.tagName, marked, uncovered, key: e.dataset.key ?? e.dataset.choice ?? "" };"#;

const PAINTED: &str = "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))));";

impl Browser<'_> {
    /// Presses one key.
    pub async fn press(&self, key: Key) {
        self.press_typed(TypingData::from(key)).await;
    }

    /// Types with the keyboard, into whatever has the focus.
    pub async fn type_by_keys(&self, words: &str) {
        self.press_typed(TypingData::from(words)).await;
    }

    async fn press_typed(&self, typed: TypingData) {
        let keys = self.session.action_chain().send_keys(typed);
        if let Err(error) = keys.perform().await {
            self.fail(&format!("the keyboard works; the browser says: {error}"))
                .await;
        }
    }

    /// What has the focus; fails if for long nothing has it, or if it does not show.
    pub async fn focus(&self) -> Value {
        let until = Instant::now() + PATIENCE;
        // What has just been disabled keeps the focus until the page is painted anew.
        self.ask(PAINTED, json!([])).await;
        let mut found = self.ask(FOCUS, json!([])).await;
        while found.is_null() {
            if Instant::now() > until {
                self.fail("something in the page that has the focus").await;
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
            found = self.ask(FOCUS, json!([])).await;
        }
        let shows = found["marked"] == json!(true) && found["uncovered"] == json!(true);
        self.expect(shows, &format!("the focus in sight; it is {found}"))
            .await;
        found
    }

    /// Goes on by the tab key to the control with these words, or whose key or choice is called so.
    pub async fn tab_to(&self, words: &str) {
        for _ in 0..MOST {
            self.press(Key::Tab).await;
            if self.ask(FOCUS, json!([])).await.is_null() {
                // After the last control the browser's own come, and then the first again.
                self.press(Key::Tab).await;
            }
            let found = self.focus().await;
            let is = |name: &str| found[name].as_str().unwrap_or_default();
            let same = is("words").to_lowercase() == words.to_lowercase();
            if same || is("key") == words || is("words").starts_with(words) {
                return;
            }
        }
        self.fail(&format!("“{words}” reached by the tab key"))
            .await;
    }

    /// Goes on to the control with these words and presses this key on it.
    pub async fn press_on(&self, words: &str, key: Key) {
        self.tab_to(words).await;
        self.press(key).await;
    }

    /// Waits for a page of this name and sees that its heading has the focus.
    pub async fn see_page_by_keys(&self, name: &str) {
        self.see_page(name).await;
        let at = "return /^H1$/.test(document.activeElement?.tagName);";
        self.wait_for("the heading in focus", at, json!([])).await;
        self.focus().await;
    }
}
