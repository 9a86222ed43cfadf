//! What this device knows of its own book: short texts by name, such as the age of the last carrying out.

use super::error::StorageError;
use super::record::{record, text};
use super::shape::META;
use super::store::Store;
use super::transaction::{Mode, Transaction};
use wasm_bindgen::JsValue;

impl Store {
    /// The text kept under a name, if there is one.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn meta(&self, name: &str) -> Result<Option<String>, StorageError> {
        self.run(&[META], Mode::Read, async |transaction| {
            Ok(text(&transaction.get(META, name).await?, "value"))
        })
        .await
    }

    /// Keeps a text under a name in place of an older one; returns after the transaction is complete.
    ///
    /// # Errors
    /// The text was not kept.
    pub async fn put_meta(&self, name: &str, value: &str) -> Result<(), StorageError> {
        self.run(&[META], Mode::Write, async |transaction| {
            put(transaction, name, value)
        })
        .await
    }
}

/// Puts a text under a name within a transaction.
pub(super) fn put(transaction: &Transaction, name: &str, value: &str) -> Result<(), StorageError> {
    let record = record(&[
        ("name", JsValue::from_str(name)),
        ("value", JsValue::from_str(value)),
    ])?;
    transaction.put(META, &record)
}
