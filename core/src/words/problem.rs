//! What is odd about a set of entries: said plainly, with what it means for the book.

use super::capital;
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
    let said = match problem {
        Problem::ReplacesElsewhere { entry, names } => format!(
            "{} claims to replace {}, which is of another vehicle, part or kind, or is the same entry. The claim has no effect; nothing was lost.",
            named(entry),
            named(names)
        ),
        Problem::StrikesNothing(entry) => format!(
            "{} strikes out, but names nothing of its own part and kind to strike. It has no effect; nothing was lost.",
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
    };
    capital(&said)
}

fn entry(id: EntryId, book: &Book, style: Style) -> String {
    let hex = id.hex();
    let short = hex.get(..SHORT_ID).unwrap_or(&hex);
    match book.entry(id) {
        Some(entry) => format!(
            "entry {short} ({}; {}, {})",
            says(entry, None, style),
            by(entry),
            day(&entry.at)
        ),
        None => format!("entry {short}, not here"),
    }
}

#[cfg(test)]
mod tests {
    use super::problem;
    use crate::daybook::{Book, Problem};
    use crate::survey::{Answer, Play, Question};
    use crate::wheel::Place;
    use crate::words::sample::{id, reading, style};

    #[test]
    fn every_problem_is_said_with_what_it_means() {
        let loose = Answer::Play(Play::Loose);
        let book: Book = [reading(1, Question::SpokeFoot, Place::Spoke(3), loose)]
            .into_iter()
            .collect();
        let (entry, names) = (id(1), id(2));
        let rows = [
            Problem::ReplacesElsewhere { entry, names },
            Problem::StrikesNothing(entry),
            Problem::VehicleNotHere { entry, names },
            Problem::VisitNotHere { entry, names },
            Problem::EarlierNotHere { entry, count: 1 },
            Problem::EarlierNotHere { entry, count: 3 },
        ]
        .map(|odd| problem(&odd, &book, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026) claims to replace entry d86e8112, not here, which is of another vehicle, part or kind, or is the same entry. The claim has no effect; nothing was lost.
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026) strikes out, but names nothing of its own part and kind to strike. It has no effect; nothing was lost.
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026) belongs to a vehicle that this book does not begin (entry d86e8112, not here). It is kept; bring in the book that holds the vehicle's first entry.
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026) belongs to an examination that is not in this book (entry d86e8112, not here). It is kept; bring in the book that holds the examination.
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026): one earlier entry that it replaces is not here. It counts all the same.
        Entry 7c9fa136 (near wheel, spoke 3: foot loose; Ada Field, 5 November 2026): 3 earlier entries that it replaces are not here. It counts all the same.
        ");
    }
}
