//! An address that leads nowhere.

use leptos::prelude::*;

/// An address that leads nowhere.
#[component]
pub fn UnknownPage(
    /// The hash.
    hash: String,
) -> impl IntoView {
    let _ = &hash;
    view! { <main data-page="unknown"></main> }
}
