//! What still holds of an earlier examination: a wheel that was found bad stays so until it is judged or decided anew,
//! so that beginning to look again never makes it better.

use super::decision::{effective, of_sides, standing_sides};
use super::examined::examined;
use super::limit::Limit;
use super::standing::Standing;
use crate::daybook::{Entry, EntryId, VehicleView};
use crate::wheel::Position;

/// The standing of a wheel at one examination: by what is decided there, or proposed, or, until it is
/// judged or decided, by what held before. `None` if no such wheel is described.
pub fn standing_at(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<Standing> {
    let (own, settled) = at(vehicle, visit, position, limits)?;
    if settled {
        return Some(own);
    }
    let before = before(vehicle, visit, position, limits);
    Some(before.map_or(own, |(before, _)| own.max(before)))
}

/// The same, of a wheel for which this is proposed, and this [`held`] before: what takes long is not worked out twice.
pub fn standing_by(
    vehicle: &VehicleView<'_, '_>,
    (visit, position): (EntryId, Position),
    proposed: Standing,
    held: Option<Standing>,
) -> Standing {
    let own = effective(vehicle, visit, position, proposed);
    held.map_or(own, |held| own.max(held))
}

/// What holds of the examinations before this one, harsher than *not judged*, and the one that found
/// it: back to the last that judged the wheel or decided on it, whatever those since have found of it.
/// `None` once this one has judged or decided.
pub fn held<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<(Standing, &'a Entry)> {
    let (_, settled) = at(vehicle, visit, position, limits)?;
    if settled {
        return None;
    }
    before(vehicle, visit, position, limits)
}

/// The same, whatever this one has come to.
fn before<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<(Standing, &'a Entry)> {
    let visits = vehicle.visits();
    let before = visits.iter().position(|entry| entry.id == visit)?;
    let mut harshest: Option<(Standing, &'a Entry)> = None;
    for earlier in visits.get(..before)?.iter().rev() {
        let (standing, settled) = at(vehicle, earlier.id, position, limits)?;
        if harshest.is_none_or(|(harsh, _)| standing > harsh) {
            harshest = Some((standing, earlier));
        }
        if settled {
            break;
        }
    }
    harshest.filter(|(standing, _)| *standing > Standing::NotJudged)
}

/// What one examination by itself comes to, and whether it judged the wheel or decided on it.
fn at(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<(Standing, bool)> {
    let judgement = examined(vehicle, visit, position, limits)?;
    let proposed = judgement.proposed();
    let sides = standing_sides(vehicle, visit, position, proposed);
    // To leave it not judged, even signed, settles nothing.
    let silent = |side: &Option<Standing>| side.is_none_or(|it| it == Standing::NotJudged);
    let settled = judgement.missing.is_empty() || !sides.iter().all(silent);
    Some((of_sides(&sides, proposed), settled))
}

#[cfg(test)]
mod tests;
