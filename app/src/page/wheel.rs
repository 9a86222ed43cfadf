//! One wheel: its standing, its drawing with the list beside it, what was found, what is still to be asked.

mod asks;
mod findings;
mod standing;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::part_list::part_list;
use crate::component::plain::{link, page_of};
use crate::component::wheel_drawing::wheel_drawing;
use crate::looking::Looking;
use crate::markup::{Piece, Tag, tag};
use crate::route::Route;
use crate::workshop::workshop;

/// One wheel: its drawing, its list, its findings.
pub fn page(id: EntryId, position: Position) -> Tag {
    let shop = workshop();
    let looking = Memo::new(move |_| Looking::at(shop, position));
    let whole = Part::At(position, Place::Whole);
    page_of("wheel")
        .put(
            tag("h1")
                .class("capital")
                .put(words::place::wheel_at(position)),
        )
        .live(move || match looking.get() {
            Some(looking) => one_wheel(id, position, &looking),
            None => no_wheel().into(),
        })
        .put(
            tag("div")
                .class("row")
                .put(link(Route::Build(id, position).href(), "How it is built"))
                .put(link(Route::Part(id, whole).href(), "Remarks and pictures"))
                .put(link(Route::Vehicle(id).href(), "To the vehicle").class("key-plain")),
        )
}

/// Says that there is nothing to show where a wheel was looked for.
pub fn no_wheel() -> Tag {
    tag("p")
        .class("warning")
        .put("No wheel is described here. What was said of one is kept.")
}

/// A wheel that is described.
fn one_wheel(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let seen = "Seen from the face, clockwise from the mark. A broken line: not looked at. Hatched: found.";
    let part = tag("div")
        .class("page-part")
        .put(wheel_drawing(id, position, looking))
        .put(tag("p").class("dim").put(seen))
        .put(findings::findings(looking))
        .put(asks::asks(id, position, looking));
    let both = tag("div")
        .class("wheel-and-list")
        .put(part)
        .put(part_list(id, position, looking));
    Piece::Several(vec![
        standing::standing_card(id, position, looking).into(),
        both.into(),
        asks::missing_list(looking).into(),
    ])
}
