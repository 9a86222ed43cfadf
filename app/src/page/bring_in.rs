//! Bring a file in, after showing what it would add.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

use crate::bringing::{self, Brought, Incoming, Plan};
use crate::storage::Which;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// How far the bringing in is.
#[derive(Clone)]
enum Stage {
    Choose,
    Busy(&'static str),
    Foreseen(Rc<Incoming>, Rc<Plan>),
    Done(Brought),
    Refused(String),
}

type StageSignal = RwSignal<Stage, LocalStorage>;

/// Bring a file in, after showing what it would add.
#[component]
pub fn BringInPage() -> impl IntoView {
    let shop = workshop();
    view! {
        <main class="page" data-page="bring-in">
            <h1>"Bring in"</h1>
            {move || match shop.which.get() {
                Which::Own => view! { <OwnBook /> }.into_any(),
                Which::Demonstration => view! {
                    <p class="refusal" data-refused="">
                        "Nothing can be brought into the demonstration. Go back to your own book first."
                    </p>
                }
                .into_any(),
            }}
        </main>
    }
}

#[component]
fn OwnBook() -> impl IntoView {
    let shop = workshop();
    let stage: StageSignal = RwSignal::new_local(Stage::Choose);
    let chosen = move |input: HtmlInputElement| {
        let file = input.files().and_then(|files| files.get(0));
        // Emptied, so that the same file can be chosen again.
        input.set_value("");
        if let Some(file) = file {
            spawn_local(look(shop, file, stage));
        }
    };
    view! {
        <p>
            "Choose a file that was carried out of Cartside, here or on another device. First you see what it would add; nothing is stored before you say so."
        </p>
        <label class="key key-main">
            "Choose a file"
            <input
                type="file"
                accept=".zip,application/zip"
                on:change:target=move |event| chosen(event.target())
            />
        </label>
        {move || match stage.get() {
            Stage::Choose => ().into_any(),
            Stage::Busy(what) => view! { <p role="status">{what}</p> }.into_any(),
            Stage::Foreseen(incoming, plan) => view! { <Foreseen incoming plan stage /> }.into_any(),
            Stage::Done(brought) => view! { <Done brought /> }.into_any(),
            Stage::Refused(sentence) => view! { <p class="refusal" role="alert" data-refused="">{sentence}</p> }.into_any(),
        }}
    }
}

async fn look(shop: Workshop, file: web_sys::File, stage: StageSignal) {
    stage.try_set(Stage::Busy("Reading the file…"));
    let foreseen = async {
        let incoming = bringing::read(&file).await?;
        let plan = bringing::plan(shop, &incoming).await?;
        Ok((Rc::new(incoming), Rc::new(plan)))
    };
    stage.try_set(match foreseen.await {
        Ok((incoming, plan)) => Stage::Foreseen(incoming, plan),
        Err(sentence) => Stage::Refused(sentence),
    });
}

async fn accept(shop: Workshop, incoming: Rc<Incoming>, stage: StageSignal) {
    stage.try_set(Stage::Busy("Bringing it in…"));
    let brought = bringing::bring_in(shop, &incoming).await;
    stage.try_set(match brought {
        Ok(brought) => Stage::Done(brought),
        Err(sentence) => Stage::Refused(sentence),
    });
}

/// What the file would do, and the key that does it.
#[component]
fn Foreseen(incoming: Rc<Incoming>, plan: Rc<Plan>, stage: StageSignal) -> impl IntoView {
    let shop = workshop();
    let from: String = incoming.device.chars().take(8).collect();
    let made = wording::moment(&incoming.made_at);
    let warnings = incoming.warnings.clone();
    let main = !plan.nothing();
    let incoming = StoredValue::new_local(incoming);
    view! {
        <section
            class="card"
            data-would-add=plan.entries.len()
            data-would-add-pictures=plan.pictures.len()
            data-would-dispute=plan.disputes
        >
            <h2>"What it would add"</h2>
            <p class="dim">"Made "{made}" by device "{from}"."</p>
            <ul class="stack">
                {bringing::foreseen(&plan).into_iter().map(|said| view! { <li>{said}</li> }).collect_view()}
            </ul>
            {warnings
                .into_iter()
                .map(|said| view! { <p class="warning" data-warning="">{said}</p> })
                .collect_view()}
            <button
                type="button"
                class="key"
                class:key-main=main
                on:click=move |_| spawn_local(accept(shop, incoming.get_value(), stage))
            >
                "Bring it in"
            </button>
        </section>
    }
}

/// What the bringing in came to.
#[component]
fn Done(brought: Brought) -> impl IntoView {
    view! {
        <section
            class="card"
            data-added=brought.entries
            data-added-pictures=brought.pictures
            data-renamed=brought.renamed.to_string()
        >
            <h2>"Brought in"</h2>
            {bringing::came_of(brought).into_iter().map(|said| view! { <p>{said}</p> }).collect_view()}
            <a class="key" href="#/">"To the day book"</a>
        </section>
    }
}
