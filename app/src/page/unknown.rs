//! An address that leads nowhere.

use leptos::prelude::*;

use crate::route::Route;

/// An address that leads nowhere.
#[component]
pub fn UnknownPage(
    /// The part of the address after the `#`.
    hash: String,
) -> impl IntoView {
    view! {
        <main class="page" data-page="unknown">
            <h1>"No page has this address"</h1>
            <p>"Asked for: “"{hash}"”. Nothing was changed; the book is as it was."</p>
            <a class="key key-main" href=Route::Book.href()>"To the day book"</a>
        </main>
    }
}
