//! Drafts: typing not yet accepted and the picture being waited for. The one thing here that may change, and that
//! is never carried out.

use super::error::StorageError;
use super::pictures::own_buffer;
use super::record::{buffer, record, text};
use super::request::Answer;
use super::shape::DRAFTS;
use super::store::Store;
use super::transaction::Mode;
use js_sys::{Array, ArrayBuffer, Uint8Array};
use wasm_bindgen::JsValue;

/// A draft.
#[derive(Clone, Debug)]
pub struct Draft {
    /// The name under which it is found again.
    pub name: String,
    /// What was typed, as typed.
    pub text: String,
    /// Bytes kept with it, such as a picture not yet accepted.
    pub bytes: Option<ArrayBuffer>,
}

impl Store {
    /// Keeps a draft in place of an older one of its name; returns after the transaction is complete.
    ///
    /// # Errors
    /// The draft was not kept.
    pub async fn put_draft(
        &self,
        name: &str,
        text: &str,
        bytes: Option<&Uint8Array>,
    ) -> Result<(), StorageError> {
        let bytes = bytes.map_or(JsValue::UNDEFINED, own_buffer);
        let draft = record(&[
            ("name", JsValue::from_str(name)),
            ("text", JsValue::from_str(text)),
            ("bytes", bytes),
        ])?;
        self.run(&[DRAFTS], Mode::Write, async |transaction| {
            transaction.put(DRAFTS, &draft)
        })
        .await
    }

    /// The draft of a name, if there is one.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn draft(&self, name: &str) -> Result<Option<Draft>, StorageError> {
        let record = self
            .run(&[DRAFTS], Mode::Read, async |transaction| {
                transaction.get(DRAFTS, name).await
            })
            .await?;
        if record.is_undefined() {
            return Ok(None);
        }
        Ok(self.readable(vec![draft_of(&record)]).pop())
    }

    /// All drafts, by name.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn drafts(&self) -> Result<Vec<Draft>, StorageError> {
        let records = self
            .run(&[DRAFTS], Mode::Read, async |transaction| {
                Answer::to(transaction.store(DRAFTS)?.get_all())?
                    .wait()
                    .await
            })
            .await?;
        Ok(self.readable(
            Array::from(&records)
                .iter()
                .map(|record| draft_of(&record))
                .collect(),
        ))
    }

    /// Drops a draft; one that is not there is no fault.
    ///
    /// # Errors
    /// The draft was not dropped.
    pub async fn delete_draft(&self, name: &str) -> Result<(), StorageError> {
        self.run(&[DRAFTS], Mode::Write, async |transaction| {
            transaction.delete(DRAFTS, name)
        })
        .await
    }
}

fn draft_of(record: &JsValue) -> Option<Draft> {
    Some(Draft {
        name: text(record, "name")?,
        text: text(record, "text")?,
        bytes: buffer(record, "bytes"),
    })
}
