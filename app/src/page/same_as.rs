//! Two descriptions of one vehicle, made on two devices say: to show them as one, and to take that back.

use cartside_core::daybook::{Entry, EntryId, SameAs, Says, Unwritten};
use cartside_core::paper::summary::Summary;
use leptos::prelude::*;

use crate::correction::Correction;
use crate::correction_key::correction_key;
use crate::markup::{Piece, live, nothing, sheet, tap};
use crate::page::book::titles;
use crate::route::Route;
use crate::wording::{self, hand};
use crate::workshop::{Workshop, workshop};

/// Which other vehicle of the book it is the same as.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=same-as><h1>In the book twice?</h1>\
         <p>A vehicle that was begun on two devices stands in the book twice. Say which the other one is: both are \
         then shown as one, and where they differ you are asked what holds. Nothing is lost, and it can be taken \
         back.</p><a class=\"key key-plain\" href={}>To the vehicle</a>{}{}</main>",
        Route::Vehicle(id).href(),
        live(move || joined(shop)),
        live(move || others(shop, id))
    )
}

/// What the vehicle in hand is said to be the same as, with the key that takes it back.
fn joined(shop: Workshop) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let called = |id: EntryId| {
        let begun = opened.book.entry(id);
        let words = |entry: &Entry| {
            let said = wording::says(&vehicle, entry, shop.style());
            format!("{said} ({})", hand(entry))
        };
        begun.map_or_else(|| "a vehicle that is not here".to_owned(), words)
    };
    let mut rows: Vec<Piece> = Vec::new();
    for thread in view.same_as() {
        if let Some(entry) = thread.counts().first()
            && let Says::SameAs(same) = entry.says
            && view.joined().stands_for(same.both()[0]) == opened.vehicle
        {
            let [one, other] = same.both().map(called);
            rows.push(sheet!(
                "<li class=item data-same-as={}><p>{}</p><p>{}</p>{}</li>",
                entry.slot.clone(),
                one,
                other,
                correction_key(shop, entry.id, Correction::StrikeOut)
            ));
        }
    }
    if rows.is_empty() {
        return nothing();
    }
    sheet!(
        "<section class=card><h2>Shown as one</h2><ul class=list>{}</ul></section>",
        rows
    )
}

/// The other vehicles of the book, each with the key that says it is the same.
fn others(shop: Workshop, id: EntryId) -> Piece {
    let own = shop.stands_for(id);
    let row = |summary: &Summary| {
        let other = summary.vehicle;
        let (name, under) = titles(summary, shop);
        let same = SameAs::new(own, other).filter(|_| other != own)?;
        let what = name.clone();
        Some(sheet!(
            "<li class=item><p><span class=strong>{}</span><br/><span class=dim>{}</span></p>\
             <button type=button class=key data-same={} on:click={}>The same vehicle</button></li>",
            name,
            under,
            other.hex(),
            tap(move || say(shop, same, &what))
        ))
    };
    let rows: Vec<Piece> = shop.list.with(|list| list.iter().filter_map(row).collect());
    if rows.is_empty() {
        return sheet!("<p class=dim>There is no other vehicle in the book.</p>");
    }
    sheet!("<ul class=list>{}</ul>", rows)
}

fn say(shop: Workshop, same: SameAs, what: &str) {
    if let Some(entry) = Unwritten::new(None, Says::SameAs(same)) {
        let replaced = shop.house.with_untracked(|house| {
            // Said once before and struck out, it is said in the place of that.
            let view = house.book.view();
            let mut threads = view.same_as();
            let before = threads.find(|thread| {
                thread
                    .entries()
                    .iter()
                    .any(|entry| entry.slot == same.slot())
            });
            before.map(|thread| thread.to_replace()).unwrap_or_default()
        });
        // If it is not stored, the page is as it was.
        shop.write_then(
            &entry.replacing(replaced),
            format!("one vehicle with {what}"),
            |_| {},
        );
    }
}
