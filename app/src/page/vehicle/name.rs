//! What the vehicle is called.

use cartside_core::daybook::{EntryId, Says, Thread, Unwritten};
use cartside_core::wheel::Vehicle;
use leptos::prelude::*;

use crate::markup::{self, Hole, Piece, heard, sheet};
use crate::workshop::{Workshop, workshop};

/// The field for the name; a new name corrects the old one.
pub fn name_field(id: EntryId) -> Piece {
    let shop = workshop();
    let described = move || super::of(shop, |vehicle| vehicle.described().cloned());
    // Taken once, so that nothing rewrites the field while somebody types into it.
    let name = untrack(described).map(|vehicle| vehicle.name);
    let hidden = name.is_none();
    let name = name.unwrap_or_default();
    let typed = StoredValue::new(name.clone());
    let submit = heard(move |submit| {
        submit.prevent_default();
        if let Some(vehicle) = untrack(described) {
            let name = typed.get_value().trim().to_owned();
            save(shop, id, Vehicle { name, ..vehicle });
        }
    });
    sheet!(
        "<form class=stack hidden={} on:submit={}><label class=field>Name or owner\
         <input type=text autocomplete=off maxlength=200 value={} on:input={}/></label>\
         <button type=submit class=key>Save the name</button></form>",
        Hole::Flag(hidden),
        submit,
        name,
        heard(move |event| typed.set_value(markup::typed(&event)))
    )
}

fn save(shop: Workshop, id: EntryId, vehicle: Vehicle) {
    let Some(opened) = shop.in_hand() else { return };
    let replaced = {
        let view = opened.book.view();
        let thread = view.vehicle(id).description().map(Thread::to_replace);
        thread.unwrap_or_default()
    };
    let what = format!("named “{}”", vehicle.name);
    if let Some(unwritten) = Unwritten::new(Some(id), Says::Vehicle(vehicle)) {
        // If it is not stored, the field is as it was.
        shop.write_then(&unwritten.replacing(replaced), what, |_| {});
    }
}
