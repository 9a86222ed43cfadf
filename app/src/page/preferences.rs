//! Preferences: units and who is looking.

use leptos::prelude::*;

/// Preferences: units and who is looking.
#[component]
pub fn PreferencesPage() -> impl IntoView {
    view! { <main data-page="preferences"></main> }
}
