//! The whole book gathered into one exchange file: every line as it is stored, and the pictures straight from storage.

mod notes;
mod table;

use cartside_core::daybook::{Book, Digest, Entry};
use cartside_core::paper::exchange as paper;
use cartside_core::paper::line;
use js_sys::{ArrayBuffer, Uint8Array};
use leptos::prelude::*;

use crate::clock;
use crate::exchange::{Parcel, Part};
use crate::storage::{Store, Which};
use crate::workshop::{Step, Workshop, sentence};

/// How many lines are read from storage at once.
const CHUNK: u32 = 500;

/// The name under which the device remembers when the book was last carried out.
pub const LAST: &str = "carried-out";

/// The book, ready to go out.
pub struct Carried {
    /// The file.
    pub parcel: Parcel,
    /// How many entries are in it.
    pub entries: usize,
    /// How many pictures are in it.
    pub pictures: usize,
    /// How many stored lines and pictures could not be read and are not in it.
    pub left_out: usize,
}

/// The pictures that go out: what the file says of each, and its bytes where storage put them.
#[derive(Default)]
struct Pictures {
    outgoing: Vec<paper::OutgoingPicture>,
    /// By digest.
    bytes: Vec<(Digest, ArrayBuffer)>,
    unsound: usize,
}

/// Every line of the book that can be read, with its entry, and how many could not be.
#[derive(Default)]
struct Lines {
    read: Vec<(Entry, String)>,
    unreadable: usize,
}

/// Gathers the whole book into a file.
///
/// # Errors
/// It is the demonstration, the book cannot be reached, or the file would be one that no device reads. The book is
/// as it was.
pub async fn gather(shop: Workshop) -> Step<Carried> {
    let store = shop.store()?;
    if store.which() == Which::Demonstration {
        return Err(DEMONSTRATION.to_owned());
    }
    let damaged_before = store.damaged();
    let lines = lines(&store).await?;
    let book: Book = lines.read.iter().map(|(entry, _)| entry.clone()).collect();
    let pictures = pictures(&store, &book).await?;
    let damaged = store.damaged() - damaged_before;
    let made_at = clock::now();
    let parts = parts(shop, &lines, &book, &pictures, &made_at)?;
    let parts = parts
        .into_iter()
        .map(|part| bound(part, &pictures.bytes))
        .collect::<Option<Vec<Part>>>()
        .ok_or(GONE)?;
    let parcel = Parcel::pack(parts, &file_name(&made_at)).map_err(|error| error.to_string())?;
    Ok(Carried {
        parcel,
        entries: lines.read.len(),
        pictures: pictures.outgoing.len(),
        left_out: damaged + lines.unreadable + pictures.unsound,
    })
}

/// What is said where the demonstration would be carried out.
pub const DEMONSTRATION: &str =
    "The demonstration is invented and cannot be carried out. Go back to your own book first.";

const GONE: &str = "A picture went away while the file was being made. No file was made; the book is as it was. Try again.";

async fn lines(store: &Store) -> Step<Lines> {
    let mut lines = Lines::default();
    let mut next = Some(0);
    while let Some(from) = next {
        let chunk = store.all_lines(from, CHUNK).await.map_err(sentence)?;
        for (_, text) in chunk.lines {
            match line::read(&text) {
                Ok(entry) => lines.read.push((entry, text)),
                Err(_) => lines.unreadable += 1,
            }
        }
        next = chunk.next;
    }
    Ok(lines)
}

/// Looks at one picture after the other, which storage names by digest; only one at a time is in this program's own
/// memory.
async fn pictures(store: &Store, book: &Book) -> Step<Pictures> {
    let erased = book.view().erased();
    let mut pictures = Pictures::default();
    for hex in store.picture_digests().await.map_err(sentence)? {
        let digest = Digest::from_hex(&hex).filter(|digest| !erased.contains(digest));
        let stored = store.picture(&hex).await.map_err(sentence)?;
        if let (Some(digest), Some(stored)) = (digest, stored) {
            pictures.add(digest, stored.bytes);
        }
    }
    Ok(pictures)
}

impl Pictures {
    fn add(&mut self, digest: Digest, bytes: ArrayBuffer) {
        let outgoing = paper::OutgoingPicture::of(&Uint8Array::new(&bytes).to_vec());
        // Bytes that are not those of their name would make every device refuse the whole file.
        if outgoing.digest == digest {
            self.outgoing.push(outgoing);
            self.bytes.push((digest, bytes));
        } else {
            self.unsound += 1;
        }
    }
}

fn parts(
    shop: Workshop,
    lines: &Lines,
    book: &Book,
    pictures: &Pictures,
    made_at: &str,
) -> Step<Vec<paper::Part>> {
    let style = shop.preferences.get_untracked().style();
    let device = shop.device();
    let parcel = paper::Parcel {
        made_at,
        device: &device,
        scope: paper::Scope::Book,
        entries: lines.read.iter().map(outgoing).collect(),
        pictures: pictures.outgoing.clone(),
        readings: &table::readings(book, style),
        read_me: &notes::read_me(made_at, lines.read.len(), pictures.outgoing.len()),
    };
    parcel.parts().map_err(|refused| refused.to_string())
}

fn outgoing((entry, line): &(Entry, String)) -> paper::OutgoingEntry<'_> {
    paper::OutgoingEntry {
        n: entry.n,
        id: entry.id,
        line,
    }
}

fn bound(part: paper::Part, bytes: &[(Digest, ArrayBuffer)]) -> Option<Part> {
    match part {
        paper::Part::Bytes(bytes) => Some(Part::Bytes(bytes)),
        paper::Part::Picture(digest) => {
            let at = bytes.binary_search_by(|(of, _)| of.cmp(&digest));
            let (_, bytes) = bytes.get(at.ok()?)?;
            Some(Part::Js(bytes.clone()))
        }
    }
}

/// `cartside-2026-11-25.zip`.
fn file_name(made_at: &str) -> String {
    format!("cartside-{}.zip", made_at.get(..10).unwrap_or("book"))
}

/// Remembers that the book has been carried out just now.
///
/// # Errors
/// It is not remembered; the file itself is out.
pub async fn remember(shop: Workshop) -> Step<()> {
    let store = shop.store()?;
    store.put_meta(LAST, &clock::now()).await.map_err(sentence)
}

/// When the book was last carried out from this device, as its clock claimed; `None` if it never was.
pub async fn last(shop: Workshop) -> Option<String> {
    shop.store().ok()?.meta(LAST).await.ok()?
}
