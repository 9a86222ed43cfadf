//! How an entry stands among others: its words, and the key that strikes it out, brings it back, or says that it holds.

use cartside_core::daybook::EntryId;
use leptos::task::spawn_local;

use crate::component::plain::key;
use crate::correction::{Correction, correct};
use crate::fate::Fate;
use crate::markup::{Piece, Tag, tag};
use crate::workshop::Workshop;

/// What an entry says, how it stands in its thread, what else is to be known of it, and whose hand it is.
pub fn told(says: Tag, fate: Fate, aside: impl Into<Piece>, hand: String) -> Tag {
    tag("p")
        .put(says.class_if(fate.gone(), "struck"))
        .put(" ")
        .put(tag("span").put(fate.words()))
        .put(aside)
        .put(tag("br"))
        .put(tag("span").class("dim").put(hand))
}

/// A key that corrects one entry of the vehicle in hand.
pub fn correction_key(shop: Workshop, entry: EntryId, correction: Correction) -> Tag {
    let (code, label) = match correction {
        Correction::StrikeOut => ("strike-out", "Strike out"),
        Correction::BringBack => ("bring-back", "Bring back"),
        Correction::Hold => ("hold", "This one holds"),
    };
    key(label)
        .class_if(correction == Correction::StrikeOut, "key-plain")
        .set("data-key", code)
        .tap(move || spawn_local(correct(shop, entry, correction)))
}
