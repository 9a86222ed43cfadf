//! One wheel: its drawing, its list, its findings.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::Position;
use leptos::prelude::*;

/// One wheel: its drawing, its list, its findings.
#[component]
pub fn WheelPage(
    /// The id.
    id: EntryId,
    /// The position.
    position: Position,
) -> impl IntoView {
    let _ = id;
    let _ = position;
    view! { <main data-page="wheel"></main> }
}
