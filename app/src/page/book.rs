//! The day book: every vehicle, the latest first.

use leptos::prelude::*;

/// The day book: every vehicle, the latest first.
#[component]
pub fn BookPage() -> impl IntoView {
    view! { <main data-page="book"></main> }
}
