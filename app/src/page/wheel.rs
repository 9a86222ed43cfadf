//! One wheel: its standing, its drawing with the list beside it, what was found, what is still to be asked.

mod asks;
pub mod decided;
pub mod findings;
pub mod standing;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::part_list::part_list;
use crate::component::wheel_drawing::{Drawn, wheel_drawing};
use crate::looking::Looking;
use crate::markup::{Piece, live, sheet};
use crate::page::ask::onward;
use crate::route::Route;
use crate::workshop::workshop;

/// One wheel: its drawing, its list, its findings.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    let looking = Looking::follow(shop, position);
    sheet!(
        "<main class=page data-page=wheel><h1 class=capital>{}</h1>{}<div class=row>\
         <a class=key href={}>How it is built</a><a class=key href={}>Remarks and pictures</a>\
         <a class=key data-key=work href={}>Work done</a>\
         <a class=\"key key-plain\" href={}>To the vehicle</a></div></main>",
        words::place::wheel_at(position),
        live(move || match looking.get() {
            Some(looking) => one_wheel(id, position, &looking),
            None => no_wheel(),
        }),
        Route::Build(id, position).href(),
        Route::Part(id, Part::At(position, Place::Whole)).href(),
        Route::Work(id, position).href(),
        Route::Vehicle(id).href()
    )
}

/// Says that there is nothing to show where a wheel was looked for.
pub fn no_wheel() -> Piece {
    sheet!("<p class=warning>No wheel is described here. What was said of one is kept.</p>")
}

/// A wheel that is described. Where its standing leads to the decision, the decision itself does not.
fn one_wheel(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let leads = !onward::is_to_be_decided(workshop(), looking, (id, position));
    sheet!(
        "{}{}<div class=wheel-and-list><div class=page-part>{}\
         <p class=dim>Seen from the face, clockwise from the mark. A broken line: not looked at. Hatched: found.</p>\
         {}{}</div>{}</div>{}",
        decided::decided_cards(id, position, looking, leads),
        standing::standing_card(id, position, looking),
        wheel_drawing(id, position, looking, &Drawn::default()),
        findings::findings(looking),
        asks::asks(id, position, looking),
        part_list(id, position, looking),
        asks::missing_list(looking)
    )
}
