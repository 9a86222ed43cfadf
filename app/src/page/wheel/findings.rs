//! What was found: where, how much, by whose limit, on which entries it rests, and where nobody looked.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::{Finding, causes, cures, in_the_way};
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
    let each = findings.iter().map(|finding| one_finding(looking, finding));
    sheet!(
        "<section class=stack><h2>Findings</h2>{}<ul class=stack>{}</ul>{}</section>",
        none,
        each.collect::<Vec<Piece>>(),
        elsewhere(looking.judgement.elsewhere.len())
    )
}

fn one_finding(looking: &Looking, finding: &Finding) -> Piece {
    let said = words::finding::finding(finding, &looking.wheel, workshop().style());
    let rests = rests_on(&finding.entries);
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
        causes_and_cures(looking, finding),
        rests.len().to_string(),
        rests,
        explained
    )
}

/// What may have brought it about, what would tell that apart, and what can be done in which order; folded.
fn causes_and_cures(looking: &Looking, finding: &Finding) -> Piece {
    let style = workshop().style();
    let causes = causes(finding).iter().map(|cause| {
        let said = words::cause::cause(*cause, style);
        sheet!(
            "<li class=item><span class=\"strong capital\">{}</span><span>{}</span></li>",
            said.name,
            said.told_by
        )
    });
    let cures = cures(finding).iter().map(|cure| {
        let ways = in_the_way(*cure, &looking.judgement).into_iter();
        let ways = ways.map(|way| {
            sheet!(
                "<p class=warning>Not before this is put right: {}</p>",
                words::cure::in_the_way(way, style)
            )
        });
        sheet!(
            "<li><p>{}</p>{}</li>",
            words::cure::cure(*cure, style),
            ways.collect::<Vec<Piece>>()
        )
    });
    sheet!(
        "<details class=fold data-cures><summary>Likely causes, and what can be done</summary>\
         <ul class=list>{}</ul><ol class=cautions>{}</ol></details>",
        causes.collect::<Vec<Piece>>(),
        cures.collect::<Vec<Piece>>()
    )
}

/// What each of these entries says, and who says it when.
fn rests_on(entries: &[EntryId]) -> Vec<Piece> {
    let shop = workshop();
    let Some(opened) = shop.in_hand() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let found = entries.iter().filter_map(|id| opened.book.entry(*id));
    found
        .map(|entry| {
            sheet!(
                "<li class=item><span>{}</span><span class=dim>{}</span></li>",
                wording::heading(&vehicle, entry, shop.style()),
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
