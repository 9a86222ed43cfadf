//! The three engines: how the driver of each is started, what it is told of its browser, what only one can do.

use std::path::Path;

use serde_json::{Value, json};

use super::device::Device;
use super::programs;
use super::server::Server;

/// What draws the page and keeps its storage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium's, by `chromedriver`.
    Chromium,
    /// Firefox's, by `geckodriver`.
    Firefox,
    /// WebKitGTK's, by `WebKitWebDriver` and a window of our own on a screen that nobody sees.
    WebKit,
}

/// As `chromedriver` and a headless Chromium need it without a network of their own.
const CHROMIUM: [&str; 12] = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--no-default-browser-check",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-crash-restore-bubble",
    // Two pages of its address bar, which nobody sees here: half of what a start costs.
    "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
    "--window-size=900,1000",
];

/// The folders a browser is given.
pub(super) struct Folders<'a> {
    /// What it keeps from one process to the next.
    pub(super) profile: &'a Path,
    /// Where it puts files.
    pub(super) downloads: &'a Path,
    /// Whether only private windows are opened.
    pub(super) private: bool,
    /// Whether the browser is the whole program that people have.
    pub(super) whole: bool,
}

impl Engine {
    /// A device of this engine, fresh from the shop, for the app served here.
    pub fn device(self, name: &str, server: &Server) -> Device {
        Device::of(self, name, server)
    }

    /// What the driver is told of the browser.
    pub(super) fn capabilities(self, folders: &Folders<'_>) -> Value {
        match self {
            Engine::Chromium => chromium(folders),
            Engine::Firefox => firefox(folders),
            Engine::WebKit => webkit(folders),
        }
    }
}

fn chromium(folders: &Folders<'_>) -> Value {
    let (name, program) = match programs::shell().filter(|_| !folders.whole) {
        Some(shell) => ("chrome-headless-shell", shell),
        None => ("chrome", programs::browser()),
    };
    let mut arguments = CHROMIUM.map(str::to_owned).to_vec();
    arguments.push(format!("--user-data-dir={}", folders.profile.display()));
    arguments.extend((name == "chrome").then(|| "--headless=new".to_owned()));
    arguments.extend(folders.private.then(|| "--incognito".to_owned()));
    json!({
        "browserName": name,
        "goog:chromeOptions": { "binary": program, "args": arguments },
        "goog:loggingPrefs": { "browser": "ALL" },
    })
}

fn firefox(folders: &Folders<'_>) -> Value {
    let profile = folders.profile.display().to_string();
    json!({
        "browserName": "firefox",
        "moz:firefoxOptions": {
            "binary": programs::firefox(),
            "args": ["-headless", "-profile", profile, "--width=900", "--height=1000"],
            "prefs": {
                "browser.download.dir": folders.downloads,
                // The folder named above, without asking.
                "browser.download.folderList": 2,
                "browser.download.useDownloadDir": true,
                "browser.download.always_ask_before_handling_new_types": false,
                "browser.download.alwaysOpenPanel": false,
                // A file that is taken for risky would wait to be confirmed.
                "browser.safebrowsing.downloads.enabled": false,
                // A killed browser is not to come back by halves.
                "browser.sessionstore.resume_from_crash": false,
                "toolkit.startup.max_resumed_crashes": -1,
                // Processes that the pages of the app never need: a seventh of what a start costs.
                "browser.newtab.preload": false,
                "dom.ipc.processPrelaunch.enabled": false,
                "extensions.webextensions.remote": false,
                // Every window a private one.
                "browser.privatebrowsing.autostart": folders.private,
            },
        },
    })
}

fn webkit(folders: &Folders<'_>) -> Value {
    let kept = if folders.private { "private" } else { "kept" };
    json!({
        "webkitgtk:browserOptions": {
            "binary": programs::python(),
            "args": [programs::webkit_window(), folders.profile, folders.downloads, kept],
        },
    })
}
