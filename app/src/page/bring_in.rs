//! Bring a file in, after showing what it would add.

use leptos::prelude::*;

/// Bring a file in, after showing what it would add.
#[component]
pub fn BringInPage() -> impl IntoView {
    view! { <main data-page="bring-in"></main> }
}
