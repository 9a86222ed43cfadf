//! The report of a vehicle.

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens the report in this cut and waits until all its pictures are there.
    pub async fn open_report(&self, vehicle: &str, cut: &str) {
        self.go(&format!("#/vehicle/{vehicle}/report/{cut}")).await;
        self.see_page("report").await;
        self.see(&format!("[data-cut=\"{cut}\"] .paper")).await;
        self.see_words("[data-key=print]", "Print").await;
    }

    /// Hands the report in hand over and waits until that is saved.
    pub async fn hand_over(&self, to: &str) {
        self.write_into("Handed to", to).await;
        self.tap_key("hand-over").await;
        self.see_saved(to).await;
        self.see_words("[data-handed]", to).await;
    }

    /// Opens the latest report handed over.
    pub async fn open_handed_over(&self) {
        self.tap("[data-handed]").await;
        self.see_page("told").await;
    }
}
