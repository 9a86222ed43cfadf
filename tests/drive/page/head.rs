//! What stands above every page.

use crate::drive::Browser;

impl Browser<'_> {
    /// Waits until the app says that it needs no network.
    pub async fn see_ready_without_a_network(&self) {
        self.see_words("[data-ready=\"ready\"]", "ready without a network")
            .await;
    }

    /// Waits until one's own book is the open one.
    pub async fn see_my_own_book(&self) {
        self.see("[data-book=\"own\"]").await;
    }

    /// Waits until the demonstration is the open one.
    pub async fn see_the_demonstration(&self) {
        self.see("[data-book=\"demonstration\"]").await;
    }
}
