//! Devices on which the app was put before the test: copies of one on which its service worker was installed once in
//! this run. A first start unpacks the build, which costs seconds of a processor; the tests of the first start have
//! devices fresh from the shop and a host of their own. No book was ever opened on the device that is copied.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{self, Command};
use std::sync::OnceLock;

use serde_json::json;
use tokio::sync::OnceCell;

use super::browser::Browser;
use super::device::Device;
use super::engine::Engine;
use super::programs;
use super::rested::Rested;
use super::server::Server;

/// What the first of them is called by a failure.
const FIRST: &str = "first of all";
/// Has the worker installed as the app has it.
const INSTALL: &str =
    r#"navigator.serviceWorker.register("sw.js", { updateViaCache: "none" }); return true;"#;
/// Whether it is.
const IS_INSTALLED: &str = r#"
return navigator.serviceWorker.getRegistration()
  .then((registration) => registration?.active?.state === "activated");"#;

/// A file of the app that runs nothing when it is opened, and that its worker gives as it is.
pub(super) fn still() -> String {
    still_in(&programs::dist())
}

/// That of the build in this folder.
fn still_in(build: &Path) -> String {
    let listed = fs::read_dir(build).into_iter().flatten();
    let mut names = listed
        .flatten()
        .map(|file| file.file_name().display().to_string());
    let found = names.find(|name| name.ends_with(".css"));
    found.expect("the build has a style")
}

/// The host of all of them, which ends with this program.
fn host() -> &'static Server {
    static HOST: OnceLock<Server> = OnceLock::new();
    HOST.get_or_init(Server::start)
}

impl Device {
    /// A device with Chromium on which the app is, and nothing is written.
    pub async fn installed(name: &str) -> Device {
        Engine::Chromium.installed(name).await
    }
}

impl Browser<'_> {
    /// Opens a page of the app's host on which nothing runs.
    pub async fn go_where_nothing_runs(&self) {
        self.go(&still()).await;
    }
}

impl Engine {
    /// A device of this engine on which the app is, and nothing is written.
    pub async fn installed(self, name: &str) -> Device {
        static FIRST: [OnceCell<PathBuf>; 3] = [const { OnceCell::const_new() }; 3];
        let first = &FIRST[self as usize];
        let device = self.device(name, host());
        if let Some(rested) = self.rested().await {
            return device.going_on_with(rested).reusable();
        }
        let profile = first.get_or_init(|| self.install()).await;
        copy(profile, device.profile());
        match self {
            Engine::Chromium => device,
            Engine::Firefox | Engine::WebKit => device.reusable(),
        }
    }

    /// A device of this engine that has never been at this host: fresh, or with a browser that waits.
    pub async fn never_at(self, name: &str, server: &Server) -> Device {
        let device = self.device(name, server);
        let Some(rested) = self.rested().await else {
            return device;
        };
        let still = format!("{}{}", device.address(), still_in(server.folder()));
        match rested.forget_host(&still).await {
            Ok(_) => device.going_on_with(rested).reusable(),
            Err(_) => device,
        }
    }

    async fn rested(self) -> Option<Rested> {
        if self == Engine::Chromium {
            return None;
        }
        let still = format!("{}{}", host().address(), still());
        Rested::for_another(self, &still).await
    }

    /// The profile of a device on which the app was installed.
    async fn install(self) -> PathBuf {
        let device = self.device(FIRST, host());
        let browser = device.start().await;
        browser.go_where_nothing_runs().await;
        browser.ask(INSTALL, json!([])).await;
        browser
            .wait_for("the app installed", IS_INSTALLED, json!([]))
            .await;
        // Any page that names no icon is asked for one.
        browser.close_but_for(&["favicon.ico"]).await;
        device.end_what_was_closed().await;
        let kept = kept().join(format!("{self:?}"));
        fs::create_dir_all(&kept).expect("a folder can be made");
        copy(device.profile(), &kept);
        kept
    }
}

/// This program's folder of profiles; those of programs that have ended are removed.
fn kept() -> PathBuf {
    let all = programs::installed();
    for old in fs::read_dir(&all).into_iter().flatten().flatten() {
        if !Path::new("/proc").join(old.file_name()).exists() {
            // Another program may be removing it too.
            let _ = fs::remove_dir_all(old.path());
        }
    }
    all.join(process::id().to_string())
}

/// Copies all that is in a folder into another.
pub(super) fn copy(from: &Path, to: &Path) {
    let copied = Command::new("cp")
        .args(["-a", "--"])
        .args([&from.join("."), to])
        .status();
    assert!(
        copied.is_ok_and(|ended| ended.success()),
        "the profile is copied"
    );
}
