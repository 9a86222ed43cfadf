//! The shell: what stands round every page, and which page an address shows.

use std::cell::Cell;

use cartside_core::daybook::EntryId;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event};

use crate::carrying;
use crate::component::examination::GoingOn;
use crate::component::turned::Turned;
use crate::component::wheel_drawing::hatches;
use crate::demonstration;
use crate::draft;
use crate::markup::{Piece, afresh, heard, live, sheet, tap};
use crate::page::book::Seeking;
use crate::page::{
    ask, begin, book, bring_in, build, carry_out, changes, decide, disputes, entries, examination,
    first_look, kept, limit, limits, part, picture, preferences, report, same_as, tyring, unknown,
    vehicle, wheel, words, work,
};
use crate::route::{self, Route};
use crate::storage::Which;
use crate::typing;
use crate::update::{State, Updates};
use crate::workshop::{Notice, Opening, Workshop, workshop};

/// The whole app.
pub fn shell() -> Piece {
    let shop = Workshop::new(crate::preferences::watch());
    provide_context(shop);
    provide_context(GoingOn(RwSignal::new(None)));
    provide_context(Turned::new());
    provide_context(Seeking::new());
    provide_context(ask::trail::Trail::new());
    let route = route::watch();
    provide_context(route);
    let (ready, set_ready) = signal(State::Preparing);
    let updates = StoredValue::new_local(Updates::start(move |state| set_ready.set(state)));
    provide_context(ready);
    provide_context(updates);
    typing::listen(shop);
    spawn_local(shop.open(Which::Own));
    live(move || {
        let which = match shop.which.get() {
            Which::Own => "own",
            Which::Demonstration => "demonstration",
        };
        let page = afresh(move || match shop.opening.get() {
            Opening::Wait => opening(),
            Opening::Refused(sentence) => refused(sentence),
            Opening::Open => page(route.get()),
        });
        sheet!(
            "<div class=shell data-book={} on:click={}>{}{}{}{}</div>",
            which,
            heard(move |event| leave_it_said(shop, &event)),
            hatches(),
            live(head),
            page,
            live(foot)
        )
    })
}

/// What says that it takes too long comes into sight by itself (`public/style.css`).
fn opening() -> Piece {
    sheet!(
        "<main class=page data-page=wait><h1>Opening the book…</h1><p class=late>This takes longer than it should. \
         Close all windows of the browser and open Cartside again. Everything said to be saved is kept.</p></main>"
    )
}

fn wait(words: &'static str) -> Piece {
    sheet!("<main class=page data-page=wait><h1>{}</h1></main>", words)
}

fn refused(sentence: String) -> Piece {
    sheet!(
        "<main class=page data-page=refused><h1>The book cannot be opened</h1>\
         <p class=refusal role=alert>{}</p></main>",
        sentence
    )
}

/// Turns to a page that has just been put up: to its top, with its heading in focus and in the window's title, and
/// what was typed on it before in its fields.
fn arrive() {
    let shop = workshop();
    request_animation_frame(move || {
        typing::put_back(shop);
        let heading = document().query_selector("main h1").ok().flatten();
        let Some(heading) =
            heading.and_then(|heading| heading.dyn_into::<web_sys::HtmlElement>().ok())
        else {
            return;
        };
        let words = heading.text_content().unwrap_or_default();
        document().set_title(&format!("{words} – Cartside"));
        // Where the frame came late, someone may have begun to type.
        if let Ok(Some(_)) = document().query_selector("main :is(input,textarea,select):focus") {
            return;
        }
        // A heading takes the focus from a script alone, never among the stops of the tab key.
        heading.set_tab_index(-1);
        // A browser that refuses the focus still shows the page.
        drop(heading.focus());
        window().scroll_to_with_x_and_y(0.0, 0.0);
    });
}

/// The page of an address.
fn page(route: Route) -> Piece {
    arrive();
    match route {
        Route::Book => book::page(),
        Route::Begin => begin::page(),
        Route::Vehicle(id) => in_hand(id, move || vehicle::page(id)),
        Route::Entries(id) => in_hand(id, move || entries::page(id)),
        Route::Changes(id) => in_hand(id, move || changes::page(id)),
        Route::Disputes(id) => in_hand(id, move || disputes::page(id)),
        Route::SameAs(id) => in_hand(id, move || same_as::page(id)),
        Route::Examination(id) => in_hand(id, move || examination::page(id)),
        Route::FirstLook(id) => in_hand(id, move || first_look::page(id)),
        Route::Decide(id, position) => in_hand(id, move || decide::page(id, position)),
        Route::Tyring(id, position) => in_hand(id, move || tyring::page(id, position)),
        Route::Work(id, position) => in_hand(id, move || work::page(id, position)),
        Route::Wheel(id, position) => in_hand(id, move || wheel::page(id, position)),
        Route::Build(id, position) => in_hand(id, move || build::page(id, position)),
        Route::Ask(id, position, question, place) => {
            in_hand(id, move || ask::page(id, position, question, place))
        }
        Route::Part(id, of) => in_hand(id, move || part::page(id, of)),
        Route::Picture(id, picture) => in_hand(id, move || picture::page(id, picture)),
        Route::Report(id, cut) => in_hand(id, move || report::page(id, cut)),
        Route::Earlier(id, visit) => in_hand(id, move || report::earlier(id, visit)),
        Route::Told(id, entry) => in_hand(id, move || report::told(id, entry)),
        Route::CarryOut(vehicle) => carry_out::page(vehicle),
        Route::BringIn => bring_in::page(),
        Route::Kept => kept::page(),
        Route::Words => words::page(),
        Route::Preferences => preferences::page(),
        Route::Limits => limits::page(),
        Route::Limit(row) => limit::page(&row),
        Route::Unknown(hash) => unknown::page(&hash),
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
        Some(opened) if opened.vehicle != shop.stands_for(id) => Held::NotYet,
        Some(opened) if opened.book.is_empty() => Held::Nothing,
        Some(_) => Held::Vehicle,
        None => Held::NotYet,
    });
    let at_once = held.get_untracked() != Held::NotYet;
    if !at_once {
        spawn_local(async move {
            if let Err(sentence) = shop.open_vehicle(id).await {
                shop.notice.set(Notice::Trouble(sentence));
            }
        });
    }
    // A vehicle that is in hand already is shown as the page is put up, which is where one arrives.
    let has_arrived = Cell::new(at_once);
    afresh(move || {
        let held = held.get();
        if held != Held::NotYet && !has_arrived.take() {
            arrive();
        }
        match held {
            Held::NotYet => wait("Fetching the vehicle…"),
            Held::Nothing => unknown::no_vehicle(),
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
    let waits = matches!(ready, State::Waiting { .. });
    sheet!(
        "<header class=head><a href=\"#/\">Day book</a><span data-ready={} role=status>{}</span></header>{}{}",
        code,
        words,
        waits.then(newer_waits),
        demonstration_banner()
    )
}

/// A newer build waits; it takes over when the user says so, once what is typed is kept too.
fn newer_waits() -> Piece {
    let shop = workshop();
    let updates = expect_context::<StoredValue<Updates, LocalStorage>>();
    sheet!(
        "<div class=\"banner row\"><span>A newer Cartside is on this device.</span>\
         <button type=button class=key data-key=take-over on:click={}>Change to it</button></div>",
        tap(move || spawn_local(async move {
            draft::all_kept(shop).await;
            updates.with_value(Updates::take_over);
        }))
    )
}

/// Says on every page of the demonstration that it is one, with the way back.
fn demonstration_banner() -> Option<Piece> {
    let shop = workshop();
    (shop.which.get() == Which::Demonstration).then(|| {
        sheet!(
            "<div class=\"banner row\"><span>{}</span>\
             <button type=button class=key on:click={}>Back to my own book</button></div>",
            "Demon\u{ad}stration",
            tap(move || spawn_local(demonstration::leave(shop)))
        )
    })
}

const FROM_MEMORY: &str = "The vehicle in hand and what could not be saved went out as a file, pictures left out. \
    Reload Cartside, and bring the file in.";

/// Whoever goes to another page has read what was saved; a page that comes by itself after a step still says it.
fn leave_it_said(shop: Workshop, event: &Event) {
    let pressed = event.target().and_then(|at| at.dyn_into::<Element>().ok());
    let link = pressed.and_then(|at| at.closest("a[href]").ok().flatten());
    if link.is_some() && matches!(shop.notice.get_untracked(), Notice::Saved(_)) {
        shop.notice.set(Notice::Quiet);
    }
}

/// What stands below every page: what the last step came to.
fn foot() -> Piece {
    let (code, words) = match workshop().notice.get() {
        Notice::Quiet => ("quiet", String::new()),
        Notice::Saving => ("saving", "Saving…".to_owned()),
        Notice::Saved(what) => ("saved", format!("Saved: {what}")),
        Notice::Trouble(sentence) => ("trouble", sentence),
    };
    let shop = workshop();
    let rescue = (code == "trouble" && shop.adrift.with(|adrift| !adrift.is_empty())).then(|| {
        sheet!(
            "<button type=button class=key data-key=from-memory on:click={}>Carry out from memory</button>",
            tap(move || shop.notice.set(match carrying::from_memory(shop) {
                Ok(()) => Notice::Trouble(FROM_MEMORY.to_owned()),
                Err(sentence) => Notice::Trouble(sentence),
            }))
        )
    });
    sheet!(
        "<footer class=foot data-notice={} role=status aria-live=polite>{}{}</footer>",
        code,
        words,
        rescue
    )
}
