//! A book, or a portion of it, gathered into one exchange file: every line as it is stored, and the pictures straight
//! from storage, one after the other.

mod devices;
mod notes;
mod table;

use std::ops::Range;

use cartside_core::daybook::{Book, Digest, Digests, Entry, EntryId, Portion};
use cartside_core::paper::exchange as paper;
use cartside_core::paper::line;
use js_sys::Uint8Array;
use leptos::prelude::*;

use crate::clock;
use crate::exchange::{FileError, Parcel, Parts, handed_over};
use crate::only_here::OnlyHere;
use crate::progress::Progress;
use crate::storage::{Store, Which};
use crate::workshop::{Step, Workshop, sentence};

pub use devices::{Met, met, remember_came_from};

/// How many lines are read from storage at once.
const CHUNK: u32 = 500;

/// The name under which the device remembers when the whole book was last carried out.
pub const LAST: &str = "carried-out";

/// The name under which it remembers the greatest arrival of that file: lines that arrived later are only here.
pub const REACHED: &str = "carried-out-reached";

/// What is to go out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// The whole book.
    Book,
    /// One vehicle, with all that it rests on.
    Vehicle(EntryId),
    /// What is new for a device, by its name.
    NewFor(String),
}

/// A book, or a portion of it, ready to go out.
pub struct Carried {
    /// The file.
    pub parcel: Parcel,
    /// How many entries are in it.
    pub entries: usize,
    /// How many pictures are in it.
    pub pictures: usize,
    /// How many stored lines and pictures could not be read and are not in it.
    pub left_out: usize,
    /// What it is.
    pub what: What,
    /// The greatest arrival of any line when it was made.
    reached: u64,
}

/// The lines of the book that can be read; each is held once.
#[derive(Default)]
struct Lines {
    text: String,
    placed: Vec<Placed>,
    unreadable: usize,
    reached: u64,
}

/// A line: which entry it is, when it arrived, and where it lies in the text.
struct Placed {
    n: u64,
    id: EntryId,
    arrival: u64,
    line: Range<usize>,
}

/// The pictures that go out: what the file says of each, and its bytes where the browser has them.
#[derive(Default)]
struct Pictures {
    outgoing: Vec<paper::OutgoingPicture>,
    /// By digest.
    blobs: Vec<(Digest, web_sys::Blob)>,
    unsound: usize,
}

/// Gathers what is to go out into a file.
///
/// # Errors
/// It is the demonstration, the book cannot be reached, the file would be one that no device reads, or it is to stop.
/// The book is as it was.
pub async fn gather(shop: Workshop, what: What, progress: Progress) -> Step<Carried> {
    let store = shop.store()?;
    if store.which() == Which::Demonstration {
        return Err(DEMONSTRATION.to_owned());
    }
    progress.begin("Making the file…");
    let damaged_before = store.damaged();
    let (mut lines, mut book) = lines(&store, progress).await?;
    let wanted = match portion(shop, &what, &lines, &book).await? {
        None => all_pictures(&store, &book).await?,
        Some(portion) => {
            lines.keep(&portion.entries);
            book = book.portion(&portion.entries);
            portion.pictures
        }
    };
    let pictures = pictures(&store, &wanted, progress).await?;
    let damaged = store.damaged() - damaged_before;
    let made_at = clock::now();
    let parts = parts(shop, &what, &lines, &book, &pictures, &made_at)?;
    let parcel = Parcel::pack(&parts, &file_name(&what, &made_at));
    Ok(Carried {
        parcel: parcel.map_err(|error| error.to_string())?,
        entries: lines.placed.len(),
        pictures: pictures.outgoing.len(),
        left_out: damaged + lines.unreadable + pictures.unsound,
        what,
        reached: lines.reached,
    })
}

/// What is said where the demonstration would be carried out.
pub const DEMONSTRATION: &str =
    "The demonstration is invented and cannot be carried out. Go back to your own book first.";

const GONE: &str = "A picture went away while the file was being made. No file was made; the book is as it was. Try again.";

async fn lines(store: &Store, progress: Progress) -> Step<(Lines, Book)> {
    let mut lines = Lines::default();
    let mut entries: Vec<Entry> = Vec::new();
    let mut next = Some(0);
    while let Some(from) = next {
        let chunk = store.all_lines(from, CHUNK).await.map_err(sentence)?;
        for (arrival, text) in chunk.lines {
            entries.extend(lines.add(arrival, &text));
        }
        progress.step(0, 0)?;
        next = chunk.next;
    }
    Ok((lines, entries.into_iter().collect()))
}

impl Lines {
    fn add(&mut self, arrival: u64, text: &str) -> Option<Entry> {
        self.reached = self.reached.max(arrival);
        let entry = line::read(text).ok();
        match &entry {
            Some(Entry { n, id, .. }) => {
                let line = self.text.len()..self.text.len() + text.len();
                self.text.push_str(text);
                let (n, id) = (*n, *id);
                self.placed.push(Placed {
                    n,
                    id,
                    arrival,
                    line,
                });
            }
            None => self.unreadable += 1,
        }
        entry
    }

    fn keep(&mut self, ids: &Digests) {
        self.placed.retain(|placed| ids.contains(&placed.id));
    }

    fn outgoing(&self) -> Vec<paper::OutgoingEntry<'_>> {
        let line = |placed: &Placed| {
            Some(paper::OutgoingEntry {
                n: placed.n,
                id: placed.id,
                line: self.text.get(placed.line.clone())?,
            })
        };
        self.placed.iter().filter_map(line).collect()
    }
}

/// The portion that is asked for; none for the whole book. A device that was never met has everything new.
async fn portion(shop: Workshop, what: &What, lines: &Lines, book: &Book) -> Step<Option<Portion>> {
    match what {
        What::Book => Ok(None),
        What::Vehicle(id) => Ok(Some(Portion::of_vehicle(book, *id))),
        What::NewFor(device) => {
            let met = met(shop).await?;
            let reached = met.iter().find(|met| met.device == *device);
            let reached = reached.map_or(0, |met| met.reached);
            let new = lines.placed.iter().filter(|line| line.arrival > reached);
            Ok(Some(Portion::with_ancestors(book, new.map(|line| line.id))))
        }
    }
}

/// Every picture that belongs to the book, whether or not an entry that this version can read speaks of it.
async fn all_pictures(store: &Store, book: &Book) -> Step<Digests> {
    let beside = store.beside().await.map_err(sentence)?;
    let digests = store.picture_digests().await.map_err(sentence)?;
    let own = digests.iter().filter(|hex| !beside.contains(hex));
    let erased = book.view().erased();
    Ok(own
        .filter_map(|hex| Digest::from_hex(hex))
        .filter(|digest| !erased.contains(digest))
        .collect())
}

/// Looks at one picture after the other; only one at a time is in this program's own memory, and none is held by the
/// page once the browser has it as a part of the file.
async fn pictures(store: &Store, wanted: &Digests, progress: Progress) -> Step<Pictures> {
    let mut pictures = Pictures::default();
    for (done, digest) in wanted.iter().enumerate() {
        progress.step(done, wanted.len())?;
        // One that is not here was absent before, and its entry goes without it.
        if let Some(stored) = store.picture(&digest.hex()).await.map_err(sentence)? {
            pictures.add(*digest, &stored.bytes)?;
        }
    }
    Ok(pictures)
}

impl Pictures {
    fn add(&mut self, digest: Digest, bytes: &js_sys::ArrayBuffer) -> Step<()> {
        let outgoing = paper::OutgoingPicture::of(&Uint8Array::new(bytes).to_vec());
        // Bytes that are not those of their name would make every device refuse the whole file.
        if outgoing.digest != digest {
            self.unsound += 1;
            return Ok(());
        }
        let blob = handed_over(bytes).map_err(|error| error.to_string())?;
        self.outgoing.push(outgoing);
        self.blobs.push((digest, blob));
        Ok(())
    }

    fn blob(&self, digest: Digest) -> Option<&web_sys::Blob> {
        let at = self.blobs.binary_search_by(|(of, _)| of.cmp(&digest));
        self.blobs.get(at.ok()?).map(|(_, blob)| blob)
    }
}

fn parts(
    shop: Workshop,
    what: &What,
    lines: &Lines,
    book: &Book,
    pictures: &Pictures,
    made_at: &str,
) -> Step<Parts> {
    let style = shop.preferences.get_untracked().style();
    let device = shop.device();
    let entries = lines.outgoing();
    let read_me = notes::read_me(what, made_at, entries.len(), pictures.outgoing.len());
    let parcel = paper::Parcel {
        made_at,
        device: &device,
        scope: scope(what),
        entries,
        pictures: pictures.outgoing.clone(),
        readings: &[],
        read_me: &read_me,
    };
    let (parts, mut whole) = (Parts::new(), true);
    let handed = parcel.hand_over(&table::readings(book, style), &mut |part| match part {
        paper::Part::Bytes(bytes) => parts.bytes(&bytes),
        paper::Part::Picture(digest) => match pictures.blob(digest) {
            Some(blob) => parts.blob(blob),
            None => whole = false,
        },
    });
    handed.map_err(|refused| refused.to_string())?;
    if whole {
        Ok(parts)
    } else {
        Err(GONE.to_owned())
    }
}

fn scope(what: &What) -> paper::Scope {
    match what {
        What::Book => paper::Scope::Book,
        What::Vehicle(id) => paper::Scope::Vehicle(*id),
        What::NewFor(device) => paper::Scope::NewFor(device.clone()),
    }
}

/// `cartside-2026-11-25.zip`.
fn file_name(what: &What, made_at: &str) -> String {
    let what = match what {
        What::Book => "",
        What::Vehicle(_) => "vehicle-",
        What::NewFor(_) => "new-",
    };
    format!("cartside-{what}{}.zip", made_at.get(..10).unwrap_or("book"))
}

/// Puts a file of all that is in memory into the device's downloads, for when the store is lost while it is open: the
/// vehicle in hand as it was read, and the steps that could not be saved. Pictures are not in memory.
///
/// # Errors
/// There is nothing in memory, or the browser lets no file out.
pub fn from_memory(shop: Workshop) -> Step<()> {
    let opened = shop
        .in_hand()
        .ok_or("Nothing is in hand, so nothing is in memory. No file was made.")?;
    let mut lines = Lines::default();
    let adrift = shop.adrift.get_untracked();
    let texts = opened.lines.iter().chain(&adrift);
    let book = texts.filter_map(|text| lines.add(0, text)).collect();
    let (what, made_at) = (What::Vehicle(opened.vehicle), clock::now());
    let parts = parts(shop, &what, &lines, &book, &Pictures::default(), &made_at)?;
    let told = |error: FileError| error.to_string();
    let parcel = Parcel::pack(&parts, &file_name(&what, &made_at)).map_err(told)?;
    let out = parcel.download().map_err(told);
    // The browser reads it in its own time, and this page is at its end.
    std::mem::forget(parcel);
    out
}

/// Remembers that the file has gone out just now: the next one for the same device begins where this one ended.
///
/// # Errors
/// It is not remembered; the file itself is out.
pub async fn remember(shop: Workshop, carried: &Carried) -> Step<()> {
    let store = shop.store()?;
    let reached = carried.reached.to_string();
    match &carried.what {
        What::Book => {
            store.put_meta(REACHED, &reached).await.map_err(sentence)?;
            // What a reminder knew is out of date from here on.
            shop.only_here.set(OnlyHere::default());
            store.put_meta(LAST, &clock::now()).await.map_err(sentence)
        }
        What::Vehicle(_) => Ok(()),
        What::NewFor(device) => devices::remember_has(shop, device, carried.reached).await,
    }
}

/// When the whole book was last carried out from this device, as its clock claimed; `None` if it never was.
pub async fn last(shop: Workshop) -> Option<String> {
    shop.store().ok()?.meta(LAST).await.ok()?
}
