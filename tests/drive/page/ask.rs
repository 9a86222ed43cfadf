//! One question, put to place after place.

use std::time::Duration;

use serde_json::json;

use crate::drive::Browser;

/// A second tap on the same key within 250 ms counts as a trembling hand.
const STEADY: Duration = Duration::from_millis(260);

impl Browser<'_> {
    /// Opens a question at the place it begins with.
    pub async fn open_question(&self, vehicle: &str, wheel: &str, question: &str) {
        self.go(&format!("#/vehicle/{vehicle}/ask/{wheel}/{question}"))
            .await;
        self.see_page("ask").await;
    }

    /// Opens a question at this place.
    pub async fn open_question_at(&self, vehicle: &str, wheel: &str, question: &str, place: &str) {
        let address = format!("#/vehicle/{vehicle}/ask/{wheel}/{question}/{place}");
        self.go(&address).await;
        self.see_page("ask").await;
        self.see_at(place).await;
    }

    /// Waits until this place is in hand.
    pub async fn see_at(&self, place: &str) {
        self.see(&format!("[data-at=\"{place}\"]")).await;
    }

    /// Waits until no place of this question is in hand any more: the next question has come, or the end.
    pub async fn see_answered(&self, question: &str) {
        let open = format!("[data-question=\"{question}\"] [data-at]:not([data-at=\"none\"])");
        self.see_no(&open).await;
    }

    /// Waits until this question is put.
    pub async fn see_question(&self, question: &str) {
        self.see(&format!("[data-question=\"{question}\"]")).await;
    }

    /// Taps a key of the pad.
    pub async fn tap_key(&self, key: &str) {
        tokio::time::sleep(STEADY).await;
        self.tap(&format!("[data-key=\"{key}\"]")).await;
    }

    /// Answers at the place in hand by one key and waits until that is saved.
    pub async fn answer(&self, place: &str, key: &str, saved: &str) {
        self.see_at(place).await;
        self.tap_key(key).await;
        self.see_saved(saved).await;
    }

    /// Types into the pad's own numbers, key by key.
    pub async fn tap_digits(&self, digits: &[&str]) {
        for digit in digits {
            self.tap(&format!("[data-digit=\"{digit}\"]")).await;
        }
    }

    /// Waits until this stands above the pad, as typed.
    pub async fn see_typed(&self, text: &str) {
        self.see_words("[data-typed]", text).await;
    }

    /// Waits until this and no more stands above the pad.
    pub async fn see_typed_exactly(&self, text: &str) {
        let script = "return find(\"[data-typed]\")?.textContent === arguments[0];";
        let expected = format!("“{text}” and no more typed");
        self.wait_for(&expected, script, json!([text])).await;
    }
}
