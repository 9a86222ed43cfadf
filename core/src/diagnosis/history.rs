//! What was found at one place of one wheel, examination by examination, with the moisture of the day;
//! and one examination beside those before it.
//!
//! Examinations stand by the day they claim, then by counter: books of two devices have counters of
//! their own, and a history goes by the calendar.

use super::change::{Change, change};
use super::examined::examined;
use super::limit::Limit;
use super::standing::Grade;
use crate::daybook::{Entry, EntryId, Kind, Says, VehicleView};
use crate::quantity::Percent;
use crate::survey::{Answer, Question, Slot};
use crate::wheel::{Part, Place, Position, Size, Wheel};

/// What one examination found of one question at one place.
#[derive(Clone, Debug, PartialEq)]
pub struct Point<'a> {
    /// The examination, by its first entry.
    pub visit: &'a Entry,
    /// What was answered; several answers are a dispute.
    pub answers: Vec<Answer>,
    /// The least and the greatest moisture of the wheel's felloes at that examination.
    pub moisture: Option<(Percent, Percent)>,
    /// Work done on the place, or on its wheel as a whole, since the point before.
    pub work: Vec<&'a Entry>,
    /// The wheel was described with other parts then, so that this number meant another place.
    pub other_numbers: bool,
}

/// A reading's earlier values.
#[derive(Clone, Debug, PartialEq)]
pub struct History<'a> {
    /// One point an examination that answered, the earliest first.
    pub points: Vec<Point<'a>>,
    /// The wheel, as it is described now, has no such place or is not asked this.
    pub gone: bool,
}

/// One question at one place, as this examination found it beside the latest before that looked.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference<'a> {
    /// The question and its place.
    pub slot: Slot,
    /// The latest earlier examination that looked, and what it found.
    pub then: Option<(&'a Entry, Vec<Answer>)>,
    /// What is found now.
    pub now: Vec<Answer>,
    /// How the two stand to each other.
    pub change: Change,
    /// The gravest finding of now that this place has part in.
    pub grade: Option<Grade>,
    /// Work was done in between on the place, or on its wheel as a whole.
    pub worked: bool,
    /// What was found then was found on a part the wheel, as it is described now, does not have, or
    /// counted otherwise.
    pub gone: bool,
}

/// One answer with what tells its place among others.
struct Told<'a> {
    slot: Slot,
    visit: usize,
    entry: &'a Entry,
    answer: Answer,
}

/// The values of one question at one place, examination by examination.
pub fn history<'a>(vehicle: &VehicleView<'_, 'a>, slot: Slot) -> History<'a> {
    let visits = vehicle.visits_by_day();
    let all = told(vehicle, &visits, slot.position);
    let wheel = vehicle.wheel(slot.position).map(|(wheel, _)| wheel);
    let work = work(vehicle, slot);
    let mut points = Vec::new();
    let mut since = None;
    for (at, visit) in visits.iter().enumerate() {
        let here: Vec<&Told<'a>> = all
            .iter()
            .filter(|told| told.visit == at && told.slot == slot)
            .collect();
        let Some(first) = here.first() else { continue };
        let until = key(first.entry);
        let between =
            |entry: &&&Entry| since.is_none_or(|since| key(entry) > since) && key(entry) < until;
        let work = work.iter().filter(between).copied().collect();
        since = Some(until);
        points.push(Point {
            visit,
            answers: here.iter().map(|told| told.answer).collect(),
            moisture: moisture(&all, at),
            work,
            other_numbers: other_numbers(vehicle, wheel, first),
        });
    }
    History {
        points,
        gone: !wheel.is_some_and(|wheel| has(wheel, slot)),
    }
}

/// What one examination found of one wheel beside what was found before, the gravest first. Empty if
/// no such wheel is described.
pub fn since_last<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
    limits: &[Limit],
) -> Vec<Difference<'a>> {
    let visits = vehicle.visits_by_day();
    let Some(now) = visits.iter().position(|entry| entry.id == visit) else {
        return Vec::new();
    };
    let Some((wheel, _)) = vehicle.wheel(position) else {
        return Vec::new();
    };
    let found = examined(vehicle, visit, position, limits).map(|judged| judged.findings);
    let found = found.unwrap_or_default();
    let all = told(vehicle, &visits, position);
    let mut differences: Vec<Difference<'a>> = Vec::new();
    for slot in slots(&all) {
        let mine = |told: &&Told<'a>| told.slot == slot && told.visit <= now;
        let told: Vec<&Told<'a>> = all.iter().filter(mine).collect();
        if let Some(mut difference) = difference(vehicle, wheel, &visits, now, &told) {
            let here = found
                .iter()
                .filter(|it| it.question == slot.question && it.places.contains(&slot.place));
            difference.grade = here.map(|finding| finding.grade).max();
            // One sort of its own would be more to download than looking for each place.
            let before = |other: &Difference<'a>| gravity(other) <= gravity(&difference);
            differences.insert(differences.partition_point(before), difference);
        }
    }
    differences
}

/// By what differences stand: those that can be held beside something first, then the gravest.
fn gravity(it: &Difference<'_>) -> (bool, Change, std::cmp::Reverse<Option<Grade>>) {
    (it.gone, it.change, std::cmp::Reverse(it.grade))
}

/// Each question at each place that was ever answered, in the order they are asked.
fn slots(all: &[Told<'_>]) -> Vec<Slot> {
    let mut slots: Vec<Slot> = Vec::new();
    for told in all {
        let key = |slot: &Slot| (slot.question, slot.place);
        let at = slots.binary_search_by_key(&key(&told.slot), key);
        if let Err(at) = at {
            slots.insert(at, told.slot);
        }
    }
    slots
}

/// The answers of one slot, earliest first, come to a difference unless there is nothing to say.
fn difference<'a>(
    vehicle: &VehicleView<'_, 'a>,
    wheel: &Wheel,
    visits: &[&'a Entry],
    now: usize,
    told: &[&Told<'a>],
) -> Option<Difference<'a>> {
    let slot = told.first()?.slot;
    let at = |visit: usize| told.iter().filter(move |told| told.visit == visit);
    let looked = told
        .iter()
        .filter(|told| told.visit < now && told.answer.looked());
    let before = looked.copied().max_by_key(|told| told.visit);
    let answers = |visit| at(visit).map(|told| told.answer).collect::<Vec<_>>();
    let (then, here) = (before.map(|told| answers(told.visit)), answers(now));
    let built = wheel.sizes.get(Size::Dish);
    let gone =
        !has(wheel, slot) || before.is_some_and(|told| other_numbers(vehicle, Some(wheel), told));
    let change = match &then {
        Some(then) if !gone => change(slot.question, built, then, &here),
        // What was counted otherwise is no measure of what is found now.
        _ => change(slot.question, built, &[], &here),
    };
    let stage = stage_asks(vehicle, visits.get(now)?.id, slot.question);
    let silent = change == Change::NotLookedAt && (before.is_none() || (!gone && !stage));
    let until = at(now).map(|told| key(told.entry)).next();
    let worked = before.is_some_and(|told| {
        let after = |entry: &&Entry| key(entry) > key(told.entry);
        let in_time = |entry: &&Entry| until.is_none_or(|until| key(entry) < until);
        work(vehicle, slot)
            .iter()
            .any(|entry| after(entry) && in_time(entry))
    });
    let visit = before.and_then(|told| visits.get(told.visit).copied());
    (!silent).then_some(Difference {
        slot,
        then: visit.zip(then),
        now: here,
        change,
        grade: None,
        worked,
        gone,
    })
}

/// Where an entry stands in a history: by its day, then by counter.
pub(super) fn key(entry: &Entry) -> (&str, u64, EntryId) {
    (entry.at.day(), entry.n, entry.id)
}

/// Every answer about one wheel that counts, with its examination.
fn told<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visits: &[&'a Entry],
    position: Position,
) -> Vec<Told<'a>> {
    let named: Vec<Vec<EntryId>> = visits
        .iter()
        .map(|begun| match vehicle.visit_thread(begun.id) {
            Some(thread) => thread.ids().collect(),
            None => Vec::new(),
        })
        .collect();
    let mut all = Vec::new();
    for entry in vehicle
        .threads(&Kind::Reading)
        .into_iter()
        .flat_map(|thread| thread.counts())
    {
        let visit = entry
            .visit
            .and_then(|id| named.iter().position(|ids| ids.contains(&id)));
        if let (Says::Reading(reading), Some(visit)) = (&entry.says, visit)
            && reading.slot.position == position
        {
            all.push(Told {
                slot: reading.slot,
                visit,
                entry,
                answer: reading.answer,
            });
        }
    }
    all
}

/// The least and the greatest moisture that one examination read.
fn moisture(all: &[Told<'_>], visit: usize) -> Option<(Percent, Percent)> {
    let shares = all.iter().filter_map(|told| match told.answer {
        Answer::Share(share) if told.visit == visit && told.slot.question == Question::Moisture => {
            Some((share, share))
        }
        _ => None,
    });
    shares.reduce(|one, other| (one.0.min(other.0), one.1.max(other.1)))
}

/// The work that counts, done on a place or on its wheel as a whole.
pub(super) fn work<'a>(vehicle: &VehicleView<'_, 'a>, slot: Slot) -> Vec<&'a Entry> {
    let threads = vehicle.threads(&Kind::Work).into_iter();
    let on = |entry: &&Entry| match &entry.says {
        Says::Work(done) => [slot.place, Place::Whole]
            .iter()
            .any(|place| done.part == Part::At(slot.position, *place)),
        _ => false,
    };
    let work = threads.flat_map(|thread| thread.counts());
    work.filter(|entry| on(entry) && !vehicle.hidden(entry))
        .collect()
}

fn has(wheel: &Wheel, slot: Slot) -> bool {
    wheel.has(slot.place) && slot.question.asked_of(wheel)
}

/// Whether the number of the place meant another one in the description that the answer names.
fn other_numbers(vehicle: &VehicleView<'_, '_>, wheel: Option<&Wheel>, told: &Told<'_>) -> bool {
    let thread = vehicle.wheel_thread(told.slot.position);
    let entries = thread.map(|thread| thread.entries()).unwrap_or_default();
    let named = entries
        .iter()
        .find(|entry| Some(entry.id) == told.entry.described_by);
    match (named.map(|entry| &entry.says), wheel) {
        (Some(Says::Wheel(then)), Some(now)) => {
            let (then, now) = (&then.wheel.felloes, &now.felloes);
            match told.slot.place {
                Place::Whole | Place::Nave => false,
                Place::Spoke(_) | Place::Between(_) => then.spokes() != now.spokes(),
                Place::Joint(_) | Place::Felloe(_) => then.carried() != now.carried(),
            }
        }
        _ => false,
    }
}

/// Whether a question can be asked at the stage of the work at which this examination was held.
fn stage_asks(vehicle: &VehicleView<'_, '_>, visit: EntryId, question: Question) -> bool {
    let said = vehicle.visit_thread(visit).map(|thread| thread.readable());
    let mut stages = said
        .into_iter()
        .flatten()
        .filter_map(|entry| match &entry.says {
            Says::Visit(visit) => Some(visit.stage),
            _ => None,
        });
    stages.next().is_none_or(|stage| question.asked_when(stage))
}

#[cfg(test)]
mod tests;
