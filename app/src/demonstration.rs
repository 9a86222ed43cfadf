//! The demonstration: an invented farm in a database of its own, to try everything on. It is written when it is first
//! entered, by the same scribe as any book, and can be neither carried out nor brought together with a real one.

mod drawing;
mod farm;

use leptos::prelude::*;

use crate::route::Route;
use crate::scribe::Scribe;
use crate::storage::{Store, Which};
use crate::workshop::{Notice, Opening, Workshop};

/// The device that the invented entries name.
const DEVICE: &str = "demonstration";

/// Opens the demonstration in the place of one's own book, and writes it if it is empty.
pub async fn enter(shop: Workshop) {
    shop.open(Which::Demonstration).await;
    let empty = shop.list.with_untracked(Vec::is_empty);
    if shop.opening.get_untracked() == Opening::Open && empty {
        lay_out(shop).await;
    }
    Route::Book.go();
}

/// Goes back to one's own book.
pub async fn leave(shop: Workshop) {
    shop.open(Which::Own).await;
    shop.notice.set(Notice::Quiet);
    Route::Book.go();
}

/// Throws the demonstration away, with all that was tried in it, and lays it out afresh.
pub async fn begin_afresh(shop: Workshop) {
    // First out of it, so that this tab does not hold what is to go.
    shop.open(Which::Own).await;
    match Store::delete_demonstration().await {
        Ok(()) => enter(shop).await,
        Err(error) => shop.notice.set(Notice::Trouble(error.to_string())),
    }
}

async fn lay_out(shop: Workshop) {
    let scribe = Scribe::new(String::new(), DEVICE.to_owned(), 0);
    let picture = drawing::cracked_spoke().await;
    match farm::written(scribe, picture.as_ref()) {
        // A failure to save is shown by the workshop, and the demonstration is then empty.
        Ok(scribe) => drop(shop.save(scribe, "the demonstration is laid out").await),
        Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
    }
}
