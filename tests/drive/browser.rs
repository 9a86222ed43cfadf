//! One running browser process: its tabs, its end, what it complained of, and what can be asked of it
//! below the page.

use std::cell::RefCell;

use serde_json::{Value, json};
use thirtyfour::{WebDriver, WindowHandle};

use super::device::Device;
use super::engine::Engine;
use super::running::Running;

/// A running browser. Its processes end when it is dropped.
#[derive(Debug)]
pub struct Browser<'a> {
    pub(super) device: &'a Device,
    pub(super) session: WebDriver,
    running: Running,
    pub(super) step: RefCell<String>,
}

impl<'a> Browser<'a> {
    pub(super) async fn start(device: &'a Device) -> Browser<'a> {
        let running = device.run().await;
        let browser = Browser {
            device,
            session: running.session().clone(),
            running,
            step: RefCell::new(String::new()),
        };
        if device.engine() == Engine::Chromium {
            let taken = json!({ "behavior": "allow", "downloadPath": device.downloads() });
            browser.below("Browser.setDownloadBehavior", taken).await;
        }
        browser
    }

    /// What the device is called.
    pub fn device_name(&self) -> &str {
        self.device.name()
    }

    /// Says what is done next, for the account of the run and for the words of a failure.
    pub fn step(&self, name: &str) {
        println!("step, {}: {name}", self.device.name());
        name.clone_into(&mut self.step.borrow_mut());
    }

    /// Closes the browser as a person does, after making sure that it had nothing to complain of; Chromium's driver
    /// alone tells.
    pub async fn close(self) {
        self.close_but_for(&[]).await;
    }

    /// Closes the browser; each of its complaints must hold one of these words.
    pub async fn close_but_for(self, expected: &[&str]) {
        self.see_no_complaint_but(expected).await;
        self.device.close(self.running);
    }

    /// Ends every process of the browser at once, with no time to put anything away.
    pub fn kill(self) {
        drop(self);
    }

    async fn see_no_complaint_but(&self, expected: &[&str]) {
        let log = self.session.browser_log().await.unwrap_or_default();
        let complaints: Vec<String> = log
            .into_iter()
            .filter(|entry| entry.level == "SEVERE")
            .map(|entry| entry.message)
            .filter(|message| !expected.iter().any(|words| message.contains(words)))
            .collect();
        if !complaints.is_empty() {
            self.fail(&format!(
                "no complaint on the console; it holds {complaints:#?}"
            ))
            .await;
        }
    }

    /// Opens another tab, empty, and turns to it; gives the way back to the one before.
    pub async fn open_tab(&self) -> Tab {
        let before = self.session.window().await.expect("there is a tab");
        let fresh = self.session.new_tab().await.expect("tabs can be opened");
        let switched = self.session.switch_to_window(fresh).await;
        switched.expect("the new tab is there");
        Tab(before)
    }

    /// Turns to another tab; gives the way back.
    pub async fn turn_to(&self, tab: Tab) -> Tab {
        let before = self.session.window().await.expect("there is a tab");
        let switched = self.session.switch_to_window(tab.0).await;
        switched.expect("the tab is still there");
        Tab(before)
    }

    /// Makes the processor this many times slower for the tab. Chromium only.
    pub async fn slow_down(&self, times: u32) {
        self.below("Emulation.setCPUThrottlingRate", json!({ "rate": times }))
            .await;
    }

    /// Makes the tab a phone's screen of this size, in the page's own pixels. Chromium only.
    pub async fn be_a_phone(&self, width: u32, height: u32) {
        let screen =
            json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true });
        self.below("Emulation.setDeviceMetricsOverride", screen)
            .await;
    }

    /// Makes the tab a window of this size, in the page's own pixels, that nothing makes wider. Chromium only.
    pub async fn be_a_window(&self, width: u32, height: u32) {
        let screen =
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.below("Emulation.setDeviceMetricsOverride", screen)
            .await;
    }

    /// Asks the browser something below the page, in the protocol that Chromium alone has.
    pub async fn below(&self, method: &str, parameters: Value) -> Value {
        let answer = self.session.cdp().send_raw(method, parameters).await;
        answer.unwrap_or_else(|error| panic!("the browser refused {method}: {error}"))
    }
}

/// A tab to turn to.
#[derive(Clone, Debug)]
pub struct Tab(WindowHandle);
