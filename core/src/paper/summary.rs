//! A vehicle in a few words, so that the list of vehicles need not read the whole book. It can always
//! be made again from the entries, so its form may change: a summary of another schema is not read.

use serde::{Deserialize, Serialize};

use crate::daybook::{Book, EntryId};
use crate::diagnosis::{Limit, Standing, lowest};
use crate::wheel::VehicleKind;

/// The form of the text; to be raised with every change of its fields or of how they are worked out.
pub const SCHEMA: u32 = 2;

/// A vehicle in a few words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Summary {
    /// The entry that began it.
    pub vehicle: EntryId,
    /// Its kind; `None` if its description is not here, not read or struck out.
    pub kind: Option<VehicleKind>,
    /// What it is called; may be empty.
    pub name: String,
    /// How many wheels are described.
    pub wheels: usize,
    /// How many entries belong to it.
    pub entries: usize,
    /// How many of its threads are in dispute.
    pub disputes: usize,
    /// The day its latest entry claims, `2026-11-25`.
    pub last_day: String,
    /// The counter of its latest entry.
    pub last_n: u64,
    /// The lowest standing of its wheels at the latest examination.
    pub standing: Option<Standing>,
    /// Whether it is struck out.
    pub struck: bool,
}

#[derive(Serialize, Deserialize)]
struct PaperSummary {
    kind: Option<String>,
    name: String,
    wheels: usize,
    entries: usize,
    disputes: usize,
    last_day: String,
    last_n: u64,
    standing: Option<String>,
    struck: bool,
}

impl Summary {
    /// Sums a vehicle up. The book may hold other vehicles too.
    pub fn of(book: &Book, vehicle: EntryId, limits: &[Limit]) -> Summary {
        let view = book.view();
        let of = view.vehicle(vehicle);
        let last = of.last_entry();
        Summary {
            vehicle,
            kind: of.described().map(|described| described.kind),
            name: of
                .described()
                .map(|described| described.name.clone())
                .unwrap_or_default(),
            wheels: of.wheels().len(),
            entries: of.count(),
            disputes: of.disputes().len(),
            last_day: last
                .map(|entry| entry.at.day().to_owned())
                .unwrap_or_default(),
            last_n: last.map_or(0, |entry| entry.n),
            standing: lowest(&of, limits),
            struck: of.struck(),
        }
    }

    /// The text to keep.
    pub fn write(&self) -> String {
        let paper = PaperSummary {
            kind: self.kind.map(|kind| kind.code().to_owned()),
            name: self.name.clone(),
            wheels: self.wheels,
            entries: self.entries,
            disputes: self.disputes,
            last_day: self.last_day.clone(),
            last_n: self.last_n,
            standing: self.standing.map(|standing| standing.code().to_owned()),
            struck: self.struck,
        };
        // Strings and numbers always write; an empty text would only be made again.
        serde_json::to_string(&paper).unwrap_or_default()
    }

    /// Reads a kept text; `None` if it is of another schema or broken, and so to be made again.
    pub fn read(vehicle: EntryId, schema: u32, text: &str) -> Option<Summary> {
        let paper: PaperSummary = (schema == SCHEMA).then(|| serde_json::from_str(text).ok())??;
        Some(Summary {
            vehicle,
            kind: paper.kind.as_deref().and_then(VehicleKind::from_code),
            name: paper.name,
            wheels: paper.wheels,
            entries: paper.entries,
            disputes: paper.disputes,
            last_day: paper.last_day,
            last_n: paper.last_n,
            standing: paper.standing.as_deref().and_then(Standing::from_code),
            struck: paper.struck,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{SCHEMA, Summary};
    use crate::daybook::{Book, Digest, Hand, Says, Stamp, Unwritten};
    use crate::diagnosis::house_limits;
    use crate::paper::line;
    use crate::wheel::{Vehicle, VehicleKind};

    fn cart() -> Book {
        let says = Says::Vehicle(Vehicle {
            kind: VehicleKind::Cart,
            name: "Hay cart".to_owned(),
        });
        let hand = Hand {
            by: String::new(),
            device: "d1".to_owned(),
            at: Stamp::read("2026-11-25T10:03:00+00:00").unwrap(),
            n: 7,
        };
        let line = line::write(&Unwritten::new(None, says).unwrap(), &hand).unwrap();
        [line::read(&line).unwrap()].into_iter().collect()
    }

    #[test]
    fn a_kept_summary_reads_back() {
        let book = cart();
        let vehicle = book.view().vehicles()[0];
        let summary = Summary::of(&book, vehicle, &house_limits());
        assert_eq!(
            (summary.entries, summary.last_n, summary.last_day.as_str()),
            (1, 7, "2026-11-25")
        );
        assert_eq!(
            Summary::read(vehicle, SCHEMA, &summary.write()),
            Some(summary)
        );
    }

    #[test]
    fn another_schema_or_a_broken_text_is_made_again() {
        let id = Digest::of(b"x");
        assert_eq!(Summary::read(id, SCHEMA + 1, "{}"), None);
        assert_eq!(Summary::read(id, SCHEMA, "{"), None);
    }
}
