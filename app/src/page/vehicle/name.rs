//! What the vehicle is called.

use cartside_core::daybook::{EntryId, Says, Thread, Unwritten};
use cartside_core::wheel::Vehicle;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::workshop::{Workshop, workshop};

/// The field for the name; a new name corrects the old one.
#[component]
pub fn NameField(
    /// The vehicle.
    id: EntryId,
    /// What is said of it.
    described: Memo<Option<Vehicle>>,
) -> impl IntoView {
    let shop = workshop();
    // Taken once, so that nothing rewrites the field while somebody types into it.
    let name = described
        .get_untracked()
        .map(|vehicle| vehicle.name)
        .unwrap_or_default();
    let typed = RwSignal::new(name);
    let save = move |submit: leptos::ev::SubmitEvent| {
        submit.prevent_default();
        if let Some(vehicle) = described.get_untracked() {
            let name = typed.get_untracked().trim().to_owned();
            spawn_local(save(shop, id, Vehicle { name, ..vehicle }));
        }
    };
    view! {
        <form class="stack" on:submit=save hidden=move || described.get().is_none()>
            <label class="field">
                "Name or owner"
                <input type="text" autocomplete="off" maxlength="200" prop:value=typed on:input:target=move |input| typed.set(input.target().value()) />
            </label>
            <button type="submit" class="key">"Save the name"</button>
        </form>
    }
}

async fn save(shop: Workshop, id: EntryId, vehicle: Vehicle) {
    let Some(opened) = shop.in_hand() else { return };
    let replaced = {
        let view = opened.book.view();
        let thread = view.vehicle(id).description().map(Thread::to_replace);
        thread.unwrap_or_default()
    };
    let what = format!("named “{}”", vehicle.name);
    if let Some(unwritten) = Unwritten::new(Some(id), Says::Vehicle(vehicle)) {
        // What went wrong is shown by the workshop, and the field is as it was.
        drop(shop.write(&unwritten.replacing(replaced), &what).await);
    }
}
