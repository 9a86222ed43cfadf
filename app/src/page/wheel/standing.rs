//! The wheel's standing in words, and the way to the next question.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Standing;
use cartside_core::wheel::Position;
use cartside_core::words::{self, Examined};

use crate::component::mark::standing_mark;
use crate::component::plain::link;
use crate::looking::Looking;
use crate::markup::{Piece, Tag, tag};
use crate::route::Route;
use crate::workshop::workshop;

/// What the wheel may still be used for, as far as it was looked at.
pub fn standing_card(id: EntryId, position: Position, looking: &Looking) -> Tag {
    let (standing, so_far) = (looking.judgement.proposed(), looking.judgement.so_far());
    let code = so_far.map_or("none", Standing::code);
    let worse = so_far.filter(|found| *found != standing).map(found_so_far);
    let day = looking
        .examination
        .as_ref()
        .map_or("no day yet", |latest| latest.shown.as_str());
    let said = words::standing::standing(
        standing,
        &Examined::of(day, &looking.wheel, &looking.judgement.missing),
        workshop().style(),
    );
    tag("section")
        .class("card")
        .set("data-standing", standing.code())
        .set("data-so-far", code)
        .put(tag("h2").put(standing_mark(standing)))
        .put(tag("p").put(said))
        .put(worse)
        .put(tag("p").class("dim").put(format!("Examined: {day}")))
        .put(next(id, position, looking))
}

fn found_so_far(found: Standing) -> Piece {
    let said = tag("p").put("What was found so far already proposes:");
    vec![said, tag("p").put(standing_mark(found))].into()
}

fn next(id: EntryId, position: Position, looking: &Looking) -> Option<Tag> {
    let next = looking.next_question(None)?;
    let (done, all) = looking.progress(next);
    let short = words::question::short(next, workshop().style());
    let label = if done == 0 {
        format!("Next: {short}")
    } else {
        format!("Go on: {short}, {done} of {all}")
    };
    let href = Route::Ask(id, position, next, None).href();
    Some(link(href, label).class("key-main"))
}
