//! The day book: every vehicle.

use crate::drive::Browser;

impl Browser<'_> {
    /// Opens the day book.
    pub async fn open_day_book(&self) {
        self.go("#/").await;
        self.see_page("book").await;
    }

    /// Opens a vehicle from the list.
    pub async fn open_vehicle(&self, id: &str) {
        self.open_day_book().await;
        self.tap(&format!("[data-vehicle=\"{id}\"]")).await;
        self.see_page("vehicle").await;
    }

    /// Waits until the list has so many vehicles.
    pub async fn see_vehicles(&self, count: usize) {
        self.see_page("book").await;
        self.see_so_many(count, "[data-vehicle]").await;
    }
}
