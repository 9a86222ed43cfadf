//! Carry the book out as a file.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::carrying::{self, Carried};
use crate::exchange::{Shared, Way};
use crate::markup::{Hole, Piece, live, nothing, sheet, tap};
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

type MakingSignal = RwSignal<Making, LocalStorage>;

/// Carry the book out as a file.
pub fn page() -> Piece {
    let shop = workshop();
    let making: MakingSignal = RwSignal::new_local(Making::Idle);
    let last = RwSignal::new(None::<String>);
    Effect::new(move |_| {
        // Carried out once more, the notice changes, and with it what is remembered.
        shop.notice.track();
        spawn_local(async move { drop(last.try_set(carrying::last(shop).await)) });
    });
    live(move || {
        let book = match shop.which.get() {
            Which::Own => own_book(shop, making, last.get()),
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

/// What is made of one's own book; `last` is when it was last carried out.
fn own_book(shop: Workshop, making: MakingSignal, last: Option<String>) -> Piece {
    let told = last.as_deref().map_or_else(
        || "It was never carried out from this device.".to_owned(),
        |at| format!("Last carried out from this device: {}.", moment(at)),
    );
    let (busy, words, made) = match making.get() {
        Making::Idle => (false, "Make the file", nothing()),
        Making::Busy => (true, "Making the file…", nothing()),
        Making::Made(carried) => (false, "Make the file", made_file(shop, carried)),
        Making::Refused(sentence) => (
            false,
            "Make the file",
            sheet!("<p class=refusal role=alert data-refused>{}</p>", sentence),
        ),
    };
    sheet!(
        "<p>The whole book goes into one file: every entry, every picture, and the readings once more \
        as a table. Keep it as a second copy, or bring it in on another device.</p>\
        <p class=dim data-last={}>{}</p>\
        <button type=button class=\"key key-main\" disabled={} on:click={}>{}</button>{}",
        last.unwrap_or_default(),
        told,
        Hole::Flag(busy),
        tap(move || spawn_local(make(shop, making))),
        words,
        made,
    )
}

async fn make(shop: Workshop, making: MakingSignal) {
    making.try_set(Making::Busy);
    let made = carrying::gather(shop).await;
    making.try_set(match made {
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
        Ok(Shared::Taken) => remembered(shop, &parcel.name()).await,
        Ok(Shared::Dismissed) => Notice::Quiet,
        Err(error) => Notice::Trouble(error.to_string()),
    };
    shop.notice.set(notice);
}

async fn remembered(shop: Workshop, name: &str) -> Notice {
    match carrying::remember(shop).await {
        Ok(()) => Notice::Saved(format!("the book went out as {name}")),
        Err(sentence) => Notice::Trouble(sentence),
    }
}
