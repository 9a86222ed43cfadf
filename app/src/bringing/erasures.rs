//! Which pictures are erased in the union of the book and a file. An erasure of any vehicle holds for the bytes
//! wherever they came from.

use cartside_core::daybook::{Book, Digests, Entry, Kind};
use cartside_core::paper::line;

use crate::storage::Store;
use crate::workshop::{Step, sentence};

/// How many lines are read from storage at once.
const CHUNK: u32 = 500;

/// The digests of all pictures that an erasure of the union, not struck out, names.
pub(super) async fn erased(store: &Store, incoming: impl Iterator<Item = &Entry>) -> Step<Digests> {
    let of_file = incoming
        .filter(|entry| entry.kind == Kind::Erasure)
        .cloned();
    let mut book: Book = of_file.collect();
    let mut next = Some(0);
    while let Some(from) = next {
        let chunk = store.all_lines(from, CHUNK).await.map_err(sentence)?;
        for entry in chunk.lines.iter().filter_map(|(_, line)| erasure(line)) {
            book.add(entry);
        }
        next = chunk.next;
    }
    Ok(book.view().erased())
}

/// Looking for the word first spares reading every line of the book.
fn erasure(text: &str) -> Option<Entry> {
    text.contains(Kind::Erasure.code())
        .then(|| line::read(text).ok())?
        .filter(|entry| entry.kind == Kind::Erasure)
}
