//! Scripts that run before any of a page's own. Each engine has its own way.

use std::fs;
use std::path::Path;

use http::Method;
use serde_json::{Value, json};
use thirtyfour::common::command::FormatRequestData;
use thirtyfour::error::WebDriverResult;
use thirtyfour::{RequestData, SessionId, WebDriver};

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
/// Firefox's own code, asked to give no further tab such a script.
const FORGET_IN_FIREFOX: &str = r#"
for (const [script] of Services.mm.getDelayedFrameScripts()) {
  if (script.startsWith("data:,")) Services.mm.removeDelayedFrameScript(script);
}"#;

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
            Engine::Firefox => {
                let done = in_firefox(&self.session, IN_FIREFOX, vec![json!(script)]).await;
                done.unwrap_or_else(|error| panic!("Firefox refused the script: {error}"));
            }
            Engine::WebKit => {
                let written = fs::write(self.device.profile().join(FOR_WEBKIT), script);
                written.expect("the script can be put where the window looks for it");
            }
        }
    }
}

/// Has every page opened in another tab of Firefox or WebKit begin without such a script.
pub(super) async fn forget(
    engine: Engine,
    session: &WebDriver,
    profile: &Path,
) -> WebDriverResult<()> {
    match engine {
        Engine::Firefox => in_firefox(session, FORGET_IN_FIREFOX, Vec::new()).await,
        _ => Ok(fs::write(profile.join(FOR_WEBKIT), "")?),
    }
}

/// Runs a script in Firefox's own code.
async fn in_firefox(session: &WebDriver, script: &str, given: Vec<Value>) -> WebDriverResult<()> {
    session.handle().cmd(Context("chrome")).await?;
    session.execute(script, given).await?;
    session.handle().cmd(Context("content")).await?;
    Ok(())
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
