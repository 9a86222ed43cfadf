//! The day book: every vehicle, the latest first.

use cartside_core::daybook::Stamp;
use cartside_core::paper::summary::Summary;
use cartside_core::words;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::mark::StandingMark;
use crate::demonstration;
use crate::route::Route;
use crate::storage::Which;
use crate::wording::counted;
use crate::workshop::{Workshop, workshop};

/// The day book: every vehicle, the latest first.
#[component]
pub fn BookPage() -> impl IntoView {
    let shop = workshop();
    let empty = move || shop.list.with(Vec::is_empty);
    let rows = move || {
        shop.list
            .get()
            .into_iter()
            .map(|summary| one_vehicle(&summary, shop))
            .collect_view()
    };
    view! {
        <main class="page" data-page="book">
            <h1>"Day book"</h1>
            <a class="key key-main" href=Route::Begin.href()>"Begin a vehicle"</a>
            <Show when=move || !empty() fallback=Empty>
                <ul class="list">{rows}</ul>
            </Show>
            <div class="choices">
                <a class="key" href=Route::CarryOut.href()>"Carry out"</a>
                <a class="key" href=Route::BringIn.href()>"Bring in"</a>
                <a class="key" href=Route::Preferences.href()>"Preferences"</a>
                <Show when=move || shop.which.get() == Which::Own>
                    <button type="button" class="key" on:click=move |_| spawn_local(demonstration::enter(shop))>
                        "Open the demonstration"
                    </button>
                </Show>
            </div>
        </main>
    }
}

/// How to begin, in an empty book.
#[component]
fn Empty() -> impl IntoView {
    view! {
        <section class="card">
            <h2>"Nothing is written yet"</h2>
            <p>"Four taps begin a vehicle: its kind, which wheels, how many spokes, how many felloes. All else is asked when it is needed, and everything can be left open."</p>
            <p>"To try it first, open the demonstration: a book of its own, with an invented cart in it."</p>
        </section>
    }
}

fn one_vehicle(summary: &Summary, shop: Workshop) -> impl IntoView + use<> {
    let (name, under) = titles(summary, shop);
    let standing = summary.standing;
    view! {
        <li>
            <a class="item" href=Route::Vehicle(summary.vehicle).href() data-vehicle=summary.vehicle.hex() data-standing=standing.map(|standing| standing.code())>
                <span class="whole-row">
                    <span class="strong capital" class:struck=summary.struck>{name}</span>
                    <span class="dim">{under}</span>
                </span>
                {standing.map(|standing| view! { <StandingMark standing /> })}
            </a>
        </li>
    }
}

/// The name, or the kind where there is none; and what else is known in a line.
fn titles(summary: &Summary, shop: Workshop) -> (String, String) {
    let kind = summary
        .kind
        .map(|kind| words::term::vehicle_kind(kind, shop.style()).to_owned());
    let kind = kind.unwrap_or_else(|| "a vehicle not described here".to_owned());
    let named = !summary.name.is_empty();
    let name = if named {
        summary.name.clone()
    } else {
        kind.clone()
    };
    let parts = [
        named.then_some(kind),
        summary.struck.then(|| "struck out".to_owned()),
        Some(counted(summary.wheels, "wheel", "wheels")),
        Some(day(&summary.last_day)),
        (summary.disputes > 0).then(|| format!("{} in dispute", summary.disputes)),
    ];
    (
        name,
        parts.into_iter().flatten().collect::<Vec<_>>().join(" · "),
    )
}

/// A day as it is shown; one of another form as it stands.
fn day(claimed: &str) -> String {
    let stamp = Stamp::read(&format!("{claimed}T00:00:00+00:00"));
    stamp.map_or_else(|| claimed.to_owned(), |stamp| words::when::day(&stamp))
}
