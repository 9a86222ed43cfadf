//! What is in dispute about one vehicle, and the settling of it.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;

/// What is in dispute about one vehicle, and the settling of it.
#[component]
pub fn DisputesPage(
    /// The id.
    id: EntryId,
) -> impl IntoView {
    let _ = id;
    view! { <main data-page="disputes"></main> }
}
