//! The shell: what stands round every page, and which page an address shows.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;

use crate::component::examination::GoingOn;
use crate::demonstration;
use crate::page::{
    ask, begin, book, bring_in, build, carry_out, disputes, entries, part, preferences, unknown,
    vehicle, wheel,
};
use crate::route::{self, Route};
use crate::storage::Which;
use crate::update::{State, Updates};
use crate::workshop::{Notice, Opening, Workshop, workshop};

/// The whole app.
#[component]
pub fn Shell() -> impl IntoView {
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
    let which = move || match shop.which.get() {
        Which::Own => "own",
        Which::Demonstration => "demonstration",
    };
    view! {
        <div class="shell" data-book=which>
            <Head />
            {move || match shop.opening.get() {
                Opening::Wait => wait("Opening the book…"),
                Opening::Refused(sentence) => refused(sentence),
                Opening::Open => page(route.get()),
            }}
            <Foot />
        </div>
    }
}

fn wait(words: &'static str) -> AnyView {
    view! { <main class="page" data-page="wait"><h1>{words}</h1></main> }.into_any()
}

fn refused(sentence: String) -> AnyView {
    view! {
        <main class="page" data-page="refused">
            <h1>"The book cannot be opened"</h1>
            <p class="refusal" role="alert">{sentence}</p>
        </main>
    }
    .into_any()
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
fn page(route: Route) -> AnyView {
    arrive();
    match route {
        Route::Book => book::BookPage().into_any(),
        Route::Begin => begin::BeginPage().into_any(),
        Route::Vehicle(id) => in_hand(
            id,
            Box::new(move || vehicle::VehiclePage(vehicle::VehiclePageProps { id }).into_any()),
        ),
        Route::Entries(id) => in_hand(
            id,
            Box::new(move || entries::EntriesPage(entries::EntriesPageProps { id }).into_any()),
        ),
        Route::Disputes(id) => in_hand(
            id,
            Box::new(move || disputes::DisputesPage(disputes::DisputesPageProps { id }).into_any()),
        ),
        Route::Wheel(id, position) => in_hand(
            id,
            Box::new(move || wheel::WheelPage(wheel::WheelPageProps { id, position }).into_any()),
        ),
        Route::Build(id, position) => in_hand(
            id,
            Box::new(move || build::BuildPage(build::BuildPageProps { id, position }).into_any()),
        ),
        Route::Ask(id, position, question, place) => in_hand(
            id,
            Box::new(move || {
                ask::AskPage(ask::AskPageProps {
                    id,
                    position,
                    question,
                    place,
                })
                .into_any()
            }),
        ),
        Route::Part(id, of) => in_hand(
            id,
            Box::new(move || part::PartPage(part::PartPageProps { id, of }).into_any()),
        ),
        Route::CarryOut => carry_out::CarryOutPage().into_any(),
        Route::BringIn => bring_in::BringInPage().into_any(),
        Route::Preferences => preferences::PreferencesPage().into_any(),
        Route::Unknown(hash) => unknown::UnknownPage(unknown::UnknownPageProps { hash }).into_any(),
    }
}

/// What makes a page once its vehicle is in hand. Boxed, so that the waiting is compiled once for all pages.
type Turned = Box<dyn Fn() -> AnyView + Send + Sync>;

/// What is in hand while a page about a vehicle waits for it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Held {
    NotYet,
    /// The book holds no entry of it, so there is nothing to show and nothing to add to.
    Nothing,
    Vehicle,
}

/// A page about one vehicle, shown once that vehicle is in hand.
fn in_hand(id: EntryId, page: Turned) -> AnyView {
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
    view! {
        {move || {
            if held.get() != Held::NotYet {
                arrive();
            }
            match held.get() {
                Held::NotYet => wait("Fetching the vehicle…"),
                Held::Nothing => unknown::NoVehiclePage().into_any(),
                Held::Vehicle => page(),
            }
        }}
    }
    .into_any()
}

/// What stands above every page: the way home, which book is open, whether a network is needed.
#[component]
fn Head() -> impl IntoView {
    let ready = expect_context::<ReadSignal<State>>();
    let code = move || match ready.get() {
        State::NotSupported => "not-supported",
        State::Preparing => "preparing",
        State::Ready { .. } => "ready",
        State::Waiting { .. } => "waiting",
        State::Failed { .. } => "failed",
    };
    let words = move || match ready.get() {
        State::NotSupported => "needs the network",
        State::Preparing => "fetching itself",
        State::Ready { .. } => "ready without a network",
        State::Waiting { .. } => "a newer Cartside waits",
        State::Failed { .. } => "needs the network",
    };
    let waiting = move || matches!(ready.get(), State::Waiting { .. });
    view! {
        <header class="head">
            <a href=Route::Book.href()>"Day book"</a>
            <span data-ready=code role="status">{words}</span>
        </header>
        <Show when=waiting>
            <NewerWaits />
        </Show>
        <DemonstrationBanner />
    }
}

/// A newer build waits; it takes over when the user says so. What was said to be saved is stored by then.
#[component]
fn NewerWaits() -> impl IntoView {
    let updates = expect_context::<StoredValue<Updates, LocalStorage>>();
    view! {
        <div class="banner row">
            <span>"A newer Cartside is on this device."</span>
            <button type="button" class="key" data-key="take-over" on:click=move |_| { updates.with_value(Updates::take_over); }>
                "Change to it"
            </button>
        </div>
    }
}

/// Says on every page of the demonstration that it is one, with the way back.
#[component]
fn DemonstrationBanner() -> impl IntoView {
    let shop = workshop();
    view! {
        <Show when=move || shop.which.get() == Which::Demonstration>
            <div class="banner row">
                <span>"Demonstration: an invented farm, a book of its own."</span>
                <button type="button" class="key" on:click=move |_| spawn_local(demonstration::leave(shop))>
                    "Back to my own book"
                </button>
            </div>
        </Show>
    }
}

/// What stands below every page: what the last step came to.
#[component]
fn Foot() -> impl IntoView {
    let shop = workshop();
    let code = move || match shop.notice.get() {
        Notice::Quiet => "quiet",
        Notice::Saving => "saving",
        Notice::Saved(_) => "saved",
        Notice::Trouble(_) => "trouble",
    };
    let words = move || match shop.notice.get() {
        Notice::Quiet => String::new(),
        Notice::Saving => "Saving…".to_owned(),
        Notice::Saved(what) => format!("Saved: {what}"),
        Notice::Trouble(sentence) => sentence,
    };
    view! { <footer class="foot" data-notice=code role="status" aria-live="polite">{words}</footer> }
}
