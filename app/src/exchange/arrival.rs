//! A file on its way in: one piece of it at a time. What the pieces say is judged by the core.

use std::ops::Range;

use super::error::FileError;
use js_sys::{ArrayBuffer, Uint8Array};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::File;

/// Reads a piece of a file chosen in an `<input type=file accept=".zip,application/zip">`.
///
/// # Errors
/// The piece could not be read, or does not fit the memory.
pub async fn read_piece(file: &File, piece: Range<u64>) -> Result<Vec<u8>, FileError> {
    let read = read(file, piece).await;
    read.ok_or_else(|| FileError::Unreadable { name: file.name() })
}

async fn read(file: &File, piece: Range<u64>) -> Option<Vec<u8>> {
    let (start, end) = (piece.start as f64, piece.end as f64);
    let piece = file.slice_with_f64_and_f64(start, end).ok()?;
    let buffer: ArrayBuffer = JsFuture::from(piece.array_buffer())
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
