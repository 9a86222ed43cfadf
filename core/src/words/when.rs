//! A claimed time and a claimed hand, as they are shown; neither decides anything.

use crate::daybook::{Day, Entry, Stamp};

/// The months of the year, January first.
pub const MONTHS: [&str; 12] = [
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

/// A day of the calendar: `25 November 2026`.
#[must_use]
pub fn on(day: &Day) -> String {
    spelt(day.as_str()).unwrap_or_else(|| day.as_str().to_owned())
}

/// When to look again: `look again by 3 May 2027`; a day that is past says so. Today is given as
/// `2026-11-25`.
#[must_use]
pub fn look_again(by: &Day, today: &str) -> String {
    let past = if by.as_str() < today { ": overdue" } else { "" };
    format!("look again by {}{past}", on(by))
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

#[cfg(test)]
mod tests {
    use super::{by, day, look_again, moment};
    use crate::daybook::{Day, Kind, Says, Stamp};
    use crate::words::sample::entry;

    #[test]
    fn each_month_is_spelt() {
        let days = (1..=12).map(|month| {
            let text = format!("2026-{month:02}-05T09:03:00-05:30");
            day(&Stamp::read(&text).unwrap())
        });
        insta::assert_snapshot!(days.collect::<Vec<_>>().join(", "), @"5 January 2026, 5 February 2026, 5 March 2026, 5 April 2026, 5 May 2026, 5 June 2026, 5 July 2026, 5 August 2026, 5 September 2026, 5 October 2026, 5 November 2026, 5 December 2026");
    }

    #[test]
    fn a_moment_keeps_the_offset_it_claims() {
        let stamp = Stamp::read("2026-11-25T10:03:00+01:00").unwrap();
        insta::assert_snapshot!(moment(&stamp), @"25 November 2026, 10:03 (+01:00)");
    }

    #[test]
    fn a_day_that_is_past_is_overdue() {
        let by = Day::read("2026-11-25").unwrap();
        let said = ["2026-11-24", "2026-11-25", "2026-11-26"].map(|today| look_again(&by, today));
        insta::assert_snapshot!(said.join("\n"), @r"
        look again by 25 November 2026
        look again by 25 November 2026
        look again by 25 November 2026: overdue
        ");
    }

    #[test]
    fn a_missing_name_is_said_to_be_missing() {
        let mut entry = entry(1, Kind::Visit, "visit", Says::Unread);
        assert_eq!(by(&entry), "Ada Field");
        entry.by.clear();
        insta::assert_snapshot!(by(&entry), @"no name given");
    }
}
