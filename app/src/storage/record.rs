//! Stored records as the browser hands them over: fields written, and fields read back without trusting them.

use super::error::StorageError;
use js_sys::{ArrayBuffer, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};

/// The greatest whole number that the browser's numbers hold exactly, 2^53 − 1.
pub(super) const GREATEST: u64 = 9_007_199_254_740_991;

/// A record of the given fields.
pub(super) fn record(fields: &[(&str, JsValue)]) -> Result<JsValue, StorageError> {
    let object = Object::new();
    for (name, value) in fields {
        Reflect::set(&object, &JsValue::from_str(name), value)
            .map_err(|thrown| StorageError::from_js(&thrown))?;
    }
    Ok(object.into())
}

/// A whole number as it is stored; one beyond [`GREATEST`] is stored as that.
pub(super) fn stored(number: u64) -> JsValue {
    JsValue::from_f64(number.min(GREATEST) as f64)
}

/// A text field, if it is there and is text.
pub(super) fn text(record: &JsValue, name: &str) -> Option<String> {
    field(record, name)?.as_string()
}

/// A field that holds a whole number from 0 to [`GREATEST`].
pub(super) fn number(record: &JsValue, name: &str) -> Option<u64> {
    whole(&field(record, name)?)
}

/// A field that holds bytes.
pub(super) fn buffer(record: &JsValue, name: &str) -> Option<ArrayBuffer> {
    field(record, name)?.dyn_into().ok()
}

/// A key or value that is a whole number from 0 to [`GREATEST`].
pub(super) fn whole(value: &JsValue) -> Option<u64> {
    let number = value.as_f64()?;
    let allowed = number.fract() == 0.0 && (0.0..=GREATEST as f64).contains(&number);
    allowed.then_some(number as u64)
}

fn field(record: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(record, &JsValue::from_str(name)).ok()
}
