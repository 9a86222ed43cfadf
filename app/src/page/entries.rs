//! Everything written about one vehicle, the newest first, and what is odd about it.

use cartside_core::daybook::{Entry, EntryId, Kind, Problem, Says, Thread, VehicleView, View};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::plain::link;
use crate::correction_key::{correction_key, told};
use crate::fate::Fate;
use crate::markup::{Piece, Tag, live, nothing, tag};
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
        .map(|(thread, entry)| item(shop, &vehicle, thread, entry, style));
    tag("main")
        .class("page")
        .set("data-page", "entries")
        .put(tag("h1").put("Everything written"))
        .put(link(Route::Vehicle(id).href(), "To the vehicle").class("key-plain"))
        .put(tag("p").class("dim").put(format!(
            "{count}, the newest first. Nothing is ever rubbed out."
        )))
        .put(oddities(&opened, &view, style))
        .put(tag("ul").class("list").each(items))
        .into()
}

fn item(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    thread: &Thread<'_>,
    entry: &Entry,
    style: Style,
) -> Tag {
    let fate = Fate::of(thread, entry);
    let hidden = entry.kind != Kind::Vehicle && vehicle.hidden(entry);
    let newer = entry.says == Says::Unread || entry.unread_fields > 0;
    let aside = vec![
        hidden.then_some(" hidden: its vehicle or examination is struck out"),
        newer.then_some(" written by a newer Cartside"),
    ];
    let says = tag("span")
        .class("strong")
        .put(wording::heading(vehicle, entry, style));
    let hand = format!("{}, no. {}", wording::hand(entry), entry.n);
    // No key that would have nothing to do.
    let correct = fate
        .correction()
        .filter(|correction| correction.of(entry.id, thread).is_some());
    let settle = fate == Fate::Disputed;
    tag("li")
        .class("item")
        .set("data-entry", entry.id.hex())
        .set("data-fate", fate.code())
        .put(told(says, fate, aside, hand))
        .put(correct.map(|how| correction_key(shop, entry.id, how)))
        .put(settle.then(|| link(Route::Disputes(vehicle.id()).href(), "Settle the dispute")))
}

/// What is odd about what is written, each with the word that stands for it in the state of the page.
fn oddities(opened: &Opened, view: &View<'_>, style: Style) -> Vec<Tag> {
    let odd = |code, said: String| tag("p").class("warning").set("data-oddity", code).put(said);
    let mut oddities = Vec::new();
    if opened.unreadable > 0 {
        let lines = counted(opened.unreadable, "stored line", "stored lines");
        oddities.push(odd(
            "unreadable",
            format!("{lines} of this vehicle cannot be read and are left as they are."),
        ));
    }
    let newer = view.written_by_newer();
    if newer > 0 {
        let entries = counted(newer, "entry", "entries");
        oddities.push(odd(
            "newer",
            format!("{entries} written by a newer Cartside: kept whole, and read as far as this one can."),
        ));
    }
    let earlier: usize = view.threads().map(|thread| thread.not_here().len()).sum();
    if earlier > 0 {
        let entries = counted(earlier, "earlier entry", "earlier entries");
        oddities.push(odd(
            "not-here",
            format!("{entries} that later ones replace: not on this device. The later ones count all the same."),
        ));
    }
    for problem in view.problems() {
        if !matches!(problem, Problem::EarlierNotHere { .. }) {
            let said = words::problem::problem(problem, &opened.book, style);
            oddities.push(odd("problem", said));
        }
    }
    oddities
}
