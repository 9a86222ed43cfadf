//! How a browser test fails: what was expected, what the page showed, and a picture of it.

use std::fmt::Debug;
use std::fs;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;

use super::browser::Browser;
use super::engine::Engine;
use super::programs;

const SHOWN: &str = r#"
return (async () => {
const of = (css, name) => document.querySelector(css)?.getAttribute(name) ?? "-";
// Refused on a page of no host, which is to be told of all the same.
const registered = await (async () => navigator.serviceWorker?.getRegistration())().catch(() => null);
const workers = ["installing", "waiting", "active"].map((which) => registered?.[which] && `${which}: ${registered[which].state}`);
return [
  `address: ${location.href}`,
  `workers: ${workers.filter(Boolean).join(", ") || "none"}`,
  `page: ${of("[data-page]", "data-page")}, ready: ${of("[data-ready]", "data-ready")}, notice: ${of("[data-notice]", "data-notice")}`,
  document.body.innerText.slice(0, 2500),
].join("\n");
})();"#;

static PICTURES: AtomicU32 = AtomicU32::new(1);

/// Has the page drawn anew again and again, as good as unseen. WebKit's driver waits for that before it takes a picture, and
/// for ever where the page stands still.
const ALWAYS_NEW: &str = r#"
let width = 0;
setInterval(() => { document.documentElement.style.outline = `${width++ % 2}px solid #00000001`; }, 50);"#;

impl Browser<'_> {
    /// Fails unless it holds.
    pub async fn expect(&self, holds: bool, expected: &str) {
        if !holds {
            self.fail(expected).await;
        }
    }

    /// Fails unless what was found is what was expected.
    pub async fn expect_same<T: PartialEq + Debug>(&self, what: &str, found: T, expected: T) {
        if found != expected {
            self.fail(&format!("{what}: {expected:#?}; found: {found:#?}"))
                .await;
        }
    }

    /// Fails the test: this was expected, and the page shows something else.
    pub async fn fail(&self, expected: &str) -> ! {
        let shown = match self.session.execute(SHOWN, Vec::new()).await {
            Ok(shown) => shown.json().as_str().unwrap_or_default().to_owned(),
            Err(error) => format!("nothing that could be read: {error}"),
        };
        let pictured = self.pictured().await;
        panic!(
            "on the {} device, at the step “{}”\nexpected: {expected}\nthe page showed:\n{shown}\n{}",
            self.device.name(),
            self.step.borrow(),
            pictured
        )
    }

    async fn pictured(&self) -> String {
        let folder = programs::failures();
        let test = thread::current()
            .name()
            .unwrap_or("test")
            .replace("::", "-");
        let number = PICTURES.fetch_add(1, Ordering::Relaxed);
        let path = folder.join(format!("{test}-{number}.png"));
        if self.device.engine() == Engine::WebKit {
            // What cannot be done makes no picture worse than none.
            let _ = self.session.execute(ALWAYS_NEW, Vec::new()).await;
        }
        let taken = match self.session.screenshot_as_png().await {
            Ok(png) => fs::create_dir_all(&folder)
                .and_then(|()| fs::write(&path, png))
                .map_err(|error| error.to_string()),
            Err(error) => Err(error.to_string()),
        };
        match taken {
            Ok(()) => format!("a picture of it: {}", path.display()),
            Err(error) => format!("no picture of it could be taken: {error}"),
        }
    }
}
