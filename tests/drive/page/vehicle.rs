//! One vehicle.

use crate::drive::Browser;

impl Browser<'_> {
    /// Gives the vehicle in hand a name.
    pub async fn name_it(&self, name: &str) {
        self.write_into("Name or owner", name).await;
        self.tap_words("Save the name").await;
        self.see_saved(name).await;
    }

    /// Opens a vehicle and gives it a name.
    pub async fn name_it_from_its_page(&self, vehicle: &str, name: &str) {
        self.go(&format!("#/vehicle/{vehicle}")).await;
        self.see_page("vehicle").await;
        self.name_it(name).await;
    }

    /// Opens the page of everything written about a vehicle and counts the lines there.
    pub async fn count_everything_written(&self, vehicle: &str) -> usize {
        self.go(&format!("#/vehicle/{vehicle}/entries")).await;
        self.see_page("entries").await;
        self.attributes("[data-entry]", "data-entry").await.len()
    }
}
