//! What is odd about a set of entries: said plainly, with what it means for the book.

use super::says::says;
use super::style::Style;
use super::when::{by, day};
use crate::daybook::{Book, EntryId, Problem};

/// How many characters of an id tell it apart in a sentence.
const SHORT_ID: usize = 8;

/// An oddity of this book, as sentences.
#[must_use]
pub fn problem(problem: &Problem, book: &Book, style: Style) -> String {
    let named = |id: &EntryId| entry(*id, book, style);
    match problem {
        Problem::ReplacesElsewhere { entry, names } => format!(
            "{} claims to replace {}, which is of another vehicle, part or kind, or is the same entry. The claim has no effect; nothing was lost.",
            named(entry),
            named(names)
        ),
        Problem::StrikesNothing(entry) => format!(
            "{} strikes out, but names nothing to strike. It has no effect; nothing was lost.",
            named(entry)
        ),
        Problem::VehicleNotHere { entry, names } => format!(
            "{} belongs to a vehicle that this book does not begin ({}). It is kept; bring in the book that holds the vehicle's first entry.",
            named(entry),
            named(names)
        ),
        Problem::VisitNotHere { entry, names } => format!(
            "{} belongs to an examination that is not in this book ({}). It is kept; bring in the book that holds the examination.",
            named(entry),
            named(names)
        ),
        Problem::EarlierNotHere { entry, count: 1 } => format!(
            "{}: one earlier entry that it replaces is not here. It counts all the same.",
            named(entry)
        ),
        Problem::EarlierNotHere { entry, count } => format!(
            "{}: {count} earlier entries that it replaces are not here. It counts all the same.",
            named(entry)
        ),
    }
}

fn entry(id: EntryId, book: &Book, style: Style) -> String {
    let hex = id.hex();
    let short = hex.get(..SHORT_ID).unwrap_or(&hex);
    match book.entry(id) {
        Some(entry) => format!(
            "Entry {short} ({}; {}, {})",
            says(entry, None, style),
            by(entry),
            day(&entry.at)
        ),
        None => format!("entry {short}, not here"),
    }
}
