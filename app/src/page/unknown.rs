//! An address that leads nowhere.

use crate::markup::{Piece, sheet};
use crate::route::Route;

/// An address that leads nowhere: the part of it after the `#`.
pub fn page(hash: &str) -> Piece {
    leads_nowhere(
        "No page has this address",
        format!("Asked for: “{hash}”. Nothing was changed; the book is as it was."),
    )
}

/// The address of a vehicle of which this book holds nothing: nothing may be written about it here.
pub fn no_vehicle() -> Piece {
    leads_nowhere(
        "This vehicle is not in the book",
        "Nothing is written about it here. If it is on another device, carry that book out and bring it in here. Nothing was changed; the book is as it was.".to_owned(),
    )
}

fn leads_nowhere(heading: &'static str, words: String) -> Piece {
    sheet!(
        "<main class=page data-page=unknown><h1>{}</h1><p>{}</p>\
        <a class=\"key key-main\" href={}>To the day book</a></main>",
        heading,
        words,
        Route::Book.href(),
    )
}
