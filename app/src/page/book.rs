//! The day book: every vehicle, the latest first.

use cartside_core::daybook::Stamp;
use cartside_core::paper::summary::Summary;
use cartside_core::words;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::mark::standing_mark;
use crate::component::plain::{key, link};
use crate::demonstration;
use crate::markup::{Piece, Tag, live, tag};
use crate::route::Route;
use crate::storage::Which;
use crate::wording::counted;
use crate::workshop::{Workshop, workshop};

/// The day book: every vehicle, the latest first.
pub fn page() -> Piece {
    let shop = workshop();
    live(move || {
        let own = shop.which.get() == Which::Own;
        let demonstration = own.then(|| {
            key("Open the demonstration").tap(move || spawn_local(demonstration::enter(shop)))
        });
        tag("main")
            .class("page")
            .set("data-page", "book")
            .put(tag("h1").put("Day book"))
            .put(link(Route::Begin.href(), "Begin a vehicle").class("key-main"))
            .put(shop.list.with(|list| vehicles(list, shop)))
            .put(
                tag("div")
                    .class("choices")
                    .put(link(Route::CarryOut.href(), "Carry out"))
                    .put(link(Route::BringIn.href(), "Bring in"))
                    .put(link(Route::Preferences.href(), "Preferences"))
                    .put(demonstration),
            )
    })
}

fn vehicles(list: &[Summary], shop: Workshop) -> Tag {
    if list.is_empty() {
        return empty();
    }
    let rows = list.iter().map(|summary| one_vehicle(summary, shop));
    tag("ul").class("list").each(rows)
}

/// How to begin, in an empty book.
fn empty() -> Tag {
    let taps = "Four taps begin a vehicle: its kind, which wheels, how many spokes, how many felloes. All else is asked when it is needed, and everything can be left open.";
    let trial =
        "To try it first, open the demonstration: a book of its own, with an invented cart in it.";
    tag("section")
        .class("card")
        .put(tag("h2").put("Nothing is written yet"))
        .put(tag("p").put(taps))
        .put(tag("p").put(trial))
}

fn one_vehicle(summary: &Summary, shop: Workshop) -> Tag {
    let (name, under) = titles(summary, shop);
    let name = tag("span")
        .class("strong capital")
        .class_if(summary.struck, "struck")
        .put(name);
    let under = tag("span").class("dim").put(under);
    let mut item = tag("a")
        .class("item")
        .set("href", Route::Vehicle(summary.vehicle).href())
        .set("data-vehicle", summary.vehicle.hex())
        .put(tag("span").class("whole-row").put(name).put(under));
    if let Some(standing) = summary.standing {
        item = item
            .set("data-standing", standing.code())
            .put(standing_mark(standing));
    }
    tag("li").put(item)
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
