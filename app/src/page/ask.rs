//! One question, put to place after place.

use cartside_core::daybook::EntryId;
use cartside_core::survey::Question;
use cartside_core::wheel::Place;
use cartside_core::wheel::Position;
use leptos::prelude::*;

/// One question, put to place after place.
#[component]
pub fn AskPage(
    /// The id.
    id: EntryId,
    /// The position.
    position: Position,
    /// The question.
    question: Question,
    /// The place.
    place: Option<Place>,
) -> impl IntoView {
    let _ = id;
    let _ = position;
    let _ = question;
    let _ = place;
    view! { <main data-page="ask"></main> }
}
