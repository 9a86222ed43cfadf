//! What is in dispute about one vehicle, and the settling of it.

use cartside_core::daybook::{EntryId, Thread, VehicleView};
use cartside_core::survey::Slot;
use cartside_core::wheel::Part;
use cartside_core::words::{self, SideWords, Style};
use leptos::prelude::*;

use crate::correction::Correction;
use crate::correction_key::correction_key;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// What is in dispute about one vehicle.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=disputes><h1>In dispute</h1>\
        <a class=\"key key-plain\" href={}>To the vehicle</a>{}</main>",
        Route::Vehicle(id).href(),
        live(move || disputes(shop)),
    )
}

fn disputes(shop: Workshop) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let disputes: Vec<Piece> = vehicle
        .disputes()
        .into_iter()
        .filter_map(|thread| dispute(shop, &vehicle, thread, style))
        .collect();
    if disputes.is_empty() {
        return sheet!("<p>Nothing is in dispute about this vehicle.</p>");
    }
    disputes.into()
}

fn dispute(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    thread: &Thread<'_>,
    style: Style,
) -> Option<Piece> {
    let first = thread.heads().first()?;
    let words = words::dispute::dispute(thread, wording::wheel_of(vehicle, first), style)?;
    let before = words
        .settled_before
        .map(|said| sheet!("<p class=warning data-settled-before>{}</p>", said));
    let sides = words.sides.into_iter().map(|said| {
        let mut heads = thread.heads().iter();
        let sayable = heads.any(|head| head.id == said.entry && head.is_read());
        side(shop, said, sayable)
    });
    let anew = anew(vehicle, thread);
    Some(sheet!(
        "<section class=card data-dispute={}><h2>{}</h2><p>{}</p>{}<ul class=list>{}</ul>{}\
        <p class=dim>{} {}</p></section>",
        first.slot.clone(),
        words.heading,
        words.explanation,
        before,
        sides.collect::<Vec<Piece>>(),
        anew.map(|href| sheet!("<a class=key href={}>Look again and answer anew</a>", href)),
        words.meanwhile,
        words.remedy,
    ))
}

/// One side. Only what this version can read it can say again.
fn side(shop: Workshop, side: SideWords, sayable: bool) -> Piece {
    let device: String = side.device.chars().take(8).collect();
    let settle = if sayable {
        correction_key(shop, side.entry, Correction::Hold)
    } else {
        sheet!("<p class=dim>A newer Cartside wrote this side; settle for it there.</p>")
    };
    sheet!(
        "<li class=item data-side={}><p><span class=strong>{}</span><br/>\
        <span class=dim>{}, {}, device {}</span></p>{}</li>",
        side.entry.hex(),
        side.says,
        side.by,
        side.when,
        device,
        settle,
    )
}

/// Where it is answered anew, if it is about a reading: only the latest examination is still being written.
fn anew(vehicle: &VehicleView<'_, '_>, thread: &Thread<'_>) -> Option<String> {
    let first = thread.heads().first()?;
    let slot = Slot::from_code(&first.slot)?;
    let latest = vehicle.visits().last()?.id;
    let visit = vehicle.visit_thread(latest)?;
    let Part::At(position, place) = slot.part() else {
        return None;
    };
    let ask = Route::Ask(vehicle.id(), position, slot.question, Some(place));
    visit.has(first.visit?).then(|| ask.href())
}
