//! One browser process with its driver: begun, ended as a person ends it, or killed.

use thirtyfour::{Capabilities, WebDriver};

use super::device::Device;
use super::driver::Driver;

/// A running browser. Its processes are killed when it is dropped.
#[derive(Debug)]
pub(super) struct Running {
    session: WebDriver,
    driver: Driver,
}

impl Running {
    /// Starts one on this device.
    pub(super) async fn start(device: &Device) -> Running {
        let driver = Driver::start(device.engine(), device.leavings());
        let wanted: Capabilities =
            serde_json::from_value(device.capabilities()).expect("these are capabilities");
        let session = WebDriver::new(driver.address(), wanted).await;
        let session = session.unwrap_or_else(|error| panic!("the browser did not start: {error}"));
        Running { session, driver }
    }

    /// What it is driven by.
    pub(super) fn session(&self) -> &WebDriver {
        &self.session
    }

    /// All its processes.
    pub(super) fn processes(&self) -> Vec<u32> {
        self.driver.processes()
    }

    /// Ends it as a person does.
    pub(super) async fn quit(self) {
        let ended = self.session.clone().quit().await;
        ended.unwrap_or_else(|error| panic!("the browser did not close: {error}"));
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        // The driver is dropped next and kills the browser; ending the session politely would wait for an answer.
        let _ = self.session.clone().leak();
    }
}
