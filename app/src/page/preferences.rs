//! Preferences: units and who is looking; and what this device says of itself.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::demonstration;
use crate::preferences::Preferences;
use crate::storage::{Promised, Room, Which, ask_to_keep, is_kept, room};
use crate::update::State;
use crate::wording::size;
use crate::workshop::workshop;

/// Preferences: units and who is looking.
#[component]
pub fn PreferencesPage() -> impl IntoView {
    view! {
        <main class="page" data-page="preferences">
            <h1>"Preferences"</h1>
            <Person />
            <Choice
                name="lengths"
                heading="Lengths of wheel and tyre"
                labels=["Millimetres", "Inches and sixteenths"]
                read=|preferences| preferences.inches
                write=|preferences, inches| preferences.inches = inches
            />
            <Choice
                name="feelers"
                heading="Gaps and play"
                labels=["Millimetres", "Thousandths of an inch"]
                read=|preferences| preferences.thou
                write=|preferences, thou| preferences.thou = thou
            />
            <Keeping />
            <Demonstration />
            <About />
        </main>
    }
}

/// Who is looking.
#[component]
fn Person() -> impl IntoView {
    let preferences = workshop().preferences;
    let before = preferences.get_untracked().person;
    let typed = move |name: String| preferences.update(|kept| kept.person = name.trim().to_owned());
    view! {
        <section class="card">
            <label class="field">
                "Who is looking"
                <input
                    type="text"
                    autocomplete="name"
                    maxlength="80"
                    prop:value=before
                    on:input:target=move |event| typed(event.target().value())
                />
            </label>
            <p class="dim">"This name is written into each entry from now on. It may stay empty."</p>
        </section>
    }
}

/// One of two ways to write something.
#[component]
fn Choice(
    /// Its name in the state of the page.
    name: &'static str,
    /// What is chosen.
    heading: &'static str,
    /// The two ways; the second is the one that the preference says *yes* to.
    labels: [&'static str; 2],
    /// Whether the second is chosen.
    read: fn(&Preferences) -> bool,
    /// Chooses.
    write: fn(&mut Preferences, bool),
) -> impl IntoView {
    let preferences = workshop().preferences;
    let key = move |second: bool, label: &'static str| {
        view! {
            <button
                type="button"
                class="key"
                data-choice=label
                aria-pressed=move || (preferences.with(read) == second).to_string()
                on:click=move |_| preferences.update(|kept| write(kept, second))
            >
                {label}
            </button>
        }
    };
    let [first, second] = labels;
    view! {
        <section class="card" data-preference=name>
            <h2>{heading}</h2>
            <div class="choices">{key(false, first)} {key(true, second)}</div>
        </section>
    }
}

/// Whether the browser promised to keep the book, and how much room there is.
#[component]
fn Keeping() -> impl IntoView {
    let promised = RwSignal::new(None::<Promised>);
    let used = RwSignal::new(None::<Room>);
    spawn_local(async move {
        promised.try_set(Some(is_kept().await));
        used.try_set(room().await);
    });
    let ask = move |_| {
        spawn_local(async move {
            // A page that is gone shows no answer.
            let _ = promised.try_set(Some(ask_to_keep().await));
        });
    };
    let code = move || match promised.get() {
        None => "unasked",
        Some(Promised::Yes) => "yes",
        Some(Promised::No) => "no",
        Some(Promised::Unknown) => "unknown",
    };
    view! {
        <section class="card" data-promised=code>
            <h2>"Keeping the book"</h2>
            <p>{move || promise(promised.get())}</p>
            <Show when=move || promised.get() == Some(Promised::No)>
                <button type="button" class="key" on:click=ask>"Ask the browser to keep it"</button>
            </Show>
            <p class="dim">{move || used.get().map(estimate)}</p>
            <a class="key" href="#/carry-out">"Carry out"</a>
        </section>
    }
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

/// While the demonstration is open: the key that lays it out afresh.
#[component]
fn Demonstration() -> impl IntoView {
    let shop = workshop();
    let afresh = move |_| spawn_local(demonstration::begin_afresh(shop));
    view! {
        <Show when=move || shop.which.get() == Which::Demonstration>
            <section class="card">
                <h2>"The demonstration"</h2>
                <p>"Throws away what was tried in it and lays it out as it was at first. Your own book is not touched."</p>
                <button type="button" class="key" data-key="afresh" on:click=afresh>
                    "Lay it out afresh"
                </button>
            </section>
        </Show>
    }
}

/// Which Cartside this is, and by which name this device writes.
#[component]
fn About() -> impl IntoView {
    let device: String = workshop().device().chars().take(8).collect();
    let ready = expect_context::<ReadSignal<State>>();
    let build = move || match ready.get() {
        State::Ready { build } => build.chars().take(8).collect(),
        State::Waiting { build } => {
            let short: String = build.chars().take(8).collect();
            format!("a newer one, {short}, waits")
        }
        _ => "not kept on this device".to_owned(),
    };
    view! {
        <section class="card">
            <h2>"This Cartside"</h2>
            <dl class="facts">
                <div><dt>"Version"</dt><dd data-version="">{env!("CARGO_PKG_VERSION")}</dd></div>
                <div><dt>"Build"</dt><dd data-build="">{build}</dd></div>
                <div><dt>"This device"</dt><dd>{device}</dd></div>
            </dl>
        </section>
    }
}
