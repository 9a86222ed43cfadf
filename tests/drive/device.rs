//! One person's device: what stays on it when the browser is closed, killed and opened again.

use std::path::Path;

use serde_json::{Value, json};
use tempfile::TempDir;

use super::browser::Browser;
use super::programs;
use super::server::Server;

/// As `chromedriver` and a headless Chromium need it without a network of their own.
const ARGUMENTS: [&str; 12] = [
    "--headless=new",
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
    "--window-size=900,1000",
];

/// A device; its browser profile and downloads are removed when it is dropped.
#[derive(Debug)]
pub struct Device {
    name: String,
    profile: TempDir,
    downloads: TempDir,
    leavings: TempDir,
    address: String,
}

impl Device {
    /// A device fresh from the shop, for the app served here. Failures call it by its name.
    pub fn new(name: &str, server: &Server) -> Device {
        let folder = || tempfile::tempdir().expect("a temporary folder");
        Device {
            name: name.to_owned(),
            profile: folder(),
            downloads: folder(),
            leavings: folder(),
            address: server.address().to_owned(),
        }
    }

    /// What failures call it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The address of the app.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Where files go that are carried out.
    pub fn downloads(&self) -> &Path {
        self.downloads.path()
    }

    /// Where a killed browser may leave files of its own.
    pub(super) fn leavings(&self) -> &Path {
        self.leavings.path()
    }

    /// Starts a browser process, its one tab empty.
    pub async fn start(&self) -> Browser<'_> {
        Browser::start(self).await
    }

    /// Starts a browser process and opens the app.
    pub async fn open(&self) -> Browser<'_> {
        let browser = self.start().await;
        browser.go("").await;
        browser
    }

    /// Starts a browser process, opens the app and waits until it needs no network.
    pub async fn open_ready(&self) -> Browser<'_> {
        let browser = self.open().await;
        browser.see_ready_without_a_network().await;
        browser
    }

    /// What the driver is told of the browser.
    pub(super) fn capabilities(&self) -> Value {
        let mut arguments = ARGUMENTS.map(str::to_owned).to_vec();
        arguments.push(format!("--user-data-dir={}", self.profile.path().display()));
        json!({
            "browserName": "chrome",
            "goog:chromeOptions": {
                "binary": programs::browser(),
                "args": arguments,
                "prefs": {
                    "download.default_directory": self.downloads.path(),
                    "download.prompt_for_download": false,
                },
            },
            "goog:loggingPrefs": { "browser": "ALL" },
        })
    }
}
