//! What is kept on this device, how surely, and what of it is nowhere else.

use cartside_core::daybook::Says;
use cartside_core::paper::line;
use cartside_core::paper::summary::Summary;
use cartside_core::words::within;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::reminder::{age, only};
use crate::markup::{Piece, live, sheet, tap};
use crate::only_here::{self, OnlyHere};
use crate::page::book::titles;
use crate::route::Route;
use crate::storage::{Promised, Room, ask_to_keep, is_kept, room};
use crate::wording::{counted, size};
use crate::workshop::{Notice, Step, Workshop, sentence, workshop};

/// One vehicle's share of the room.
#[derive(Clone)]
struct Share {
    vehicle: Summary,
    /// Bytes of its lines.
    lines: u64,
    pictures: usize,
    /// Bytes of its pictures, thumbnails left out.
    bytes: u64,
}

/// What is kept on this device, and what of it is nowhere else.
pub fn page() -> Piece {
    let shop = workshop();
    let promised = RwSignal::new(None);
    let room_said = RwSignal::new(String::new());
    let found = RwSignal::new(None::<OnlyHere>);
    let shares = RwSignal::new(Vec::<Share>::new());
    Effect::new(move |_| {
        shop.notice.track();
        spawn_local(async move {
            // A page that is gone shows no answer.
            let _ = found.try_set(only_here::look(shop).await.ok());
        });
    });
    spawn_local(async move {
        let _ = promised.try_set(Some(is_kept().await));
        let _ = room_said.try_set(room().await.map(estimate).unwrap_or_default());
        match measured(shop).await {
            Ok(all) => drop(shares.try_set(all)),
            Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
        }
    });
    sheet!(
        "<main class=page data-page=kept><h1>What is kept</h1>{}{}{}</main>",
        live(move || nowhere_else(found.get())),
        live(move || keeping(shop, promised, room_said.get())),
        live(move || shared(shop, &shares.get()))
    )
}

/// What is on this device alone, and the way to have it elsewhere too.
fn nowhere_else(found: Option<OnlyHere>) -> Piece {
    let found = found.unwrap_or_default();
    sheet!(
        "<section class=card data-only-here={} data-only-here-pictures={}><h2>Only here</h2><p>{}</p><p>{}</p>\
         <a class=\"key key-main\" href=#/carry-out>Carry out</a></section>",
        found.entries.to_string(),
        found.pictures.to_string(),
        only(&found),
        age(&found)
    )
}

/// Whether the browser promised to keep the book, whether it is kept twice, and how much room there is.
fn keeping(shop: Workshop, promised: RwSignal<Option<Promised>>, room: String) -> Piece {
    let now = promised.get();
    let code = match now {
        None => "unasked",
        Some(Promised::Yes) => "yes",
        Some(Promised::No) => "no",
        Some(Promised::Unknown) => "unknown",
    };
    let ask = (now == Some(Promised::No)).then(|| {
        sheet!(
            "<button type=button class=key on:click={}>Ask the browser to keep it</button>",
            tap(move || {
                spawn_local(async move {
                    let _ = promised.try_set(Some(ask_to_keep().await));
                });
            })
        )
    });
    let twice = shop.store().is_ok_and(|store| store.second().is_some());
    sheet!(
        "<section class=card data-promised={} data-twice={}><h2>Keeping the book</h2><p>{}</p>{}<p>{}</p>\
         <p class=dim>{}</p></section>",
        code,
        twice.to_string(),
        promise(now),
        ask,
        if twice {
            "The book is kept in two places on this device, since this browser can lose one of them when it is killed."
        } else {
            "The book is kept in one place on this device."
        },
        room
    )
}

fn promise(promised: Option<Promised>) -> &'static str {
    match promised {
        None => "Asking the browser…",
        Some(Promised::Yes) => "The browser has promised to keep the book until you remove it.",
        Some(Promised::No) => {
            "The browser has not promised to keep the book: it may clear it when the device runs short of room, or when Cartside is long unused. Carry the book out now and then."
        }
        Some(Promised::Unknown) => {
            "This browser cannot say whether it keeps the book. Carry the book out now and then."
        }
    }
}

fn estimate(room: Room) -> String {
    format!(
        "Cartside takes about {} on this device; the browser speaks of {} at the most, and promises nothing.",
        size(room.used),
        size(room.allowed)
    )
}

/// How much each vehicle takes, the one that takes most first.
async fn measured(shop: Workshop) -> Step<Vec<Share>> {
    let store = shop.store()?;
    let here = store.picture_digests().await.map_err(sentence)?;
    let mut shares = Vec::new();
    for vehicle in shop.list.get_untracked() {
        let (mut lines, mut bytes, mut digests) = (0, 0, Vec::new());
        for id in shop.ids_of(vehicle.vehicle) {
            for text in store.vehicle_lines(&id.hex()).await.map_err(sentence)? {
                lines += text.len() as u64;
                if within::find(&text, "\"picture\"").is_some()
                    && let Ok(entry) = line::read(&text)
                    && let Says::Picture(picture) = entry.says
                    && here.binary_search(&picture.digest.hex()).is_ok()
                    && !digests.contains(&picture.digest)
                {
                    bytes += u64::from(picture.bytes);
                    digests.push(picture.digest);
                }
            }
        }
        shares.push(Share {
            vehicle,
            lines,
            // Each stands there once.
            pictures: digests.len(),
            bytes,
        });
    }
    shares.sort_by_key(|share| std::cmp::Reverse(share.lines + share.bytes));
    Ok(shares)
}

fn shared(shop: Workshop, shares: &[Share]) -> Option<Piece> {
    let row = |share: &Share| {
        let (name, _) = titles(&share.vehicle, shop);
        sheet!(
            "<li><a class=item href={} data-share={}><span class=strong>{}</span><span>{}</span>\
             <span class=whole-row>{}, {}</span></a></li>",
            Route::Vehicle(share.vehicle.vehicle).href(),
            (share.lines + share.bytes).to_string(),
            name,
            size((share.lines + share.bytes) as f64),
            counted(share.vehicle.entries, "entry", "entries"),
            counted(share.pictures, "picture", "pictures")
        )
    };
    let rows: Vec<Piece> = shares.iter().map(row).collect();
    (!rows.is_empty()).then(|| {
        sheet!(
            "<section class=stack><h2>Room each vehicle takes</h2><ul class=list>{}</ul></section>",
            rows
        )
    })
}
