//! The order of work: each question with how far it has come, and what is missing before the wheel is judged.

use cartside_core::daybook::EntryId;
use cartside_core::survey::{Need, Question};
use cartside_core::wheel::Position;
use cartside_core::words;

use crate::looking::Looking;
use crate::markup::{Tag, tag};
use crate::route::Route;
use crate::workshop::workshop;

/// Every question asked of this wheel, in order, with its progress.
pub fn asks(id: EntryId, position: Position, looking: &Looking) -> Tag {
    let questions = looking.questions();
    let rows = questions.map(|question| one_question(id, position, looking, question));
    tag("section")
        .class("stack")
        .put(tag("h2").put("Questions"))
        .put(tag("ul").class("list").each(rows))
}

fn one_question(id: EntryId, position: Position, looking: &Looking, question: Question) -> Tag {
    let (done, all) = looking.progress(question);
    let short = words::question::short(question, workshop().style());
    let ticked = if done == all { "✓ " } else { "" };
    let item = tag("a")
        .class("item")
        .set("data-ask", question.code())
        .set("href", Route::Ask(id, position, question, None).href())
        .put(tag("span").class("strong capital").put(short))
        .put(tag("span").put(format!("{ticked}{done} of {all}")));
    tag("li").put(item)
}

/// What must be recorded before the wheel is judged.
pub fn missing_list(looking: &Looking) -> Tag {
    let style = workshop().style();
    let missing = &looking.judgement.missing;
    let rows = missing.iter().map(|missing| {
        tag("li")
            .class("item")
            .set("data-missing", need_code(missing.need))
            .put(words::missing::missing(missing, &looking.wheel, style))
    });
    tag("section")
        .class("stack")
        .flag("hidden", missing.is_empty())
        .put(tag("h2").put("Before it is judged"))
        .put(tag("ul").class("list").each(rows))
}

/// The word that stands for a need in the state of the page.
fn need_code(need: Need) -> &'static str {
    match need {
        Need::Keeper => "keeper",
        Need::Ring => "ring",
        Need::Joints => "joints",
        Need::SpokeFeet => "spoke-feet",
        Need::SpokeRimEnds => "spoke-rim-ends",
        Need::SpokesWhole => "spokes-whole",
        Need::TyreGap => "tyre-gap",
        Need::Dish => "dish",
        Need::EndPlayAndShake => "end-play-and-shake",
        Need::Rot => "rot",
        Need::NaveAndBonds => "nave-and-bonds",
    }
}
