//! The house: the limits in force and which vehicles are one, and the entries that say so. They belong to no vehicle.

use std::rc::Rc;

use cartside_core::daybook::{Book, Entry, EntryId, Joined, Subject};
use cartside_core::diagnosis::{self, Limit};
use cartside_core::paper::summary::SCHEMA;

/// The entries of the house, and what they come to.
#[derive(Clone)]
pub struct House {
    /// The entries.
    pub book: Rc<Book>,
    /// The limits that findings are judged by.
    pub limits: Rc<Vec<Limit>>,
    /// Which vehicles are one.
    pub joined: Rc<Joined>,
    /// The form of summaries made by these: another one's standing may be out of date.
    pub form: u32,
}

impl House {
    /// The house as these entries make it.
    pub fn of(book: Book) -> House {
        let (limits, joined, form) = {
            let view = book.view();
            let threads = view.limits().chain(view.same_as());
            let counting = threads.flat_map(|thread| thread.counts());
            // Which entries count is told from others well enough by the first bytes of their names.
            let mixed = counting.fold(0, |mixed, entry| {
                let [a, b, c, d, ..] = *entry.id.bytes();
                mixed ^ u32::from_le_bytes([a, b, c, d])
            });
            let form = SCHEMA ^ (mixed & !0xff);
            (diagnosis::limits(&view), view.joined().clone(), form)
        };
        House {
            book: Rc::new(book),
            limits: Rc::new(limits),
            joined: Rc::new(joined),
            form,
        }
    }

    /// Every id under which entries of a vehicle stand, and the entries that make them one.
    pub fn one_with(&self, vehicle: EntryId) -> (Vec<EntryId>, Vec<Entry>) {
        let all = self.joined.all(vehicle);
        let view = self.book.view();
        let threads = view.same_as();
        let entries = threads.flat_map(|thread| thread.entries().iter().copied().cloned());
        let said = if all.len() > 1 {
            entries.collect()
        } else {
            Vec::new()
        };
        (all, said)
    }

    /// The house with those of these entries that belong to it; `None` where none does.
    pub fn with(&self, entries: &[Entry]) -> Option<House> {
        let mut own = entries
            .iter()
            .filter(|entry| entry.subject() == Subject::House)
            .peekable();
        own.peek()?;
        let mut book = (*self.book).clone();
        for entry in own {
            book.add(entry.clone());
        }
        Some(House::of(book))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::House;
    use cartside_core::daybook::{Book, Entry, Hand, LimitSaid, Says, Stamp, Threshold, Unwritten};
    use cartside_core::diagnosis::house_limits;
    use cartside_core::paper::line;
    use cartside_core::wheel::{Vehicle, VehicleKind};

    fn entry(says: Says, n: u64) -> Entry {
        let hand = Hand {
            by: String::new(),
            device: "d1".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n,
        };
        let line = line::write(&Unwritten::new(None, says).unwrap(), &hand).unwrap();
        line::read(&line).unwrap()
    }

    fn places(count: u32, n: u64) -> Entry {
        let row = "spoke-broken/not-on-this-wheel/answered".to_owned();
        let threshold = Some(Threshold::Count(count));
        entry(Says::Limit(LimitSaid { row, threshold }), n)
    }

    #[test]
    fn a_limit_that_is_set_changes_the_limits_and_the_form() {
        let bare = House::of(Book::default());
        assert_eq!(*bare.limits, house_limits());
        let set = bare.with(&[places(3, 1)]).unwrap();
        assert_ne!(*set.limits, house_limits());
        assert_ne!(set.form, bare.form);
        let other = bare.with(&[places(4, 1)]).unwrap();
        assert_ne!(other.form, set.form);
    }

    #[test]
    fn what_is_a_vehicles_leaves_the_house_as_it_is() {
        let cart = entry(
            Says::Vehicle(Vehicle {
                kind: VehicleKind::Cart,
                name: String::new(),
            }),
            1,
        );
        assert!(House::of(Book::default()).with(&[cart]).is_none());
    }
}
