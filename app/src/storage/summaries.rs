//! Summaries: one text a vehicle, made by the core so that a list need not read the whole book. Rebuildable.

use super::error::StorageError;
use super::record::{number, record, text};
use super::request::Answer;
use super::shape::SUMMARIES;
use super::store::Store;
use super::transaction::{Mode, Transaction};
use js_sys::Array;
use wasm_bindgen::JsValue;

impl Store {
    /// All summaries: the vehicle, the schema of the text, the text.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn summaries(&self) -> Result<Vec<(String, u32, String)>, StorageError> {
        let records = self
            .run(&[SUMMARIES], Mode::Read, async |transaction| {
                Answer::to(transaction.store(SUMMARIES)?.get_all())?
                    .wait()
                    .await
            })
            .await?;
        Ok(self.readable(
            Array::from(&records)
                .iter()
                .map(|record| summary_of(&record))
                .collect(),
        ))
    }
}

/// Puts a vehicle's summary in place of an older one.
pub(super) fn put_summary(
    transaction: &Transaction,
    vehicle: &str,
    schema: u32,
    text: &str,
) -> Result<(), StorageError> {
    let summary = record(&[
        ("vehicle", JsValue::from_str(vehicle)),
        ("schema", JsValue::from(schema)),
        ("text", JsValue::from_str(text)),
    ])?;
    transaction.put(SUMMARIES, &summary)
}

fn summary_of(record: &JsValue) -> Option<(String, u32, String)> {
    let schema = u32::try_from(number(record, "schema")?).ok()?;
    Some((text(record, "vehicle")?, schema, text(record, "text")?))
}
