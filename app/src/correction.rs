//! What one more entry can do to what is written: strike it out, bring it back, or say which side of a dispute holds.
//! Nothing is rubbed out by any of them.

use cartside_core::daybook::{Digest, Entry, EntryId, Kind, Says, Thread, Unwritten};
use leptos::prelude::{GetUntracked, Set};

use crate::wording;
use crate::workshop::{Notice, Workshop};

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
                let side = heads
                    .iter()
                    .find(|head| head.id == entry && head.is_read())?;
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
pub fn correct(shop: Workshop, entry: EntryId, correction: Correction) {
    let Some((unwritten, what)) = prepared(shop, entry, correction) else {
        return;
    };
    let mut scribe = shop.scribe();
    match scribe.write(&unwritten) {
        Ok(_) => {
            // An erasure that counts again takes the bytes with it.
            scribe.erase_pictures.extend(erased(&unwritten));
            // If it is not stored, the page is as it was.
            shop.save_then(scribe, what, |_| {});
        }
        Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
    }
}

/// The picture whose bytes go with this entry, if it erases one.
fn erased(entry: &Unwritten) -> Option<Digest> {
    match entry.says {
        Says::Erasure(digest) => Some(digest),
        _ => None,
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

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::Correction;
    use crate::fate::Fate;
    use cartside_core::daybook::{Book, EntryId, Hand, Says, Stamp, Unwritten};
    use cartside_core::paper::line;
    use cartside_core::wheel::{Part, Vehicle, VehicleKind};

    fn add(book: &mut Book, entry: &Unwritten) -> EntryId {
        let hand = Hand {
            by: String::new(),
            device: "d1".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n: book.next_n(),
        };
        let entry = line::read(&line::write(entry, &hand).unwrap()).unwrap();
        let id = entry.id;
        book.add(entry);
        id
    }

    fn remark(cart: EntryId, text: &str) -> Unwritten {
        Unwritten::new(Some(cart), Says::Remark(Part::Vehicle, text.to_owned())).unwrap()
    }

    fn cart_with_a_remark() -> (Book, EntryId, EntryId) {
        let mut book = Book::default();
        let says = Says::Vehicle(Vehicle {
            kind: VehicleKind::Cart,
            name: String::new(),
        });
        let cart = add(&mut book, &Unwritten::new(None, says).unwrap());
        let said = add(&mut book, &remark(cart, "first"));
        (book, cart, said)
    }

    fn correct(book: &mut Book, entry: EntryId, correction: Correction) -> EntryId {
        let unwritten = {
            let view = book.view();
            let thread = view.threads().find(|thread| thread.has(entry)).unwrap();
            correction.of(entry, thread).unwrap()
        };
        add(book, &unwritten)
    }

    fn fate(book: &Book, entry: EntryId) -> Fate {
        let view = book.view();
        let thread = view.threads().find(|thread| thread.has(entry)).unwrap();
        Fate::of(thread, book.entry(entry).unwrap())
    }

    #[test]
    fn what_is_struck_out_can_be_brought_back() {
        let (mut book, _, said) = cart_with_a_remark();
        assert_eq!(fate(&book, said), Fate::Counts);
        let strike = correct(&mut book, said, Correction::StrikeOut);
        assert_eq!(
            (fate(&book, said), fate(&book, strike)),
            (Fate::Struck, Fate::Strikes)
        );
        let again = correct(&mut book, strike, Correction::BringBack);
        assert_eq!(
            (fate(&book, said), fate(&book, again)),
            (Fate::Replaced, Fate::Counts)
        );
        assert_eq!(
            book.entry(again).unwrap().says,
            book.entry(said).unwrap().says
        );
    }

    #[test]
    fn a_vehicle_struck_out_and_brought_back_is_the_same_vehicle() {
        let (mut book, cart, _) = cart_with_a_remark();
        correct(&mut book, cart, Correction::StrikeOut);
        assert!(book.view().vehicle(cart).struck());
        correct(&mut book, cart, Correction::BringBack);
        assert!(!book.view().vehicle(cart).struck());
        assert_eq!(book.view().vehicles(), [cart]);
    }

    #[test]
    fn either_side_of_a_strike_against_a_value_can_hold() {
        for strike_holds in [false, true] {
            let (mut book, cart, said) = cart_with_a_remark();
            let value = add(&mut book, &remark(cart, "second").replacing(vec![said]));
            let first = book.entry(said).unwrap().clone();
            let strike = add(&mut book, &Unwritten::striking(&first, vec![said]));
            assert_eq!(
                (fate(&book, value), fate(&book, strike)),
                (Fate::Disputed, Fate::Disputed)
            );
            let side = if strike_holds { strike } else { value };
            let settled = correct(&mut book, side, Correction::Hold);
            let says = &book.entry(settled).unwrap().says;
            assert_eq!(says, &book.entry(side).unwrap().says);
            assert!(book.view().vehicle(cart).disputes().is_empty());
        }
    }
}
