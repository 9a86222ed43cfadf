//! Handing a report over: its text is kept as it was told, and can be opened again.

use cartside_core::daybook::report::Report;
use cartside_core::daybook::{EntryId, Kind, Says, Unwritten};
use cartside_core::words::report::{CORE, Cut, kept};
use cartside_core::words::{self, capital};
use leptos::prelude::*;

use crate::markup::{Piece, heard, live, nothing, sheet, tap, typed};
use crate::route::Route;
use crate::wording::hand;
use crate::workshop::{Notice, Step, Workshop};

/// To whom it is handed, the key for it, and what was handed over before.
pub(super) fn hand_over(shop: Workshop, id: EntryId, cut: Cut) -> Piece {
    let to = RwSignal::new(String::new());
    sheet!(
        "<section class=\"card unprinted\"><h2>Hand it over</h2><label class=field>Handed to{}</label>\
         <button type=button class=key data-key=hand-over on:click={}>Handed over</button>\
         <p class=dim>Its text is kept in the book as it stands now. Pictures and drawings are named in it.</p>{}</section>",
        live(move || sheet!(
            "<input type=text autocomplete=off maxlength=200 value={} on:input={}/>",
            to.get(),
            heard(move |event| to.set(typed(&event)))
        )),
        tap(move || {
            if let Err(sentence) = write(shop, id, cut, to) {
                shop.notice.set(Notice::Trouble(sentence));
            }
        }),
        live(move || before(shop, id))
    )
}

fn write(shop: Workshop, id: EntryId, cut: Cut, to: RwSignal<String>) -> Step<()> {
    const GONE: &str = "There is no examination to report. Nothing was handed over.";
    let handed = to.get_untracked().trim().to_owned();
    if handed.is_empty() {
        return Err("Write first to whom it is handed. Nothing was handed over.".to_owned());
    }
    let opened = shop.in_hand().ok_or(GONE)?;
    let view = opened.book.view();
    let vehicle = view.vehicle(id);
    let visit = vehicle.visits().last().ok_or(GONE)?.id;
    let style = shop.preferences.get_untracked().style();
    let said = Report {
        text: kept(cut, &vehicle, visit, &shop.limits(), style)?,
        to: handed,
        core: CORE.to_owned(),
    };
    let what = words::outcome::report(&said);
    let entry = Unwritten::new(Some(id), Says::Report(said)).ok_or(GONE)?;
    shop.write_then(&entry.in_visit(visit), what, move |stored| {
        // If it is not stored, the field is as it was.
        if stored {
            to.try_set(String::new());
        }
    });
    Ok(())
}

/// The reports handed over, the latest first.
fn before(shop: Workshop, id: EntryId) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let threads = view.vehicle(id).threads(&Kind::Report);
    let counts = threads.into_iter().flat_map(|thread| thread.counts());
    let rows = counts.filter_map(|entry| match &entry.says {
        Says::Report(said) => Some(sheet!(
            "<li><a class=item href={} data-handed={}><span class=strong>{}</span>\
             <span class=whole-row>{}</span><span>{}</span></a></li>",
            Route::Told(id, entry.id).href(),
            entry.id.hex(),
            capital(&words::outcome::report(said)),
            said.text.lines().next().unwrap_or_default().to_owned(),
            hand(entry)
        )),
        _ => None,
    });
    let mut rows: Vec<Piece> = rows.collect();
    if rows.is_empty() {
        return nothing();
    }
    rows.reverse();
    sheet!("<h3>Handed over before</h3><ul class=list>{}</ul>", rows)
}
