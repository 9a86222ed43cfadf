//! Seeing and typing on whatever page is open. Everything waits a while for what it needs.

use std::path::Path;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::WebElement;
use thirtyfour::error::WebDriverError;

use super::browser::Browser;
use super::engine::Engine;

/// How long a page may take to show what is expected of it.
const PATIENCE: Duration = Duration::from_secs(25);
/// How long it may take while the app, or a newer build, is being unpacked: seconds of a processor, and of one that many
/// tests share more than a page is given.
const UNPACKING: Duration = Duration::from_secs(90);
/// Whether something is being unpacked, by the page or by a worker that is being installed.
const UNPACKS: &str = r#"
if ("gettingReady" in document.documentElement.dataset) return true;
return navigator.serviceWorker?.getRegistration().then((registration) => !!registration?.installing) ?? false;"#;
/// How long a page is let be before it is looked at again: longer each time, since looking costs what the page needs.
const PAUSE: Duration = Duration::from_millis(25);
/// How many times as long at most.
const LONGEST: u32 = 4;

/// What the scripts below have in common.
const EYES: &str = r#"
const shown = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
const find = (css) => [...document.querySelectorAll(css)].find(shown);
const text = (e) => (e.innerText ?? e.textContent ?? "").replace(/\s+/g, " ").trim();
const like = (e, words) => text(e).toLowerCase().includes(words.toLowerCase());
const same = (e, words) => text(e).toLowerCase() === words.toLowerCase();
const control = (words, within) => {
  const all = [...(within ?? document).querySelectorAll("button, a[href], label, summary, [role=button], [role=radio]")].filter(shown);
  return all.find((e) => same(e, words)) ?? all.find((e) => like(e, words));
};
const field = (words) => {
  const labels = [...document.querySelectorAll("label")];
  const label = labels.find((e) => same(e, words)) ?? labels.find((e) => like(e, words));
  return label?.control ?? label?.querySelector("input, textarea") ?? document.querySelector(`[aria-label="${words}"]`);
};
"#;

/// How long is waited for one thing.
pub(super) struct Patience {
    until: Instant,
    at_most: Instant,
    pauses: u32,
}

impl Patience {
    pub(super) fn begins() -> Patience {
        let now = Instant::now();
        Patience {
            until: now + PATIENCE,
            at_most: now + UNPACKING,
            pauses: 0,
        }
    }

    /// Lets the page be for a while.
    pub(super) async fn pause(&mut self) {
        self.pauses = LONGEST.min(self.pauses + 1);
        tokio::time::sleep(PAUSE * self.pauses).await;
    }

    /// Whether it should have come by now. As long as something is being unpacked the time does not begin.
    pub(super) async fn is_over(&mut self, browser: &Browser<'_>) -> bool {
        let now = Instant::now();
        let may_wait_on = now > self.until && now < self.at_most;
        if may_wait_on && browser.try_ask(UNPACKS, json!([])).await == Ok(json!(true)) {
            self.until = now + PATIENCE;
        }
        now > self.until
    }
}

impl Browser<'_> {
    /// Opens an address of the app: what follows its root, such as `#/begin`.
    pub async fn go(&self, after: &str) {
        let address = format!("{}{after}", self.device.address());
        if let Err(error) = self.session.goto(&address).await {
            self.fail(&format!(
                "{address} opens; the browser says: {}",
                brief(&error)
            ))
            .await;
        }
    }

    /// Leaves the page for an empty one, so that the next address is opened from the beginning.
    pub async fn leave(&self) {
        let left = self.session.goto("about:blank").await;
        left.expect("an empty page opens");
    }

    /// Goes back by so many pages.
    pub async fn go_back(&self, pages: u32) {
        for _ in 0..pages {
            let gone = self.session.back().await;
            gone.expect("there is a page to go back to");
        }
    }

    /// Loads the page anew.
    pub async fn reload(&self) {
        if self.device.engine() == Engine::Firefox {
            // The driver's own command would ask the host itself, as by a reload with the shift key, and not the worker.
            let reload = "window.isLeft = true; location.reload();";
            self.ask(reload, json!([])).await;
            let again = "return !window.isLeft && document.readyState === \"complete\";";
            self.wait_for("the page anew", again, json!([])).await;
            return;
        }
        let reloaded = self.session.refresh().await;
        reloaded.expect("the page can be loaded anew");
    }

    /// The part of the address from the `#` on.
    pub async fn hash(&self) -> String {
        self.ask("return location.hash;", json!([]))
            .await
            .as_str()
            .unwrap_or_default()
            .to_owned()
    }

    /// Waits until something that matches can be seen.
    pub async fn see(&self, css: &str) {
        self.wait_for(
            &format!("{css} in sight"),
            "return !!find(arguments[0]);",
            json!([css]),
        )
        .await;
    }

    /// Waits until nothing that matches can be seen.
    pub async fn see_no(&self, css: &str) {
        let expected = format!("{css} out of sight");
        self.wait_for(&expected, "return !find(arguments[0]);", json!([css]))
            .await;
    }

    /// Waits until something that matches holds these words.
    pub async fn see_words(&self, css: &str, words: &str) {
        let script = "return [...document.querySelectorAll(arguments[0])].some((e) => shown(e) && like(e, arguments[1]));";
        let expected = format!("{css} with the words “{words}”");
        self.wait_for(&expected, script, json!([css, words])).await;
    }

    /// Waits until so many match.
    pub async fn see_so_many(&self, count: usize, css: &str) {
        let script = "return document.querySelectorAll(arguments[0]).length === arguments[1];";
        let expected = format!("{count} times {css}");
        self.wait_for(&expected, script, json!([css, count])).await;
    }

    /// Waits until the page of this name shows, and checks that it has one heading.
    pub async fn see_page(&self, name: &str) {
        self.see(&format!("main[data-page=\"{name}\"]")).await;
        let script = r#"return [...document.querySelectorAll("h1")].filter(shown).length === 1;"#;
        let expected = format!("one heading on the page “{name}”");
        self.wait_for(&expected, script, json!([])).await;
    }

    /// Whether something that matches can be seen at this moment.
    pub async fn sees(&self, css: &str) -> bool {
        self.ask("return !!find(arguments[0]);", json!([css])).await == json!(true)
    }

    /// Whether something that matches holds these words at this moment.
    pub async fn sees_words(&self, css: &str, words: &str) -> bool {
        let script = "return [...document.querySelectorAll(arguments[0])].some((e) => shown(e) && like(e, arguments[1]));";
        self.ask(script, json!([css, words])).await == json!(true)
    }

    /// Whether a button or link with these words can be seen at this moment.
    pub async fn sees_control(&self, words: &str) -> bool {
        let script = "const e = control(arguments[0]); return !!e && !e.disabled;";
        self.ask(script, json!([words])).await == json!(true)
    }

    /// An attribute of the first that matches and can be seen.
    pub async fn attribute(&self, css: &str, name: &str) -> String {
        let script =
            "const e = find(arguments[0]); return e && (e.getAttribute(arguments[1]) ?? null);";
        let found = self
            .wait_for(&format!("{css} with {name}"), script, json!([css, name]))
            .await;
        found.as_str().unwrap_or_default().to_owned()
    }

    /// An attribute of everything that matches.
    pub async fn attributes(&self, css: &str, name: &str) -> Vec<String> {
        let script = "return [...document.querySelectorAll(arguments[0])].map((e) => e.getAttribute(arguments[1]) ?? \"\");";
        let found = self.ask(script, json!([css, name])).await;
        serde_json::from_value(found).unwrap_or_default()
    }

    /// The words of the first that matches and can be seen.
    pub async fn words(&self, css: &str) -> String {
        let script = "const e = find(arguments[0]); return e ? { words: text(e) } : null;";
        let found = self
            .wait_for(&format!("{css} in sight"), script, json!([css]))
            .await;
        found["words"].as_str().unwrap_or_default().to_owned()
    }

    /// Writes into the field with this label, in the place of what stands there.
    pub async fn write_into(&self, label: &str, text: &str) {
        let what = format!("a field labelled “{label}”");
        let script = "return field(arguments[0]);";
        let field = self.element(&what, script, json!([label])).await;
        let written = match field.clear().await {
            Ok(()) => field.send_keys(text).await,
            Err(error) => Err(error),
        };
        if let Err(error) = written {
            self.fail(&format!(
                "{what} takes “{text}”; the browser says: {}",
                brief(&error)
            ))
            .await;
        }
        // WebKit's driver answers before the last keys have arrived.
        let script = "return field(arguments[0])?.value === arguments[1];";
        let expected = format!("“{text}” in {what}");
        self.wait_for(&expected, script, json!([label, text])).await;
    }

    /// Gives a file to the field that takes files.
    pub async fn give_file(&self, path: &Path) {
        let script = r#"return document.querySelector("main input[type=file]");"#;
        let field = self.element("a field for files", script, json!([])).await;
        if let Err(error) = field.send_keys(path.display().to_string()).await {
            self.fail(&format!(
                "the field takes the file; the browser says: {}",
                brief(&error)
            ))
            .await;
        }
    }

    /// Runs a script once; it may use `shown`, `find`, `text`, `control`.
    pub async fn ask(&self, script: &str, arguments: Value) -> Value {
        match self.try_ask(script, arguments).await {
            Ok(value) => value,
            Err(error) => {
                self.fail(&format!("the page answers; the browser says: {error}"))
                    .await
            }
        }
    }

    async fn try_ask(&self, script: &str, arguments: Value) -> Result<Value, String> {
        if self.device.engine() == Engine::Chromium {
            return self.ask_below(script, &arguments).await;
        }
        let arguments = arguments.as_array().cloned().unwrap_or_default();
        let answer = self
            .session
            .execute(format!("{EYES}{script}"), arguments)
            .await;
        answer
            .map(|answer| answer.json().clone())
            .map_err(|error| brief(&error))
    }

    /// The same below the driver's own command, which wraps every script into another of many times its length: that
    /// takes twice as long.
    pub(super) async fn ask_below(&self, script: &str, arguments: &Value) -> Result<Value, String> {
        let expression =
            format!("(async function() {{ {EYES}{script} }}).apply(null, {arguments})");
        let asked =
            json!({ "expression": expression, "awaitPromise": true, "returnByValue": true });
        let answer = self.session.cdp().send_raw("Runtime.evaluate", asked).await;
        let answer = answer.map_err(|error| brief(&error))?;
        match answer.get("exceptionDetails") {
            Some(thrown) => Err(thrown.to_string()),
            None => Ok(answer["result"]["value"].clone()),
        }
    }

    /// Waits until a script gives something other than null or false, and gives that.
    pub async fn wait_for(&self, expected: &str, script: &str, arguments: Value) -> Value {
        let mut patience = Patience::begins();
        loop {
            // A page that is just being left cannot answer; the next one will.
            let answer = self.try_ask(script, arguments.clone()).await;
            match answer {
                Ok(value) if !value.is_null() && value != json!(false) => return value,
                _ if patience.is_over(self).await => self.fail(expected).await,
                _ => patience.pause().await,
            }
        }
    }

    async fn element(&self, what: &str, script: &str, arguments: Value) -> WebElement {
        let mut patience = Patience::begins();
        loop {
            match self.try_element(script, arguments.clone()).await {
                Ok(element) => return element,
                Err(_) if patience.is_over(self).await => self.fail(what).await,
                Err(_) => patience.pause().await,
            }
        }
    }

    /// The element that a script gives, or the words it gives in its place, or the browser's.
    pub(super) async fn try_element(
        &self,
        script: &str,
        arguments: Value,
    ) -> Result<WebElement, String> {
        let arguments = arguments.as_array().cloned().unwrap_or_default();
        let answer = self
            .session
            .execute(format!("{EYES}{script}"), arguments)
            .await;
        let answer = answer.map_err(|error| brief(&error))?;
        let words = answer.json().as_str().map(str::to_owned);
        let gave_none = || words.unwrap_or_else(|| "it is not there".to_owned());
        answer.element().map_err(|_| gave_none())
    }
}

/// What went wrong in the browser's words, without the addresses of its own code.
pub(super) fn brief(error: &WebDriverError) -> String {
    let words = error.to_string();
    let end = words.find("Stacktrace").unwrap_or(words.len());
    let lines = words[..end].lines().map(str::trim);
    lines.collect::<Vec<_>>().join(" ")
}
