//! An address under which the page can show or hand out bytes it holds; released when dropped.

use js_sys::{Array, ArrayBuffer};
use wasm_bindgen::JsValue;
use web_sys::{Blob, BlobPropertyBag, Url};

/// An object URL. The browser keeps the bytes in memory until this is dropped.
#[derive(Debug)]
pub struct ObjectUrl {
    url: String,
}

impl ObjectUrl {
    /// An address for a file or blob; none if the browser refuses it.
    pub fn of(blob: &Blob) -> Option<Self> {
        let url = Url::create_object_url_with_blob(blob).ok()?;
        Some(Self { url })
    }

    /// An address for a stored JPEG; none if the browser refuses it.
    pub fn jpeg(bytes: &ArrayBuffer) -> Option<Self> {
        let options = BlobPropertyBag::new();
        options.set_type("image/jpeg");
        let parts = Array::of1(bytes);
        let parts: &JsValue = parts.as_ref();
        let blob = Blob::new_with_buffer_source_sequence_and_options(parts, &options).ok()?;
        Self::of(&blob)
    }

    /// The address as an `img` or a link takes it.
    pub fn as_str(&self) -> &str {
        &self.url
    }
}

impl Drop for ObjectUrl {
    fn drop(&mut self) {
        // Fails only for an address that was never given out.
        drop(Url::revoke_object_url(&self.url));
    }
}
