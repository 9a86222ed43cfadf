//! The picture beside an earlier one of the same part: that of the last visit, or another that is chosen.

use cartside_core::daybook::{Digest, Entry, VehicleView};
use cartside_core::words::{self, capital};
use leptos::prelude::*;

use super::{entry, pictures};
use crate::album::{Album, Shown};
use crate::markup::{Piece, live, nothing, sheet, tap};
use crate::workshop::Workshop;

/// Both pictures, each with its day and its marks, and the others to choose from.
pub(super) fn compare(shop: Workshop, picture: Digest, album: Album) -> Piece {
    let chosen = RwSignal::new_local(None::<Digest>);
    live(move || {
        let Some(opened) = shop.opened.get() else {
            return nothing();
        };
        let view = opened.book.view();
        let vehicle = view.vehicle(opened.vehicle);
        let Some((now, _)) = entry(&vehicle, picture) else {
            return nothing();
        };
        let erased = view.erased();
        let mut others = others(&vehicle, now);
        others.retain(|other| other.pictured().is_some_and(|it| !erased.contains(&it)));
        let beside = beside(&others, now, chosen.get());
        let figure = |of: &Entry, what: &str| {
            Some(album.figure(Shown {
                digest: of.pictured()?,
                words: format!("{what}, {}", words::when::moment(&of.at)),
                marks: vehicle.marks(of.pictured()?),
                erased: of.pictured().is_some_and(|it| erased.contains(&it)),
            }))
        };
        let both = match beside {
            Some(other) => sheet!(
                "<div class=compared>{}{}</div>",
                figure(other, &capital(which(other, now, &others))),
                figure(now, "This picture")
            ),
            None => sheet!("<p>There is no picture of this part from an earlier visit.</p>"),
        };
        let keys = others.iter().rev().map(|other| {
            let held = beside.is_some_and(|it| it.id == other.id);
            key(chosen, other, which(other, now, &others), held)
        });
        let keys: Vec<Piece> = keys.collect();
        let choose = (!keys.is_empty()).then(|| {
            sheet!(
                "<h3>Hold another picture beside it</h3><div class=stack>{}</div>",
                keys
            )
        });
        sheet!(
            "<section class=card data-compare={}><h2>Compare</h2>{}{}</section>",
            beside.and_then(Entry::pictured).map(|it| it.hex()),
            both,
            choose
        )
    })
}

/// The other pictures of the same part, the earliest first.
fn others<'a>(vehicle: &VehicleView<'_, 'a>, now: &Entry) -> Vec<&'a Entry> {
    let all = pictures(vehicle).into_iter().map(|(entry, _)| entry);
    let same = |it: &&Entry| it.slot == now.slot && it.pictured() != now.pictured();
    let mut others: Vec<&Entry> = all.filter(same).collect();
    others.sort_by_key(|other| order(other));
    others
}

/// By day as it was claimed, then as it was written.
fn order(entry: &Entry) -> (u32, (u64, Digest)) {
    (entry.at.day_count(), entry.order())
}

/// The picture that is held beside it: the one chosen, else the last visit's.
fn beside<'a>(others: &[&'a Entry], now: &Entry, chosen: Option<Digest>) -> Option<&'a Entry> {
    let all = || others.iter().rev().copied();
    match chosen {
        Some(_) => all().find(|other| other.pictured() == chosen),
        None => all().find(|other| earlier_visit(other, now)),
    }
}

fn earlier_visit(other: &Entry, now: &Entry) -> bool {
    other.visit != now.visit && order(other) < order(now)
}

/// Which picture it is, seen from this one.
fn which(other: &Entry, now: &Entry, others: &[&Entry]) -> &'static str {
    let last = others.iter().rev().find(|it| earlier_visit(it, now));
    if other.visit == now.visit {
        "the same visit"
    } else if last.is_some_and(|last| last.visit == other.visit) {
        "the last visit"
    } else if order(other) < order(now) {
        "an earlier visit"
    } else {
        "a later visit"
    }
}

fn key(
    chosen: RwSignal<Option<Digest>, LocalStorage>,
    other: &Entry,
    which: &'static str,
    held: bool,
) -> Piece {
    let digest = other.pictured();
    sheet!(
        "<button type=button class=key data-beside={} aria-pressed={} on:click={}>{}, {}</button>",
        digest.map(|it| it.hex()),
        if held { "true" } else { "false" },
        tap(move || chosen.set(digest)),
        capital(which),
        words::when::moment(&other.at)
    )
}
