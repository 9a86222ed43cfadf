//! The readings once more, as rows for a spreadsheet: what counts, vehicle by vehicle and examination by examination.

use cartside_core::daybook::{Book, Entry, Kind, Says, Thread, VehicleView};
use cartside_core::paper::exchange::csv;
use cartside_core::quantity::decimal;
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::survey::{Answer, Reading};
use cartside_core::words::{self, Style};

use crate::wording;

/// The first row.
const HEADER: [&str; 12] = [
    "vehicle",
    "examined on",
    "part",
    "asked",
    "answer",
    "millimetres",
    "give or take",
    "as typed",
    "who",
    "when",
    "counts",
    "entry",
];

/// The header, then a row for each reading that counts; of a disputed one every side. It is written row by row, since
/// all rows together would be larger than the book.
pub(super) fn readings(book: &Book, style: Style) -> String {
    let view = book.view();
    let mut table = csv(&[HEADER.map(str::to_owned).to_vec()]);
    for id in view.vehicles() {
        let vehicle = view.vehicle(id);
        for thread in vehicle.threads(&Kind::Reading) {
            table.push_str(&csv(&rows_of(&vehicle, thread, style)));
        }
    }
    table
}

fn rows_of(vehicle: &VehicleView<'_, '_>, thread: &Thread<'_>, style: Style) -> Vec<Vec<String>> {
    let counts = if thread.disputed() {
        "in dispute"
    } else {
        "yes"
    };
    let row = |entry: &Entry| match &entry.says {
        Says::Reading(reading) if !vehicle.hidden(entry) => {
            Some(row(vehicle, entry, reading, counts, style))
        }
        _ => None,
    };
    thread.counts().into_iter().filter_map(row).collect()
}

fn row(
    vehicle: &VehicleView<'_, '_>,
    entry: &Entry,
    reading: &Reading,
    counts: &str,
    style: Style,
) -> Vec<String> {
    let part = reading.slot.part();
    let wheel = wording::wheel_at(vehicle, part);
    let (value, doubt) = numbers(&reading.answer);
    vec![
        called(vehicle, style),
        examined_on(vehicle, entry),
        words::place::part(part, wheel, style),
        words::question::short(reading.slot.question, style),
        words::answer::answer(&reading.answer, style),
        value,
        doubt,
        reading.written.clone(),
        entry.by.clone(),
        entry.at.as_str().to_owned(),
        counts.to_owned(),
        entry.id.hex(),
    ]
}

/// What the vehicle is called; where it has no name, its kind and the beginning of its id.
fn called(vehicle: &VehicleView<'_, '_>, style: Style) -> String {
    let short: String = vehicle.id().hex().chars().take(8).collect();
    match vehicle.described() {
        Some(said) if !said.name.is_empty() => said.name.clone(),
        Some(said) => format!("{} {short}", words::term::vehicle_kind(said.kind, style)),
        None => short,
    }
}

fn examined_on(vehicle: &VehicleView<'_, '_>, entry: &Entry) -> String {
    let visit = entry.visit.and_then(|visit| vehicle.visit_thread(visit));
    visit
        .and_then(|thread| thread.entries().first().copied())
        .map(|visit| visit.at.day().to_owned())
        .unwrap_or_default()
}

/// The length in millimetres and its doubt, where the answer is a length.
fn numbers(answer: &Answer) -> (String, String) {
    match answer {
        Answer::Length(measured) => (
            decimal(to_paper_mm(measured.value()), 6),
            decimal(to_paper_mm(measured.doubt()), 6),
        ),
        Answer::Over(least) => (decimal(to_paper_mm(*least), 6), String::new()),
        _ => (String::new(), String::new()),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{HEADER, numbers};
    use cartside_core::quantity::Measured;
    use cartside_core::quantity::length::millimetres;
    use cartside_core::survey::{Answer, Play};

    #[test]
    fn only_lengths_have_numbers() {
        let half = Measured::new(millimetres(0.5), millimetres(0.25)).unwrap();
        let said = |answer| {
            let (value, doubt) = numbers(&answer);
            format!("{value}|{doubt}")
        };
        assert_eq!(said(Answer::Length(half)), "0.5|0.25");
        assert_eq!(said(Answer::Over(millimetres(5.0))), "5|");
        assert_eq!(said(Answer::Play(Play::Loose)), "|");
    }

    #[test]
    fn no_two_columns_have_the_same_name() {
        let mut names = HEADER.to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), HEADER.len());
    }
}
