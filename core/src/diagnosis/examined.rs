//! One wheel as one examination found it: the book's readings put before the evaluator.

use super::decision::carries_people;
use super::held::standing_at;
use super::judge::{Beside, Judgement, judge};
use super::limit::Limit;
use super::seen::Taken;
use super::standing::Standing;
use crate::daybook::{EntryId, VehicleView};
use crate::survey::{Question, Stage};
use crate::wheel::{Position, Size};

/// Judges the wheel at this position by the readings of one examination, its dish beside that of
/// the other wheel of its axle; `None` if no such wheel is
/// described.
pub fn examined(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<Judgement> {
    let (wheel, _) = vehicle.wheel(position)?;
    let (mut readings, mut beside) = (Vec::new(), Beside::default());
    beside.people = carries_people(vehicle, visit);
    let off = vehicle.said_at(visit, Stage::TyreOff);
    let summed = [Question::JointGap, Question::StandOff];
    let pair = position
        .pair()
        .filter(|pair| vehicle.wheel(*pair).is_some());
    let other = pair.and_then(|pair| vehicle.wheel(pair));
    beside.built = other.and_then(|(wheel, _)| wheel.sizes.get(Size::Dish));
    for (entry, reading) in vehicle.readings(visit) {
        let slot = reading.slot;
        let taken = || Taken {
            entry: entry.id,
            reading: reading.clone(),
        };
        if slot.position == position {
            beside.tyre_off |=
                summed.contains(&slot.question) && entry.visit.is_some_and(|id| off.contains(&id));
            readings.push(taken());
        } else if Some(slot.position) == pair && slot.question == Question::Dish {
            beside.dish.push(taken());
        }
    }
    Some(judge(wheel, &readings, limits, &beside))
}

/// The lowest standing that any wheel of the vehicle has at its latest examination, by what was
/// decided there, is proposed, or still holds of an earlier one; `None` if it has no wheel or was never examined.
pub fn lowest(vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> Option<Standing> {
    let visit = vehicle.visits().last()?.id;
    let wheels = vehicle.wheels().into_iter();
    wheels
        .filter_map(|(position, _)| standing_at(vehicle, visit, position, limits))
        .max()
}

#[cfg(test)]
mod tests {
    use super::{examined, lowest};
    use crate::daybook::sample::{self, id};
    use crate::daybook::{Book, Entry, EntryId, Kind, Says, Visit, WheelSaid};
    use crate::diagnosis::{Measure, Standing, Test, house_limits};
    use crate::quantity::Measured;
    use crate::quantity::length::{millimetres, to_paper_mm};
    use crate::survey::{Answer, Question, Reading, Slot, Stage};
    use crate::wheel::{Felloes, Place, Position, Vehicle, VehicleKind, Wheel};

    fn entry(n: u64, kind: Kind, slot: &str, says: Says, visit: Option<EntryId>) -> Entry {
        Entry {
            visit,
            n: n + 1,
            ..sample::entry(n, kind, slot, says)
        }
    }

    /// A waggon with these wheels, and two examinations, entries 8 and 9.
    fn waggon(wheels: &[Position]) -> Vec<Entry> {
        let vehicle = Says::Vehicle(Vehicle {
            kind: VehicleKind::Waggon,
            name: String::new(),
        });
        let mut entries = vec![entry(0, Kind::Vehicle, "vehicle", vehicle, None)];
        for (n, position) in (1..).zip(wheels) {
            let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
            let position = *position;
            let says = Says::Wheel(WheelSaid { position, wheel });
            entries.push(entry(n, Kind::Wheel, position.code(), says, None));
        }
        for n in [8, 9] {
            let place = String::new();
            entries.push(entry(
                n,
                Kind::Visit,
                "visit",
                Says::Visit(Visit {
                    place,
                    ..Visit::default()
                }),
                None,
            ));
        }
        entries
    }

    fn reading(n: u64, visit: u64, position: Position, question: Question, mm: f64) -> Entry {
        let slot = Slot {
            position,
            place: Place::Whole,
            question,
        };
        let length = Measured::new(millimetres(mm), millimetres(1.0)).unwrap();
        let says = Says::Reading(Reading {
            slot,
            answer: Answer::Length(length),
            written: String::new(),
        });
        entry(n, Kind::Reading, &slot.code(), says, Some(id(visit)))
    }

    /// How far the near fore wheel's dish is found to differ at the second examination, in mm, and
    /// on how many entries that rests.
    fn differs(wheels: &[Position], readings: Vec<Entry>) -> Option<(f64, usize)> {
        let own = reading(20, 9, Position::NearFore, Question::Dish, 36.0);
        let entries = waggon(wheels).into_iter().chain([own]).chain(readings);
        let book: Book = entries.collect();
        let view = book.view();
        let vehicle = view.vehicle(id(0));
        let judged = examined(&vehicle, id(9), Position::NearFore, &house_limits()).unwrap();
        assert_eq!(judged.elsewhere, []);
        let finding = judged.findings.first()?;
        match finding.measure {
            Measure::Apart { by: length, .. } => Some((to_paper_mm(length), finding.entries.len())),
            _ => None,
        }
    }

    #[test]
    fn the_dish_is_held_beside_the_other_wheel_of_the_axle_at_the_same_examination() {
        use Position::{NearFore, NearHind, OffFore, OffHind};
        let four = [NearFore, OffFore, NearHind, OffHind];
        let other = |visit, at, question| vec![reading(21, visit, at, question, 30.0)];
        let dish = |visit, at| differs(&four, other(visit, at, Question::Dish));
        assert_eq!(dish(9, OffFore), Some((6.0, 2)));
        assert_eq!(dish(8, OffFore), None, "another examination");
        assert_eq!(dish(9, OffHind), None, "another axle");
        assert_eq!(differs(&four, other(9, OffFore, Question::Shake)), None);
        assert_eq!(differs(&four, Vec::new()), None);
        let gone = other(9, OffFore, Question::Dish);
        assert_eq!(
            differs(&[NearFore], gone),
            None,
            "no such wheel is described"
        );
    }

    /// Joints shut and shoulders 2 mm off are a bound rim with the tyre on; a joint measured with it
    /// off takes no part in that sum.
    #[test]
    fn what_is_measured_with_the_tyre_off_makes_no_bound_rim() {
        let bound = |off: bool| {
            let stage = if off { Stage::TyreOff } else { Stage::OnTheArm };
            let visit = Visit {
                stage,
                ..Visit::default()
            };
            let mut later = entry(10, Kind::Visit, "visit", Says::Visit(visit), None);
            later.replaces = vec![id(9)];
            let mut entries = waggon(&[Position::NearFore]);
            entries.push(later);
            let mut add = |place, question, mm, visit: u64| {
                let n = 20 + entries.len() as u64;
                let mut taken = reading(n, visit, Position::NearFore, question, mm);
                if let Says::Reading(reading) = &mut taken.says {
                    reading.slot.place = place;
                    taken.slot = reading.slot.code();
                }
                entries.push(taken);
            };
            for spoke in 1..=12 {
                add(Place::Spoke(spoke), Question::StandOff, 2.0, 9);
            }
            for joint in 1..=6 {
                let visit = if joint == 6 { 10 } else { 9 };
                add(Place::Joint(joint), Question::JointGap, 0.0, visit);
            }
            let book: Book = entries.into_iter().collect();
            let view = book.view();
            let vehicle = view.vehicle(id(0));
            assert_eq!(
                vehicle.visit(id(9)).map(|(visit, _)| visit.stage),
                Some(stage)
            );
            let judged = examined(&vehicle, id(9), Position::NearFore, &house_limits()).unwrap();
            assert_eq!(judged.elsewhere, []);
            let mut findings = judged.findings.iter();
            findings.any(|finding| finding.limit.test == Test::FelloeBound)
        };
        assert!(bound(false));
        assert!(!bound(true));
    }

    #[test]
    fn a_vehicle_takes_the_lowest_standing_of_its_wheels() {
        use Position::{NearFore, OffFore};
        let shake = reading(21, 9, OffFore, Question::Shake, 30.0);
        let entries = waggon(&[NearFore, OffFore]).into_iter().chain([shake]);
        let book: Book = entries.collect();
        let view = book.view();
        let vehicle = view.vehicle(id(0));
        assert_eq!(lowest(&vehicle, &house_limits()), Some(Standing::KeepEmpty));
    }
}
