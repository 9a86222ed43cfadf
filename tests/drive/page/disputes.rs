//! What is in dispute about a vehicle.

use serde_json::json;

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens the disputes of a vehicle and waits until there are so many.
    pub async fn open_disputes(&self, vehicle: &str, count: usize) {
        self.go(&format!("#/vehicle/{vehicle}")).await;
        self.see_page("vehicle").await;
        self.tap(&format!("[data-disputes=\"{count}\"]")).await;
        self.see_page("disputes").await;
        self.see_so_many(count, "[data-dispute]").await;
    }

    /// Says that the side with these words holds.
    pub async fn say_holds(&self, slot: &str, words: &str) {
        let script = r#"
            const sides = [...document.querySelectorAll(`[data-dispute="${arguments[0]}"] [data-side]`)];
            return sides.find((side) => like(side, arguments[1]))?.dataset.side;"#;
        let expected = format!("a side with the words “{words}” in the dispute about {slot}");
        let side = self.wait_for(&expected, script, json!([slot, words])).await;
        let side = side.as_str().unwrap_or_default();
        self.tap_words_in(&format!("[data-side=\"{side}\"]"), "This one holds")
            .await;
        self.see_saved("").await;
    }
}
