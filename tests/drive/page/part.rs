//! One part: its readings, remarks and pictures.

use std::path::Path;

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens the page of a part, such as `near/spoke-3`.
    pub async fn open_part(&self, vehicle: &str, part: &str) {
        self.go(&format!("#/vehicle/{vehicle}/part/{part}")).await;
        self.see_page("part").await;
    }

    /// Writes a remark on the part in hand.
    pub async fn remark(&self, words: &str) {
        self.write_into("Remark", words).await;
        self.tap_words("Save the remark").await;
        self.see_saved("").await;
        self.see_words("[data-remark]", words).await;
    }

    /// Takes a picture of the part in hand: the file is what the camera gave.
    pub async fn take_picture(&self, photograph: &Path) {
        self.see_words("main", "Take a picture").await;
        self.give_file(photograph).await;
        self.see_saved("picture").await;
        self.see_so_many(1, "img[data-picture]").await;
    }

    /// Begins to correct the reading of this question on the part in hand.
    pub async fn correct(&self, question: &str) {
        self.tap_words_in(&format!("[data-reading=\"{question}\"]"), "Correct")
            .await;
        self.see_page("ask").await;
    }
}
