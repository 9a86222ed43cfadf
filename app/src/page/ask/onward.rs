//! The way on from a question or a wheel: to what is still to be asked, or to the decision once nothing a standing needs
//! is missing.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::{decided, stands};
use cartside_core::survey::{Group, Question};
use cartside_core::wheel::Position;
use cartside_core::words;
use cartside_core::words::report::Cut;
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

/// Whether all that a standing needs is recorded, and no decision stands.
pub fn is_to_be_decided(shop: Workshop, looking: &Looking, wheel: (EntryId, Position)) -> bool {
    is_decided(shop, looking, wheel) == Some(false)
}

/// Whether a decision stands; nothing while a standing needs more.
fn is_decided(
    shop: Workshop,
    looking: &Looking,
    (id, position): (EntryId, Position),
) -> Option<bool> {
    let (latest, opened) = (looking.examination.as_ref()?, shop.in_hand()?);
    // Reading the book is what takes long, so it is left to the last.
    looking.judgement.missing.is_empty().then(|| {
        let (view, proposed) = (opened.book.view(), looking.judgement.proposed());
        decided(&view.vehicle(id), latest.id, position)
            .is_some_and(|said| stands(said, proposed, looking.people).is_ok())
    })
}

/// The keys that lead on. The great one is for what a standing still needs, then for the decision; from the page of a wheel
/// that is decided the way leads to the report.
pub fn keys(looking: &Looking, wheel: (EntryId, Position), after: Option<Question>) -> Piece {
    let is_decided = is_decided(workshop(), looking, wheel);
    if is_decided == Some(true) && after.is_none() {
        return sheet!(
            "<a class=key data-key=report href={}>To the report</a>",
            Route::Report(wheel.0, Cut::Owner).href()
        );
    }
    let decide = (is_decided == Some(false)).then(|| {
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
