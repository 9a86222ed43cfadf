//! A second place for the book, apart from the first: a storage bucket, which has files of its own.
//!
//! Chromium keeps all databases of a host in one log. Killed between the two halves of a record it goes on behind the
//! torn one at its next start, and at the start after that finds that a sum does not agree ("checksum mismatch"), throws the
//! whole log away, and with it every database of the host. A log that is written at another moment is not torn by
//! the same kill. Where a browser knows no buckets (the Storage Buckets API of the W3C's WICG) there is no second
//! place; those browsers keep databases in another way.

use super::error::StorageError;
use super::record::whole;
use super::request::Answer;
use super::shape::{ENTRIES, PICTURES, Which};
use super::store::Store;
use super::transaction::Mode;
use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::IdbFactory;

/// The name of the bucket.
const BUCKET: &str = "second";

/// How much a store holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Held {
    /// How many lines.
    pub lines: u64,
    /// How many pictures.
    pub pictures: u64,
}

/// Opens the book in its second place; `None` where the browser has none, or does not let it be opened.
pub async fn open_second(which: Which) -> Option<Store> {
    let place = place().await?;
    Store::open_in(which, Some(place)).await.ok()
}

async fn place() -> Option<IdbFactory> {
    let navigator = web_sys::window()?.navigator();
    let buckets = Reflect::get(&navigator, &"storageBuckets".into()).ok()?;
    let open: Function = Reflect::get(&buckets, &"open".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let wanted = Object::new();
    Reflect::set(&wanted, &"persisted".into(), &JsValue::TRUE).ok()?;
    Reflect::set(&wanted, &"durability".into(), &"strict".into()).ok()?;
    let asked: Promise = open
        .call2(&buckets, &BUCKET.into(), &wanted)
        .ok()?
        .dyn_into()
        .ok()?;
    let bucket = JsFuture::from(asked).await.ok()?;
    let place = Reflect::get(&bucket, &"indexedDB".into()).ok()?;
    place.is_object().then(|| place.unchecked_into())
}

impl Store {
    /// How much it holds.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn held(&self) -> Result<Held, StorageError> {
        self.run(&[ENTRIES, PICTURES], Mode::Read, async |transaction| {
            let lines = Answer::to(transaction.store(ENTRIES)?.count())?;
            let pictures = Answer::to(transaction.store(PICTURES)?.count())?;
            Ok(Held {
                lines: whole(&lines.wait().await?).unwrap_or_default(),
                pictures: whole(&pictures.wait().await?).unwrap_or_default(),
            })
        })
        .await
    }
}
