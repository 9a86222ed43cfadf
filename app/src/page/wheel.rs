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
use crate::component::side_view::side_view;
use crate::component::turned::Turned;
use crate::component::wheel_drawing::{Drawn, wheel_drawing};
use crate::looking::Looking;
use crate::markup::{Piece, live, sheet, tap};
use crate::page::ask::onward;
use crate::route::Route;
use crate::workshop::workshop;

/// One wheel: its drawing, its list, its findings.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    let looking = Looking::follow(shop, position);
    sheet!(
        "<main class=page data-page=wheel><h1 class=capital>{}</h1>{}{}</main>",
        words::place::wheel_at(position),
        live(move || match looking.get() {
            Some(looking) => one_wheel(id, position, &looking),
            None => sheet!("{}{}", no_wheel(), elsewhere(id, position)),
        }),
        live(move || looking
            .get()
            .map(|looking| standing::way_on(id, position, &looking)))
    )
}

/// The ways to the wheel's other pages; beside what is long, so that nobody has to go past it to reach them.
fn elsewhere(id: EntryId, position: Position) -> Piece {
    sheet!(
        "<div class=choices><a class=key href={}>How it is built</a><a class=key href={}>Remarks and pictures</a>\
         <a class=key data-key=work href={}>Work done</a><a class=key data-key=tyring href={}>Tyring</a>\
         <a class=\"key key-plain rest\" href={}>To the vehicle</a></div>",
        Route::Build(id, position).href(),
        Route::Part(id, Part::At(position, Place::Whole)).href(),
        Route::Work(id, position).href(),
        Route::Tyring(id, position).href(),
        Route::Vehicle(id).href()
    )
}

/// The wheel as it stands, from its face and from its side, with the keys that turn the drawing.
fn the_wheel(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let turned = expect_context::<Turned>();
    let at = (id, position);
    let spokes = looking.wheel.felloes.spokes();
    let spoke = turned.spoke(at);
    let drawn = Drawn {
        top: turned.top(at, &looking.wheel),
        ..Drawn::default()
    };
    let on = spoke.map_or(1, |spoke| looking.wheel.next_spoke(spoke));
    let back = match spoke {
        None | Some(0 | 1) => spokes,
        Some(spoke) => spoke - 1,
    };
    let at_the_top = match spoke {
        Some(spoke) => format!("Spoke {spoke} at the top"),
        None => "The mark at the top".to_owned(),
    };
    sheet!(
        "<figure class=face><div class=turning>{}\
         <button type=button class=\"key key-plain\" data-key=turn-on aria-label=\"The next spoke to the top\" on:click={}>↺</button>\
         <button type=button class=\"key key-plain\" data-key=turn-back aria-label=\"The spoke before to the top\" on:click={}>↻</button></div>\
         <figcaption class=dim><span aria-live=polite>{}</span>. Seen from the face, clockwise from the mark. A broken line: not looked at. Hatched: found. \
         Gaps and play are drawn ten times as wide as they are.</figcaption></figure>{}",
        wheel_drawing(id, position, looking, &drawn),
        tap(move || turned.set(at, Some(on))),
        tap(move || turned.set(at, Some(back))),
        at_the_top,
        side_view(looking, workshop().style())
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
        "<div class=wheel-and-list><div class=page-part>{}{}</div><div class=page-part>{}{}{}{}</div>\
         <div class=page-part>{}{}</div></div>",
        the_wheel(id, position, looking),
        elsewhere(id, position),
        decided::decided_cards(id, position, looking, leads),
        standing::standing_card(looking),
        findings::findings(looking),
        asks::asks(id, position, looking),
        part_list(id, position, looking),
        asks::missing_list(looking)
    )
}
