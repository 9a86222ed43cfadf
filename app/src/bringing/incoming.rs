//! A file that has been read and holds: its lines and pictures, not yet compared with the book.

use cartside_core::daybook::{Digest, Entry};
use cartside_core::paper::exchange;
use js_sys::Uint8Array;
use web_sys::File;

use crate::exchange::read_file;
use crate::workshop::Step;

/// What a sound file holds.
pub struct Incoming {
    /// The device that made it.
    pub device: String,
    /// When it was made, as that device's clock claimed.
    pub made_at: String,
    /// Its entries with their lines, each once.
    pub lines: Vec<(Entry, String)>,
    /// Its pictures by digest, held by the browser and not in this program's own memory.
    pub pictures: Vec<(Digest, Uint8Array)>,
    /// What is worth knowing about it all the same.
    pub warnings: Vec<String>,
}

/// Reads a file and looks at all that it holds.
///
/// # Errors
/// What is wrong with it, in the core's sentence. Nothing was brought in.
pub async fn read(file: &File) -> Step<Incoming> {
    let bytes = read_file(file).await.map_err(|error| error.to_string())?;
    let verified = exchange::open(&bytes).and_then(exchange::Unverified::verify);
    let verified = verified.map_err(|refused| refused.to_string())?;
    let manifest = verified.manifest();
    Ok(Incoming {
        device: manifest.device.clone(),
        made_at: manifest.made_at.clone(),
        lines: verified
            .entries()
            .map(|(entry, line)| (entry.clone(), line.to_owned()))
            .collect(),
        pictures: verified
            .pictures()
            .iter()
            .map(|picture| (picture.digest, Uint8Array::from(picture.bytes.as_ref())))
            .collect(),
        warnings: verified
            .warnings()
            .iter()
            .map(ToString::to_string)
            .collect(),
    })
}
