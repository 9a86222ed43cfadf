//! What stands below every page: what the last step came to.

use crate::drive::Browser;

impl Browser<'_> {
    /// Waits until the last step is said to be saved, in these words.
    pub async fn see_saved(&self, words: &str) {
        self.see_words("[data-notice=\"saved\"]", words).await;
    }

    /// Waits until the last step is said to have failed, in these words.
    pub async fn see_trouble(&self, words: &str) {
        self.see_words("[data-notice=\"trouble\"]", words).await;
    }

    /// What is said of the last step at this moment.
    pub async fn notice(&self) -> String {
        let said = self.attributes("[data-notice]", "data-notice").await;
        said.into_iter().next().unwrap_or_default()
    }
}
