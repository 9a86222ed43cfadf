//! Everything written about one vehicle, the newest first, and what is odd about it.

use cartside_core::daybook::{Entry, EntryId, Kind, Problem, Says, Thread, VehicleView, View};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::correction_key::{correction_key, settle_key, strong, told};
use crate::fate::Fate;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording::{self, counted};
use crate::workshop::{Opened, Workshop, workshop};

/// Everything written about one vehicle.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    live(move || all(shop, id))
}

fn all(shop: Workshop, id: EntryId) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let mut entries: Vec<(&Thread<'_>, &Entry)> = Vec::new();
    for thread in view.threads() {
        entries.extend(thread.entries().iter().map(|entry| (thread, *entry)));
    }
    entries.sort_by_key(|(_, entry)| std::cmp::Reverse((entry.n, entry.id)));
    let count = counted(entries.len(), "entry", "entries");
    let items = entries
        .into_iter()
        .map(|(thread, entry)| item(shop, &vehicle, thread, entry, style))
        .collect::<Vec<Piece>>();
    sheet!(
        "<main class=page data-page=entries><h1>Everything written</h1>\
        <a class=\"key key-plain\" href={}>To the vehicle</a>\
        <p class=dim>{}, the newest first. Nothing is ever rubbed out.</p>\
        {}<ul class=list>{}</ul></main>",
        Route::Vehicle(id).href(),
        count,
        oddities(&opened, &view, style),
        items,
    )
}

fn item(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    thread: &Thread<'_>,
    entry: &Entry,
    style: Style,
) -> Piece {
    let fate = Fate::of(thread, entry);
    let hidden = entry.kind != Kind::Vehicle && vehicle.hidden(entry);
    let newer = entry.says == Says::Unread || entry.unread_fields > 0;
    let aside = sheet!(
        "{}{}",
        hidden.then_some(match entry.kind {
            Kind::Marks => " hidden: its picture, vehicle or examination is struck out or erased",
            _ => " hidden: its vehicle or examination is struck out",
        }),
        newer.then_some(" written by a newer Cartside"),
    );
    let says = wording::heading(vehicle, entry, style);
    let hand = format!("{}, no. {}", wording::hand(entry), entry.n);
    // No key that would have nothing to do.
    let correct = fate
        .correction()
        .filter(|correction| correction.of(entry.id, thread).is_some());
    sheet!(
        "<li class=item data-entry={} data-fate={}>{}{}{}</li>",
        entry.id.hex(),
        fate.code(),
        told(says, strong(fate), fate, aside, hand),
        correct.map(|how| correction_key(shop, entry.id, how)),
        settle_key(fate, vehicle.id()),
    )
}

/// What is odd about what is written, each with the word that stands for it in the state of the page.
fn oddities(opened: &Opened, view: &View<'_>, style: Style) -> Vec<Piece> {
    let odd = |code: &'static str, said: String, more: &'static str| {
        sheet!("<p class=warning data-oddity={}>{}{}</p>", code, said, more)
    };
    let mut oddities = Vec::new();
    if opened.unreadable > 0 {
        oddities.push(odd(
            "unreadable",
            counted(opened.unreadable, "stored line", "stored lines"),
            " of this vehicle cannot be read and are left as they are.",
        ));
    }
    let newer = view.written_by_newer();
    if newer > 0 {
        oddities.push(odd(
            "newer",
            counted(newer, "entry", "entries"),
            " written by a newer Cartside: kept whole, and read as far as this one can.",
        ));
    }
    let earlier: usize = view.threads().map(|thread| thread.not_here().len()).sum();
    if earlier > 0 {
        oddities.push(odd(
            "not-here",
            counted(earlier, "earlier entry", "earlier entries"),
            " that later ones replace: not on this device. The later ones count all the same.",
        ));
    }
    for problem in view.problems() {
        if !matches!(problem, Problem::EarlierNotHere { .. }) {
            let said = words::problem::problem(problem, &opened.book, style);
            oddities.push(odd("problem", said, ""));
        }
    }
    oddities
}
