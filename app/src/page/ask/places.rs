//! Which place: the chooser of another one, and what to do when every place is answered.

use cartside_core::survey::Places;
use cartside_core::wheel::Place;
use cartside_core::words;
use leptos::prelude::*;

use super::asking::Asking;
use crate::looking::Looking;
use crate::route::Route;

/// Every place the question can be put to; one tap takes it in hand.
#[component]
pub fn PlaceChooser(asking: Asking) -> impl IntoView {
    let keys = move || {
        let looking = asking.looking.get()?;
        let keys = candidates(&looking, asking)
            .into_iter()
            .map(|place| one_place(asking, &looking, place));
        Some(keys.collect_view())
    };
    view! {
        <section class="card">
            <h2>"Which place?"</h2>
            <div class="choices">{keys}</div>
        </section>
    }
}

fn one_place(asking: Asking, looking: &Looking, place: Place) -> impl IntoView + use<> {
    let name = words::place::place(place, Some(&looking.wheel), asking.shop.style());
    let label = if looking.answered(asking.question, place) {
        format!("{name} ✓ answered")
    } else {
        name
    };
    view! {
        <button type="button" class="key" data-go-to=place.code() on:click=move |_| asking.go_to(place)>
            <span class="capital">{label}</span>
        </button>
    }
}

/// Round the tyre every place over a spoke or between two will do.
fn candidates(looking: &Looking, asking: Asking) -> Vec<Place> {
    match asking.question.places() {
        Places::RoundTheTyre => (1..=looking.wheel.felloes.spokes())
            .flat_map(|n| [Place::Spoke(n), Place::Between(n)])
            .collect(),
        _ => asking.question.places_on(&looking.wheel),
    }
}

/// Every place is answered: what comes next.
#[component]
pub fn AllAnswered(asking: Asking) -> impl IntoView {
    let (id, position) = asking.wheel();
    let next = move || {
        let looking = asking.looking.get()?;
        let next = looking.next_question(Some(asking.question))?;
        let (done, all) = looking.progress(next);
        let label = format!(
            "Next: {}, {done} of {all}",
            words::question::short(next, asking.shop.style())
        );
        let href = Route::Ask(id, position, next, None).href();
        Some(view! { <a class="key key-main" data-ask=next.code() href=href>{label}</a> })
    };
    view! {
        <section class="card" data-at="none">
            <h2>"Every place is answered"</h2>
            {next}
        </section>
    }
}
