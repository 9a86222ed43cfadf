//! What one more entry can do to what is written: strike it out, bring it back, or say which side of a dispute holds.
//! Nothing is rubbed out by any of them.

use cartside_core::daybook::{Entry, EntryId, Kind, Thread, Unwritten};
use leptos::prelude::GetUntracked;

use crate::wording;
use crate::workshop::Workshop;

/// What is to be done to the thread of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Correction {
    /// It no longer counts.
    StrikeOut,
    /// Struck out, it counts again, as it was last said.
    BringBack,
    /// Of the sides of its dispute, this one holds.
    Hold,
}

impl Correction {
    /// The entry to write; `None` where there is nothing of the sort to be said.
    pub fn of(self, entry: EntryId, thread: &Thread<'_>) -> Option<Unwritten> {
        let heads = thread.heads();
        match self {
            Correction::StrikeOut => {
                let head = heads.first()?;
                Some(Unwritten::striking(head, thread.to_replace()))
            }
            Correction::BringBack => Some(said_again(thread.last_said()?, thread)),
            Correction::Hold => {
                let side = heads.iter().find(|head| head.id == entry && head.is_read())?;
                Some(said_again(side, thread))
            }
        }
    }

    /// What was done to something, in a few words.
    pub fn told(self, what: &str) -> String {
        match self {
            Correction::StrikeOut => format!("struck out: {what}"),
            Correction::BringBack => format!("brought back: {what}"),
            Correction::Hold => format!("this holds: {what}"),
        }
    }
}

/// The same once more, in the place of all heads of its thread.
fn said_again(said: &Entry, thread: &Thread<'_>) -> Unwritten {
    let begins = (said.kind == Kind::Vehicle).then_some(said.id);
    Unwritten {
        kind: said.kind.clone(),
        vehicle: said.vehicle.or(begins),
        visit: said.visit,
        described_by: said.described_by,
        slot: said.slot.clone(),
        says: said.says.clone(),
        replaces: thread.to_replace(),
    }
}

/// Writes the correction of an entry of the vehicle in hand; what came of it is shown at the foot.
pub async fn correct(shop: Workshop, entry: EntryId, correction: Correction) {
    if let Some((unwritten, what)) = prepared(shop, entry, correction) {
        // What went wrong is shown by the workshop, and the page is as it was.
        drop(shop.write(&unwritten, &what).await);
    }
}

fn prepared(shop: Workshop, entry: EntryId, correction: Correction) -> Option<(Unwritten, String)> {
    let opened = shop.in_hand()?;
    let view = opened.book.view();
    let thread = view.threads().find(|thread| thread.has(entry))?;
    let said = match correction {
        Correction::Hold => opened.book.entry(entry),
        _ => thread.last_said().or_else(|| opened.book.entry(entry)),
    }?;
    let words = wording::says(
        &view.vehicle(opened.vehicle),
        said,
        shop.preferences.get_untracked().style(),
    );
    Some((correction.of(entry, thread)?, correction.told(&words)))
}
