//! The latest examination of a vehicle: what it is for, how far it has come apart, and the ways on.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::carries_people;
use cartside_core::words;

use crate::looking::Examination;
use crate::markup::{Piece, sheet};
use crate::route::Route;

/// What is said of the latest examination, with the keys to change it and to look.
pub fn latest(id: EntryId, vehicle: &VehicleView<'_, '_>) -> Option<Piece> {
    let latest = Examination::latest(vehicle)?;
    let unsaid = latest.said.used_for.is_empty();
    let people = carries_people(vehicle, latest.id);
    Some(sheet!(
        "<div class=card data-latest={}><p>{}: {}.</p>{}{}<div class=choices>\
         <a class=key data-key=examination href={}>Who and what for</a>\
         <a class=key data-key=first-look href={}>First look</a></div></div>",
        latest.said.stage.code(),
        latest.shown.clone(),
        words::visit::visit(&latest.said),
        unsaid.then(|| sheet!("<p class=dim>{}</p>", words::visit::use_not_said())),
        people.then(|| sheet!(
            "<p class=warning data-people>{}</p>",
            words::standing::people()
        )),
        Route::Examination(id).href(),
        Route::FirstLook(id).href()
    ))
}
