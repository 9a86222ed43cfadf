//! One wheel: what it may be used for, what was found, what is missing.

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens the page of a wheel.
    pub async fn open_wheel(&self, vehicle: &str, wheel: &str) {
        self.go(&format!("#/vehicle/{vehicle}/wheel/{wheel}")).await;
        self.see_page("wheel").await;
        self.see("svg[data-drawing=\"wheel\"]").await;
    }

    /// Checks the wheel's standing and the harshest that its findings propose so far.
    pub async fn see_standing(&self, standing: &str, so_far: &str) {
        let wanted = format!("[data-standing=\"{standing}\"][data-so-far=\"{so_far}\"]");
        self.see(&format!("main {wanted}")).await;
    }

    /// Checks what was found: each row with its grade, and nothing else.
    pub async fn see_findings(&self, expected: &[(&str, &str)]) {
        for (finding, grade) in expected {
            self.see(&format!(
                "[data-finding=\"{finding}\"][data-grade=\"{grade}\"]"
            ))
            .await;
        }
        self.see_so_many(expected.len(), "[data-finding]").await;
    }

    /// Checks what is said to be missing, in any order.
    pub async fn see_missing(&self, expected: &[&str]) {
        for missing in expected {
            self.see(&format!("[data-missing=\"{missing}\"]")).await;
        }
        self.see_so_many(expected.len(), "[data-missing]").await;
    }
}
