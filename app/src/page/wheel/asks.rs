//! The order of work: each question with how far it has come, and what is missing before the wheel is judged.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Missing;
use cartside_core::survey::{Group, Need, Question};
use cartside_core::wheel::Position;
use cartside_core::words;
use leptos::prelude::expect_context;

use crate::looking::Looking;
use crate::markup::{Hole, Piece, sheet};
use crate::page::ask::trail::Trail;
use crate::route::Route;
use crate::workshop::workshop;

/// Every question asked of this wheel, group by group, with its progress.
pub fn asks(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let group = |group: Group| {
        let questions = looking
            .questions()
            .filter(|question| question.group() == group);
        let rows: Vec<Piece> = questions
            .map(|question| one_question(id, position, looking, question))
            .collect();
        sheet!(
            "<h3 class=capital>{}</h3><ul class=list data-group={}>{}</ul>",
            words::question::group(group, workshop().style()),
            group.code(),
            rows
        )
    };
    let stage = looking.stage();
    let means = words::visit::stage_means(stage, workshop().style()).map(|means| {
        sheet!(
            "<p>{}</p><a class=key data-stage={} href={}>How far it is taken apart</a>",
            means,
            stage.code(),
            Route::Examination(id).href()
        )
    });
    sheet!(
        "<section class=stack><h2>Questions</h2>{}{}</section>",
        means,
        Group::ALL.into_iter().map(group).collect::<Vec<Piece>>()
    )
}

fn one_question(id: EntryId, position: Position, looking: &Looking, question: Question) -> Piece {
    let (done, all) = looking.progress(question);
    let ticked = if done == all { "✓ " } else { "" };
    let passed = expect_context::<Trail>().passed((id, position));
    let passed = if passed.contains(&question) {
        ", not today"
    } else {
        ""
    };
    sheet!(
        "<li><a class=item data-ask={} href={}><span class=\"strong capital\">{}</span>\
         <span>{}</span></a></li>",
        question.code(),
        Route::Ask(id, position, question, None).href(),
        words::question::short(question, workshop().style()),
        format!("{ticked}{done} of {all}{passed}")
    )
}

/// What must be recorded before the wheel is judged.
pub fn missing_list(looking: &Looking) -> Piece {
    let style = workshop().style();
    let missing = &looking.judgement.missing;
    let one = |missing: &Missing| {
        sheet!(
            "<li class=item data-missing={}>{}</li>",
            need_code(missing.need),
            words::missing::missing(missing, &looking.wheel, style)
        )
    };
    sheet!(
        "<section class=stack hidden={}><h2>Before it is judged</h2><ul class=list>{}</ul></section>",
        Hole::Flag(missing.is_empty()),
        missing.iter().map(one).collect::<Vec<Piece>>()
    )
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
        Need::Strakes => "strakes",
    }
}
