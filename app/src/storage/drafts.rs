//! Drafts: typing not yet accepted and the picture being waited for. The one thing here that may change, and that
//! is never carried out.

use super::error::StorageError;
use super::record::{record, text};
use super::request::Answer;
use super::shape::DRAFTS;
use super::store::Store;
use super::transaction::Mode;
use js_sys::Array;
use wasm_bindgen::JsValue;
use web_sys::IdbKeyRange;

impl Store {
    /// Keeps a draft, as typed, in place of an older one of its name; returns after the transaction is complete.
    ///
    /// # Errors
    /// The draft was not kept.
    pub async fn put_draft(&self, name: &str, text: &str) -> Result<(), StorageError> {
        let draft = record(&[
            ("name", JsValue::from_str(name)),
            ("text", JsValue::from_str(text)),
        ])?;
        self.run(&[DRAFTS], Mode::Write, async |transaction| {
            transaction.put(DRAFTS, &draft)
        })
        .await
    }

    /// The text of the draft of a name, if there is one.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn draft(&self, name: &str) -> Result<Option<String>, StorageError> {
        let record = self
            .run(&[DRAFTS], Mode::Read, async |transaction| {
                transaction.get(DRAFTS, name).await
            })
            .await?;
        if record.is_undefined() {
            return Ok(None);
        }
        Ok(self.readable(vec![text(&record, "text")]).pop())
    }

    /// Every draft whose name begins so, with its text.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn drafts(&self, beginning: &str) -> Result<Vec<(String, String)>, StorageError> {
        let last = format!("{beginning}\u{ffff}");
        let range = IdbKeyRange::bound(&beginning.into(), &last.into())
            .map_err(|thrown| StorageError::from_js(&thrown))?;
        let records = self
            .run(&[DRAFTS], Mode::Read, async |transaction| {
                Answer::to(transaction.store(DRAFTS)?.get_all_with_key(&range))?
                    .wait()
                    .await
            })
            .await?;
        let read = |record| Some((text(&record, "name")?, text(&record, "text")?));
        Ok(self.readable(Array::from(&records).iter().map(read).collect()))
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
