//! What is in dispute about one vehicle, and the settling of it.

use cartside_core::daybook::{EntryId, Thread, VehicleView};
use cartside_core::survey::Slot;
use cartside_core::wheel::Part;
use cartside_core::words::{self, SideWords, Style};
use leptos::prelude::*;

use crate::component::plain::link;
use crate::correction::Correction;
use crate::correction_key::correction_key;
use crate::markup::{Piece, Tag, nothing, tag};
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// What is in dispute about one vehicle.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    tag("main")
        .class("page")
        .set("data-page", "disputes")
        .put(tag("h1").put("In dispute"))
        .put(link(Route::Vehicle(id).href(), "To the vehicle").class("key-plain"))
        .live(move || disputes(shop))
        .into()
}

fn disputes(shop: Workshop) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let disputes: Vec<Tag> = vehicle
        .disputes()
        .into_iter()
        .filter_map(|thread| dispute(shop, &vehicle, thread, style))
        .collect();
    if disputes.is_empty() {
        let none = "Nothing is in dispute about this vehicle.";
        return tag("p").put(none).into();
    }
    disputes.into()
}

fn dispute(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    thread: &Thread<'_>,
    style: Style,
) -> Option<Tag> {
    let first = thread.heads().first()?;
    let words = words::dispute::dispute(thread, wording::wheel_of(vehicle, first), style)?;
    let before = words.settled_before.map(|said| {
        tag("p")
            .class("warning")
            .set("data-settled-before", "")
            .put(said)
    });
    let sides = words.sides.into_iter().map(|said| {
        let mut heads = thread.heads().iter();
        let sayable = heads.any(|head| head.id == said.entry && head.is_read());
        side(shop, said, sayable)
    });
    let anew = anew(vehicle, thread);
    let section = tag("section")
        .class("card")
        .set("data-dispute", first.slot.clone())
        .put(tag("h2").put(words.heading))
        .put(tag("p").put(words.explanation))
        .put(before)
        .put(tag("ul").class("list").each(sides))
        .put(anew.map(|href| link(href, "Look again and answer anew")));
    let remedy = format!("{} {}", words.meanwhile, words.remedy);
    Some(section.put(tag("p").class("dim").put(remedy)))
}

/// One side. Only what this version can read it can say again.
fn side(shop: Workshop, side: SideWords, sayable: bool) -> Tag {
    let device: String = side.device.chars().take(8).collect();
    let hand = format!("{}, {}, device {device}", side.by, side.when);
    let settle = if sayable {
        correction_key(shop, side.entry, Correction::Hold)
    } else {
        tag("p")
            .class("dim")
            .put("A newer Cartside wrote this side; settle for it there.")
    };
    tag("li")
        .class("item")
        .set("data-side", side.entry.hex())
        .put(
            tag("p")
                .put(tag("span").class("strong").put(side.says))
                .put(tag("br"))
                .put(tag("span").class("dim").put(hand)),
        )
        .put(settle)
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
