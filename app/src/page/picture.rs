//! One picture: shown large, marked with a finger or by keys, and held beside an earlier picture of the same part.

mod board;
mod compare;
mod listed;

use cartside_core::daybook::{Digest, Entry, EntryId, Kind, VehicleView};
use cartside_core::wheel::Part;
use cartside_core::words;
use leptos::prelude::Get;

use crate::album::Album;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};
use board::Board;

/// A picture of the vehicle.
pub fn page(id: EntryId, picture: Digest) -> Piece {
    let shop = workshop();
    let album = Album::new(shop);
    let board = Board::new(shop, picture);
    sheet!(
        "<main class=page data-page=picture>{}<div class=picture-and-marks>{}{}</div>{}{}</main>",
        live(move || head(shop, id, picture)),
        board.picture(album),
        sheet!(
            "<div class=stack>{}{}</div>",
            board.tools(),
            listed::listed(board)
        ),
        board.bottom_keys(),
        compare::compare(shop, picture, album)
    )
}

fn head(shop: Workshop, id: EntryId, picture: Digest) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let Some((entry, part)) = entry(&vehicle, picture) else {
        return sheet!(
            "<h1>Picture</h1><p class=warning>This picture is not in the book on this device, or it is struck out.</p>\
             <a class=\"key key-plain\" href={}>To the vehicle</a>",
            Route::Vehicle(id).href()
        );
    };
    let name = words::place::part(part, wording::wheel_at(&vehicle, part), shop.style());
    sheet!(
        "<div class=row><h1>{}</h1><a class=\"key key-plain\" href={}>To its part</a></div><p class=dim>Picture, {}</p>",
        words::capital(&name),
        Route::Part(id, part).href(),
        wording::hand(entry)
    )
}

/// The entry that speaks of a picture and counts, and the part it shows.
fn entry<'a>(vehicle: &VehicleView<'_, 'a>, picture: Digest) -> Option<(&'a Entry, Part)> {
    let mut all = pictures(vehicle).into_iter();
    all.find(|(entry, _)| entry.pictured() == Some(picture))
}

/// Every picture of the vehicle that counts and is not hidden, with the part it shows.
fn pictures<'a>(vehicle: &VehicleView<'_, 'a>) -> Vec<(&'a Entry, Part)> {
    let threads = vehicle.threads(&Kind::Picture).into_iter();
    let counts = threads.flat_map(|thread| thread.counts());
    let shown = counts.filter(|entry| entry.pictured().is_some() && !vehicle.hidden(entry));
    shown
        .filter_map(|entry| Some((entry, Part::from_code(&entry.slot)?)))
        .collect()
}
