//! The report of an examination, the latest in one of its cuts, as it is printed; and the handing over of it.

mod hand_over;
mod paper;
mod printing;

use cartside_core::daybook::{EntryId, Says};
use cartside_core::words::report::{Cut, report};
use cartside_core::words::{self, capital};
use leptos::prelude::Get;

use crate::album::Album;
use crate::component::examination::begin_key;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// The report of the latest examination in this cut.
pub fn page(id: EntryId, cut: Cut) -> Piece {
    let shop = workshop();
    let album = Album::new(shop);
    sheet!(
        "<main class=page data-page=report data-cut={}>{}{}{}</main>",
        cut.code(),
        keys(id, cut, album),
        live(move || shown(shop, id, cut, album)),
        hand_over::hand_over(shop, id, cut)
    )
}

/// The keys of the three cuts, and the one that prints; not printed themselves.
fn keys(id: EntryId, cut: Cut, album: Album) -> Piece {
    let cuts = Cut::ALL.map(|it| {
        let class = if it == cut { "key chosen" } else { "key" };
        let here = (it == cut).then_some("page");
        sheet!(
            "<a class={} href={} aria-current={}>{}</a>",
            class,
            Route::Report(id, it).href(),
            here,
            capital(it.name())
        )
    });
    sheet!(
        "<nav class=\"stack unprinted\" aria-label=Report><div class=choices>{}\
         <a class=\"key key-plain\" href={}>To the vehicle</a></div>{}</nav>",
        Vec::from(cuts),
        Route::Vehicle(id).href(),
        live(move || printing::print_key(album.fetching()))
    )
}

fn shown(shop: Workshop, id: EntryId, cut: Cut, album: Album) -> Piece {
    made(shop, None, cut, album).unwrap_or_else(|| sheet!(
        "<h1>Report</h1><p class=warning>No examination of this vehicle has been begun, so there is nothing to report.</p>{}",
        begin_key(id, "key key-main")
    ))
}

/// The report of this examination, or of the latest; `None` if there is none.
fn made(shop: Workshop, visit: Option<EntryId>, cut: Cut, album: Album) -> Option<Piece> {
    let Some(opened) = shop.opened.get() else {
        return Some(nothing());
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let latest = vehicle.visits().last()?.id;
    let visit = visit.unwrap_or(latest);
    let document = report(cut, &vehicle, visit, &shop.limits(), shop.style())?;
    Some(sheet!(
        "{}{}",
        (visit != latest).then(|| sheet!("<p class=warning data-earlier>{}</p>", EARLIER)),
        paper::paper(shop, &vehicle, &view.erased(), document, album)
    ))
}

const EARLIER: &str = "An earlier examination, worked out today from what was written then and corrected since: by the limits of \
    today, on the wheels as they are described today. A report that was handed over then is kept as it was, below the report.";

/// The full report of one examination.
pub fn earlier(id: EntryId, visit: EntryId) -> Piece {
    let shop = workshop();
    let album = Album::new(shop);
    sheet!(
        "<main class=page data-page=earlier><nav class=\"stack unprinted\">{}<a class=\"key key-plain\" href={}>To the vehicle</a></nav>{}</main>",
        live(move || printing::print_key(album.fetching())),
        Route::Vehicle(id).href(),
        live(move || {
            made(shop, Some(visit), Cut::Full, album).unwrap_or_else(|| sheet!(
            "<h1>Report</h1><p class=warning>This examination is not in the book on this device, or it is struck out.</p>"
        ))
        })
    )
}

/// A report as it was handed over, from its kept text.
pub fn told(id: EntryId, entry: EntryId) -> Piece {
    let shop = workshop();
    let kept = move || {
        let opened = shop.opened.get()?;
        let entry = opened.book.entry(entry)?.clone();
        let Says::Report(said) = &entry.says else {
            return None;
        };
        Some(sheet!(
            "<p class=unprinted>{}. {}; worked out by Cartside {}.</p><pre class=\"paper kept\" data-kept={}>{}</pre>",
            capital(&words::outcome::report(said)),
            capital(&crate::wording::hand(&entry)),
            said.core.clone(),
            entry.id.hex(),
            said.text.clone()
        ))
    };
    sheet!(
        "<main class=page data-page=told><h1 class=unprinted>As it was handed over</h1>\
         <nav class=\"stack unprinted\">{}<a class=\"key key-plain\" href={}>To the report</a></nav>{}</main>",
        printing::print_key(0),
        Route::Report(id, Cut::Owner).href(),
        live(move || kept().unwrap_or_else(|| sheet!(
            "<p class=warning>This report is not in the book on this device.</p>"
        )))
    )
}
