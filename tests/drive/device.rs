//! One person's device: what stays on it when the browser is closed, killed and opened again.

use std::fs;
use std::path::Path;

use serde_json::Value;
use tempfile::TempDir;

use super::browser::Browser;
use super::engine::{Engine, Folders};
use super::installed;
use super::server::Server;

/// A device; its browser profile and downloads are removed when it is dropped.
#[derive(Debug)]
pub struct Device {
    engine: Engine,
    name: String,
    profile: TempDir,
    downloads: TempDir,
    leavings: TempDir,
    address: String,
    private: bool,
    whole: bool,
}

impl Device {
    /// A device with Chromium, fresh from the shop, for the app served here. Failures call it by its name.
    pub fn new(name: &str, server: &Server) -> Device {
        Device::of(Engine::Chromium, name, server)
    }

    pub(super) fn of(engine: Engine, name: &str, server: &Server) -> Device {
        Device::with(engine, name, server.address())
    }

    fn with(engine: Engine, name: &str, address: &str) -> Device {
        let folder = || tempfile::tempdir().expect("a temporary folder");
        Device {
            engine,
            name: name.to_owned(),
            profile: folder(),
            downloads: folder(),
            leavings: folder(),
            address: address.to_owned(),
            private: false,
            whole: false,
        }
    }

    /// The same device, on which only private windows are opened.
    pub fn private(self) -> Device {
        Device {
            private: true,
            ..self
        }
    }

    /// The same device with the whole of Chromium, as people have it; the others have what draws the page and keeps its
    /// storage, without the window around it, which starts in a third of the time.
    pub fn whole(self) -> Device {
        Device {
            whole: true,
            ..self
        }
    }

    /// A device made by copying everything this one keeps, as a backup put back on another does. No browser of this
    /// one may be running.
    pub fn copied_as(&self, name: &str) -> Device {
        let copy = Device {
            private: self.private,
            whole: self.whole,
            ..Device::with(self.engine, name, &self.address)
        };
        installed::copy(self.profile.path(), copy.profile.path());
        copy
    }

    /// Spoils the log in which the browser keeps the book, so that it throws it away at its next start: what Chromium
    /// does when it was killed between the two halves of a record and has written on behind it. No browser may be running.
    pub fn tear_the_book(&self) {
        let all = self.profile.path().join("Default/IndexedDB");
        let mut torn = 0;
        for book in fs::read_dir(all).expect("databases are kept").flatten() {
            for file in fs::read_dir(book.path()).into_iter().flatten().flatten() {
                if file.path().extension().is_some_and(|kind| kind == "log") {
                    let mut bytes = fs::read(file.path()).expect("the log can be read");
                    let middle = bytes.len() / 2;
                    if let Some(byte) = bytes.get_mut(middle) {
                        *byte ^= 0xff;
                        torn += 1;
                    }
                    fs::write(file.path(), bytes).expect("the log can be written");
                }
            }
        }
        assert!(torn > 0, "there is a log to tear");
    }

    /// What failures call it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Which browser it has.
    pub fn engine(&self) -> Engine {
        self.engine
    }

    /// The address of the app.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Where files go that are carried out.
    pub fn downloads(&self) -> &Path {
        self.downloads.path()
    }

    /// What its browser keeps from one process to the next.
    pub(super) fn profile(&self) -> &Path {
        self.profile.path()
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
        self.engine.capabilities(&Folders {
            profile: self.profile.path(),
            downloads: self.downloads.path(),
            private: self.private,
            whole: self.whole,
        })
    }
}
