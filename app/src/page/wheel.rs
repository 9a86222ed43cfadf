//! One wheel: its standing, its drawing with the list beside it, what was found, what is still to be asked.

mod asks;
mod findings;
mod standing;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::part_list::PartList;
use crate::component::wheel_drawing::WheelDrawing;
use crate::looking::Looking;
use crate::route::Route;
use crate::workshop::workshop;
use asks::{Asks, MissingList};
use findings::Findings;
use standing::StandingCard;

/// One wheel: its drawing, its list, its findings.
#[component]
pub fn WheelPage(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
) -> impl IntoView {
    let shop = workshop();
    let looking = Memo::new(move |_| Looking::at(shop, position));
    view! {
        <main class="page" data-page="wheel">
            <h1 class="capital">{words::place::wheel_at(position)}</h1>
            {move || match looking.get() {
                Some(looking) => view! { <OneWheel id position looking /> }.into_any(),
                None => view! { <p class="warning">"No wheel is described here. What was said of one is kept."</p> }.into_any(),
            }}
            <div class="row">
                <a class="key" href=Route::Build(id, position).href()>"How it is built"</a>
                <a class="key" href=Route::Part(id, Part::At(position, Place::Whole)).href()>"Remarks and pictures"</a>
                <a class="key key-plain" href=Route::Vehicle(id).href()>"To the vehicle"</a>
            </div>
        </main>
    }
}

/// A wheel that is described.
#[component]
fn OneWheel(id: EntryId, position: Position, looking: Looking) -> impl IntoView {
    view! {
        <StandingCard id position looking=looking.clone() />
        <div class="wheel-and-list">
            <div class="page-part">
                <WheelDrawing id position looking=looking.clone() />
                <p class="dim">"Seen from the face, clockwise from the mark. A broken line: not looked at. Hatched: found."</p>
                <Findings looking=looking.clone() />
                <Asks id position looking=looking.clone() />
            </div>
            <PartList id position looking=looking.clone() />
        </div>
        <MissingList looking />
    }
}
