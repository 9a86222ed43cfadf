//! How one wheel is built.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::Position;
use leptos::prelude::*;

/// How one wheel is built.
#[component]
pub fn BuildPage(
    /// The id.
    id: EntryId,
    /// The position.
    position: Position,
) -> impl IntoView {
    let _ = id;
    let _ = position;
    view! { <main data-page="build"></main> }
}
