//! Preferences: units and who is looking; and what this device says of itself.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::choice::plain_choice;
use crate::demonstration;
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::preferences::Preferences;
use crate::storage::{Promised, Room, Which, ask_to_keep, is_kept, room};
use crate::update::State;
use crate::wording::size;
use crate::workshop::{Workshop, workshop};

/// Preferences: units and who is looking.
pub fn page() -> Piece {
    let shop = workshop();
    let ready = expect_context::<ReadSignal<State>>();
    let promised = RwSignal::new(None);
    let room_said = RwSignal::new(String::new());
    spawn_local(async move {
        // A page that is gone shows no answer.
        let _ = promised.try_set(Some(is_kept().await));
        let _ = room_said.try_set(room().await.map(estimate).unwrap_or_default());
    });
    sheet!(
        "<main class=page data-page=preferences><h1>Preferences</h1>{}{}\
         <a class=key href=#/limits>Limits that findings are judged by</a>{}{}{}</main>",
        person(shop.preferences),
        live(move || units(shop.preferences)),
        live(move || keeping(promised, room_said.get())),
        live(move || (shop.which.get() == Which::Demonstration).then(|| demonstration(shop))),
        live(move || about(shop, ready.get()))
    )
}

/// Who is looking.
fn person(preferences: RwSignal<Preferences>) -> Piece {
    sheet!(
        "<section class=card><label class=field>Who is looking\
         <input type=text autocomplete=name maxlength=80 value={} on:input={}/></label>\
         <p class=dim>This name is written into each entry from now on. It may stay empty.</p></section>",
        preferences.get_untracked().person,
        heard(move |event| {
            let name = typed(&event).trim().to_owned();
            preferences.update(|kept| kept.person = name);
        })
    )
}

/// How measures are written.
fn units(preferences: RwSignal<Preferences>) -> Piece {
    let (inches, thou, american) = preferences.with(|kept| (kept.inches, kept.thou, kept.american));
    let way = |label: &'static str, chosen, choose: fn(&mut Preferences)| {
        let ear = tap(move || preferences.update(choose));
        plain_choice(label.into(), chosen, label.into(), ear)
    };
    sheet!(
        "<section class=card data-preference=lengths><h2>Lengths of wheel and tyre</h2>\
         <div class=stack>{}{}</div></section>\
         <section class=card data-preference=feelers><h2>Gaps and play</h2>\
         <div class=stack>{}{}</div></section>\
         <section class=card data-preference=words><h2>Words of the trade</h2>\
         <div class=stack>{}{}</div><a class=key href=#/words>All words, explained</a></section>",
        way("Millimetres", !inches, |kept| kept.inches = false),
        way("Inches and sixteenths", inches, |kept| kept.inches = true),
        way("Millimetres", !thou, |kept| kept.thou = false),
        way("Thousandths of an inch", thou, |kept| kept.thou = true),
        way("British", !american, |kept| kept.american = false),
        way("American", american, |kept| kept.american = true)
    )
}

/// Whether the browser promised to keep the book, and how much room there is.
fn keeping(promised: RwSignal<Option<Promised>>, room: String) -> Piece {
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
    sheet!(
        "<section class=card data-promised={}><h2>Keeping the book</h2><p>{}</p>{}<p class=dim>{}</p>\
         <a class=key href=#/carry-out>Carry out</a></section>",
        code,
        promise(now),
        ask,
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

/// While the demonstration is open: the key that lays it out afresh.
fn demonstration(shop: Workshop) -> Piece {
    sheet!(
        "<section class=card><h2>The demonstration</h2>\
         <p>Throws away what was tried in it and lays it out as it was at first. Your own book is not touched.</p>\
         <button type=button class=key data-key=afresh on:click={}>Lay it out afresh</button></section>",
        tap(move || spawn_local(demonstration::begin_afresh(shop)))
    )
}

/// Which Cartside this is, and by which name this device writes.
fn about(shop: Workshop, ready: State) -> Piece {
    let build = match ready {
        State::Ready { build } => short(&build),
        State::Waiting { build } => format!("a newer one, {}, waits", short(&build)),
        _ => "not kept on this device".to_owned(),
    };
    sheet!(
        "<section class=card><h2>This Cartside</h2><dl class=facts>\
         <div><dt>Version</dt><dd data-version>{}</dd></div>\
         <div><dt>Build</dt><dd data-build>{}</dd></div>\
         <div><dt>This device</dt><dd>{}</dd></div></dl></section>",
        env!("CARGO_PKG_VERSION"),
        build,
        short(&shop.device())
    )
}

/// As much of a long name as tells it from others.
fn short(name: &str) -> String {
    name.chars().take(8).collect()
}
