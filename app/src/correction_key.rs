//! The key that strikes an entry out, brings it back, or says that it holds.

use cartside_core::daybook::EntryId;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::correction::{Correction, correct};
use crate::workshop::workshop;

/// A key that corrects one entry of the vehicle in hand.
#[component]
pub fn CorrectionKey(
    /// The entry.
    entry: EntryId,
    /// What is done to it.
    correction: Correction,
) -> impl IntoView {
    let shop = workshop();
    let (code, label) = match correction {
        Correction::StrikeOut => ("strike-out", "Strike out"),
        Correction::BringBack => ("bring-back", "Bring back"),
        Correction::Hold => ("hold", "This one holds"),
    };
    view! {
        <button
            type="button"
            class="key"
            class:key-plain=correction == Correction::StrikeOut
            data-key=code
            on:click=move |_| spawn_local(correct(shop, entry, correction))
        >
            {label}
        </button>
    }
}
