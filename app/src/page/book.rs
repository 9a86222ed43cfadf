//! The day book: every vehicle, the latest first.

use cartside_core::daybook::Stamp;
use cartside_core::diagnosis::Standing;
use cartside_core::paper::summary::Summary;
use cartside_core::words;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::mark::standing_mark;
use crate::demonstration;
use crate::markup::{Piece, live, sheet, tap};
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
            sheet!(
                "<button type=button class=key on:click={}>Open the demonstration</button>",
                tap(move || spawn_local(demonstration::enter(shop)))
            )
        });
        sheet!(
            "<main class=page data-page=book><h1>Day book</h1>\
             <a class=\"key key-main\" href=#/begin>Begin a vehicle</a>{}<div class=choices>\
             <a class=key href=#/carry-out>Carry out</a><a class=key href=#/bring-in>Bring in</a>\
             <a class=key href=#/preferences>Preferences</a>{}</div></main>",
            shop.list.with(|list| vehicles(list, shop)),
            demonstration
        )
    })
}

fn vehicles(list: &[Summary], shop: Workshop) -> Piece {
    if list.is_empty() {
        return sheet!(
            "<section class=card><h2>Nothing is written yet</h2>\
             <p>Four taps begin a vehicle: its kind, which wheels, how many spokes, how many felloes. \
             All else is asked when it is needed, and everything can be left open.</p>\
             <p>To try it first, open the demonstration: a book of its own, with an invented cart in it.</p></section>"
        );
    }
    let rows = list.iter().map(|summary| one_vehicle(summary, shop));
    sheet!("<ul class=list>{}</ul>", rows.collect::<Vec<Piece>>())
}

fn one_vehicle(summary: &Summary, shop: Workshop) -> Piece {
    let (name, under) = titles(summary, shop);
    let classes = if summary.struck {
        "strong capital struck"
    } else {
        "strong capital"
    };
    sheet!(
        "<li><a class=item href={} data-vehicle={} data-standing={}><span class=whole-row>\
         <span class={}>{}</span><span class=dim>{}</span></span>{}</a></li>",
        Route::Vehicle(summary.vehicle).href(),
        summary.vehicle.hex(),
        // A vehicle without a standing is without the attribute too.
        summary.standing.map(Standing::code),
        classes,
        name,
        under,
        summary.standing.map(standing_mark)
    )
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
