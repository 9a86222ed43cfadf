//! The way on from a question or a wheel: to what is still to be asked, or to the decision once nothing a standing needs
//! is missing.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::decisions;
use cartside_core::survey::{Group, Question};
use cartside_core::wheel::Position;
use cartside_core::words;
use leptos::prelude::expect_context;

use super::trail::Trail;
use super::writing::Put;
use crate::looking::Looking;
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// The page where a question is put.
pub fn route(put: Put) -> Route {
    match put.question.group() {
        Group::FirstLook => Route::FirstLook(put.id),
        _ => Route::Ask(put.id, put.position, put.question, None),
    }
}

/// The question to go on with; those that were passed are not offered again.
pub fn next(
    trail: Trail,
    looking: &Looking,
    wheel: (EntryId, Position),
    after: Option<Question>,
) -> Option<Put> {
    let question = looking.next_question(after, &trail.passed(wheel))?;
    let (id, position) = wheel;
    Some(Put {
        id,
        position,
        question,
    })
}

/// Whether all that a standing needs is recorded, and nobody has decided yet.
pub fn is_to_be_decided(
    shop: Workshop,
    looking: &Looking,
    (id, position): (EntryId, Position),
) -> bool {
    let (Some(latest), Some(opened)) = (&looking.examination, shop.in_hand()) else {
        return false;
    };
    // Reading the book is what takes long, so it is left to the last.
    looking.judgement.missing.is_empty() && {
        let view = opened.book.view();
        decisions(&view.vehicle(id), latest.id, position).is_empty()
    }
}

/// The keys that lead on. The great one is for what a standing still needs, then for the decision.
pub fn keys(looking: &Looking, wheel: (EntryId, Position), after: Option<Question>) -> Piece {
    let decide = is_to_be_decided(workshop(), looking, wheel).then(|| {
        sheet!(
            "<a class=\"key key-main\" data-key=decide href={}>Decide and sign</a>",
            Route::Decide(wheel.0, wheel.1).href()
        )
    });
    let next = next(expect_context::<Trail>(), looking, wheel, after);
    sheet!("{}{}", decide, next.map(|next| question_key(looking, next)))
}

fn question_key(looking: &Looking, next: Put) -> Piece {
    let (done, all) = looking.progress(next.question);
    let short = words::question::short(next.question, workshop().style());
    let label = if done == 0 {
        format!("Next: {short}")
    } else {
        format!("Go on: {short}, {done} of {all}")
    };
    let class = if looking.judgement.missing.is_empty() {
        "key"
    } else {
        "key key-main"
    };
    sheet!(
        "<a class={} data-next={} href={}>{}</a>",
        class,
        next.question.code(),
        route(next).href(),
        label
    )
}
