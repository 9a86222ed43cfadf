//! What axe-core finds wrong with the page in hand, and how the page is told who looks at it.

use std::fs;

use serde_json::{Value, json};

use super::browser::Browser;
use super::programs;

/// Asks for level A and AA of WCAG 2.0 to 2.2, with the size of targets that is off unless switched on, and for the
/// contrast of level AAA.
const RUN: &str = r#"
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"];
return axe.run(document, {
  runOnly: { type: "tag", values: tags },
  rules: { "target-size": { enabled: true }, "color-contrast-enhanced": { enabled: true } },
  resultTypes: ["violations"],
  // No rule asked for reads the style sheets themselves.
  preload: false,
}).then(({ violations, passes }) => ({
  passed: passes.length,
  found: violations.flatMap(({ id, nodes }) => nodes.map(
    (node) => `${id}: ${node.target.join(" ")} because ${node.failureSummary.replace(/\s+/g, " ")}`)),
}));"#;

/// For whom the colours are: full sun, or a dark barn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Light.
    Sun,
    /// Dark.
    Barn,
}

impl Theme {
    /// Both.
    pub const BOTH: [Theme; 2] = [Theme::Sun, Theme::Barn];
}

impl Browser<'_> {
    /// Tells the page which theme its device prefers, and that nothing is to move. Chromium only.
    pub async fn prefer_still(&self, theme: Theme) {
        let colours = match theme {
            Theme::Sun => "light",
            Theme::Barn => "dark",
        };
        let features = json!({ "features": [
            { "name": "prefers-color-scheme", "value": colours },
            { "name": "prefers-reduced-motion", "value": "reduce" },
        ] });
        self.below("Emulation.setEmulatedMedia", features).await;
    }

    /// What axe-core finds wrong: the rule, the node and why, a line each. What sticks to the foot of the screen covers
    /// whatever is scrolled under it, so that a target counts as covered if it is so at the end of the page too.
    pub async fn audit(&self) -> Vec<String> {
        let found = self.audit_here().await;
        if found.is_empty() {
            return found;
        }
        let to = "const before = scrollY; scrollTo(0, arguments[0] ?? document.documentElement.scrollHeight); return before;";
        let before = self.ask(to, json!([])).await;
        let there = self.audit_here().await;
        self.ask(to, json!([before])).await;
        let node = |fault: &String| fault.split(" because ").next().map(str::to_owned);
        let stays = |fault: &String| there.iter().any(|other| node(other) == node(fault));
        found.into_iter().filter(stays).collect()
    }

    async fn audit_here(&self) -> Vec<String> {
        let there = self.ask("return !!window.axe;", json!([])).await;
        if there != json!(true) {
            let axe = fs::read_to_string(programs::axe()).expect("axe-core can be read");
            self.ask(&axe, json!([])).await;
        }
        let told = self.ask(RUN, json!([])).await;
        let passed = told["passed"].as_u64().unwrap_or_default();
        self.expect(passed > 0, "a page that axe-core can look at")
            .await;
        let found = told["found"].as_array().cloned().unwrap_or_default();
        let text = |line: &Value| line.as_str().unwrap_or_default().to_owned();
        found.iter().map(text).collect()
    }
}
