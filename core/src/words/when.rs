//! A claimed time and a claimed hand, as they are shown; neither decides anything.

use crate::daybook::{Entry, Stamp};

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// The day of a stamp: `25 November 2026`.
#[must_use]
pub fn day(stamp: &Stamp) -> String {
    spelt(stamp.day()).unwrap_or_else(|| stamp.day().to_owned())
}

fn spelt(day: &str) -> Option<String> {
    let mut parts = day.split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    let month: usize = month.parse().ok()?;
    let month = MONTHS.get(month.checked_sub(1)?)?;
    Some(format!("{} {month} {year}", day.trim_start_matches('0')))
}

/// The day and the time of a stamp with its offset: `25 November 2026, 10:03 (+01:00)`.
#[must_use]
pub fn moment(stamp: &Stamp) -> String {
    let text = stamp.as_str();
    match (text.get(11..16), text.get(19..)) {
        (Some(time), Some(offset)) => format!("{}, {time} ({offset})", day(stamp)),
        _ => text.to_owned(),
    }
}

/// Who says an entry, or that no name was given.
#[must_use]
pub fn by(entry: &Entry) -> String {
    if entry.by.is_empty() {
        "no name given".to_owned()
    } else {
        entry.by.clone()
    }
}
