//! Carry the book out as a file: the whole of it, one vehicle, or what is new for another device.

use std::rc::Rc;

use cartside_core::daybook::{Digest, EntryId};
use cartside_core::words::term;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::carrying::{self, Carried, Met, What};
use crate::exchange::{Shared, Way};
use crate::markup::{Hole, Piece, heard, live, nothing, sheet, tap, typed};
use crate::progress::{Progress, STOPPED};
use crate::storage::Which;
use crate::wording::{counted, moment, size};
use crate::workshop::{Notice, Workshop, workshop};

/// How far the making of the file is.
#[derive(Clone)]
enum Making {
    Idle,
    Busy,
    Made(Rc<Carried>),
    Refused(String),
}

/// What stands on the page.
#[derive(Clone, Copy)]
struct Asked {
    shop: Workshop,
    /// What goes out, as the field has it.
    what: RwSignal<String>,
    making: RwSignal<Making, LocalStorage>,
    progress: Progress,
    /// When the whole book was last carried out.
    last: RwSignal<Option<String>>,
    /// The devices that were met.
    met: RwSignal<Vec<Met>>,
}

/// Carry the book out as a file; `vehicle` is the one that is chosen at first.
pub fn page(vehicle: Option<EntryId>) -> Piece {
    let shop = workshop();
    let asked = Asked {
        shop,
        what: RwSignal::new(written(&vehicle.map_or(What::Book, What::Vehicle))),
        making: RwSignal::new_local(Making::Idle),
        progress: Progress::new(),
        last: RwSignal::new(None),
        met: RwSignal::new(Vec::new()),
    };
    Effect::new(move |_| {
        // Carried out once more, the notice changes, and with it what is remembered.
        shop.notice.track();
        spawn_local(async move {
            asked.last.try_set(carrying::last(shop).await);
            asked
                .met
                .try_set(carrying::met(shop).await.unwrap_or_default());
        });
    });
    live(move || {
        let book = match shop.which.get() {
            Which::Own => own_book(asked),
            Which::Demonstration => sheet!(
                "<p class=refusal data-refused>{}</p>",
                carrying::DEMONSTRATION,
            ),
        };
        sheet!(
            "<main class=page data-page=carry-out><h1>Carry out</h1>{}</main>",
            book,
        )
    })
}

/// What is made of one's own book.
fn own_book(asked: Asked) -> Piece {
    sheet!(
        "{}{}{}",
        live(
            move || match asked.making.with(|now| matches!(now, Making::Busy)) {
                true => nothing(),
                false => choice(asked),
            }
        ),
        live(move || explained(asked)),
        live(move || made(asked)),
    )
}

/// The field in which it is chosen what goes out.
fn choice(asked: Asked) -> Piece {
    let what = asked.what.get();
    let vehicles = asked.shop.list.get();
    let style = asked.shop.style();
    let vehicles = vehicles.iter().map(|summary| {
        let kind = summary.kind.map(|kind| term::vehicle_kind(kind, style));
        let name = match summary.name.as_str() {
            "" => kind.unwrap_or("a vehicle").to_owned(),
            name => name.to_owned(),
        };
        option(What::Vehicle(summary.vehicle), name, &what)
    });
    let met = asked.met.get();
    let devices = met
        .iter()
        .map(|met| option(What::NewFor(met.device.clone()), named(met), &what));
    sheet!(
        "<label class=field>What shall go into the file?<select data-what on:change={}>{}{}{}</select></label>",
        heard(move |event| {
            asked.what.set(typed(&event));
            asked.making.set(Making::Idle);
        }),
        option(What::Book, "The whole book".to_owned(), &what),
        group("One vehicle", vehicles.collect()),
        group("What is new for another device", devices.collect()),
    )
}

fn group(label: &'static str, options: Vec<Piece>) -> Option<Piece> {
    (!options.is_empty()).then(|| sheet!("<optgroup label={}>{}</optgroup>", label, options))
}

fn option(what: What, words: String, chosen: &str) -> Piece {
    let what = written(&what);
    let flag = Hole::Flag(what == chosen);
    sheet!(
        "<option value={} selected={}>{}</option>",
        what,
        flag,
        words
    )
}

/// `A. Wright, device 0f1e2d3c, last met 2026-11-25`.
fn named(met: &Met) -> String {
    let short: String = met.device.chars().take(8).collect();
    let who = if met.who.is_empty() {
        "Somebody"
    } else {
        &met.who
    };
    format!("{who}, device {short}, file of {}", met.day)
}

fn written(what: &What) -> String {
    match what {
        What::Book => String::new(),
        What::Vehicle(id) => format!("vehicle/{id}"),
        What::NewFor(device) => format!("device/{device}"),
    }
}

fn read(written: &str) -> What {
    let vehicle = written.strip_prefix("vehicle/").and_then(Digest::from_hex);
    match (vehicle, written.strip_prefix("device/")) {
        (Some(id), _) => What::Vehicle(id),
        (None, Some(device)) => What::NewFor(device.to_owned()),
        (None, None) => What::Book,
    }
}

/// What goes into the file, and what does not.
fn explained(asked: Asked) -> Piece {
    match read(&asked.what.get()) {
        What::Book => {
            let last = asked.last.get();
            let told = last.as_deref().map_or_else(
                || "It was never carried out from this device.".to_owned(),
                |at| format!("Last carried out from this device: {}.", moment(at)),
            );
            sheet!(
                "<p>The whole book goes into one file: every entry, every picture, and the readings once more \
                as a table. Keep it as a second copy, or bring it in on another device.</p>\
                <p class=dim data-last={}>{}</p>",
                last.unwrap_or_default(),
                told,
            )
        }
        What::Vehicle(_) => sheet!(
            "<p>Everything written about this vehicle goes into one file, with its pictures. \
            The limits your shop has set stay here.</p>"
        ),
        What::NewFor(_) => sheet!(
            "<p>All that has come into this book since that device was last known to have everything goes into one \
            file. If the last file never got there, carry out the whole book instead.</p>"
        ),
    }
}

/// The key that makes the file, how far it is, and the file.
fn made(asked: Asked) -> Piece {
    let key = sheet!(
        "<button type=button class=\"key key-main\" on:click={}>Make the file</button>",
        tap(move || spawn_local(make(asked))),
    );
    let said = match asked.making.get() {
        Making::Busy => return asked.progress.shown(),
        Making::Idle => nothing(),
        Making::Made(carried) => made_file(asked.shop, carried),
        Making::Refused(sentence) if sentence == STOPPED => {
            sheet!("<p role=status data-stopped>{}</p>", STOPPED)
        }
        Making::Refused(sentence) => {
            sheet!("<p class=refusal role=alert data-refused>{}</p>", sentence)
        }
    };
    sheet!("{}{}", key, said)
}

async fn make(asked: Asked) {
    asked.making.try_set(Making::Busy);
    let what = read(&asked.what.get_untracked());
    let made = carrying::gather(asked.shop, what, asked.progress).await;
    asked.making.try_set(match made {
        Ok(carried) => Making::Made(Rc::new(carried)),
        Err(sentence) => Making::Refused(sentence),
    });
}

/// The file that is ready, and the fresh key that lets it out: a device's own choice of where to send it opens only
/// straight from a tap.
fn made_file(shop: Workshop, carried: Rc<Carried>) -> Piece {
    let name = carried.parcel.name();
    let left_out = (carried.left_out > 0).then(|| {
        sheet!(
            "<p class=warning data-warning>{} could not be read and cannot be in it. All the rest is.</p>",
            counted(carried.left_out, "stored record", "stored records"),
        )
    });
    sheet!(
        "<section class=card><h2>{}</h2><p>{} and {}, {}.</p>{}\
        <button type=button class=\"key key-main\" data-file={} on:click={}>Carry it out</button></section>",
        name.clone(),
        counted(carried.entries, "entry", "entries"),
        counted(carried.pictures, "picture", "pictures"),
        size(carried.parcel.size() as f64),
        left_out,
        name,
        tap(move || spawn_local(let_out(shop, Rc::clone(&carried)))),
    )
}

async fn let_out(shop: Workshop, carried: Rc<Carried>) {
    let parcel = &carried.parcel;
    let out = match parcel.way() {
        Way::Download => parcel.download().map(|()| Shared::Taken),
        Way::Share => parcel.share().await,
    };
    let notice = match out {
        Ok(Shared::Taken) => remembered(shop, &carried).await,
        Ok(Shared::Dismissed) => Notice::Quiet,
        Err(error) => Notice::Trouble(error.to_string()),
    };
    shop.notice.set(notice);
}

async fn remembered(shop: Workshop, carried: &Carried) -> Notice {
    let name = carried.parcel.name();
    let what = match carried.what {
        What::Book => "the book",
        What::Vehicle(_) => "the vehicle",
        What::NewFor(_) => "what is new",
    };
    match carrying::remember(shop, carried).await {
        Ok(()) => Notice::Saved(format!("{what} went out as {name}")),
        Err(sentence) => Notice::Trouble(sentence),
    }
}
