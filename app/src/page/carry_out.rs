//! Carry the book out as a file.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::carrying::{self, Carried};
use crate::component::plain::{key, refusal};
use crate::exchange::{Shared, Way};
use crate::markup::{Piece, Tag, live, nothing, tag};
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
        let page = tag("main")
            .class("page")
            .set("data-page", "carry-out")
            .put(tag("h1").put("Carry out"));
        match shop.which.get() {
            Which::Own => page.each(own_book(shop, making, last.get())),
            Which::Demonstration => page.put(
                tag("p")
                    .class("refusal")
                    .set("data-refused", "")
                    .put(carrying::DEMONSTRATION),
            ),
        }
    })
}

/// What is made of one's own book; `last` is when it was last carried out.
fn own_book(shop: Workshop, making: MakingSignal, last: Option<String>) -> [Piece; 4] {
    let made = making.get();
    let busy = matches!(made, Making::Busy);
    let told = match &last {
        Some(at) => format!("Last carried out from this device: {}.", moment(at)),
        None => "It was never carried out from this device.".to_owned(),
    };
    let words = if busy {
        "Making the file…"
    } else {
        "Make the file"
    };
    [
        tag("p")
            .put("The whole book goes into one file: every entry, every picture, and the readings once more as a table. Keep it as a second copy, or bring it in on another device.")
            .into(),
        tag("p")
            .class("dim")
            .set("data-last", last.unwrap_or_default())
            .put(told)
            .into(),
        key(words)
            .class("key-main")
            .flag("disabled", busy)
            .tap(move || spawn_local(make(shop, making)))
            .into(),
        match made {
            Making::Idle | Making::Busy => nothing(),
            Making::Made(carried) => made_file(shop, carried).into(),
            Making::Refused(sentence) => refusal(sentence).set("data-refused", "").into(),
        },
    ]
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
fn made_file(shop: Workshop, carried: Rc<Carried>) -> Tag {
    let name = carried.parcel.name();
    let left_out = (carried.left_out > 0).then(|| {
        let left = counted(carried.left_out, "stored record", "stored records");
        tag("p")
            .class("warning")
            .set("data-warning", "")
            .put(format!(
                "{left} could not be read and cannot be in it. All the rest is."
            ))
    });
    tag("section")
        .class("card")
        .put(tag("h2").put(name.clone()))
        .put(tag("p").put(holds(&carried)))
        .put(left_out)
        .put(
            key("Carry it out")
                .class("key-main")
                .set("data-file", name)
                .tap(move || spawn_local(let_out(shop, Rc::clone(&carried)))),
        )
}

/// What the file holds, and its size.
fn holds(carried: &Carried) -> String {
    format!(
        "{} and {}, {}.",
        counted(carried.entries, "entry", "entries"),
        counted(carried.pictures, "picture", "pictures"),
        size(carried.parcel.size() as f64)
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
