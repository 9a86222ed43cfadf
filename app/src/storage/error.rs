//! What can go wrong when the book is kept: each case, and the sentence that says what it means for the work done.

use std::fmt;
use wasm_bindgen::{JsCast, JsValue};

/// Why the book could not be kept or read. Nothing that was said to be saved is lost by any of these.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageError {
    /// The browser gives no access to the book.
    Refused(Refusal),
    /// The device or the browser's share of it is full; the batch was not kept, wholly and not in part.
    Full,
    /// The browser closed the connection, and opening it once more did not help.
    Gone,
    /// Another tab runs a newer Cartside and has changed the form of the book.
    Newer,
    /// Pictures put beside the book were cleared away by another tab before they could be taken up.
    Cleared,
    /// Anything else, in the browser's own words.
    Other {
        /// The browser's name of the fault and its message.
        what: String,
    },
}

/// Why the browser gives no access.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Another tab holds the book open and does not let go.
    Blocked,
    /// There is no storage for this page: a private window, or storage switched off.
    Unavailable,
}

impl fmt::Display for StorageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused(Refusal::Blocked) => f.write_str(
                "Another tab holds the book and does not let go. Everything said to be saved is kept. \
                 Close the other tabs of Cartside and try again.",
            ),
            Self::Refused(Refusal::Unavailable) => f.write_str(
                "This browser gives Cartside no place to keep the book: a private window, or storage is \
                 switched off. Nothing new was saved, and nothing saved before was touched. Open Cartside in \
                 an ordinary window, or allow it to store data.",
            ),
            Self::Full => f.write_str(
                "There is no room left for the book on this device. The last step was not saved; everything \
                 said to be saved before is kept. Carry the book out, make room, and save again.",
            ),
            Self::Gone => f.write_str(
                "The browser closed the book and would not open it again. The last step was not saved; \
                 everything said to be saved before is kept. Reload Cartside and try again.",
            ),
            Self::Newer => f.write_str(
                "Another tab has opened the book with a newer Cartside. The last step was not saved here; \
                 everything said to be saved before is kept. Reload this tab.",
            ),
            Self::Cleared => f.write_str(
                "Another tab has cleared away the pictures that were being brought in. Nothing was brought in; the \
                 book is as it was. Close the other tabs and bring the file in again.",
            ),
            Self::Other { what } => write!(
                f,
                "The book could not be reached (the browser says: {what}). The last step was not saved; \
                 everything said to be saved before is kept. Try again, or reload Cartside."
            ),
        }
    }
}

impl std::error::Error for StorageError {}

impl StorageError {
    /// The case that a value thrown or handed over by the browser stands for.
    pub(super) fn from_js(thrown: &JsValue) -> Self {
        let (name, message) = name_and_message(thrown);
        match name.as_str() {
            "QuotaExceededError" => Self::Full,
            "VersionError" => Self::Newer,
            "SecurityError" | "NotAllowedError" => Self::Refused(Refusal::Unavailable),
            // WebKit says UnknownError when its storage process was ended under the page.
            "AbortError" | "InvalidStateError" | "UnknownError" => Self::Gone,
            _ => Self::Other {
                what: format!("{name} {message}").trim().to_owned(),
            },
        }
    }

    /// The same at the first opening, where no connection can have been lost: there is none to be had.
    pub(super) fn at_first(self) -> Self {
        match self {
            Self::Gone => Self::Refused(Refusal::Unavailable),
            other => other,
        }
    }

    /// A fault in the browser's own words where it gave none.
    pub(super) fn other(what: &str) -> Self {
        Self::Other {
            what: what.to_owned(),
        }
    }
}

fn name_and_message(thrown: &JsValue) -> (String, String) {
    if let Some(exception) = thrown.dyn_ref::<web_sys::DomException>() {
        return (exception.name(), exception.message());
    }
    match thrown.dyn_ref::<js_sys::Error>() {
        Some(error) => (String::from(error.name()), String::from(error.message())),
        None => (String::new(), thrown.as_string().unwrap_or_default()),
    }
}
