//! Scripts that run before any of a page's own. Each engine has its own way.

use std::fs;

use http::Method;
use serde_json::{Value, json};
use thirtyfour::common::command::FormatRequestData;
use thirtyfour::{RequestData, SessionId};

use super::browser::Browser;
use super::engine::Engine;

/// Where our window of WebKitGTK looks for the script, within its storage.
const FOR_WEBKIT: &str = "before-each-page.js";

/// Firefox's own code, asked to run the script in each page that begins: in a box of its own, since the page's policy
/// admits no other code than the page's.
const IN_FIREFOX: &str = r#"
const script = JSON.stringify(arguments[0]);
const frame = `addEventListener("DOMWindowCreated", (event) => {
  const page = event.target.defaultView;
  if (page === content) Cu.evalInSandbox(${script}, new Cu.Sandbox(page, { sandboxPrototype: page, wantXrays: false }));
}, true);`;
Services.mm.loadFrameScript("data:," + encodeURIComponent(frame), true);"#;

impl Browser<'_> {
    /// Runs this script before any of the page's own, in every page opened in this tab from now on.
    pub async fn before_each_page(&self, script: &str) {
        match self.device.engine() {
            Engine::Chromium => {
                self.below("Page.enable", json!({})).await;
                let what = json!({ "source": script });
                self.below("Page.addScriptToEvaluateOnNewDocument", what)
                    .await;
            }
            Engine::Firefox => self.in_firefox(IN_FIREFOX, json!(script)).await,
            Engine::WebKit => {
                let written = fs::write(self.device.profile().join(FOR_WEBKIT), script);
                written.expect("the script can be put where the window looks for it");
            }
        }
    }

    /// Runs a script in Firefox's own code.
    async fn in_firefox(&self, script: &str, argument: Value) {
        self.context("chrome").await;
        let done = self.session.execute(script, vec![argument]).await;
        done.unwrap_or_else(|error| panic!("Firefox refused the script: {error}"));
        self.context("content").await;
    }

    async fn context(&self, name: &'static str) {
        let turned = self.session.handle().cmd(Context(name)).await;
        turned.unwrap_or_else(|error| panic!("Firefox does not turn to its {name}: {error}"));
    }
}

/// Which of Firefox's codes further scripts run in: `chrome`, its own, or `content`, the page's.
#[derive(Debug)]
struct Context(&'static str);

impl FormatRequestData for Context {
    fn format_request(&self, session: &SessionId) -> RequestData {
        let path = format!("/session/{session}/moz/context");
        RequestData::new(Method::POST, path).add_body(json!({ "context": self.0 }))
    }
}
