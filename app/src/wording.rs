//! The core's words for entries of a vehicle at hand, with the wheel that each is about looked up.

use cartside_core::daybook::{Entry, Stamp, VehicleView};
use cartside_core::quantity::decimal;
use cartside_core::survey::Slot;
use cartside_core::wheel::{Part, Wheel};
use cartside_core::words::{self, Style};

/// What an entry says, in one line.
pub fn says(vehicle: &VehicleView<'_, '_>, entry: &Entry, style: Style) -> String {
    words::says::says(entry, wheel_of(vehicle, entry), style)
}

/// The same with a capital.
pub fn heading(vehicle: &VehicleView<'_, '_>, entry: &Entry, style: Style) -> String {
    words::says::heading(entry, wheel_of(vehicle, entry), style)
}

/// The wheel an entry is about, if it is about one that is described.
pub fn wheel_of<'a>(vehicle: &VehicleView<'_, 'a>, entry: &Entry) -> Option<&'a Wheel> {
    let of_reading = Slot::from_code(&entry.slot).map(Slot::part);
    let part = of_reading.or_else(|| Part::from_code(&entry.slot))?;
    wheel_at(vehicle, part)
}

/// The wheel that a part is on, if it is on one that is described.
pub fn wheel_at<'a>(vehicle: &VehicleView<'_, 'a>, part: Part) -> Option<&'a Wheel> {
    let (wheel, _) = vehicle.wheel(part.position()?)?;
    Some(wheel)
}

/// Who says an entry and when.
pub fn hand(entry: &Entry) -> String {
    format!(
        "{}, {}",
        words::when::by(entry),
        words::when::moment(&entry.at)
    )
}

/// A claimed time as it is shown; one of another form as it stands.
pub fn moment(claimed: &str) -> String {
    Stamp::read(claimed).map_or_else(|| claimed.to_owned(), |at| words::when::moment(&at))
}

/// A count with its noun: `1 entry`, `3 entries`.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {many}"),
    }
}

/// A size in bytes as people say it: `312 kB`, `4.5 MB`.
pub fn size(bytes: f64) -> String {
    let (kilo, mega, giga) = (1e3, 1e6, 1e9);
    if bytes < mega {
        format!("{} kB", decimal((bytes / kilo).ceil(), 0))
    } else if bytes < giga {
        format!("{} MB", decimal(bytes / mega, 1))
    } else {
        format!("{} GB", decimal(bytes / giga, 1))
    }
}

#[cfg(test)]
mod tests {
    use super::{counted, size};

    #[test]
    fn one_is_one_and_none_is_many() {
        assert_eq!(counted(1, "entry", "entries"), "1 entry");
        assert_eq!(counted(0, "entry", "entries"), "0 entries");
    }

    #[test]
    fn sizes_are_said_in_the_unit_that_suits_them() {
        let said = [1.0, 312_000.0, 4_520_000.0, 2.1e9].map(size);
        assert_eq!(said, ["1 kB", "312 kB", "4.5 MB", "2.1 GB"]);
    }
}
