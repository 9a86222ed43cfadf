//! Begin a vehicle in four taps.

use leptos::prelude::*;

/// Begin a vehicle in four taps.
#[component]
pub fn BeginPage() -> impl IntoView {
    view! { <main data-page="begin"></main> }
}
