//! What this device knows of its own book: short texts by name, such as the age of the last carrying out.

use super::error::StorageError;
use super::record::{record, text};
use super::request::Answer;
use super::shape::META;
use super::store::Store;
use super::transaction::{Mode, Transaction};
use js_sys::Array;
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

    /// Every text whose name begins so, with its name.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn metas(&self, beginning: &str) -> Result<Vec<(String, String)>, StorageError> {
        self.run(&[META], Mode::Read, async |transaction| {
            all(transaction, beginning).await
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

/// Every text whose name begins so, with its name, within a transaction.
pub(super) async fn all(
    transaction: &Transaction,
    beginning: &str,
) -> Result<Vec<(String, String)>, StorageError> {
    let request = transaction.store(META)?.get_all();
    let records = Array::from(&Answer::to(request)?.wait().await?);
    // The device keeps a handful of them, so all are read.
    let told = |record: JsValue| Some((text(&record, "name")?, text(&record, "value")?));
    let told = records.iter().filter_map(told);
    Ok(told
        .filter(|(name, _)| name.starts_with(beginning))
        .collect())
}
