//! One vehicle: its wheels, its examinations, what was said of it.

mod name;
mod wheels;

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::wheel::{Part, Vehicle};
use cartside_core::words::{self, caution};
use leptos::prelude::*;

use crate::component::examination::BeginKey;
use crate::route::Route;
use crate::workshop::{Workshop, workshop};
use name::NameField;
use wheels::Wheels;

/// One vehicle: its wheels, its examinations, what was said of it.
#[component]
pub fn VehiclePage(
    /// The vehicle.
    id: EntryId,
) -> impl IntoView {
    let shop = workshop();
    let described = Memo::new(move |_| of(shop, |vehicle| vehicle.described().cloned()));
    let heading = move || heading(described.get().as_ref(), shop);
    view! {
        <main class="page" data-page="vehicle">
            <h1 class="capital">{heading}</h1>
            <Oddities id />
            <Wheels id />
            <div class="row">
                <a class="key" href=Route::Part(id, Part::Vehicle).href()>"Remarks and pictures"</a>
                <a class="key" href=Route::Entries(id).href()>"Everything written"</a>
            </div>
            <NameField id described />
            <Examinations id />
            <Card card=caution::before_lifting() />
            <Card card=caution::never_at_the_cart(shop.style()) />
            <Card card=caution::no_permission() />
        </main>
    }
}

/// Something of the vehicle in hand; `None` while none is. Whoever reads it reads it again after each step.
fn of<T>(shop: Workshop, take: impl FnOnce(&VehicleView<'_, '_>) -> Option<T>) -> Option<T> {
    let opened = shop.opened.get()?;
    let view = opened.book.view();
    take(&view.vehicle(opened.vehicle))
}

fn heading(described: Option<&Vehicle>, shop: Workshop) -> String {
    match described {
        Some(vehicle) if vehicle.name.is_empty() => {
            words::term::vehicle_kind(vehicle.kind, shop.style()).to_owned()
        }
        Some(vehicle) => vehicle.name.clone(),
        None => "A vehicle without its beginning".to_owned(),
    }
}

/// What is out of the ordinary: nothing here, struck out, in dispute.
#[component]
fn Oddities(id: EntryId) -> impl IntoView {
    let shop = workshop();
    let count = Memo::new(move |_| of(shop, |vehicle| Some(vehicle.count())).unwrap_or_default());
    let struck = Memo::new(move |_| of(shop, |vehicle| Some(vehicle.struck())).unwrap_or_default());
    let disputes =
        Memo::new(move |_| of(shop, |vehicle| Some(vehicle.disputes().len())).unwrap_or_default());
    view! {
        <Show when=move || count.get() == 0>
            <p class="warning">"Nothing about this vehicle is in the book on this device."</p>
        </Show>
        <Show when=move || struck.get()>
            <p class="warning">"This vehicle is struck out. It can be brought back from everything written."</p>
        </Show>
        <Show when=move || { disputes.get() > 0 }>
            <a class="key" data-disputes=move || disputes.get() href=Route::Disputes(id).href()>
                "In dispute: "{disputes}" – settle"
            </a>
        </Show>
    }
}

/// The examinations, the latest first, and the key that begins one.
#[component]
fn Examinations(id: EntryId) -> impl IntoView {
    let shop = workshop();
    let visits = Memo::new(move |_| of(shop, |vehicle| Some(visits(vehicle))).unwrap_or_default());
    let rows = move || {
        visits
            .get()
            .into_iter()
            .map(|(entry, said)| view! { <li class="item" data-visit=entry.hex()>{said}</li> })
            .collect_view()
    };
    view! {
        <section class="stack">
            <h2>"Examinations"</h2>
            <ul class="list">{rows}</ul>
            <BeginKey id main=false />
        </section>
    }
}

fn visits(vehicle: &VehicleView<'_, '_>) -> Vec<(EntryId, String)> {
    let visits = vehicle.visits();
    let said = |entry: &cartside_core::daybook::Entry| {
        let readings = vehicle.readings(entry.id).len();
        let readings = crate::wording::counted(readings, "reading", "readings");
        format!(
            "{}, {}: {readings}",
            words::when::day(&entry.at),
            words::when::by(entry)
        )
    };
    visits
        .into_iter()
        .rev()
        .map(|entry| (entry.id, said(entry)))
        .collect()
}

/// A card of cautions, folded.
#[component]
fn Card(card: caution::Card) -> impl IntoView {
    view! {
        <details class="fold">
            <summary>{card.heading}</summary>
            <ol class="cautions">{card.lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ol>
        </details>
    }
}
