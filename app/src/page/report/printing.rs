//! Printing: once every picture of the page is decoded, so that none is missing on paper.

use leptos::prelude::{document, window};
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::HtmlImageElement;

use crate::markup::{Hole, Piece, sheet, tap};

/// The key that prints; while pictures are fetched it says so.
pub(super) fn print_key(fetching: usize) -> Piece {
    sheet!(
        "<button type=button class=\"key key-main\" data-key=print disabled={} on:click={}>{}</button>",
        Hole::Flag(fetching > 0),
        tap(|| spawn_local(print())),
        if fetching > 0 {
            "Fetching pictures…"
        } else {
            "Print"
        }
    )
}

async fn print() {
    let images = document().images();
    for at in 0..images.length() {
        let image = images.item(at);
        if let Some(image) = image.and_then(|it| it.dyn_into::<HtmlImageElement>().ok()) {
            // One that cannot be decoded is printed as the page shows it.
            drop(JsFuture::from(image.decode()).await);
        }
    }
    // A browser that cannot print leaves the page as it is.
    drop(window().print());
}
