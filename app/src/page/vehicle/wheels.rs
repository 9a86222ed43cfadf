//! The vehicle's wheels, each with its standing, and the standing of them all.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::{Limit, Standing, examined, lowest};
use cartside_core::wheel::{Position, Vehicle};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::mark::StandingMark;
use crate::looking::Examination;
use crate::route::Route;
use crate::workshop::workshop;

/// The wheels of the vehicle in hand.
#[component]
pub fn Wheels(
    /// The vehicle.
    id: EntryId,
) -> impl IntoView {
    let shop = workshop();
    let limits = shop.limits();
    let lowest = {
        let limits = limits.clone();
        Memo::new(move |_| super::of(shop, |vehicle| lowest(vehicle, &limits)))
    };
    let wheels = Memo::new(move |_| {
        super::of(shop, |vehicle| Some(wheels(vehicle, &limits))).unwrap_or_default()
    });
    let absent =
        Memo::new(move |_| super::of(shop, |vehicle| Some(absent(vehicle))).unwrap_or_default());
    let rows = move || {
        wheels
            .get()
            .into_iter()
            .map(|(position, standing)| one_wheel(id, position, standing))
            .collect_view()
    };
    let more = move || {
        absent
            .get()
            .into_iter()
            .map(|position| one_absent(id, position))
            .collect_view()
    };
    view! {
        <section class="stack">
            <h2>"Wheels"</h2>
            <ul class="list">{rows}</ul>
            <div class="row">{more}</div>
            {move || lowest.get().map(|standing| view! { <p class="row"><span class="strong">"The vehicle:"</span><StandingMark standing /></p> })}
            <p class="dim">{words::standing::vehicle()}</p>
        </section>
    }
}

fn wheels(vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> Vec<(Position, Standing)> {
    let latest = Examination::latest(vehicle);
    let standing = |position| {
        let judged = latest
            .as_ref()
            .and_then(|latest| examined(vehicle, latest.id, position, limits));
        judged.map_or(Standing::NotJudged, |judged| judged.proposed())
    };
    vehicle
        .wheels()
        .into_iter()
        .map(|(position, _)| (position, standing(position)))
        .collect()
}

/// Where a wheel of such a vehicle stands and none is described.
fn absent(vehicle: &VehicleView<'_, '_>) -> Vec<Position> {
    let kind = vehicle.described().map(|Vehicle { kind, .. }| *kind);
    let there = vehicle.wheels();
    let positions = kind.map(|kind| kind.positions()).unwrap_or_default();
    let open = |position: &Position| there.iter().all(|(at, _)| at != position);
    positions.iter().copied().filter(open).collect()
}

fn one_wheel(id: EntryId, position: Position, standing: Standing) -> impl IntoView {
    view! {
        <li>
            <a class="item" href=Route::Wheel(id, position).href() data-wheel=position.code() data-standing=standing.code()>
                <span class="strong capital">{words::place::wheel_at(position)}</span>
                <StandingMark standing />
            </a>
        </li>
    }
}

fn one_absent(id: EntryId, position: Position) -> impl IntoView {
    view! {
        <a class="key" data-describe=position.code() href=Route::Build(id, position).href()>
            "Describe the "{words::place::wheel_at(position)}
        </a>
    }
}
