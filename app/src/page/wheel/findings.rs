//! What was found: where, how much, by whose limit, on which entries it rests, and where nobody looked.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Finding;
use cartside_core::words;

use crate::component::mark::{grade_code, grade_mark};
use crate::looking::Looking;
use crate::markup::{Tag, tag};
use crate::wording;
use crate::workshop::workshop;

/// Every finding, worst first.
pub fn findings(looking: &Looking) -> Tag {
    let findings = &looking.judgement.findings;
    let nothing = if looking.answers.is_empty() {
        "Nothing has been looked at in this examination yet."
    } else {
        "No limit is reached by what was looked at."
    };
    let none = findings.is_empty();
    let each = findings.iter().map(|finding| one_finding(looking, finding));
    tag("section")
        .class("stack")
        .put(tag("h2").put("Findings"))
        .put(none.then(|| tag("p").class("dim").put(nothing)))
        .put(tag("ul").class("stack").each(each))
        .put(elsewhere(looking.judgement.elsewhere.len()))
}

fn one_finding(looking: &Looking, finding: &Finding) -> Tag {
    let said = words::finding::finding(finding, &looking.wheel, workshop().style());
    let rests = rests_on(&finding.entries);
    let summary = format!("The entries it rests on ({})", rests.len());
    let place = tag("p")
        .class("capital")
        .put(said.where_)
        .put(": ")
        .put(said.how_much);
    let fold = tag("details")
        .class("fold")
        .put(tag("summary").put(summary))
        .put(tag("ul").class("list").each(rests));
    tag("li")
        .class("card")
        .set("data-finding", finding.question.code())
        .set("data-grade", grade_code(finding.grade))
        .put(tag("h3").put(said.heading))
        .put(grade_mark(finding.grade))
        .put(place)
        .put(tag("p").put("By ").put(said.limit).put("."))
        .put(said.not_looked.map(|left| tag("p").put(left)))
        .put(fold)
}

/// What each of these entries says, and who says it when.
fn rests_on(entries: &[EntryId]) -> Vec<Tag> {
    let shop = workshop();
    let Some(opened) = shop.in_hand() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let found = entries.iter().filter_map(|id| opened.book.entry(*id));
    found
        .map(|entry| {
            let says = wording::heading(&vehicle, entry, shop.style());
            tag("li")
                .class("item")
                .put(tag("span").put(says))
                .put(tag("span").class("dim").put(wording::hand(entry)))
        })
        .collect()
}

/// Readings of parts the wheel, as it is described now, has not.
fn elsewhere(count: usize) -> Option<Tag> {
    let readings = (count > 0).then(|| wording::counted(count, "reading", "readings"))?;
    let left = " of parts this wheel, as it is described now, does not have: kept, not judged.";
    Some(tag("p").class("warning").put(readings).put(left))
}
