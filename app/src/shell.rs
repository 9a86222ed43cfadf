//! The shell: what stands round every page, and which page an address shows.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;

use crate::component::examination::GoingOn;
use crate::component::plain::{key, refusal};
use crate::demonstration;
use crate::markup::{Piece, Tag, afresh, live, nothing, tag};
use crate::page::{
    ask, begin, book, bring_in, build, carry_out, disputes, entries, part, preferences, unknown,
    vehicle, wheel,
};
use crate::route::{self, Route};
use crate::storage::Which;
use crate::update::{State, Updates};
use crate::workshop::{Notice, Opening, Workshop, workshop};

/// The whole app.
pub fn shell() -> Piece {
    let shop = Workshop::new(crate::preferences::watch());
    provide_context(shop);
    provide_context(GoingOn(RwSignal::new(None)));
    let route = route::watch();
    provide_context(route);
    let (ready, set_ready) = signal(State::Preparing);
    let updates = StoredValue::new_local(Updates::start(move |state| set_ready.set(state)));
    provide_context(ready);
    provide_context(updates);
    spawn_local(shop.open(Which::Own));
    live(move || {
        let which = match shop.which.get() {
            Which::Own => "own",
            Which::Demonstration => "demonstration",
        };
        tag("div")
            .class("shell")
            .set("data-book", which)
            .live(head)
            .put(afresh(move || match shop.opening.get() {
                Opening::Wait => wait("Opening the book…"),
                Opening::Refused(sentence) => refused(sentence),
                Opening::Open => page(route.get()),
            }))
            .live(foot)
    })
}

fn wait(words: &'static str) -> Piece {
    let heading = tag("h1").put(words);
    page_of("wait").put(heading).into()
}

/// The element every page is.
fn page_of(code: &'static str) -> Tag {
    tag("main").class("page").set("data-page", code)
}

fn refused(sentence: String) -> Piece {
    page_of("refused")
        .put(tag("h1").put("The book cannot be opened"))
        .put(refusal(sentence))
        .into()
}

/// Turns to a page that has just been put up: to its top, with its heading in focus and in the window's title.
fn arrive() {
    request_animation_frame(|| {
        let heading = document().query_selector("main h1").ok().flatten();
        let Some(heading) =
            heading.and_then(|heading| heading.dyn_into::<web_sys::HtmlElement>().ok())
        else {
            return;
        };
        // A heading takes the focus from a script alone, never among the stops of the tab key.
        heading.set_tab_index(-1);
        // A browser that refuses the focus still shows the page.
        drop(heading.focus());
        window().scroll_to_with_x_and_y(0.0, 0.0);
        let words = heading.text_content().unwrap_or_default();
        document().set_title(&format!("{words} – Cartside"));
    });
}

/// The page of an address.
fn page(route: Route) -> Piece {
    arrive();
    match route {
        Route::Book => book::page(),
        Route::Begin => begin::page(),
        Route::Vehicle(id) => in_hand(id, move || {
            vehicle::VehiclePage(vehicle::VehiclePageProps { id }).into_any()
        }),
        Route::Entries(id) => in_hand(id, move || {
            entries::EntriesPage(entries::EntriesPageProps { id }).into_any()
        }),
        Route::Disputes(id) => in_hand(id, move || {
            disputes::DisputesPage(disputes::DisputesPageProps { id }).into_any()
        }),
        Route::Wheel(id, position) => in_hand(id, move || {
            wheel::WheelPage(wheel::WheelPageProps { id, position }).into_any()
        }),
        Route::Build(id, position) => in_hand(id, move || build::page(id, position)),
        Route::Ask(id, position, question, place) => in_hand(id, move || {
            ask::AskPage(ask::AskPageProps {
                id,
                position,
                question,
                place,
            })
            .into_any()
        }),
        Route::Part(id, of) => in_hand(id, move || {
            part::PartPage(part::PartPageProps { id, of }).into_any()
        }),
        Route::CarryOut => carry_out::CarryOutPage().into_any().into(),
        Route::BringIn => bring_in::page(),
        Route::Preferences => preferences::page().into(),
        Route::Unknown(hash) => unknown::UnknownPage(unknown::UnknownPageProps { hash })
            .into_any()
            .into(),
    }
}

/// What is in hand while a page about a vehicle waits for it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Held {
    NotYet,
    /// The book holds no entry of it, so there is nothing to show and nothing to add to.
    Nothing,
    Vehicle,
}

/// A page about one vehicle, shown once that vehicle is in hand.
fn in_hand<P: Into<Piece>>(id: EntryId, page: impl Fn() -> P + 'static) -> Piece {
    held_page(id, Box::new(move || page().into()))
}

fn held_page(id: EntryId, page: Box<dyn Fn() -> Piece>) -> Piece {
    let shop = workshop();
    let held = Memo::new(move |_| match shop.opened.get() {
        Some(opened) if opened.vehicle == id && opened.book.is_empty() => Held::Nothing,
        Some(opened) if opened.vehicle == id => Held::Vehicle,
        _ => Held::NotYet,
    });
    if held.get_untracked() == Held::NotYet {
        spawn_local(async move {
            if let Err(sentence) = shop.open_vehicle(id).await {
                shop.notice.set(Notice::Trouble(sentence));
            }
        });
    }
    afresh(move || {
        let held = held.get();
        if held != Held::NotYet {
            arrive();
        }
        match held {
            Held::NotYet => wait("Fetching the vehicle…"),
            Held::Nothing => unknown::NoVehiclePage().into_any().into(),
            Held::Vehicle => page(),
        }
    })
}

/// What stands above every page: the way home, which book is open, whether a network is needed.
fn head() -> Piece {
    let ready = expect_context::<ReadSignal<State>>().get();
    let (code, words) = match ready {
        State::NotSupported => ("not-supported", "needs the network"),
        State::Preparing => ("preparing", "fetching itself"),
        State::Ready { .. } => ("ready", "ready without a network"),
        State::Waiting { .. } => ("waiting", "a newer Cartside waits"),
        State::Failed { .. } => ("failed", "needs the network"),
    };
    let home = tag("a").set("href", Route::Book.href()).put("Day book");
    let state = tag("span")
        .set("data-ready", code)
        .set("role", "status")
        .put(words);
    let waits = matches!(ready, State::Waiting { .. });
    Piece::Several(vec![
        tag("header").class("head").put(home).put(state).into(),
        waits.then(newer_waits).into(),
        demonstration_banner(),
    ])
}

/// A newer build waits; it takes over when the user says so. What was said to be saved is stored by then.
fn newer_waits() -> Tag {
    let updates = expect_context::<StoredValue<Updates, LocalStorage>>();
    let change = key("Change to it").set("data-key", "take-over").tap(move || {
        updates.with_value(Updates::take_over);
    });
    tag("div")
        .class("banner row")
        .put(tag("span").put("A newer Cartside is on this device."))
        .put(change)
}

/// Says on every page of the demonstration that it is one, with the way back.
fn demonstration_banner() -> Piece {
    let shop = workshop();
    if shop.which.get() != Which::Demonstration {
        return nothing();
    }
    let said = "Demonstration: an invented farm, a book of its own.";
    let back =
        key("Back to my own book").tap(move || spawn_local(demonstration::leave(shop)));
    tag("div")
        .class("banner row")
        .put(tag("span").put(said))
        .put(back)
        .into()
}

/// What stands below every page: what the last step came to.
fn foot() -> Tag {
    let (code, words) = match workshop().notice.get() {
        Notice::Quiet => ("quiet", String::new()),
        Notice::Saving => ("saving", "Saving…".to_owned()),
        Notice::Saved(what) => ("saved", format!("Saved: {what}")),
        Notice::Trouble(sentence) => ("trouble", sentence),
    };
    tag("footer")
        .class("foot")
        .set("data-notice", code)
        .set("role", "status")
        .set("aria-live", "polite")
        .put(words)
}
