//! What a tap writes: one entry for each place, all of a step together, correcting what the same examination has
//! already answered there; and what undo writes to take a step back.

use cartside_core::daybook::{Entry, EntryId, Kind, Says, Thread, Unwritten, VehicleView};
use cartside_core::survey::{Question, Reading, Slot};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::WithUntracked;

use super::given::Given;
use crate::draft;
use crate::scribe::Scribe;
use crate::workshop::{Step, Workshop};

/// A question put to a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Put {
    /// The vehicle.
    pub id: EntryId,
    /// Where the wheel stands.
    pub position: Position,
    /// The question.
    pub question: Question,
}

impl Put {
    /// The question at one place.
    pub fn slot(self, place: Place) -> Slot {
        Slot {
            position: self.position,
            place,
            question: self.question,
        }
    }

    /// The wheel it is put to: the vehicle, and where the wheel stands.
    pub fn wheel(self) -> (EntryId, Position) {
        (self.id, self.position)
    }
}

/// One answer at these places as one step, and what that is in a few words.
///
/// # Errors
/// It cannot be said any more, in a sentence. Nothing was stored.
pub fn answer(shop: Workshop, put: Put, places: &[Place], given: &Given) -> Step<(Scribe, String)> {
    let slots: Vec<Slot> = places.iter().map(|place| put.slot(*place)).collect();
    let (scribe, corrects) = answer_all(shop, put.id, &slots, given)?;
    let opened = shop.in_hand().ok_or(NOT_IN_HAND)?;
    let view = opened.book.view();
    let wheel = view.vehicle(put.id).wheel(put.position);
    let (wheel, _) = wheel.ok_or(NO_WHEEL)?;
    let style = shop
        .preferences
        .with_untracked(|preferences| preferences.style());
    let at = words::place::places(places, wheel, style);
    Ok((scribe, told(put, places, &at, given, style, corrects)))
}

const NOT_IN_HAND: &str =
    "The vehicle is not in hand. Nothing was saved; open it and answer again.";
const NO_WHEEL: &str =
    "No wheel is described here any more. Nothing was saved; what was there before is kept.";

/// One answer in all these slots as one step, and whether it corrects what was written.
///
/// # Errors
/// It cannot be said any more, in a sentence. Nothing was stored.
pub fn answer_all(
    shop: Workshop,
    id: EntryId,
    slots: &[Slot],
    given: &Given,
) -> Step<(Scribe, bool)> {
    let said: Vec<(Slot, &Given)> = slots.iter().map(|slot| (*slot, given)).collect();
    answer_each(shop, id, &said)
}

/// Each slot its answer, all as one step, and whether it corrects what was written.
///
/// # Errors
/// It cannot be said any more, in a sentence. Nothing was stored.
pub fn answer_each(shop: Workshop, id: EntryId, said: &[(Slot, &Given)]) -> Step<(Scribe, bool)> {
    let opened = shop.in_hand().ok_or(NOT_IN_HAND)?;
    let view = opened.book.view();
    let vehicle = view.vehicle(id);
    let visits = vehicle.visits();
    // The entry that says how far the wheel is taken apart now: a reading keeps to it.
    let latest = visits.last().and_then(|visit| vehicle.visit(visit.id));
    let (_, visit) =
        latest.ok_or("No examination is begun. Nothing was saved; begin one and answer again.")?;
    let mut scribe = shop.scribe();
    let mut corrects = false;
    for (slot, given) in said {
        let (_, described_by) = vehicle.wheel(slot.position).ok_or(NO_WHEEL)?;
        let replaced = heads(&vehicle, visit, *slot);
        corrects |= !replaced.is_empty();
        let entry = entry(id, *slot, given)?.in_visit(visit);
        scribe.write(&entry.described_by(described_by).replacing(replaced))?;
        scribe.drop_drafts.push(draft::of_number(id, *slot));
    }
    Ok((scribe, corrects))
}

fn entry(id: EntryId, slot: Slot, given: &Given) -> Step<Unwritten> {
    let reading = Reading {
        slot,
        answer: given.answer,
        written: given.written.clone(),
    };
    Unwritten::new(Some(id), Says::Reading(reading))
        .ok_or_else(|| "This is no answer. Nothing was saved.".to_owned())
}

/// What one more answer in this slot and examination must replace to be the value there.
fn heads(vehicle: &VehicleView<'_, '_>, visit: EntryId, slot: Slot) -> Vec<EntryId> {
    let code = slot.code();
    let threads = vehicle.of_visit(&Kind::Reading, visit);
    let here = threads.into_iter().filter(|thread| {
        thread
            .entries()
            .first()
            .is_some_and(|entry| entry.slot == code)
    });
    here.flat_map(Thread::to_replace).collect()
}

/// A step in a few words: `near wheel, spoke 3: foot loose`.
fn told(
    put: Put,
    places: &[Place],
    at: &str,
    given: &Given,
    style: Style,
    corrects: bool,
) -> String {
    let wheel = words::place::wheel_at(put.position);
    let said = words::answer::told(put.question, &given.answer, style);
    let correction = if corrects {
        "; corrects what was written"
    } else {
        ""
    };
    match places {
        [Place::Whole] => format!("{wheel}: {said}{correction}"),
        _ => format!("{wheel}, {at}: {said}{correction}"),
    }
}

/// A step taken back: what it corrected counts again, the rest is struck out. With it what that is in a few words,
/// and the place the step began with.
///
/// # Errors
/// It cannot be taken back, in a sentence. Nothing was stored.
pub fn undo(shop: Workshop, put: Put, step: &[EntryId]) -> Step<(Scribe, String, Option<Place>)> {
    let opened = shop
        .in_hand()
        .ok_or("The vehicle is not in hand. Nothing was changed.")?;
    let view = opened.book.view();
    let mut scribe = shop.scribe();
    let mut places = Vec::new();
    let mut asked = put.question;
    for id in step {
        let thread = view
            .threads()
            .find(|thread| thread.heads().iter().any(|head| head.id == *id));
        let (Some(thread), Some(entry)) = (thread, opened.book.entry(*id)) else {
            continue;
        };
        scribe.write(&back(&opened.book, thread, entry))?;
        if let Some(slot) = Slot::from_code(&entry.slot) {
            asked = asked.max(slot.question);
            places.extend(place_of(slot).filter(|_| slot.question == put.question));
        }
    }
    if scribe.entries.is_empty() {
        return Err("What this step wrote has been replaced since. Nothing was changed; see everything written.".to_owned());
    }
    let style = shop
        .preferences
        .with_untracked(|preferences| preferences.style());
    let place = places.first().copied();
    let what = if asked == put.question {
        let what = format!("undone: {}", words::question::short(put.question, style));
        named(what, place, style)
    } else {
        let count = crate::wording::counted(scribe.entries.len(), "answer", "answers");
        format!("undone: {count}")
    };
    Ok((scribe, what, place))
}

fn named(what: String, place: Option<Place>, style: Style) -> String {
    match place {
        Some(place) => format!("{what}, {}", words::place::place(place, None, style)),
        None => what,
    }
}

/// The entry that undoes this one: what it alone corrected is said again, or its thread is struck out.
fn back(book: &cartside_core::daybook::Book, thread: &Thread<'_>, entry: &Entry) -> Unwritten {
    let heads = thread.to_replace();
    let earlier = match entry.replaces.as_slice() {
        [only] => book
            .entry(*only)
            .filter(|earlier| earlier.is_read() && !earlier.strikes()),
        _ => None,
    };
    match earlier {
        Some(earlier) => Unwritten {
            kind: earlier.kind.clone(),
            vehicle: earlier.vehicle,
            visit: earlier.visit,
            described_by: earlier.described_by,
            slot: earlier.slot.clone(),
            says: earlier.says.clone(),
            replaces: heads,
        },
        None => Unwritten::striking(entry, heads),
    }
}

fn place_of(slot: Slot) -> Option<Place> {
    match slot.part() {
        Part::At(_, place) => Some(place),
        Part::Vehicle => None,
    }
}
