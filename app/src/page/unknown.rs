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

/// The address of a vehicle of which this book holds nothing: nothing may be written about it here.
#[component]
pub fn NoVehiclePage() -> impl IntoView {
    view! {
        <main class="page" data-page="unknown">
            <h1>"This vehicle is not in the book"</h1>
            <p>
                "Nothing is written about it here. If it is on another device, carry that book out and bring it in here. Nothing was changed; the book is as it was."
            </p>
            <a class="key key-main" href=Route::Book.href()>"To the day book"</a>
        </main>
    }
}
