//! One part: its readings, remarks and pictures.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::Part;
use leptos::prelude::*;

/// One part: its readings, remarks and pictures.
#[component]
pub fn PartPage(
    /// The id.
    id: EntryId,
    /// The of.
    of: Part,
) -> impl IntoView {
    let _ = id;
    let _ = of;
    view! { <main data-page="part"></main> }
}
