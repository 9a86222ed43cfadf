//! How an entry stands among others: its words, and the keys that strike it out, bring it back, say that it holds, or
//! lead to where that is settled.

use cartside_core::daybook::EntryId;

use crate::correction::{Correction, correct};
use crate::fate::Fate;
use crate::markup::{Piece, sheet, tap};
use crate::route::Route;
use crate::workshop::Workshop;

/// What an entry says and in which classes, how it stands in its thread, what else is to be known of it, and whose
/// hand it is.
pub fn told(
    says: String,
    class: Option<&'static str>,
    fate: Fate,
    aside: Piece,
    hand: String,
) -> Piece {
    sheet!(
        "<p><span class={}>{}</span> <span>{}</span>{}<br/><span class=dim>{}</span></p>",
        class,
        says,
        fate.words(),
        aside,
        hand,
    )
}

/// The classes of what an entry says where that stands out among other words.
pub fn strong(fate: Fate) -> Option<&'static str> {
    Some(if fate.gone() {
        "strong struck"
    } else {
        "strong"
    })
}

/// The classes of what an entry says where that is like other words.
pub fn plain(fate: Fate) -> Option<&'static str> {
    fate.gone().then_some("struck")
}

/// A key that corrects one entry of the vehicle in hand.
pub fn correction_key(shop: Workshop, entry: EntryId, correction: Correction) -> Piece {
    let (class, code, label) = match correction {
        Correction::StrikeOut => ("key key-plain", "strike-out", "Strike out"),
        Correction::BringBack => ("key", "bring-back", "Bring back"),
        Correction::Hold => ("key", "hold", "This one holds"),
    };
    sheet!(
        "<button type=button class={} data-key={} on:click={}>{}</button>",
        class,
        code,
        tap(move || correct(shop, entry, correction)),
        label,
    )
}

/// For a side of a dispute, the key that leads to where the disputes of its vehicle are settled.
pub fn settle_key(fate: Fate, vehicle: EntryId) -> Option<Piece> {
    (fate == Fate::Disputed).then(|| {
        sheet!(
            "<a class=key href={}>Settle the dispute</a>",
            Route::Disputes(vehicle).href(),
        )
    })
}
