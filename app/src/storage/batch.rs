//! Saving: everything of one step in one transaction, wholly or not at all.

use super::entries::{greatest_arrival, put_line};
use super::error::StorageError;
use super::meta::put as put_meta;
use super::other_tabs;
use super::pictures::{StoredPicture, put_picture};
use super::shape::{DRAFTS, ENTRIES, META, PICTURES, SUMMARIES};
use super::store::Store;
use super::summaries::put_summary;
use super::transaction::{Mode, Transaction};
use js_sys::Uint8Array;

/// What one step keeps. Only lines and pictures are the book; the rest can be made again.
#[derive(Clone, Debug, Default)]
pub struct Batch {
    /// Lines to add; one that is there already stays as it is.
    pub lines: Vec<NewLine>,
    /// Pictures to keep.
    pub pictures: Vec<NewPicture>,
    /// Summaries to put in place of older ones: the vehicle, the schema of the text, the text.
    pub summaries: Vec<(String, u32, String)>,
    /// Names of drafts that this step has taken up.
    pub drop_drafts: Vec<String>,
    /// Digests of pictures whose bytes and thumbnail go.
    pub erase_pictures: Vec<String>,
    /// What the device keeps of its own, by name.
    pub put_metas: Vec<(String, String)>,
    /// Names of what the device no longer keeps.
    pub drop_metas: Vec<String>,
    /// Names of what the device must still keep, and does not keep any longer after this step.
    pub take_up: Vec<String>,
}

impl Batch {
    /// Only the book: lines and pictures, and pictures that go.
    fn of_the_book(self) -> Batch {
        Batch {
            lines: self.lines,
            pictures: self.pictures,
            erase_pictures: self.erase_pictures,
            ..Batch::default()
        }
    }
}

/// A line of the book with what it is looked up by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewLine {
    /// The line's SHA-256 in hexadecimal.
    pub id: String,
    /// The entry that begins its vehicle (the own id if it is that entry), or [`HOUSE`].
    ///
    /// [`HOUSE`]: super::HOUSE
    pub vehicle: String,
    /// The counter of the book that the line carries; one above 2^53 − 1 counts as that.
    pub n: u64,
    /// The line itself, byte for byte.
    pub line: String,
}

/// A picture to keep.
#[derive(Clone, Debug)]
pub struct NewPicture {
    /// The SHA-256 of `bytes` in hexadecimal.
    pub digest: String,
    /// The JPEG as it is carried out.
    pub bytes: Uint8Array,
    /// The small JPEG for lists; may be empty, never carried out.
    pub thumbnail: Uint8Array,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
}

impl NewPicture {
    /// A stored picture, to be kept again.
    pub fn again(stored: &StoredPicture) -> NewPicture {
        NewPicture {
            digest: stored.digest.clone(),
            bytes: Uint8Array::new(&stored.bytes),
            thumbnail: Uint8Array::new(&stored.thumbnail),
            width: stored.width,
            height: stored.height,
        }
    }
}

/// What a completed save has done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Saved {
    /// How many of the lines were not in the book before.
    pub new_lines: usize,
    /// The greatest arrival before this step.
    pub before: u64,
    /// The greatest arrival after it.
    pub reached: u64,
}

impl Store {
    /// Keeps the whole batch in one transaction with strict durability, and returns only after the browser has
    /// said that it is complete, and where the book is kept twice in both places: this, and nothing earlier, is
    /// *saved*. Other tabs are then told.
    ///
    /// # Errors
    /// On any of them nothing of the batch was kept. Saving the same batch again is safe.
    pub async fn save(&self, batch: Batch) -> Result<Saved, StorageError> {
        let saved = self.put(&batch).await?;
        let tell = !batch.lines.is_empty();
        if let Some(second) = self.second()
            && second.put(&batch.of_the_book()).await.is_err()
        {
            // What is saved is saved. The next start finds that the second place lacks it, and mends that.
            self.keep_once();
        }
        if tell {
            other_tabs::tell(self.which());
        }
        Ok(saved)
    }

    async fn put(&self, batch: &Batch) -> Result<Saved, StorageError> {
        let stores = [ENTRIES, PICTURES, SUMMARIES, DRAFTS, META];
        self.run(&stores, Mode::Write, async |transaction| {
            put_batch(transaction, batch).await
        })
        .await
    }
}

async fn put_batch(transaction: &Transaction, batch: &Batch) -> Result<Saved, StorageError> {
    let taken_up: Vec<&str> = batch.take_up.iter().map(String::as_str).collect();
    if transaction.present(META, &taken_up).await?.contains(&false) {
        return Err(StorageError::Cleared);
    }
    let saved = add_lines(transaction, &batch.lines).await?;
    for picture in &batch.pictures {
        put_picture(transaction, picture)?;
    }
    for digest in &batch.erase_pictures {
        transaction.delete(PICTURES, digest)?;
    }
    for (vehicle, schema, text) in &batch.summaries {
        put_summary(transaction, vehicle, *schema, text)?;
    }
    for name in &batch.drop_drafts {
        transaction.delete(DRAFTS, name)?;
    }
    for name in batch.drop_metas.iter().chain(&batch.take_up) {
        transaction.delete(META, name)?;
    }
    for (name, value) in &batch.put_metas {
        put_meta(transaction, name, value)?;
    }
    Ok(saved)
}

/// The union: puts the lines that are not there, each once, numbered on from the last arrival.
async fn add_lines(transaction: &Transaction, lines: &[NewLine]) -> Result<Saved, StorageError> {
    let before = greatest_arrival(transaction).await?;
    let ids: Vec<&str> = lines.iter().map(|line| line.id.as_str()).collect();
    let present = transaction.present(ENTRIES, &ids).await?;
    let missing = lines.iter().zip(present).filter(|(_, there)| !there);
    // Sorted, since a table of hashes is code that nothing else here needs.
    let mut missing: Vec<(&str, usize, &NewLine)> = missing
        .enumerate()
        .map(|(at, (line, _))| (line.id.as_str(), at, line))
        .collect();
    missing.sort_unstable_by_key(|(id, at, _)| (*id, *at));
    missing.dedup_by_key(|(id, _, _)| *id);
    missing.sort_unstable_by_key(|(_, at, _)| *at);
    let mut reached = before;
    for (_, _, line) in &missing {
        reached += 1;
        put_line(transaction, line, reached)?;
    }
    Ok(Saved {
        new_lines: missing.len(),
        before,
        reached,
    })
}
