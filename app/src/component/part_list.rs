//! The list beside the drawing: each part in words, what was answered there and what that comes to.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::mark::GradeMark;
use crate::looking::{Look, Looking};
use crate::route::Route;
use crate::workshop::workshop;

/// Each part of a wheel; a tap leads to its page.
#[component]
pub fn PartList(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
    /// The wheel.
    looking: Looking,
) -> impl IntoView {
    let style = workshop().style();
    let rows = looking
        .places()
        .into_iter()
        .map(|place| one_row(id, position, &looking, place, style))
        .collect_view();
    view! {
        <section class="stack">
            <h2>"Part by part"</h2>
            <ul class="list">{rows}</ul>
        </section>
    }
}

fn one_row(
    id: EntryId,
    position: Position,
    looking: &Looking,
    place: Place,
    style: Style,
) -> impl IntoView + use<> {
    let href = Route::Part(id, Part::At(position, place)).href();
    let name = words::place::place(place, Some(&looking.wheel), style);
    let grade = match looking.look(place) {
        Look::Found(grade) => Some(view! { <GradeMark grade /> }),
        Look::Open | Look::Sound => None,
    };
    view! {
        <li>
            <a class="item" href=href data-place=place.code()>
                <span class="strong capital">{name}</span>
                <span>{told(looking, place, style)}</span>
                {grade}
            </a>
        </li>
    }
}

/// What was answered at a place.
fn told(looking: &Looking, place: Place, style: Style) -> String {
    let here = looking.answers.iter().filter(|((_, at), _)| *at == place);
    let each: Vec<String> = here
        .flat_map(|((question, _), answers)| {
            answers
                .iter()
                .map(|answer| words::answer::told(*question, answer, style))
        })
        .collect();
    if each.is_empty() {
        "not looked at".to_owned()
    } else {
        each.join("; ")
    }
}
