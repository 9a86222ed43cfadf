//! What is decided of a wheel at its latest examination: by whom, why, until when, and whether that stands.

use cartside_core::daybook::{Entry, EntryId, Says};
use cartside_core::diagnosis::{decisions, stands_at};
use cartside_core::wheel::Position;
use cartside_core::words;
use leptos::prelude::Get;

use crate::component::mark::standing_mark;
use crate::looking::Looking;
use crate::markup::{Piece, nothing, sheet};
use crate::route::Route;
use crate::wording;
use crate::{clock, workshop};

/// Every decision that counts; several that differ are a dispute. `leads` puts the way to decide beside them.
pub fn decided_cards(id: EntryId, position: Position, looking: &Looking, leads: bool) -> Piece {
    let shop = workshop::workshop();
    let (Some(latest), Some(opened)) = (&looking.examination, shop.opened.get()) else {
        return nothing();
    };
    let view = opened.book.view();
    let sides = decisions(&view.vehicle(opened.vehicle), latest.id, position);
    let differ = (sides.len() > 1).then(|| {
        sheet!(
            "<p class=warning data-differ>{}</p>",
            words::outcome::decisions_differ()
        )
    });
    let key = leads.then(|| {
        let label = if sides.is_empty() {
            "Decide and sign"
        } else {
            "Decide anew"
        };
        sheet!(
            "<a class=key data-key=decide href={}>{}</a>",
            Route::Decide(id, position).href(),
            label
        )
    });
    let cards = sides.iter().map(|entry| card(entry, looking));
    sheet!("{}{}{}", differ, cards.collect::<Vec<Piece>>(), key)
}

fn card(entry: &Entry, looking: &Looking) -> Piece {
    let Says::Decision(said) = &entry.says else {
        let said = words::says::heading(entry, None, workshop::workshop().style());
        return sheet!("<p class=warning>{}</p>", said);
    };
    let day = looking
        .examination
        .as_ref()
        .map(|latest| latest.day.as_str());
    let proposed = looking.judgement.proposed();
    let refused = stands_at(said, proposed, looking.people, day.unwrap_or_default()).err();
    let lapsed = refused.map(|refusal| {
        sheet!(
            "<p class=warning data-lapsed>{}</p>",
            words::refusal::decision(refusal)
        )
    });
    let today = clock::now();
    let today = today.get(..10).unwrap_or_default();
    let past = said.look_again.as_ref().filter(|day| day.as_str() < today);
    let past = past.map(|day| {
        let said = words::capital(&words::outcome::look_again(day, today));
        sheet!("<p class=warning data-past>{}.</p>", said)
    });
    sheet!(
        "<section class=card data-decided={} data-stands={}><h2>Decided</h2>{}<p class=capital>{}.</p>\
         <p class=dim>{}</p>{}{}</section>",
        said.standing.code(),
        if refused.is_none() { "yes" } else { "no" },
        standing_mark(said.standing),
        words::outcome::decision(said),
        wording::hand(entry),
        lapsed,
        past
    )
}
