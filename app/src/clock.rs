//! The device's clock: the local time with its offset, as claimed in an entry. Shown, never deciding.

use js_sys::Date;

/// The local time now as RFC 3339 text, to the second: `2026-11-25T10:03:00+00:00`.
pub fn now() -> String {
    written(&Date::new_0())
}

/// The local time so many milliseconds from now, written in the same way.
pub fn later(milliseconds: f64) -> String {
    written(&Date::new(&(Date::now() + milliseconds).into()))
}

/// How many milliseconds ago a time written so was, by this device's clock; not a number for any other text.
pub fn since(written: &str) -> f64 {
    Date::now() - Date::parse(written)
}

fn written(date: &Date) -> String {
    format!(
        "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}",
        date.get_full_year(),
        date.get_month() + 1,
        date.get_date(),
        date.get_hours(),
        date.get_minutes(),
        date.get_seconds(),
        offset(date.get_timezone_offset()),
    )
}

/// The browser counts minutes from local time to UTC; RFC 3339 writes the way from UTC to local time.
fn offset(to_utc: f64) -> String {
    let minutes = -to_utc as i32;
    let sign = if minutes < 0 { '-' } else { '+' };
    format!("{sign}{:02}:{:02}", minutes.abs() / 60, minutes.abs() % 60)
}

#[cfg(test)]
mod tests {
    use super::offset;

    #[test]
    fn the_offset_is_written_from_utc_to_local_time() {
        // The browser's minutes run the other way: −60 is an hour ahead of UTC.
        let written = [0.0, -60.0, 210.0, -345.0, 720.0].map(offset);
        assert_eq!(written, ["+00:00", "+01:00", "-03:30", "+05:45", "-12:00"]);
    }
}
