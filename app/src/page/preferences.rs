//! Preferences: units and who is looking; and what this device says of itself.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::plain::{key, link};
use crate::demonstration;
use crate::markup::{Piece, Tag, tag, typed};
use crate::preferences::Preferences;
use crate::route::Route;
use crate::storage::{Promised, Room, Which, ask_to_keep, is_kept, room};
use crate::update::State;
use crate::wording::size;
use crate::workshop::{Workshop, workshop};

/// Preferences: units and who is looking.
pub fn page() -> Tag {
    let shop = workshop();
    let ready = expect_context::<ReadSignal<State>>();
    let promised = RwSignal::new(None);
    let room_said = RwSignal::new(String::new());
    spawn_local(async move {
        // A page that is gone shows no answer.
        let _ = promised.try_set(Some(is_kept().await));
        let _ = room_said.try_set(room().await.map(estimate).unwrap_or_default());
    });
    tag("main")
        .class("page")
        .set("data-page", "preferences")
        .put(tag("h1").put("Preferences"))
        .put(person(shop))
        .live(move || units(shop.preferences))
        .live(move || keeping(promised, room_said.get()))
        .live(move || (shop.which.get() == Which::Demonstration).then(|| demonstration(shop)))
        .live(move || about(shop, ready.get()))
}

/// Who is looking.
fn person(shop: Workshop) -> Tag {
    let preferences = shop.preferences;
    let field = tag("input")
        .set("type", "text")
        .set("autocomplete", "name")
        .set("maxlength", "80")
        .typed(preferences.get_untracked().person)
        .on("input", move |event| {
            let name = typed(&event).trim().to_owned();
            preferences.update(|kept| kept.person = name);
        });
    let after = "This name is written into each entry from now on. It may stay empty.";
    tag("section")
        .class("card")
        .put(tag("label").class("field").put("Who is looking").put(field))
        .put(tag("p").class("dim").put(after))
}

/// How measures are written.
fn units(preferences: RwSignal<Preferences>) -> Piece {
    let (inches, thou) = preferences.with(|kept| (kept.inches, kept.thou));
    let lengths = [
        way("Millimetres", !inches, preferences, |kept| {
            kept.inches = false
        }),
        way("Inches and sixteenths", inches, preferences, |kept| {
            kept.inches = true
        }),
    ];
    let feelers = [
        way("Millimetres", !thou, preferences, |kept| kept.thou = false),
        way("Thousandths of an inch", thou, preferences, |kept| {
            kept.thou = true
        }),
    ];
    Piece::Several(vec![
        choice("lengths", "Lengths of wheel and tyre", lengths).into(),
        choice("feelers", "Gaps and play", feelers).into(),
    ])
}

/// One of two ways to write something: its name in the state of the page, what is chosen, and the keys.
fn choice(name: &'static str, heading: &'static str, ways: [Tag; 2]) -> Tag {
    tag("section")
        .class("card")
        .set("data-preference", name)
        .put(tag("h2").put(heading))
        .put(tag("div").class("choices").each(ways))
}

fn way(
    label: &'static str,
    chosen: bool,
    preferences: RwSignal<Preferences>,
    choose: fn(&mut Preferences),
) -> Tag {
    key(label)
        .set("data-choice", label)
        .is("aria-pressed", chosen)
        .tap(move || preferences.update(choose))
}

/// Whether the browser promised to keep the book, and how much room there is.
fn keeping(promised: RwSignal<Option<Promised>>, room: String) -> Tag {
    let now = promised.get();
    let code = match now {
        None => "unasked",
        Some(Promised::Yes) => "yes",
        Some(Promised::No) => "no",
        Some(Promised::Unknown) => "unknown",
    };
    let ask = (now == Some(Promised::No)).then(|| {
        key("Ask the browser to keep it").tap(move || {
            spawn_local(async move {
                let _ = promised.try_set(Some(ask_to_keep().await));
            });
        })
    });
    tag("section")
        .class("card")
        .set("data-promised", code)
        .put(tag("h2").put("Keeping the book"))
        .put(tag("p").put(promise(now)))
        .put(ask)
        .put(tag("p").class("dim").put(room))
        .put(link(Route::CarryOut.href(), "Carry out"))
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
fn demonstration(shop: Workshop) -> Tag {
    let said = "Throws away what was tried in it and lays it out as it was at first. Your own book is not touched.";
    let lay_out = key("Lay it out afresh")
        .set("data-key", "afresh")
        .tap(move || spawn_local(demonstration::begin_afresh(shop)));
    tag("section")
        .class("card")
        .put(tag("h2").put("The demonstration"))
        .put(tag("p").put(said))
        .put(lay_out)
}

/// Which Cartside this is, and by which name this device writes.
fn about(shop: Workshop, ready: State) -> Tag {
    let build = match ready {
        State::Ready { build } => short(&build),
        State::Waiting { build } => format!("a newer one, {}, waits", short(&build)),
        _ => "not kept on this device".to_owned(),
    };
    let version = tag("dd")
        .flag("data-version", true)
        .put(env!("CARGO_PKG_VERSION"));
    let build = tag("dd").flag("data-build", true).put(build);
    let device = tag("dd").put(short(&shop.device()));
    let facts = tag("dl")
        .class("facts")
        .put(fact("Version", version))
        .put(fact("Build", build))
        .put(fact("This device", device));
    tag("section")
        .class("card")
        .put(tag("h2").put("This Cartside"))
        .put(facts)
}

fn fact(name: &'static str, worth: Tag) -> Tag {
    tag("div").put(tag("dt").put(name)).put(worth)
}

/// As much of a long name as tells it from others.
fn short(name: &str) -> String {
    name.chars().take(8).collect()
}
