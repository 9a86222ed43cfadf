//! Everything written about one vehicle.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;

/// Everything written about one vehicle.
#[component]
pub fn EntriesPage(
    /// The id.
    id: EntryId,
) -> impl IntoView {
    let _ = id;
    view! { <main data-page="entries"></main> }
}
