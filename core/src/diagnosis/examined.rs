//! One wheel as one examination found it: the book's readings put before the evaluator.

use super::decision::effective;
use super::judge::{Judgement, judge};
use super::limit::Limit;
use super::seen::Taken;
use super::standing::Standing;
use crate::daybook::{EntryId, VehicleView};
use crate::wheel::Position;

/// Judges the wheel at this position by the readings of one examination; `None` if no such wheel is
/// described.
pub fn examined(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<Judgement> {
    let (wheel, _) = vehicle.wheel(position)?;
    let readings: Vec<Taken> = vehicle
        .readings(visit)
        .into_iter()
        .filter(|(_, reading)| reading.slot.position == position)
        .map(|(entry, reading)| Taken {
            entry: entry.id,
            reading: reading.clone(),
        })
        .collect();
    Some(judge(wheel, &readings, limits))
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
