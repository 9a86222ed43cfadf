//! One vehicle: its wheels, its examinations, what was said of it.

mod name;
mod wheels;

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::wheel::{Part, Vehicle};
use cartside_core::words::{self, caution};
use leptos::prelude::Get;

use crate::component::examination::begin_key;
use crate::component::plain::{link, page_of};
use crate::markup::{Piece, Tag, tag};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// One vehicle: its wheels, its examinations, what was said of it.
pub fn page(id: EntryId) -> Tag {
    let shop = workshop();
    let heading = move || {
        let described = of(shop, |vehicle| vehicle.described().cloned());
        tag("h1").class("capital").put(heading(described, shop))
    };
    let style = shop.style();
    page_of("vehicle")
        .live(heading)
        .live(move || of(shop, |vehicle| Some(oddities(id, vehicle))))
        .live(move || {
            of(shop, |vehicle| {
                Some(wheels::wheels(id, vehicle, &shop.limits()))
            })
        })
        .put(
            tag("div")
                .class("row")
                .put(link(
                    Route::Part(id, Part::Vehicle).href(),
                    "Remarks and pictures",
                ))
                .put(link(Route::Entries(id).href(), "Everything written")),
        )
        .put(name::name_field(id))
        .live(move || of(shop, |vehicle| Some(examinations(id, vehicle))))
        .put(card(caution::before_lifting()))
        .put(card(caution::never_at_the_cart(style)))
        .put(card(caution::no_permission()))
}

/// Something of the vehicle in hand; `None` while none is. Whoever reads it reads it again after each step.
fn of<T>(shop: Workshop, take: impl FnOnce(&VehicleView<'_, '_>) -> Option<T>) -> Option<T> {
    let opened = shop.opened.get()?;
    let view = opened.book.view();
    take(&view.vehicle(opened.vehicle))
}

fn heading(described: Option<Vehicle>, shop: Workshop) -> String {
    match described {
        Some(vehicle) if vehicle.name.is_empty() => {
            words::term::vehicle_kind(vehicle.kind, shop.style()).to_owned()
        }
        Some(vehicle) => vehicle.name,
        None => "A vehicle without its beginning".to_owned(),
    }
}

/// What is out of the ordinary: nothing here, struck out, in dispute.
fn oddities(id: EntryId, vehicle: &VehicleView<'_, '_>) -> Piece {
    let warning = |said: &'static str| tag("p").class("warning").put(said);
    let nothing = vehicle.count() == 0;
    let disputes = vehicle.disputes().len();
    let settle = (disputes > 0).then(|| {
        link(
            Route::Disputes(id).href(),
            format!("In dispute: {disputes} – settle"),
        )
        .set("data-disputes", disputes.to_string())
    });
    Piece::Several(vec![
        nothing
            .then(|| warning("Nothing about this vehicle is in the book on this device."))
            .into(),
        vehicle
            .struck()
            .then(|| {
                warning(
                    "This vehicle is struck out. It can be brought back from everything written.",
                )
            })
            .into(),
        settle.into(),
    ])
}

/// The examinations, the latest first, and the key that begins one.
fn examinations(id: EntryId, vehicle: &VehicleView<'_, '_>) -> Tag {
    let visits = vehicle.visits();
    let rows = visits.into_iter().rev().map(|entry| {
        let readings = vehicle.readings(entry.id).len();
        let readings = crate::wording::counted(readings, "reading", "readings");
        let (day, by) = (words::when::day(&entry.at), words::when::by(entry));
        tag("li")
            .class("item")
            .set("data-visit", entry.id.hex())
            .put(format!("{day}, {by}: {readings}"))
    });
    tag("section")
        .class("stack")
        .put(tag("h2").put("Examinations"))
        .put(tag("ul").class("list").each(rows))
        .put(begin_key(id, false))
}

/// A card of cautions, folded.
fn card(card: caution::Card) -> Tag {
    let lines = card.lines.into_iter().map(|line| tag("li").put(line));
    tag("details")
        .class("fold")
        .put(tag("summary").put(card.heading))
        .put(tag("ol").class("cautions").each(lines))
}
