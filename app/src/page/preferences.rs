//! Preferences: units and who is looking; and what this device says of itself.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::choice::plain_choice;
use crate::demonstration;
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::preferences::Preferences;
use crate::storage::Which;
use crate::update::State;
use crate::workshop::{Workshop, workshop};

/// Preferences: units and who is looking.
pub fn page() -> Piece {
    let shop = workshop();
    let ready = expect_context::<ReadSignal<State>>();
    sheet!(
        "<main class=page data-page=preferences><h1>Preferences</h1>{}{}\
         <a class=key href=#/limits>Limits that findings are judged by</a>\
         <a class=key href=#/kept>What is kept on this device</a>{}{}</main>",
        person(shop.preferences),
        live(move || units(shop.preferences)),
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
