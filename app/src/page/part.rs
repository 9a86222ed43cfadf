//! One part: its readings, remarks and pictures.

mod pictures;
mod readings;
mod remarks;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::Part;
use cartside_core::words;
use leptos::prelude::*;

use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// One part of a vehicle: its readings, remarks and pictures.
pub fn page(id: EntryId, of: Part) -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=part>{}{}{}{}</main>",
        live(move || head(shop, id, of)),
        matches!(of, Part::At(..)).then(|| readings::readings(shop, id, of)),
        remarks::remarks(shop, id, of),
        pictures::pictures(shop, id, of),
    )
}

/// What the part is called, the way back, and whether the wheel still has it.
fn head(shop: Workshop, id: EntryId, of: Part) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let wheel = wording::wheel_at(&view.vehicle(opened.vehicle), of);
    let gone = match of {
        Part::At(_, place) => wheel.is_none_or(|wheel| !wheel.has(place)),
        Part::Vehicle => false,
    };
    let (back, whole) = match of.position() {
        Some(position) => (Route::Wheel(id, position), "To the wheel"),
        None => (Route::Vehicle(id), "To the vehicle"),
    };
    let name = words::place::part(of, wheel, shop.style());
    let warning = gone.then(|| {
        sheet!(
            "<p class=warning>The wheel, as it is described now, has no such part. \
            What was said of it is kept.</p>"
        )
    });
    sheet!(
        "<h1>{}</h1><a class=\"key key-plain\" href={}>{}</a>{}",
        words::capital(&name),
        back.href(),
        whole,
        warning,
    )
}
