//! What is said of the latest examination: written in the place of what was said of it before.

use cartside_core::daybook::{EntryId, Says, Thread, Unwritten, VehicleView, Visit};
use cartside_core::survey::Stage;
use cartside_core::words;
use leptos::prelude::Set;

use crate::workshop::{Notice, Step, Workshop};

/// Says this of the latest examination, then goes on with whether it is stored. What is said already is not
/// written again.
pub fn say(shop: Workshop, id: EntryId, said: Visit, then: impl FnOnce(bool) + 'static) {
    say_boxed(shop, id, &said, Box::new(then));
}

fn say_boxed(shop: Workshop, id: EntryId, said: &Visit, then: Box<dyn FnOnce(bool)>) {
    match prepared(shop, id, said) {
        Ok(Some(entry)) => {
            let what = words::visit::visit(said);
            shop.write_then(&entry, what, then);
        }
        Ok(None) => then(true),
        Err(sentence) => {
            shop.notice.set(Notice::Trouble(sentence));
            then(false);
        }
    }
}

fn prepared(shop: Workshop, id: EntryId, said: &Visit) -> Step<Option<Unwritten>> {
    let opened = shop
        .in_hand()
        .ok_or("The vehicle is not in hand. Nothing was saved; open it and try again.")?;
    let view = opened.book.view();
    let vehicle = view.vehicle(id);
    let visits = vehicle.visits();
    let latest = visits
        .last()
        .ok_or("No examination is begun. Nothing was saved; begin one and try again.")?;
    let now = vehicle.visit(latest.id).map(|(now, _)| now);
    if now == Some(said) && !disputed(&vehicle, latest.id) {
        return Ok(None);
    }
    let replaced = if begins_anew(&vehicle, latest.id, now, said) {
        Vec::new()
    } else {
        let thread = vehicle.visit_thread(latest.id);
        thread.map(Thread::to_replace).unwrap_or_default()
    };
    let entry = Unwritten::new(Some(id), Says::Visit(said.clone()));
    Ok(entry.map(|entry| entry.replacing(replaced)))
}

fn disputed(vehicle: &VehicleView<'_, '_>, visit: EntryId) -> bool {
    vehicle.visit_thread(visit).is_some_and(Thread::disputed)
}

/// With the proof after tyring the next history begins: what was read before the work stays as it was read.
fn begins_anew(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    now: Option<&Visit>,
    said: &Visit,
) -> bool {
    said.stage == Stage::AfterTyring
        && now.is_some_and(|now| now.stage != Stage::AfterTyring)
        && !vehicle.readings(visit).is_empty()
}
