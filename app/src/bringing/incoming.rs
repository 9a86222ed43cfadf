//! A file that has been read and holds: its lines, and where in the file its pictures lie; not yet compared with the
//! book.

use std::borrow::Cow;

use cartside_core::paper::exchange::{Checked, PictureMember, Reading, Refused};
use js_sys::Uint8Array;
use web_sys::File;

use crate::carrying::Met;
use crate::exchange::read_piece;
use crate::progress::Progress;
use crate::workshop::Step;

/// A sound file.
pub struct Incoming {
    file: File,
    /// What it holds, but for the bytes of its pictures.
    pub holds: Checked,
}

/// Reads a file piece by piece and looks at all that it holds.
///
/// # Errors
/// What is wrong with it, in the core's sentence, or it is to stop. Nothing was brought in.
pub async fn read(file: File, progress: Progress) -> Step<Incoming> {
    progress.begin("Reading the file…");
    let mut reading = Reading::begin(file.size() as u64).map_err(told)?;
    while let Some(piece) = reading.wants() {
        let (done, of) = reading.pictures();
        progress.step(done, of)?;
        let bytes = read_piece(&file, piece).await;
        let bytes = bytes.map_err(|error| error.to_string())?;
        reading.give(bytes).map_err(told)?;
    }
    let holds = reading.checked().ok_or(Refused::DirectoryBroken);
    let holds = holds.map_err(told)?;
    Ok(Incoming { file, holds })
}

impl Incoming {
    /// The bytes of one of its pictures, read once more; they are the ones that were looked at.
    ///
    /// # Errors
    /// The file has changed since, or cannot be read any more.
    pub async fn picture(&self, picture: &PictureMember) -> Step<Uint8Array> {
        let packed = read_piece(&self.file, picture.range()).await;
        let packed = Cow::Owned(packed.map_err(|error| error.to_string())?);
        let bytes = picture.unpack(packed).map_err(told)?;
        Ok(Uint8Array::from(bytes.as_ref()))
    }

    /// The device that made it.
    pub fn from(&self) -> Met {
        let manifest = self.holds.manifest();
        let device = &manifest.device;
        let own = self.holds.entries().map(|(entry, _)| entry);
        let last = own
            .filter(|entry| entry.device == *device)
            .max_by_key(|entry| entry.n);
        Met {
            device: device.clone(),
            day: manifest.made_at.chars().take(10).collect(),
            who: last.map_or_else(String::new, |entry| entry.by.clone()),
            ..Met::default()
        }
    }
}

fn told(refused: Refused) -> String {
    refused.to_string()
}
