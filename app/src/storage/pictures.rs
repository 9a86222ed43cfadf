//! Pictures as stored: bytes and thumbnail by digest, kept as buffers and handed out without copying into wasm.

use super::batch::NewPicture;
use super::error::StorageError;
use super::record::{buffer, number, record, text};
use super::request::Answer;
use super::shape::PICTURES;
use super::store::Store;
use super::transaction::{Mode, Transaction};
use js_sys::{Array, ArrayBuffer, Uint8Array};
use wasm_bindgen::JsValue;

/// A picture of the book.
#[derive(Clone, Debug)]
pub struct StoredPicture {
    /// The SHA-256 under which it was kept, in hexadecimal.
    pub digest: String,
    /// The JPEG as it is carried out.
    pub bytes: ArrayBuffer,
    /// The small JPEG for lists; may be empty.
    pub thumbnail: ArrayBuffer,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
}

impl Store {
    /// The picture of a digest; none if it was never here or was erased.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn picture(&self, digest: &str) -> Result<Option<StoredPicture>, StorageError> {
        let record = self
            .run(&[PICTURES], Mode::Read, async |transaction| {
                transaction.get(PICTURES, digest).await
            })
            .await?;
        if record.is_undefined() {
            return Ok(None);
        }
        Ok(self.readable(vec![picture_of(&record)]).pop())
    }

    /// The digests of all pictures here.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn picture_digests(&self) -> Result<Vec<String>, StorageError> {
        let keys = self
            .run(&[PICTURES], Mode::Read, async |transaction| {
                Answer::to(transaction.store(PICTURES)?.get_all_keys())?
                    .wait()
                    .await
            })
            .await?;
        Ok(self.readable(
            Array::from(&keys)
                .iter()
                .map(|key| key.as_string())
                .collect(),
        ))
    }
}

/// Puts a picture; the same digest again is the same picture again.
pub(super) fn put_picture(
    transaction: &Transaction,
    picture: &NewPicture,
) -> Result<(), StorageError> {
    let record = record(&[
        ("digest", JsValue::from_str(&picture.digest)),
        ("bytes", own_buffer(&picture.bytes)),
        ("thumbnail", own_buffer(&picture.thumbnail)),
        ("width", JsValue::from(picture.width)),
        ("height", JsValue::from(picture.height)),
    ])?;
    transaction.put(PICTURES, &record)
}

/// A buffer of exactly these bytes: the array's own may be larger, or be the memory of this program.
pub(super) fn own_buffer(bytes: &Uint8Array) -> JsValue {
    bytes.slice(0, bytes.length()).buffer().into()
}

fn picture_of(record: &JsValue) -> Option<StoredPicture> {
    Some(StoredPicture {
        digest: text(record, "digest")?,
        bytes: buffer(record, "bytes")?,
        thumbnail: buffer(record, "thumbnail")?,
        width: u32::try_from(number(record, "width")?).ok()?,
        height: u32::try_from(number(record, "height")?).ok()?,
    })
}
