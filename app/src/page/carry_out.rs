//! Carry the book out as a file.

use leptos::prelude::*;

/// Carry the book out as a file.
#[component]
pub fn CarryOutPage() -> impl IntoView {
    view! { <main data-page="carry-out"></main> }
}
