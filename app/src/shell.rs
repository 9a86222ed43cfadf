//! The shell: what stands round every page, and which page an address shows.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;
use leptos::task::spawn_local;

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
    let route = route::watch();
    provide_context(route);
    let (ready, set_ready) = signal(State::Preparing);
    let updates = StoredValue::new_local(Updates::start(move |state| set_ready.set(state)));
    provide_context(ready);
    provide_context(updates);
    spawn_local(shop.open(Which::Own));
    view! {
        <Head />
        {move || match shop.opening.get() {
            Opening::Wait => view! { <main data-page="wait"><p>"Opening the book…"</p></main> }.into_any(),
            Opening::Refused(sentence) => view! { <main data-page="refused"><p role="alert">{sentence}</p></main> }.into_any(),
            Opening::Open => page(route.get()),
        }}
        <Foot />
    }
}

/// The page of an address.
fn page(route: Route) -> AnyView {
    match route {
        Route::Book => book::BookPage().into_any(),
        Route::Begin => begin::BeginPage().into_any(),
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
        Route::Build(id, position) => in_hand(id, move || {
            build::BuildPage(build::BuildPageProps { id, position }).into_any()
        }),
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
        Route::CarryOut => carry_out::CarryOutPage().into_any(),
        Route::BringIn => bring_in::BringInPage().into_any(),
        Route::Preferences => preferences::PreferencesPage().into_any(),
        Route::Unknown(hash) => unknown::UnknownPage(unknown::UnknownPageProps { hash }).into_any(),
    }
}

/// A page about one vehicle, shown once that vehicle is in hand.
fn in_hand(id: EntryId, page: impl Fn() -> AnyView + Send + Sync + 'static) -> AnyView {
    let shop = workshop();
    let held = Memo::new(move |_| shop.opened.get().is_some_and(|opened| opened.vehicle == id));
    if !held.get_untracked() {
        spawn_local(async move {
            if let Err(sentence) = shop.open_vehicle(id).await {
                shop.notice.set(Notice::Trouble(sentence));
            }
        });
    }
    view! {
        {move || if held.get() { page() } else { view! { <main data-page="wait"><p>"Fetching the vehicle…"</p></main> }.into_any() }}
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
    view! {
        <header>
            <a href="#/">"Day book"</a>
            <span data-ready=code role="status">{words}</span>
        </header>
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
    view! { <footer data-notice=code role="status" aria-live="polite">{words}</footer> }
}
