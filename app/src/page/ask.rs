//! One question, put to place after place of a wheel: the screen at the cart. A tap is an answer, stored, and the
//! next place is in hand.

mod asking;
mod given;
mod keys;
mod places;
mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::survey::Question;
use cartside_core::wheel::{Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::examination::{BeginExamination, GoingOn, current};
use crate::component::locator::Locator;
use crate::looking::{Examination, Looking};
use crate::route::Route;
use crate::workshop::workshop;
use asking::{Asking, Showing};
use keys::{MeasurePad, Pads, RestKey};
use places::{AllAnswered, PlaceChooser};

/// What the page can do at this moment.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    NoWheel,
    NotAsked,
    Begin(Option<Examination>),
    Ask,
}

/// One question, put to place after place.
#[component]
pub fn AskPage(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
    /// The question.
    question: Question,
    /// The place to begin with; without one, the first that has no answer.
    place: Option<Place>,
) -> impl IntoView {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let looking = Memo::new(move |_| Looking::at(shop, position));
    let asking = Asking::new(shop, id, position, question, place, looking);
    let stage = Memo::new(move |_| stage(looking.get(), question, going_on));
    let wheel = Route::Wheel(id, position).href();
    let heading = move || {
        format!(
            "{}: {}",
            words::place::wheel_at(position),
            words::question::short(question, shop.style())
        )
    };
    view! {
        <main class="page ask" data-page="ask">
            <div class="ask-head">
                <h1 class="capital">{heading}</h1>
                <p class="dim">{move || asking.progress()}</p>
            </div>
            {move || match stage.get() {
                Stage::Ask => view! { <Asked asking /> }.into_any(),
                Stage::Begin(latest) => view! { <BeginExamination id latest /> }.into_any(),
                Stage::NoWheel => view! { <p class="warning">"No wheel is described here. What was said of one is kept."</p> }.into_any(),
                Stage::NotAsked => view! { <p class="warning">"This is asked of a wheel with a hoop tyre only."</p> }.into_any(),
            }}
            <a class="key key-plain" href=wheel>"To the wheel"</a>
            <Show when=move || stage.get() == Stage::Ask && asking.showing() != Showing::Numbers>
                <BottomKeys asking />
            </Show>
        </main>
    }
}

fn stage(looking: Option<Looking>, question: Question, going_on: GoingOn) -> Stage {
    match looking {
        None => Stage::NoWheel,
        Some(looking) if !question.asked_of(&looking.wheel) => Stage::NotAsked,
        Some(looking) => match looking.examination {
            Some(examination) if current(&examination, going_on) => Stage::Ask,
            latest => Stage::Begin(latest),
        },
    }
}

/// The place in hand with its keys, or that every place is answered.
#[component]
fn Asked(asking: Asking) -> impl IntoView {
    let at = asking.at;
    let in_hand = move || at.get().is_some();
    view! {
        <Show when=in_hand fallback=move || view! { <AllAnswered asking /> }>
            <PlaceInHand asking />
        </Show>
        {move || match asking.showing() {
            Showing::Places => view! { <PlaceChooser asking /> }.into_any(),
            Showing::Numbers => view! { <MeasurePad asking /> }.into_any(),
            Showing::Keys => view! { <Pads asking /> <RestKey asking /> <HowAndWhy question=asking.question /> }.into_any(),
            Showing::Nothing => ().into_any(),
        }}
    }
}

/// Where to look, what is asked, how far one has come, and what the place has been answered already.
#[component]
fn PlaceInHand(asking: Asking) -> impl IntoView {
    let shop = asking.shop;
    let place = move || asking.at.get().unwrap_or(Place::Whole);
    let wheel = move || asking.looking.get().map(|looking| looking.wheel);
    let name = move || words::place::place(place(), wheel().as_ref(), shop.style());
    let locator = move || wheel().map(|wheel| view! { <Locator wheel place=place() /> });
    view! {
        <section class="in-hand" data-at=move || place().code()>
            <div>
                <h2 class="place capital" aria-live="polite">{name}</h2>
                <p>{move || words::question::asks(asking.question, shop.style())}</p>
            </div>
            {locator}
        </section>
        {move || asking.already().map(|said| view! { <p class="already">{said}</p> })}
    }
}

#[component]
fn HowAndWhy(question: Question) -> impl IntoView {
    let shop = workshop();
    let words = move || words::how::how(question, shop.style());
    view! {
        <details class="fold">
            <summary>"How it is taken, and why"</summary>
            <div class="stack">
                <p>{move || words().how}</p>
                <p>{move || words().why}</p>
            </div>
        </details>
    }
}

/// Undo at the bottom left, another place at the right; in sight however far the page is scrolled.
#[component]
fn BottomKeys(asking: Asking) -> impl IntoView {
    let nothing = move || asking.steps.with(Vec::is_empty);
    view! {
        <div class="bottom-keys">
            <button type="button" class="key" data-key="undo" disabled=nothing on:click=move |_| asking.undo()>
                "Undo"
            </button>
            <button type="button" class="key" data-key="other-place" on:click=move |_| asking.choosing.update(|open| *open = !*open)>
                "Other place"
            </button>
        </div>
    }
}
