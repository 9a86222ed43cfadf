//! Bring a file in.

use std::path::Path;

use crate::drive::Browser;

impl Browser<'_> {
    /// Chooses a file to bring in; nothing is stored by that.
    pub async fn choose_to_bring_in(&self, file: &Path) {
        self.open_day_book().await;
        self.tap_words("Bring in").await;
        self.see_page("bring-in").await;
        self.see_words("main", "Choose a file").await;
        self.give_file(file).await;
    }

    /// Waits until the dry run says what would be added.
    pub async fn see_it_would_add(&self, entries: usize, pictures: usize) {
        self.see(&format!(
            "[data-would-add=\"{entries}\"][data-would-add-pictures=\"{pictures}\"]"
        ))
        .await;
    }

    /// Brings a file in, of which so much is new here.
    pub async fn bring_in(&self, file: &Path, entries: usize, pictures: usize) {
        self.choose_to_bring_in(file).await;
        self.see_it_would_add(entries, pictures).await;
        self.tap_words("Bring it in").await;
        self.see(&format!("[data-added=\"{entries}\"]")).await;
    }

    /// Waits until the file is refused, in these words.
    pub async fn see_refused(&self, words: &str) {
        self.see_words("[data-refused]", words).await;
    }
}
