//! The room the browser gives: whether it promises not to clear the book, and how much it has left.

use js_sys::{Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

/// Whether the browser promises to keep the book until the user removes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Promised {
    /// It does.
    Yes,
    /// It may clear the book when room is short or the page is long unused.
    No,
    /// It cannot be asked.
    Unknown,
}

/// What the browser says of the room, in bytes. No promise: a save can still find the device full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Taken by this page, everything counted.
    pub used: f64,
    /// The most this page may take.
    pub allowed: f64,
}

/// Asks the browser to keep the book. Best asked after the first saved entry, and never waited for by anything else:
/// some browsers ask the user first and answer only when they have.
pub async fn ask_to_keep() -> Promised {
    answer(manager().and_then(|manager| manager.persist().ok())).await
}

/// Whether the browser has promised already; asks nobody.
pub async fn is_kept() -> Promised {
    answer(manager().and_then(|manager| manager.persisted().ok())).await
}

/// The room as the browser estimates it; none where it does not say.
pub async fn room() -> Option<Room> {
    let estimate = JsFuture::from(manager()?.estimate().ok()?).await.ok()?;
    let bytes = |name: &str| Reflect::get(&estimate, &name.into()).ok()?.as_f64();
    Some(Room {
        used: bytes("usage")?,
        allowed: bytes("quota")?,
    })
}

async fn answer(asked: Option<Promise>) -> Promised {
    let Some(asked) = asked else {
        return Promised::Unknown;
    };
    match JsFuture::from(asked)
        .await
        .ok()
        .and_then(|yes: JsValue| yes.as_bool())
    {
        Some(true) => Promised::Yes,
        Some(false) => Promised::No,
        None => Promised::Unknown,
    }
}

/// Absent outside a secure context and in older browsers.
fn manager() -> Option<StorageManager> {
    let storage = web_sys::window()?.navigator().storage();
    let there: &JsValue = storage.as_ref();
    there.is_object().then(|| storage.unchecked_into())
}
