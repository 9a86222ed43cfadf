//! What still holds of an earlier examination: a wheel that was found bad stays so until it is judged or decided anew,
//! so that beginning to look again never makes it better.

use super::decision::{carries_people, day, decisions, effective, stands_at};
use super::examined::examined;
use super::limit::Limit;
use super::standing::Standing;
use crate::daybook::{Entry, EntryId, Says, VehicleView};
use crate::wheel::Position;

/// The standing of a wheel at one examination: by what is decided there, or proposed, or, until it is
/// judged or decided, by what held before. `None` if no such wheel is described.
pub fn standing_at(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Option<Standing> {
    let (own, _) = at(vehicle, visit, position, limits)?;
    let held = held(vehicle, visit, position, limits).map(|(standing, _)| standing);
    Some(held.map_or(own, |held| own.max(held)))
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
    let people = carries_people(vehicle, visit);
    let day = vehicle.visit_thread(visit).map_or("", day);
    let sides = decisions(vehicle, visit, position);
    let decided = sides.iter().any(|entry| match &entry.says {
        // To leave it not judged, even signed, settles nothing.
        Says::Decision(said) => {
            said.standing != Standing::NotJudged && stands_at(said, proposed, people, day).is_ok()
        }
        _ => false,
    });
    let standing = effective(vehicle, visit, position, proposed);
    Some((standing, judgement.missing.is_empty() || decided))
}

#[cfg(test)]
mod tests;
