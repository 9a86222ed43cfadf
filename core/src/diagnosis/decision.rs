//! The worst finding proposes, the examiner decides and signs: when a decision stands, and what a
//! wheel's standing comes to with it.

use crate::daybook::{Day, Decision, Entry, EntryId, Kind, Says, Thread, VehicleView};
use crate::survey::{Standing, Use};
use crate::wheel::Position;

/// Why a decision does not stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecisionRefusal {
    /// People are to be carried, and this standing is never enough for them.
    People(Standing),
    /// It is kinder than what is proposed, and gives no reason.
    NoReason {
        /// What was decided.
        standing: Standing,
        /// What is proposed.
        proposed: Standing,
    },
    /// It is kinder than what is proposed now, which is harsher than what its reason was given for.
    Outgrown {
        /// What was proposed when it was decided.
        then: Standing,
        /// What is proposed now.
        now: Standing,
    },
    /// No name is signed.
    NotSigned,
    /// The day to look again lies before the day of the examination.
    AgainBefore,
}

/// Whether a decision stands against what is proposed now.
///
/// # Errors
/// The first rule it breaks.
pub fn stands(
    decision: &Decision,
    proposed: Standing,
    people: bool,
) -> Result<(), DecisionRefusal> {
    let standing = decision.standing;
    let kinder = standing < proposed;
    let little = matches!(standing, Standing::LightWorkOnly | Standing::NotJudged);
    if people && little {
        Err(DecisionRefusal::People(standing))
    } else if kinder && decision.reason.trim().is_empty() {
        Err(DecisionRefusal::NoReason { standing, proposed })
    } else if kinder && decision.proposed < proposed {
        Err(DecisionRefusal::Outgrown {
            then: decision.proposed,
            now: proposed,
        })
    } else if decision.signed.trim().is_empty() {
        Err(DecisionRefusal::NotSigned)
    } else {
        Ok(())
    }
}

/// Whether a decision stands that was taken at an examination of this day, as it is written down.
///
/// # Errors
/// The first rule it breaks.
pub fn stands_at(
    decision: &Decision,
    proposed: Standing,
    people: bool,
    day: &str,
) -> Result<(), DecisionRefusal> {
    stands(decision, proposed, people)?;
    let again = decision.look_again.as_ref();
    match again.filter(|again| again.as_str() < day) {
        Some(_) => Err(DecisionRefusal::AgainBefore),
        None => Ok(()),
    }
}

/// Whether people are to be carried, by any side of what is said of this examination.
pub fn carries_people(vehicle: &VehicleView<'_, '_>, visit: EntryId) -> bool {
    let said = vehicle.visit_thread(visit).map(|thread| thread.readable());
    said.into_iter().flatten().any(|entry| match &entry.says {
        Says::Visit(visit) => visit.used_for.iter().copied().any(Use::carries_people),
        _ => false,
    })
}

/// The decisions on this wheel that count, of this examination only; several that differ are a
/// dispute. What decides anew replaces them all. One that this version cannot read is among them.
pub fn decisions<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
) -> Vec<&'a Entry> {
    let slot = Decision::slot(position);
    let threads = vehicle.of_visit(&Kind::Decision, visit).into_iter();
    threads
        .flat_map(|thread| thread.counts())
        .filter(|entry| entry.slot == slot)
        .collect()
}

/// The decision on this wheel, of this examination only; in a dispute the harsher, and of two that
/// are as harsh the one that looks again sooner. Whether it stands is another question: see
/// [`stands`] and [`effective`].
pub fn decided<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
) -> Option<&'a Decision> {
    let sides = decisions(vehicle, visit, position);
    sides
        .into_iter()
        .filter_map(decision)
        .min_by_key(|decision| {
            let again = decision.look_again.as_ref().map(Day::as_str);
            let harshness = std::cmp::Reverse(decision.standing);
            (harshness, again.is_none(), again)
        })
}

/// The day of an examination: that of its first entry.
fn day<'a>(thread: &Thread<'a>) -> &'a str {
    let entries = thread.entries();
    entries.first().map_or("", |entry| entry.at.day())
}

fn decision(entry: &Entry) -> Option<&Decision> {
    match &entry.says {
        Says::Decision(decision) => Some(decision),
        _ => None,
    }
}

/// The standing that counts for a wheel: what was decided, where it stands, else what is proposed; in
/// a dispute the harshest side.
pub fn effective(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    proposed: Standing,
) -> Standing {
    of_sides(
        &standing_sides(vehicle, visit, position, proposed),
        proposed,
    )
}

/// What these sides come to together.
pub(super) fn of_sides(sides: &[Option<Standing>], proposed: Standing) -> Standing {
    let each = sides.iter().map(|side| side.unwrap_or(proposed));
    each.max().unwrap_or(proposed)
}

/// The standing that each decision on this wheel gives, at this examination; `None` of one that does
/// not stand.
pub(super) fn standing_sides(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    proposed: Standing,
) -> Vec<Option<Standing>> {
    let people = carries_people(vehicle, visit);
    let day = vehicle.visit_thread(visit).map_or("", day);
    let stands = |it: &&Decision| stands_at(it, proposed, people, day).is_ok();
    let side = |entry| decision(entry).filter(stands).map(|it| it.standing);
    let sides = decisions(vehicle, visit, position);
    sides.into_iter().map(side).collect()
}

#[cfg(test)]
mod tests;
