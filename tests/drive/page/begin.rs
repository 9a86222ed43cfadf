//! Begin a vehicle: four taps.

use crate::drive::Browser;

impl Browser<'_> {
    /// Begins a vehicle by the four taps and gives its id once its page shows.
    pub async fn begin(&self, kind: &str, wheels: &str, spokes: &str, felloes: &str) -> String {
        self.open_day_book().await;
        self.tap_words("Begin a vehicle").await;
        self.see_page("begin").await;
        self.choose("kind", kind).await;
        self.choose("wheels", wheels).await;
        self.choose("spokes", spokes).await;
        self.choose("felloes", felloes).await;
        self.see_page("vehicle").await;
        self.vehicle_in_address().await
    }

    /// Begins the cart that most tests look at: two wheels of 12 spokes and 6 felloes.
    pub async fn begin_a_cart(&self) -> String {
        self.begin("cart", "all", "12", "6").await
    }

    async fn choose(&self, step: &str, choice: &str) {
        self.tap(&format!(
            "[data-step=\"{step}\"] [data-choice=\"{choice}\"]"
        ))
        .await;
    }

    async fn vehicle_in_address(&self) -> String {
        let hash = self.hash().await;
        let id = hash.strip_prefix("#/vehicle/").unwrap_or_default();
        let holds = id.len() == 64;
        self.expect(holds, "an address that names the vehicle just begun")
            .await;
        id.to_owned()
    }
}
