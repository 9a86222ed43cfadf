//! What bringing a file in would do to the book, worked out without touching it.

use cartside_core::daybook::{Book, Digest, Digests, Entry, EntryId, Subject};
use cartside_core::paper::summary::Summary;
use leptos::prelude::GetUntracked;

use super::erasures::erased;
use super::incoming::Incoming;
use crate::scribe::new_line;
use crate::storage::{Batch, Store};
use crate::wording;
use crate::workshop::{Step, Workshop, sentence};

/// What bringing a file in would do.
pub struct Plan {
    /// The ids of the entries it would add.
    pub entries: Digests,
    /// How many of its entries are here already.
    pub already: usize,
    /// The vehicles it would begin, in words.
    pub vehicles: Vec<String>,
    /// How many of the entries to be added a newer Cartside wrote, wholly or in part.
    pub newer: usize,
    /// The pictures it would add.
    pub pictures: Digests,
    /// How many of its pictures stay out, since they are erased.
    pub kept_out: usize,
    /// The pictures that would go from here, since they are erased.
    pub erase: Digests,
    /// How many disputes there would be more than there are now, vehicles that are not touched left out.
    pub disputes: usize,
    /// Whether it holds entries by this very device that are not in its book.
    pub own_name: bool,
    summaries: Vec<Summary>,
    /// The greatest arrival in the book when it was worked out.
    reached: u64,
}

impl Plan {
    /// Works out what bringing this file in would do to the book in the store. The pictures that lie beside the book
    /// for it do not count as being here.
    pub(super) async fn of(
        shop: Workshop,
        store: &Store,
        incoming: &Incoming,
        beside: &Digests,
    ) -> Step<Plan> {
        let reached = store.reached().await.map_err(sentence)?;
        let new = new_entries(store, incoming).await?;
        let erased = erased(store, incoming.holds.entries().map(|(entry, _)| entry)).await?;
        let here = pictures_here(store).await?;
        let own = here.iter().filter(|digest| !beside.contains(digest));
        let (pictures, kept_out) = pictures(incoming, &erased, &own.copied().collect());
        let touched = touched(shop, &new).await?;
        let device = shop.device();
        Ok(Plan {
            entries: new.iter().map(|entry| entry.id).collect(),
            already: incoming.holds.entries().count() - new.len(),
            vehicles: begun(shop, &new, &touched),
            newer: new
                .iter()
                .filter(|entry| !entry.is_read() || entry.unread_fields > 0)
                .count(),
            pictures,
            kept_out,
            erase: (erased.iter().copied())
                .filter(|digest| here.contains(digest))
                .collect(),
            disputes: touched.iter().map(Touched::more_disputes).sum(),
            own_name: new.iter().any(|entry| entry.device == device),
            summaries: touched.into_iter().map(|touched| touched.after).collect(),
            reached,
        })
    }

    /// Whether the book is still the one that it was worked out for: lines are never taken away.
    pub(super) async fn holds(&self, store: &Store) -> Step<bool> {
        Ok(store.reached().await.map_err(sentence)? == self.reached)
    }

    /// Whether it would do nothing at all.
    pub fn nothing(&self) -> bool {
        self.entries.is_empty() && self.pictures.is_empty() && self.erase.is_empty()
    }

    /// All of it as one batch, with the pictures that lie beside the book by these names.
    pub(super) fn batch(&self, shop: Workshop, incoming: &Incoming, take_up: Vec<String>) -> Batch {
        let entries = incoming.holds.entries();
        Batch {
            lines: entries
                .filter(|(entry, _)| self.entries.contains(&entry.id))
                .map(|(entry, line)| new_line(entry, line.to_owned()))
                .collect(),
            summaries: self.summaries.iter().map(|made| shop.kept(made)).collect(),
            erase_pictures: self.erase.iter().map(Digest::hex).collect(),
            take_up,
            ..Batch::default()
        }
    }
}

/// A vehicle that gets new entries: how it sums up after them, and how many disputes it had before.
struct Touched {
    book: Book,
    before: usize,
    after: Summary,
}

impl Touched {
    fn more_disputes(&self) -> usize {
        self.after.disputes.saturating_sub(self.before)
    }
}

async fn new_entries<'a>(store: &Store, incoming: &'a Incoming) -> Step<Vec<&'a Entry>> {
    let ids = incoming.holds.entries().map(|(entry, _)| entry.id.hex());
    let ids: Vec<String> = ids.collect();
    let here = store.has(&ids).await.map_err(sentence)?;
    let lines = incoming.holds.entries().zip(here);
    Ok(lines
        .filter(|(_, here)| !here)
        .map(|((entry, _), _)| entry)
        .collect())
}

async fn pictures_here(store: &Store) -> Step<Digests> {
    let digests = store.picture_digests().await.map_err(sentence)?;
    Ok(digests
        .iter()
        .filter_map(|hex| Digest::from_hex(hex))
        .collect())
}

/// The pictures to add, and how many stay out because they are erased.
fn pictures(incoming: &Incoming, erased: &Digests, here: &Digests) -> (Digests, usize) {
    let all = incoming.holds.pictures();
    let sound = all.iter().map(|picture| picture.digest);
    let sound = sound.filter(|digest| !erased.contains(digest));
    let out = all.len() - sound.clone().count();
    let new = sound.filter(|digest| !here.contains(digest));
    (new.collect(), out)
}

/// The vehicles that get new entries, by id.
async fn touched(shop: Workshop, new: &[&Entry]) -> Step<Vec<Touched>> {
    let of_vehicle = |(at, entry): (usize, &&Entry)| match entry.subject() {
        Subject::Vehicle(vehicle) => Some((shop.stands_for(vehicle), at)),
        Subject::House => None,
    };
    let mut places: Vec<(EntryId, usize)> = new.iter().enumerate().filter_map(of_vehicle).collect();
    places.sort_unstable();
    let mut touched = Vec::new();
    for places in places.chunk_by(|one, other| one.0 == other.0) {
        if let [(vehicle, _), ..] = places {
            let entries = places.iter().filter_map(|(_, at)| new.get(*at).copied());
            touched.push(touch(shop, *vehicle, entries.collect()).await?);
        }
    }
    Ok(touched)
}

async fn touch(shop: Workshop, vehicle: EntryId, new: Vec<&Entry>) -> Step<Touched> {
    let (mut book, _) = shop.read_vehicle(vehicle).await?;
    let before = book.view().vehicle(vehicle).disputes().len();
    for entry in new {
        book.add(entry.clone());
    }
    let after = Summary::of(&book, vehicle, &shop.limits());
    Ok(Touched {
        book,
        before,
        after,
    })
}

/// The vehicles that are begun, in words.
fn begun(shop: Workshop, new: &[&Entry], touched: &[Touched]) -> Vec<String> {
    let style = shop.preferences.get_untracked().style();
    new.iter()
        .filter(|entry| entry.begins_vehicle())
        .filter_map(|entry| {
            let at = touched.binary_search_by(|touched| touched.after.vehicle.cmp(&entry.id));
            Some((entry, touched.get(at.ok()?)?))
        })
        .map(|(entry, touched)| {
            let view = touched.book.view();
            let vehicle = view.vehicle(entry.id);
            let readable = vehicle.description().map(|thread| thread.readable());
            let said = readable.and_then(|entries| entries.first().copied());
            wording::says(&vehicle, said.unwrap_or(entry), style)
        })
        .collect()
}
