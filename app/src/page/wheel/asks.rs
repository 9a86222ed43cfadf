//! The order of work: each question with how far it has come, and what is missing before the wheel is judged.

use cartside_core::daybook::EntryId;
use cartside_core::survey::{Need, Question};
use cartside_core::wheel::Position;
use cartside_core::words;
use leptos::prelude::*;

use crate::looking::Looking;
use crate::route::Route;
use crate::workshop::workshop;

/// Every question asked of this wheel, in order, with its progress.
#[component]
pub fn Asks(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
    /// The wheel.
    looking: Looking,
) -> impl IntoView {
    let rows = looking
        .questions()
        .map(|question| one_question(id, position, &looking, question))
        .collect_view();
    view! {
        <section class="stack">
            <h2>"Questions"</h2>
            <ul class="list">{rows}</ul>
        </section>
    }
}

fn one_question(
    id: EntryId,
    position: Position,
    looking: &Looking,
    question: Question,
) -> impl IntoView + use<> {
    let (done, all) = looking.progress(question);
    let short = words::question::short(question, workshop().style());
    let how_far = if done == all {
        format!("✓ {done} of {all}")
    } else {
        format!("{done} of {all}")
    };
    let href = Route::Ask(id, position, question, None).href();
    view! {
        <li>
            <a class="item" data-ask=question.code() href=href>
                <span class="strong capital">{short}</span>
                <span>{how_far}</span>
            </a>
        </li>
    }
}

/// What must be recorded before the wheel is judged.
#[component]
pub fn MissingList(
    /// The wheel.
    looking: Looking,
) -> impl IntoView {
    let style = workshop().style();
    let rows = looking
        .judgement
        .missing
        .iter()
        .map(|missing| {
            let said = words::missing::missing(missing, &looking.wheel, style);
            view! { <li class="item" data-missing=need_code(missing.need)>{said}</li> }
        })
        .collect_view();
    let none = looking.judgement.missing.is_empty();
    view! {
        <section class="stack" hidden=none>
            <h2>"Before it is judged"</h2>
            <ul class="list">{rows}</ul>
        </section>
    }
}

/// The word that stands for a need in the state of the page.
fn need_code(need: Need) -> &'static str {
    match need {
        Need::Keeper => "keeper",
        Need::Ring => "ring",
        Need::Joints => "joints",
        Need::SpokeFeet => "spoke-feet",
        Need::SpokeRimEnds => "spoke-rim-ends",
        Need::SpokesWhole => "spokes-whole",
        Need::TyreGap => "tyre-gap",
        Need::Dish => "dish",
        Need::EndPlayAndShake => "end-play-and-shake",
        Need::Rot => "rot",
        Need::NaveAndBonds => "nave-and-bonds",
    }
}
