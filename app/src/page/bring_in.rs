//! Bring a file in, after showing what it would add.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

use crate::bringing::{self, Brought, Incoming, Plan};
use crate::storage::Which;
use crate::wording::{self, counted};
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
                {sentences(&plan).into_iter().map(|said| view! { <li>{said}</li> }).collect_view()}
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

/// What a plan comes to, matter by matter; what would not happen is left out.
fn sentences(plan: &Plan) -> Vec<String> {
    let some = |count: usize, one: &str, many: &str, what: &str| {
        (count > 0).then(|| format!("{} {what}.", counted(count, one, many)))
    };
    let begun = plan.vehicles.len();
    let names = plan.vehicles.join("; ");
    [
        plan.nothing().then(|| {
            "Everything in this file is here already: bringing it in adds nothing.".to_owned()
        }),
        some(
            plan.entries.len(),
            "new entry",
            "new entries",
            "would be added",
        ),
        some(
            plan.already,
            "of its entries is",
            "of its entries are",
            "here already",
        ),
        (begun > 0).then(|| {
            format!(
                "{}: {names}.",
                counted(begun, "new vehicle", "new vehicles")
            )
        }),
        some(
            plan.pictures.len(),
            "new picture",
            "new pictures",
            "would be added",
        ),
        some(
            plan.kept_out,
            "picture",
            "pictures",
            "would stay out: erased",
        ),
        some(
            plan.erase.len(),
            "picture",
            "pictures",
            "here would go: erased on the other device",
        ),
        some(
            plan.newer,
            "entry",
            "entries",
            "written by a newer Cartside: kept whole, and read as far as this one can",
        ),
        some(
            plan.disputes,
            "dispute",
            "disputes",
            "would arise, where both books say something of the same thing and differ",
        ),
        plan.own_name.then(|| OWN_NAME.to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

const OWN_NAME: &str = "Some entries carry this device's own name and are not in its book: it was restored, or copied \
    from another. It would take a new name, so that the two can be told apart.";

const RENAMED: &str =
    "This device has taken a new name, since entries by its old one came from elsewhere.";

/// What the bringing in came to.
#[component]
fn Done(brought: Brought) -> impl IntoView {
    view! {
        <section class="card" data-added=brought.entries data-added-pictures=brought.pictures>
            <h2>"Brought in"</h2>
            {done(brought).into_iter().map(|said| view! { <p>{said}</p> }).collect_view()}
            {brought.renamed.then(|| view! { <p class="warning" data-renamed="">{RENAMED}</p> })}
            <a class="key" href="#/">"To the day book"</a>
        </section>
    }
}

/// What came of it, matter by matter; what did not happen is left out.
fn done(brought: Brought) -> Vec<String> {
    let some = |count: usize, one: &str, many: &str, what: &str| {
        (count > 0).then(|| format!("{} {what}.", counted(count, one, many)))
    };
    let nothing = brought.entries + brought.pictures + brought.erased == 0;
    [
        nothing.then(|| "Nothing was added: everything in the file was here already.".to_owned()),
        some(brought.entries, "entry", "entries", "added"),
        some(brought.pictures, "picture", "pictures", "added"),
        some(
            brought.erased,
            "picture",
            "pictures",
            "went from here: erased on the other device",
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}
