//! Entries as stored: each line with its id, vehicle, arrival and n. Lines are added and never changed.

use super::batch::NewLine;
use super::error::StorageError;
use super::record::{GREATEST, number, record, stored, text, whole};
use super::request::Answer;
use super::shape::{BY_ARRIVAL, BY_N, BY_VEHICLE, ENTRIES};
use super::store::Store;
use super::transaction::{Mode, Transaction};
use js_sys::{Array, Reflect};
use wasm_bindgen::JsValue;
use web_sys::{IdbCursorDirection, IdbKeyRange};

/// The vehicle under which entries of the house are kept, such as limits.
pub const HOUSE: &str = "house";

/// Some of the book's lines in the order in which they reached this device.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chunk {
    /// Each line after its arrival number.
    pub lines: Vec<(u64, String)>,
    /// Where the next chunk begins; none after the last.
    pub next: Option<u64>,
}

impl Store {
    /// All lines of a vehicle, in the order of their arrival.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn vehicle_lines(&self, vehicle: &str) -> Result<Vec<String>, StorageError> {
        let records = self
            .run(&[ENTRIES], Mode::Read, async |transaction| {
                let index = transaction.index(ENTRIES, BY_VEHICLE)?;
                Answer::to(index.get_all_with_key(&JsValue::from_str(vehicle)))?
                    .wait()
                    .await
            })
            .await?;
        let mut lines = self.lines_of(&records);
        lines.sort_unstable_by_key(|(arrival, _)| *arrival);
        Ok(lines.into_iter().map(|(_, line)| line).collect())
    }

    /// At most `limit` lines whose arrival is `from` or later. A whole book is read by starting at 0 and going
    /// on from [`Chunk::next`] until there is none.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn all_lines(&self, from: u64, limit: u32) -> Result<Chunk, StorageError> {
        let limit = limit.max(1);
        let records = self
            .run(&[ENTRIES], Mode::Read, async |transaction| {
                let index = transaction.index(ENTRIES, BY_ARRIVAL)?;
                let later = numbers_from(from)?;
                Answer::to(index.get_all_with_key_and_limit(&later, limit))?
                    .wait()
                    .await
            })
            .await?;
        Ok(Chunk {
            next: next_chunk(&records, limit),
            lines: self.lines_of(&records),
        })
    }

    /// The greatest counter *n* of any line of the book; 0 in an empty book.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn greatest_n(&self) -> Result<u64, StorageError> {
        self.greatest_of(BY_N).await
    }

    /// The greatest arrival number of any line: as long as it stays, nothing has been added to the book. 0 in an
    /// empty book.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn reached(&self) -> Result<u64, StorageError> {
        self.greatest_of(BY_ARRIVAL).await
    }

    async fn greatest_of(&self, index: &str) -> Result<u64, StorageError> {
        self.run(&[ENTRIES], Mode::Read, async |transaction| {
            greatest(transaction, index).await
        })
        .await
    }

    /// Every vehicle that any line belongs to, if there are other than so many lines of them; else none, so that the
    /// usual book is not walked through.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn vehicles_beyond(&self, lines: usize) -> Result<Vec<String>, StorageError> {
        self.run(&[ENTRIES], Mode::Read, async |transaction| {
            let index = transaction.index(ENTRIES, BY_VEHICLE)?;
            let all = Answer::to(index.count())?;
            let house = Answer::to(index.count_with_key(&JsValue::from_str(HOUSE)))?;
            let count = |count: JsValue| whole(&count).unwrap_or_default();
            let (all, house) = (count(all.wait().await?), count(house.wait().await?));
            let mut vehicles: Vec<String> = Vec::new();
            let mut more = all != house + lines as u64;
            while more {
                // Each asks for the first key after the last, so that the entries between are passed over.
                let after = vehicles.last().map_or("", String::as_str);
                let range = IdbKeyRange::lower_bound_with_open(&JsValue::from_str(after), true)
                    .map_err(|thrown| StorageError::from_js(&thrown))?;
                let request = index.open_key_cursor_with_range(&range);
                let cursor = Answer::to(request)?.wait().await?;
                let key = Reflect::get(&cursor, &"key".into()).unwrap_or_default();
                more = key.is_string();
                vehicles.extend(key.as_string());
            }
            Ok(vehicles)
        })
        .await
    }

    /// For each id whether its line is in the book, in the order asked.
    ///
    /// # Errors
    /// The book cannot be reached.
    pub async fn has(&self, ids: &[String]) -> Result<Vec<bool>, StorageError> {
        self.run(&[ENTRIES], Mode::Read, async |transaction| {
            let ids: Vec<&str> = ids.iter().map(String::as_str).collect();
            transaction.present(ENTRIES, &ids).await
        })
        .await
    }

    fn lines_of(&self, records: &JsValue) -> Vec<(u64, String)> {
        let read = Array::from(records)
            .iter()
            .map(|record| Some((number(&record, "arrival")?, text(&record, "line")?)))
            .collect();
        self.readable(read)
    }
}

/// Puts one line; the caller has seen that it is not there.
pub(super) fn put_line(
    transaction: &Transaction,
    line: &NewLine,
    arrival: u64,
) -> Result<(), StorageError> {
    let record = record(&[
        ("id", JsValue::from_str(&line.id)),
        ("vehicle", JsValue::from_str(&line.vehicle)),
        ("arrival", stored(arrival)),
        ("n", stored(line.n)),
        ("line", JsValue::from_str(&line.line)),
    ])?;
    transaction.put(ENTRIES, &record)
}

/// The greatest arrival number of any line, which are numbered from 1; 0 in an empty book.
pub(super) async fn greatest_arrival(transaction: &Transaction) -> Result<u64, StorageError> {
    greatest(transaction, BY_ARRIVAL).await
}

/// The greatest whole number among an index's keys; 0 where there is none.
async fn greatest(transaction: &Transaction, index: &str) -> Result<u64, StorageError> {
    let request = transaction
        .index(ENTRIES, index)?
        .open_key_cursor_with_range_and_direction(&numbers_from(0)?, IdbCursorDirection::Prev);
    let cursor = Answer::to(request)?.wait().await?;
    if cursor.is_null() {
        return Ok(0);
    }
    let key = Reflect::get(&cursor, &"key".into()).unwrap_or_default();
    // A key that is a number but not a whole one is no counter of ours; the next whole one above it is safe.
    let key = key.as_f64().unwrap_or_default();
    Ok(key.ceil().clamp(0.0, GREATEST as f64) as u64)
}

/// The keys that are numbers from `from` on: other kinds of key sort after every number.
fn numbers_from(from: u64) -> Result<JsValue, StorageError> {
    IdbKeyRange::bound(&stored(from), &stored(GREATEST))
        .map(JsValue::from)
        .map_err(|thrown| StorageError::from_js(&thrown))
}

/// After a full chunk, the number after its last record's, whether or not that record could be read.
fn next_chunk(records: &JsValue, limit: u32) -> Option<u64> {
    let records = Array::from(records);
    let last = number(&records.get(records.length().checked_sub(1)?), "arrival")?;
    (records.length() >= limit).then_some(last + 1)
}
