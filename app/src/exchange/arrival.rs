//! A file on its way in: its bytes, once its size is one that can be held. What they say is judged by the core.

use super::error::FileError;
use js_sys::{ArrayBuffer, Uint8Array};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::File;

/// The largest file that is taken, in bytes.
pub const MOST_BYTES: u64 = 1_000_000_000;

/// Reads a file chosen in an `<input type=file accept=".zip,application/zip">`.
///
/// # Errors
/// The file is over [`MOST_BYTES`], could not be read, or does not fit the memory.
pub async fn read_file(file: &File) -> Result<Vec<u8>, FileError> {
    let (name, bytes) = (file.name(), file.size() as u64);
    if bytes > MOST_BYTES {
        return Err(FileError::TooLarge {
            name,
            bytes,
            most: MOST_BYTES,
        });
    }
    read(file).await.ok_or(FileError::Unreadable { name })
}

async fn read(file: &File) -> Option<Vec<u8>> {
    let buffer: ArrayBuffer = JsFuture::from(file.array_buffer())
        .await
        .ok()?
        .dyn_into()
        .ok()?;
    let array = Uint8Array::new(&buffer);
    let length = array.length() as usize;
    let mut bytes = Vec::new();
    // A plain allocation would end the program where memory is short.
    bytes.try_reserve_exact(length).ok()?;
    bytes.resize(length, 0);
    array.copy_to(&mut bytes);
    Some(bytes)
}
