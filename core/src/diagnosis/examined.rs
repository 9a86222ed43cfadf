//! One wheel as one examination found it: the book's readings put before the evaluator.

use super::decision::effective;
use super::judge::{Beside, Judgement, judge};
use super::limit::Limit;
use super::seen::Taken;
use super::standing::Standing;
use crate::daybook::{EntryId, VehicleView};
use crate::survey::Question;
use crate::wheel::Position;

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
    let pair = position
        .pair()
        .filter(|pair| vehicle.wheel(*pair).is_some());
    for (entry, reading) in vehicle.readings(visit) {
        let slot = reading.slot;
        let taken = || Taken {
            entry: entry.id,
            reading: reading.clone(),
        };
        if slot.position == position {
            readings.push(taken());
        } else if Some(slot.position) == pair && slot.question == Question::Dish {
            beside.dish.push(taken());
        }
    }
    Some(judge(wheel, &readings, limits, &beside))
}

/// The lowest standing that any wheel of the vehicle gets from its latest examination, by what was
/// decided there or is proposed; `None` if it has no wheel or was never examined.
pub fn lowest(vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> Option<Standing> {
    let visit = vehicle.visits().last()?.id;
    let of = |position| {
        let proposed = examined(vehicle, visit, position, limits)?.proposed();
        Some(effective(vehicle, visit, position, proposed))
    };
    vehicle
        .wheels()
        .into_iter()
        .filter_map(|(position, _)| of(position))
        .max()
}
