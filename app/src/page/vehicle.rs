//! One vehicle: its wheels, its examinations, what was said of it.

mod examination;
mod name;
mod wheels;

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::wheel::{Part, Vehicle};
use cartside_core::words::report::Cut;
use cartside_core::words::{self, caution};
use leptos::prelude::Get;

use crate::component::caution_card::folded_card;
use crate::component::examination::begin_key;
use crate::component::terms::terms;
use crate::markup::{Piece, live, sheet};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// One vehicle: its wheels, its examinations, what was said of it.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    let style = shop.style();
    sheet!(
        "<main class=page data-page=vehicle>{}<div class=choices>\
         <a class=key href={}>Remarks and pictures</a><a class=key href={}>Everything written</a>\
         <a class=key href={}>Report</a><a class=key href={}>Carry out this vehicle</a>\
         <a class=key href={} data-key=same-as>In the book twice?</a></div>\
         {}{}{}{}</main>",
        live(move || of(shop, |vehicle| Some(above(id, vehicle, shop)))),
        Route::Part(id, Part::Vehicle).href(),
        Route::Entries(id).href(),
        Route::Report(id, Cut::Owner).href(),
        Route::CarryOut(Some(id)).href(),
        Route::SameAs(id).href(),
        name::name_field(id),
        folded_card(caution::before_lifting()),
        folded_card(caution::never_at_the_cart(style)),
        folded_card(caution::no_permission())
    )
}

/// What it is called, what is out of the ordinary, its wheels and its examinations: one view of the book for all of it,
/// since of an old vehicle it takes long to make.
fn above(id: EntryId, vehicle: &VehicleView<'_, '_>, shop: Workshop) -> Piece {
    sheet!(
        "<h1 class=capital>{}</h1>{}{}{}{}",
        heading(vehicle.described(), shop),
        oddities(id, vehicle),
        wheels::wheels(id, vehicle, shop),
        explained(vehicle, shop),
        examinations(id, vehicle)
    )
}

/// What kind of vehicle it is and where its wheels stand, explained.
fn explained(vehicle: &VehicleView<'_, '_>, shop: Workshop) -> Option<Piece> {
    let style = shop.style();
    let kind = vehicle
        .described()
        .map(|vehicle| words::term::vehicle_kind(vehicle.kind, style));
    let wheels = vehicle
        .wheels()
        .into_iter()
        .map(|(at, _)| words::place::wheel_at(at));
    let texts: Vec<String> = wheels.chain(kind.map(str::to_owned)).collect();
    terms(&[&texts.join(" / ")], style)
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
fn oddities(id: EntryId, vehicle: &VehicleView<'_, '_>) -> Piece {
    let (nothing, disputes) = (vehicle.count() == 0, vehicle.disputes().len());
    let warning = |so: bool, said| so.then(|| sheet!("<p class=warning>{}</p>", said));
    let settle = (disputes > 0).then(|| {
        sheet!(
            "<a class=key href={} data-disputes={}>In dispute: {} – settle</a>",
            Route::Disputes(id).href(),
            disputes.to_string(),
            disputes.to_string()
        )
    });
    sheet!(
        "{}{}{}",
        warning(
            nothing,
            "Nothing about this vehicle is in the book on this device."
        ),
        warning(
            vehicle.struck(),
            "This vehicle is struck out. It can be brought back from everything written."
        ),
        settle
    )
}

/// The examinations, the latest first, and the key that begins one.
fn examinations(id: EntryId, vehicle: &VehicleView<'_, '_>) -> Piece {
    let visits = vehicle.visits();
    let since_last = (visits.len() > 1).then(|| {
        let href = Route::Changes(id).href();
        sheet!(
            "<a class=key href={} data-changes>Since last time</a>",
            href
        )
    });
    let rows = visits.into_iter().rev().map(|entry| {
        let readings = vehicle.readings(entry.id).len();
        sheet!(
            "<li><a class=item data-visit={} href={}><span>{}, {}: {}</span></a></li>",
            entry.id.hex(),
            Route::Earlier(id, entry.id).href(),
            words::when::day(&entry.at),
            words::when::by(entry),
            crate::wording::counted(readings, "reading", "readings")
        )
    });
    sheet!(
        "<section class=stack><h2>Examinations</h2>{}<ul class=list>{}</ul>{}{}</section>",
        examination::latest(id, vehicle),
        rows.collect::<Vec<Piece>>(),
        since_last,
        begin_key(id, "key")
    )
}
