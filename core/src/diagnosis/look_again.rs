//! The day by which a vehicle is to be looked at again.

use super::decision::decisions;
use crate::daybook::{Day, Entry, Says, VehicleView};
use crate::wheel::Position;

/// The earliest day that the latest decision on any wheel sets for looking again. A later examination
/// that decides nothing of a wheel lets its day stand; of a dispute the earliest side counts, whether
/// or not the decision stands: to look sooner is never less safe. `None` if no day is set.
pub fn look_again<'a>(vehicle: &VehicleView<'_, 'a>) -> Option<&'a Day> {
    let visits = vehicle.visits();
    let of_wheel = |position| {
        let mut decided = visits
            .iter()
            .rev()
            .map(|visit| decisions(vehicle, visit.id, position));
        let sides = decided.find(|sides| !sides.is_empty())?;
        sides.into_iter().filter_map(day).min()
    };
    let wheels = vehicle.wheels().into_iter();
    wheels.filter_map(|(position, _)| of_wheel(position)).min()
}

/// The day to look again that the latest examination before this one set for this wheel, with the entry
/// that begins that examination; `None` if none did.
pub fn set_before<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: &Entry,
    position: Position,
) -> Option<(&'a Entry, &'a Day)> {
    let visits = vehicle.visits_by_day();
    let earlier = visits
        .iter()
        .rev()
        .skip_while(|it| it.id != visit.id)
        .skip(1);
    let set = |entry: &'a Entry| {
        let sides = decisions(vehicle, entry.id, position).into_iter();
        Some((entry, sides.filter_map(day).min()?))
    };
    earlier.copied().find_map(set)
}

fn day(entry: &Entry) -> Option<&Day> {
    match &entry.says {
        Says::Decision(decision) => decision.look_again.as_ref(),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::look_again;
    use crate::daybook::sample::{self, id};
    use crate::daybook::{Book, Day, Decision, Entry, Kind, Says, Visit, WheelSaid};
    use crate::survey::Standing;
    use crate::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};

    fn entry(n: u64, kind: Kind, slot: &str, says: Says, visit: Option<u64>) -> Entry {
        Entry {
            visit: visit.map(id),
            ..sample::entry(n, kind, slot, says)
        }
    }

    /// A cart of two wheels with two examinations, entries 8 and 9.
    fn cart() -> Vec<Entry> {
        let (kind, name) = (VehicleKind::Cart, String::new());
        let mut entries = vec![entry(
            0,
            Kind::Vehicle,
            "vehicle",
            Says::Vehicle(Vehicle { kind, name }),
            None,
        )];
        for (n, position) in [(1, Position::Near), (2, Position::Off)] {
            let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
            let says = Says::Wheel(WheelSaid { position, wheel });
            entries.push(entry(n, Kind::Wheel, position.code(), says, None));
        }
        for n in [8, 9] {
            entries.push(entry(
                n,
                Kind::Visit,
                "visit",
                Says::Visit(Visit::default()),
                None,
            ));
        }
        entries
    }

    fn decided(n: u64, visit: u64, position: Position, day: &str) -> Entry {
        let decision = Decision {
            position,
            standing: Standing::LightWorkOnly,
            proposed: Standing::LightWorkOnly,
            reason: String::new(),
            look_again: Day::read(day),
            signed: "A. Field".to_owned(),
        };
        let slot = Decision::slot(position);
        entry(
            n,
            Kind::Decision,
            &slot,
            Says::Decision(decision),
            Some(visit),
        )
    }

    fn day(entries: &[Entry]) -> Option<String> {
        let book: Book = cart().into_iter().chain(entries.iter().cloned()).collect();
        let view = book.view();
        look_again(&view.vehicle(id(0))).map(|day| day.as_str().to_owned())
    }

    #[test]
    fn the_earliest_day_of_all_wheels_counts() {
        let (near, off) = (Position::Near, Position::Off);
        let both = [
            decided(20, 9, near, "2027-05-01"),
            decided(21, 9, off, "2027-03-01"),
        ];
        assert_eq!(day(&both).as_deref(), Some("2027-03-01"));
        assert_eq!(day(&[]), None);
        assert_eq!(day(&[decided(20, 9, near, "")]), None);
    }

    #[test]
    fn a_later_decision_takes_the_place_of_an_earlier_one_and_silence_does_not() {
        let near = Position::Near;
        let first = decided(20, 8, near, "2027-01-01");
        assert_eq!(
            day(std::slice::from_ref(&first)).as_deref(),
            Some("2027-01-01")
        );
        let later = [first.clone(), decided(21, 9, near, "2028-01-01")];
        assert_eq!(day(&later).as_deref(), Some("2028-01-01"));
        assert_eq!(day(&[first, decided(21, 9, near, "")]), None);
    }

    #[test]
    fn of_a_dispute_the_earliest_side_counts() {
        let near = Position::Near;
        let sides = [
            decided(20, 9, near, "2027-05-01"),
            decided(21, 9, near, "2027-04-01"),
        ];
        assert_eq!(day(&sides).as_deref(), Some("2027-04-01"));
    }

    #[test]
    fn a_wheel_that_is_struck_out_is_not_looked_at_again() {
        let near = Position::Near;
        let strike = Entry {
            replaces: vec![id(1)],
            ..entry(30, Kind::Wheel, near.code(), Says::Struck, None)
        };
        assert_eq!(day(&[decided(20, 9, near, "2027-05-01"), strike]), None);
    }
}
