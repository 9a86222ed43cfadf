//! The wheel's standing in words, and the way on.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Standing;
use cartside_core::wheel::Position;
use cartside_core::words;

use crate::component::mark::{self, standing_mark};
use crate::looking::Looking;
use crate::markup::{Piece, sheet};
use crate::page::ask::onward;
use crate::workshop::workshop;

/// What the wheel may still be used for, as far as it was looked at.
pub fn standing_card(looking: &Looking) -> Piece {
    let (standing, so_far) = (looking.judgement.proposed(), looking.judgement.so_far());
    let bites = words::standing::people_bite(so_far).filter(|_| looking.people);
    let bites = bites.map(|said| sheet!("<p class=warning data-people>{}</p>", said));
    let latest = looking.examination.as_ref();
    let day = latest.map_or("no day yet", |latest| latest.shown.as_str());
    let said = words::standing::standing(standing, &looking.examined(day), workshop().style());
    sheet!(
        "{}<section class=card data-standing={} data-so-far={}><h2>{}</h2>{}<p>{}</p>\
         {}<p class=dim>Examined: {}</p></section>",
        still_held(looking),
        standing.code(),
        so_far.map_or("none", Standing::code),
        standing_mark(standing),
        mark::so_far(standing, looking),
        said,
        bites,
        day.to_owned()
    )
}

/// The standing in its fewest words with the great key that leads on, in sight however far the page is scrolled.
pub fn way_on(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let proposed = looking.judgement.proposed();
    sheet!(
        "<div class=way-on>{}{}</div>",
        standing_mark(proposed),
        onward::keys(looking, (id, position), None)
    )
}

/// What still holds of an earlier examination, as long as it does.
pub fn still_held(looking: &Looking) -> Option<Piece> {
    let (standing, day) = looking.held.as_ref()?;
    Some(sheet!(
        "<section class=card data-held={}>{}<p>{}</p></section>",
        standing.code(),
        standing_mark(*standing),
        words::standing::held(*standing, day)
    ))
}
