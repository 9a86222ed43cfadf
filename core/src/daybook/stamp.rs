//! A wall time as a device claimed it, with its offset: shown, never deciding; and a day of the
//! calendar, as someone set it.

/// A claimed time in the form `2026-11-25T10:03:00+00:00` (RFC 3339, seconds, a numeric offset).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp(String);

/// Shape of a stamp: `9` stands for a digit, `+` for either sign, the rest for itself.
const SHAPE: &[u8] = b"9999-99-99T99:99:99+99:99";

impl Stamp {
    /// Takes a time in the one form; `None` for any other, and for a month, day or hour that cannot
    /// be.
    pub fn read(text: &str) -> Option<Stamp> {
        let bytes = text.as_bytes();
        let shaped = bytes.len() == SHAPE.len()
            && bytes.iter().zip(SHAPE).all(|(byte, shape)| match shape {
                b'9' => byte.is_ascii_digit(),
                b'+' => matches!(byte, b'+' | b'-'),
                _ => byte == shape,
            });
        let within = |from: usize, to: usize, least: u32, most: u32| {
            text.get(from..to)
                .and_then(|part| part.parse().ok())
                .is_some_and(|n: u32| (least..=most).contains(&n))
        };
        (shaped
            && within(5, 7, 1, 12)
            && within(8, 10, 1, 31)
            && within(11, 13, 0, 23)
            && within(14, 16, 0, 59)
            && within(17, 19, 0, 60)
            && within(20, 22, 0, 23)
            && within(23, 25, 0, 59))
        .then(|| Stamp(text.to_owned()))
    }

    /// The whole time, as claimed.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The day alone, `2026-11-25`.
    pub fn day(&self) -> &str {
        self.0.get(..10).unwrap_or_default()
    }

    /// The day as a count of days, one more for each next day of the calendar: how far two days lie
    /// apart. A day its month has not counts on into the next.
    pub fn day_count(&self) -> u32 {
        let part = |from: usize, to: usize| {
            let digits = self.0.get(from..to).and_then(|digits| digits.parse().ok());
            digits.unwrap_or(1_u32)
        };
        // Years that begin with March have their odd day at their end.
        let months = part(5, 7) + 9;
        let (year, month) = (part(0, 4) + months / 12, months % 12);
        let year = year.saturating_sub(1);
        365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + part(8, 10)
    }
}

/// A day in the form `2026-11-25`; a later day is the greater.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(String);

impl Day {
    /// Takes a day in the one form; `None` for any other, and for a month or day that cannot be.
    pub fn read(text: &str) -> Option<Day> {
        let stamp = Stamp::read(&format!("{text}T00:00:00+00:00"))?;
        Some(Day(stamp.day().to_owned()))
    }

    /// The day so many months later; where that month is shorter, its last day.
    #[must_use]
    pub fn months_later(&self, months: u32) -> Day {
        let number = |from: usize, to: usize| -> u32 {
            let digits = self.0.get(from..to).unwrap_or_default();
            digits.parse().unwrap_or_default()
        };
        let month = number(0, 4) * 12 + number(5, 7).saturating_sub(1) + months;
        let (year, month) = ((month / 12).min(9999), month % 12 + 1);
        let day = number(8, 10).min(days(year, month));
        Day(format!("{year:04}-{month:02}-{day:02}"))
    }

    /// The day as it is written down.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

fn days(year: u32, month: u32) -> u32 {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::{Day, Stamp};

    #[test]
    fn months_later_is_a_day_of_the_calendar() {
        let later = |day: &str, months| Day::read(day).unwrap().months_later(months);
        let rows = [
            ("2026-11-25", 3, "2027-02-25"),
            ("2026-11-25", 12, "2027-11-25"),
            ("2026-08-31", 6, "2027-02-28"),
            ("2027-08-31", 6, "2028-02-29"),
            ("1999-12-31", 2, "2000-02-29"),
            ("2099-12-31", 2, "2100-02-28"),
            ("2026-01-31", 3, "2026-04-30"),
            ("2026-11-30", 1, "2026-12-30"),
        ];
        for (day, months, then) in rows {
            assert_eq!(later(day, months).as_str(), then, "{day} and {months}");
        }
    }

    #[test]
    fn a_day_has_one_form() {
        let (day, later) = (Day::read("2026-11-25"), Day::read("2026-12-01"));
        assert_eq!(day.as_ref().map(Day::as_str), Some("2026-11-25"));
        assert!(day < later);
        for text in [
            "",
            "25 November 2026",
            "2026-13-25",
            "2026-11-32",
            "2026-11-25T10:03:00+01:00",
            "2026-11-2",
        ] {
            assert_eq!(Day::read(text), None, "{text}");
        }
    }

    /// Days between well-known days of the calendar; 1900 was no leap year, 2000 was.
    #[test]
    fn days_are_counted() {
        let count = |day: &str| {
            Stamp::read(&format!("{day}T23:59:00+01:00"))
                .unwrap()
                .day_count()
        };
        let between = |one, other| count(other) - count(one);
        assert_eq!(between("2026-11-24", "2026-11-25"), 1);
        assert_eq!(between("2025-12-31", "2026-01-01"), 1);
        assert_eq!(between("1900-02-28", "1900-03-01"), 1);
        assert_eq!(between("2000-02-28", "2000-03-01"), 2);
        assert_eq!(between("2023-11-25", "2026-11-25"), 1096);
        assert_eq!(between("1970-01-01", "2000-01-01"), 10_957);
    }

    #[test]
    fn the_one_form_is_read() {
        let stamp = Stamp::read("2026-11-25T10:03:00+01:00").unwrap();
        assert_eq!(stamp.day(), "2026-11-25");
        assert_eq!(stamp.as_str(), "2026-11-25T10:03:00+01:00");
    }

    #[test]
    fn other_forms_are_not() {
        for text in [
            "",
            "2026-11-25",
            "2026-11-25T10:03:00Z",
            "2026-13-25T10:03:00+01:00",
            "2026-11-32T10:03:00+01:00",
            "2026-11-25T24:03:00+01:00",
            "2026-11-25 10:03:00+01:00",
            "２026-11-25T10:03:00+01:00",
        ] {
            assert_eq!(Stamp::read(text), None, "{text}");
        }
    }
}
