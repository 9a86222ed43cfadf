//! Keeps the sheet in the day book, each round and what is chosen as an entry of its own, and fills the sheet from them
//! again.

use cartside_core::daybook::tyring::{Ran, TakenWith};
use cartside_core::daybook::{
    EntryId, Kind, RoundTaken, Says, Thread, TyringSaid, Unwritten, VehicleView,
};
use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::{Length, decimal};
use cartside_core::wheel::Position;
use cartside_core::words::Style;

use super::chosen::Chosen;
use super::field::{Field, Typed};
use super::given::Given;
use super::reader::TAPE;
use crate::looking::Looking;
use crate::workshop::{Step, Workshop};

/// The entries that keep this sheet; what is kept already is not among them, and a round whose field was emptied is
/// struck out.
///
/// # Errors
/// Why it cannot be kept, in a sentence.
pub fn entries(
    shop: Workshop,
    (id, position): (EntryId, Position),
    looking: &Looking,
    given: &Given,
) -> Step<Vec<Unwritten>> {
    if let Some(why) = given.refused.first() {
        return Err(why.clone());
    }
    let visit = looking.examination.as_ref().map(|it| it.id).ok_or(
        "The sheet is kept with an examination, and none is begun. Nothing was saved; begin one on the vehicle's page, what is typed here stays.",
    )?;
    let opened = shop
        .in_hand()
        .ok_or("The vehicle is not in hand. Nothing was saved; open it and try again.")?;
    let view = opened.book.view();
    let vehicle = view.vehicle(id);
    let mut entries = Vec::new();
    let says = |thread: Option<&Thread<'_>>, says| {
        let entry = Unwritten::new(Some(id), anew(thread, says)?)?.in_visit(visit);
        let replaced = thread.map(Thread::to_replace).unwrap_or_default();
        Some(entry.described_by(looking.described_by).replacing(replaced))
    };
    for ran in Ran::ALL {
        let slot = RoundTaken::slot_of(position, ran);
        let thread = vehicle.thread_in(&Kind::Round, visit, &slot);
        entries.extend(match given.rounds.iter().find(|round| round.ran == ran) {
            Some(round) => says(thread, Says::Round(round.clone())),
            None => thread.and_then(strike),
        });
    }
    let slot = TyringSaid::slot(position);
    let thread = vehicle.thread_in(&Kind::Tyring, visit, &slot);
    entries.extend(says(thread, Says::Tyring(given.tyred.said.clone())));
    Ok(entries)
}

/// What is to be said in this thread, if it does not say so already.
fn anew(thread: Option<&Thread<'_>>, says: Says) -> Option<Says> {
    let now = thread.map(Thread::heads).unwrap_or_default();
    let said = matches!(now, [one] if one.says == says);
    (!said).then_some(says)
}

fn strike(thread: &Thread<'_>) -> Option<Unwritten> {
    let head = thread.heads().first().filter(|head| !head.strikes())?;
    Some(Unwritten::striking(head, thread.to_replace()))
}

/// The sheet as it is kept: what was typed and what was chosen. What is of wheel and place, and not of the day, comes from
/// an earlier examination where this one has nothing of it.
pub fn kept(
    vehicle: &VehicleView<'_, '_>,
    visit: Option<EntryId>,
    position: Position,
    style: Style,
) -> (Typed, Chosen) {
    let mut typed = Typed::default();
    let visits = vehicle.visits_by_day();
    let latest = visits
        .iter()
        .rev()
        .find_map(|visit| vehicle.tyring(visit.id, position));
    let mut chosen = latest.map(Chosen::said).unwrap_or_default();
    chosen.lay = None;
    let mut put = |field: Field, text: Option<String>| {
        if let (Some(place), Some(text)) = (typed.get_mut(field as usize), text) {
            *place = text;
        }
    };
    let months = latest.and_then(|said| said.months);
    let months = months.map(|months| {
        let pairs = months.map(|(damp, air)| format!("{damp} {air}"));
        pairs.join("; ")
    });
    put(Field::Months, months);
    let Some(visit) = visit else {
        return (typed, chosen);
    };
    if let Some(said) = vehicle.tyring(visit, position) {
        chosen.lay = said.lay;
        for (field, length) in [
            (Field::Draw, said.draw),
            (Field::Cramped, said.cramped),
            (Field::Cut, said.cut),
            (Field::Charred, said.charred),
            (Field::Oval, said.oval),
            (Field::Clearance, said.clearance),
        ] {
            put(field, length.map(|it| exact(it, style)));
        }
        put(Field::Carry, said.carry.map(|it| it.to_string()));
        put(Field::Wind, said.wind.map(|it| it.to_string()));
        put(Field::Air, said.air.map(|it| it.to_string()));
    }
    let mut gauge: Option<&TakenWith> = None;
    for (ran, field) in [
        (Ran::Sole, Field::Wheel),
        (Ran::Tyre, Field::Tyre),
        (Ran::Welded, Field::Welded),
        (Ran::Lying, Field::Lying),
    ] {
        let Some(round) = vehicle.round(visit, position, ran) else {
            continue;
        };
        put(field, Some(chalked(round, style)));
        put(Field::Warm, round.warm.map(|it| it.at.to_string()));
        chosen.line = round.line;
        chosen.hot_weld |= round.hot_weld;
        let field = match gauge {
            None => Some(Field::Traveller),
            Some(first) => (first != &round.with).then_some(Field::Other),
        };
        gauge = gauge.or(Some(&round.with));
        match (round.with, field) {
            (TakenWith::Traveller(number, own), Some(field)) => {
                let usual = if field == Field::Other { 2 } else { 1 };
                let own = exact(own.value(), style);
                put(
                    field,
                    Some(match number {
                        number if number == usual => own,
                        number => format!("{number}: {own}"),
                    }),
                );
            }
            (TakenWith::Tape(_, class), field) => {
                chosen.tape = class;
                let other = field.filter(|it| *it == Field::Other);
                put(Field::Other, other.map(|_| TAPE.to_owned()));
            }
            _ => {}
        }
    }
    (typed, chosen)
}

/// A length as it is typed, without loss: in the units in use where it stands on their marks, else in millimetres.
fn exact(length: Length, style: Style) -> String {
    let text = style.size(length);
    if text.starts_with('≈') {
        format!("{} mm", decimal(to_paper_mm(length), 6))
    } else {
        text
    }
}

fn chalked(round: &RoundTaken, style: Style) -> String {
    if !round.written.is_empty() {
        return round.written.clone();
    }
    let runs = round.runs.iter().map(|run| match run.turns {
        0 => exact(run.past, style),
        turns => format!("{turns} + {}", exact(run.past, style)),
    });
    runs.collect::<Vec<String>>().join("; ")
}
