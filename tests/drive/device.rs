//! One person's device: what stays on it when the browser is closed, killed and opened again.

use std::cell::RefCell;
use std::fs;
use std::path::Path;
use std::sync::Arc;
use std::thread;

use serde_json::Value;
use tempfile::TempDir;

use super::browser::Browser;
use super::engine::{Engine, Folders};
use super::installed;
use super::rested::Rested;
use super::running::Running;
use super::server::Server;

/// A device; its browser profile and downloads are removed when it is dropped.
#[derive(Debug)]
pub struct Device {
    engine: Engine,
    name: String,
    home: Arc<Home>,
    address: String,
    private: bool,
    whole: bool,
    /// A browser that runs on it although no test has it.
    idle: RefCell<Option<Idle>>,
    /// Whether another test may go on with its browser.
    reusable: bool,
}

/// The folders of a device.
#[derive(Debug)]
pub(super) struct Home {
    /// What its browser keeps from one process to the next.
    pub(super) profile: TempDir,
    /// Where files go that are carried out.
    pub(super) downloads: TempDir,
    /// Where a killed browser may leave files of its own.
    pub(super) leavings: TempDir,
}

/// A browser that no test has at this moment.
#[derive(Debug)]
enum Idle {
    /// Of a test that has ended, as good as just started.
    Rested(Running),
    /// Closed by the test, to which it is as if it had ended.
    Closed(Running),
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
        let home = Home {
            profile: folder(),
            downloads: folder(),
            leavings: folder(),
        };
        Device {
            engine,
            name: name.to_owned(),
            home: Arc::new(home),
            address: address.to_owned(),
            private: false,
            whole: false,
            idle: RefCell::new(None),
            reusable: false,
        }
    }

    /// The same device, of which the browser may be another test's when this one has ended.
    pub(super) fn reusable(mut self) -> Device {
        self.reusable = true;
        self
    }

    /// The same device in the place of that of a test that has ended, with its browser.
    pub(super) fn going_on_with(mut self, rested: Rested) -> Device {
        self.home = rested.home;
        self.idle.replace(Some(Idle::Rested(rested.running)));
        self
    }

    /// The same device, on which only private windows are opened.
    pub fn private(mut self) -> Device {
        self.private = true;
        self.reusable = false;
        self
    }

    /// The same device with the whole of Chromium, as people have it; the others have what draws the page and keeps its
    /// storage, without the window around it, which starts in a third of the time.
    pub fn whole(mut self) -> Device {
        self.whole = true;
        self
    }

    /// A device made by copying everything this one keeps, as a backup put back on another does. No browser of this
    /// one may be running.
    pub async fn copied_as(&self, name: &str) -> Device {
        self.end_what_was_closed().await;
        let mut copy = Device::with(self.engine, name, &self.address);
        (copy.private, copy.whole) = (self.private, self.whole);
        installed::copy(self.profile(), copy.profile());
        copy
    }

    /// Spoils the log in which the browser keeps the book, so that it throws it away at its next start: what Chromium
    /// does when it was killed between the two halves of a record and has written on behind it. No browser may be running.
    pub async fn tear_the_book(&self) {
        self.end_what_was_closed().await;
        let all = self.profile().join("Default/IndexedDB");
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
        self.home.downloads.path()
    }

    /// What its browser keeps from one process to the next.
    pub(super) fn profile(&self) -> &Path {
        self.home.profile.path()
    }

    /// Where a killed browser may leave files of its own.
    pub(super) fn leavings(&self) -> &Path {
        self.home.leavings.path()
    }

    /// A browser process for a test: a new one, or that of a test that has ended, as good as new.
    pub(super) async fn run(&self) -> Running {
        match self.idle.take() {
            Some(Idle::Rested(running)) => return running,
            Some(Idle::Closed(running)) => running.quit().await,
            None => {}
        }
        Running::start(self).await
    }

    /// Closes a browser. It ends when this test needs it to have ended; if that never comes, it is killed with the device or
    /// goes to another test: to end politely costs Firefox half as much as to start.
    pub(super) fn close(&self, running: Running) {
        self.idle.replace(Some(Idle::Closed(running)));
    }

    /// Ends the browser that was closed, if it has not ended, so that all it kept is written.
    pub(super) async fn end_what_was_closed(&self) {
        if let Some(Idle::Closed(running)) = self.idle.take() {
            running.quit().await;
        }
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
            profile: self.profile(),
            downloads: self.downloads(),
            private: self.private,
            whole: self.whole,
        })
    }
}

impl Drop for Device {
    fn drop(&mut self) {
        if let Some(Idle::Closed(running)) = self.idle.take()
            && self.reusable
            && !thread::panicking()
        {
            let home = Arc::clone(&self.home);
            Rested { running, home }.wait(self.engine);
        }
    }
}
