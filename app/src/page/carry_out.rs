//! Carry the book out as a file.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::carrying::{self, Carried};
use crate::exchange::{Shared, Way};
use crate::storage::Which;
use crate::wording::{counted, size};
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
#[component]
pub fn CarryOutPage() -> impl IntoView {
    let shop = workshop();
    view! {
        <main class="page" data-page="carry-out">
            <h1>"Carry out"</h1>
            {move || match shop.which.get() {
                Which::Own => view! { <OwnBook /> }.into_any(),
                Which::Demonstration => {
                    view! { <p class="refusal" data-refused="">{carrying::DEMONSTRATION}</p> }.into_any()
                }
            }}
        </main>
    }
}

#[component]
fn OwnBook() -> impl IntoView {
    let shop = workshop();
    let making: MakingSignal = RwSignal::new_local(Making::Idle);
    let busy = move || making.with(|making| matches!(making, Making::Busy));
    view! {
        <p>
            "The whole book goes into one file: every entry, every picture, and the readings once more as a table. Keep it as a second copy, or bring it in on another device."
        </p>
        <Last />
        <button
            type="button"
            class="key key-main"
            disabled=busy
            on:click=move |_| spawn_local(make(shop, making))
        >
            {move || if busy() { "Making the file…" } else { "Make the file" }}
        </button>
        {move || match making.get() {
            Making::Idle | Making::Busy => ().into_any(),
            Making::Made(carried) => view! { <MadeFile carried /> }.into_any(),
            Making::Refused(sentence) => view! { <p class="refusal" role="alert" data-refused="">{sentence}</p> }.into_any(),
        }}
    }
}

/// When the book was last carried out.
#[component]
fn Last() -> impl IntoView {
    let shop = workshop();
    let last = RwSignal::new(None::<String>);
    Effect::new(move |_| {
        // Carried out once more, the notice changes, and with it what is remembered.
        shop.notice.track();
        spawn_local(async move { drop(last.try_set(carrying::last(shop).await)) });
    });
    view! {
        <p class="dim" data-last=move || last.get().unwrap_or_default()>
            {move || match last.get() {
                Some(at) => format!("Last carried out from this device: {}.", crate::wording::moment(&at)),
                None => "It was never carried out from this device.".to_owned(),
            }}
        </p>
    }
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
#[component]
fn MadeFile(carried: Rc<Carried>) -> impl IntoView {
    let shop = workshop();
    let (name, held) = (carried.parcel.name(), holds(&carried));
    let left_out = carried.left_out;
    let carried = StoredValue::new_local(carried);
    view! {
        <section class="card">
            <h2>{name.clone()}</h2>
            <p>{held}</p>
            {(left_out > 0)
                .then(|| {
                    let left = counted(left_out, "stored record", "stored records");
                    view! { <p class="warning" data-warning="">{left}" could not be read and cannot be in it. All the rest is."</p> }
                })}
            <button
                type="button"
                class="key key-main"
                data-file=name
                on:click=move |_| spawn_local(let_out(shop, carried.get_value()))
            >
                "Carry it out"
            </button>
        </section>
    }
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
