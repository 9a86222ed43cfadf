//! What was found: where, how much, by whose limit, on which entries it rests, and where nobody looked.

use cartside_core::daybook::{Book, EntryId, VehicleView};
use cartside_core::diagnosis::cause::likely;
use cartside_core::diagnosis::cure::weighed;
use cartside_core::diagnosis::{Cure, Finding, InTheWay, before_a_draw, causes, cures};
use cartside_core::survey::Answer;
use cartside_core::words;

use crate::component::mark::grade_mark;
use crate::component::terms::terms;
use crate::looking::Looking;
use crate::markup::{Piece, sheet};
use crate::wording;
use crate::workshop::workshop;

/// Every finding, worst first.
pub fn findings(looking: &Looking) -> Piece {
    let findings = &looking.judgement.findings;
    let none = findings.is_empty().then(|| {
        let nothing = if looking.answers.is_empty() {
            "Nothing has been looked at in this examination yet."
        } else {
            "No limit is reached by what was looked at."
        };
        sheet!("<p class=dim>{}</p>", nothing)
    });
    let ways = before_a_draw(&looking.judgement);
    let draws = |it: &Finding| cures(it, &looking.judgement).into_iter().any(Cure::draws);
    let first = findings.iter().any(draws).then(|| in_the_way(&ways));
    // One view for all of them: of an old vehicle it takes long to make.
    let opened = workshop().in_hand();
    let view = opened.as_ref().map(|opened| opened.book.view());
    let vehicle = opened.as_ref().zip(view.as_ref());
    let rests_on = |entries: &[EntryId]| match vehicle {
        Some((opened, view)) => rests_on(&opened.book, &view.vehicle(opened.vehicle), entries),
        None => Vec::new(),
    };
    let each = findings
        .iter()
        .map(|it| one_finding(looking, it, rests_on(&it.entries), !ways.is_empty()));
    sheet!(
        "<section class=stack><h2>Findings</h2>{}{}<ul class=stack>{}</ul>{}</section>",
        none,
        first,
        each.collect::<Vec<Piece>>(),
        elsewhere(looking.judgement.elsewhere.len())
    )
}

/// What stands in the way of every cure that draws, said once for the wheel.
pub fn in_the_way(ways: &[InTheWay]) -> Option<Piece> {
    let style = workshop().style();
    let each = ways.iter();
    let each = each.map(|way| sheet!("<li>{}</li>", words::cure::in_the_way(*way, style)));
    (!ways.is_empty()).then(|| {
        sheet!(
            "<div class=warning data-in-the-way><p>{}</p><ul class=stack>{}</ul></div>",
            words::cure::before_a_draw(style),
            each.collect::<Vec<Piece>>()
        )
    })
}

fn one_finding(looking: &Looking, finding: &Finding, rests: Vec<Piece>, waits: bool) -> Piece {
    let said = words::finding::finding(finding, &looking.wheel, workshop().style());
    let explained = terms(
        &[&said.heading, &said.where_, &said.how_much, &said.limit],
        workshop().style(),
    );
    sheet!(
        "<li class=card data-finding={} data-grade={}><h3>{}</h3>{}<p class=capital>{}: {}</p>\
         <p>By {}.</p>{}{}<details class=fold><summary>The entries it rests on ({})</summary>\
         <ul class=list>{}</ul></details>{}</li>",
        finding.question.code(),
        finding.grade.code(),
        said.heading,
        grade_mark(finding.grade),
        said.where_,
        said.how_much,
        said.limit,
        said.not_looked.map(|left| sheet!("<p>{}</p>", left)),
        causes_and_cures(looking, finding, waits),
        rests.len().to_string(),
        rests,
        explained
    )
}

/// What may have brought it about, what would tell that apart, and what can be done in which order; folded.
fn causes_and_cures(looking: &Looking, finding: &Finding, waits: bool) -> Option<Piece> {
    let style = workshop().style();
    if likely(finding).is_empty() && weighed(finding).is_empty() {
        return measured_since(looking, finding);
    }
    let judgement = &looking.judgement;
    let causes = causes(finding, judgement).into_iter().map(|(cause, told)| {
        let said = words::cause::cause(cause, style);
        let told = words::cause::told(told);
        sheet!(
            "<li class=item><span class=\"strong capital\">{}</span>{}<span>{}</span></li>",
            said.name,
            told.map(|told| sheet!("<span class=dim data-told>{}</span>", told)),
            said.told_by
        )
    });
    let cures = cures(finding, judgement).into_iter().map(|cure| {
        let waits = (waits && cure.draws()).then(words::cure::waits);
        sheet!(
            "<li><p>{}</p>{}</li>",
            words::cure::cure(cure, style),
            waits.map(|said| sheet!("<p class=strong data-waits>{}</p>", said))
        )
    });
    Some(sheet!(
        "<details class=fold data-cures><summary>Likely causes, and what can be done</summary>\
         <ul class=list>{}</ul><ol class=cautions>{}</ol></details>",
        causes.collect::<Vec<Piece>>(),
        cures.collect::<Vec<Piece>>()
    ))
}

/// Where what the first look found was measured on this wheel, what that is called.
fn measured_since(looking: &Looking, finding: &Finding) -> Option<Piece> {
    let by = words::finding::measured_by(finding.question)?;
    let looked = |answers: &[Answer]| answers.iter().any(Answer::looked);
    let mut answers = looking.answers.iter();
    let answered = answers.any(|((question, _), given)| *question == by && looked(given));
    answered.then(|| {
        let said = words::finding::measured_since(by, workshop().style());
        sheet!("<p data-measured>{}</p>", said)
    })
}

/// What each of these entries says, and who says it when.
fn rests_on(book: &Book, vehicle: &VehicleView<'_, '_>, entries: &[EntryId]) -> Vec<Piece> {
    let style = workshop().style();
    let found = entries.iter().filter_map(|id| book.entry(*id));
    found
        .map(|entry| {
            sheet!(
                "<li class=item><span>{}</span><span class=dim>{}</span></li>",
                wording::heading(vehicle, entry, style),
                wording::hand(entry)
            )
        })
        .collect()
}

/// Readings of parts the wheel, as it is described now, has not.
fn elsewhere(count: usize) -> Option<Piece> {
    (count > 0).then(|| {
        sheet!(
            "<p class=warning>{} of parts this wheel, as it is described now, does not have: kept, not judged.</p>",
            wording::counted(count, "reading", "readings")
        )
    })
}
