//! One vehicle: its wheels, its examinations, what was said of it.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;

/// One vehicle: its wheels, its examinations, what was said of it.
#[component]
pub fn VehiclePage(
    /// The id.
    id: EntryId,
) -> impl IntoView {
    let _ = id;
    view! { <main data-page="vehicle"></main> }
}
