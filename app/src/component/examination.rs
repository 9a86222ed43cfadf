//! The beginning of an examination: asked for before anything is answered, when the latest is not of today.

use cartside_core::daybook::{EntryId, Says, Unwritten, Visit};
use leptos::prelude::*;

use crate::clock;
use crate::looking::Examination;
use crate::markup::{Piece, sheet, tap};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// The examination of an earlier day that the person looking goes on with, as long as the app runs.
#[derive(Clone, Copy)]
pub struct GoingOn(pub RwSignal<Option<EntryId>>);

/// Whether this examination is the one to answer into: it is of today, or it was said to go on.
pub fn current(examination: &Examination, going_on: GoingOn) -> bool {
    let today = clock::now();
    today.starts_with(&examination.day) || going_on.0.get() == Some(examination.id)
}

/// A card that asks whether to begin an examination, or to go on with the latest, if there was one.
pub fn begin_examination(id: EntryId, latest: Option<Examination>) -> Piece {
    let going_on = expect_context::<GoingOn>();
    let said = match &latest {
        Some(latest) => format!("The latest examination was begun on {}.", latest.shown),
        None => "No examination of this vehicle has been begun.".to_owned(),
    };
    let go_on = latest.map(|latest| {
        sheet!(
            "<button type=button class=key data-key=go-on on:click={}>Go on with that one</button>",
            tap(move || going_on.0.set(Some(latest.id)))
        )
    });
    sheet!(
        "<section class=card data-begin-examination><h2>Today, or that day?</h2>\
         <p>{} An answer belongs to one day's looking.</p>{}{}</section>",
        said,
        begin_key(id, "key key-main"),
        go_on
    )
}

/// The key that begins an examination, of these classes.
pub fn begin_key(id: EntryId, class: &'static str) -> Piece {
    let shop = workshop();
    sheet!(
        "<button type=button class={} data-key=begin-examination on:click={}>Begin a new examination</button>",
        class,
        tap(move || begin(shop, id))
    )
}

fn begin(shop: Workshop, id: EntryId) {
    // The use and the place are mostly those of last time; they are shown next, to be changed.
    let before = untrack(|| Examination::now(shop)).map(|latest| latest.said);
    let said = Visit {
        used_for: before
            .as_ref()
            .map(|said| said.used_for.clone())
            .unwrap_or_default(),
        place: before.map(|said| said.place).unwrap_or_default(),
        ..Visit::default()
    };
    let Some(unwritten) = Unwritten::new(Some(id), Says::Visit(said)) else {
        return;
    };
    // If it is not stored, the page is as it was.
    shop.write_then(&unwritten, "examination begun".to_owned(), move |stored| {
        if stored {
            Route::Examination(id).go();
        }
    });
}
