//! One part: its readings, remarks and pictures.

mod pictures;
mod readings;
mod remarks;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::Part;
use cartside_core::words;
use leptos::prelude::*;

use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};
use pictures::Pictures;
use readings::Readings;
use remarks::Remarks;

/// One part: its readings, remarks and pictures.
#[component]
pub fn PartPage(
    /// The vehicle.
    id: EntryId,
    /// The part of it.
    of: Part,
) -> impl IntoView {
    let shop = workshop();
    let name = Memo::new(move |_| name(shop, of));
    let gone = Memo::new(move |_| gone(shop, of));
    let (back, whole) = match of.position() {
        Some(position) => (Route::Wheel(id, position).href(), "To the wheel"),
        None => (Route::Vehicle(id).href(), "To the vehicle"),
    };
    view! {
        <main class="page" data-page="part">
            <h1>{name}</h1>
            <a class="key key-plain" href=back>{whole}</a>
            <Show when=move || gone.get()>
                <p class="warning">
                    "The wheel, as it is described now, has no such part. What was said of it is kept."
                </p>
            </Show>
            {matches!(of, Part::At(..)).then(|| view! { <Readings id of /> })}
            <Remarks id of />
            <Pictures id of />
        </main>
    }
}

fn name(shop: Workshop, of: Part) -> String {
    let Some(opened) = shop.opened.get() else {
        return String::new();
    };
    let view = opened.book.view();
    let wheel = wording::wheel_at(&view.vehicle(opened.vehicle), of);
    let name = words::place::part(of, wheel, shop.style());
    capital(&name)
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

fn gone(shop: Workshop, of: Part) -> bool {
    let Some(opened) = shop.opened.get() else {
        return false;
    };
    let view = opened.book.view();
    let wheel = wording::wheel_at(&view.vehicle(opened.vehicle), of);
    match (of, wheel) {
        (Part::At(_, place), Some(wheel)) => !wheel.has(place),
        (Part::At(..), None) => true,
        (Part::Vehicle, _) => false,
    }
}
