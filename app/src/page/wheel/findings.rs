//! What was found: where, how much, by whose limit, on which entries it rests, and where nobody looked.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Finding;
use cartside_core::words;
use leptos::prelude::*;

use crate::component::mark::{GradeMark, grade_code};
use crate::looking::Looking;
use crate::wording;
use crate::workshop::workshop;

/// Every finding, worst first.
#[component]
pub fn Findings(
    /// The wheel.
    looking: Looking,
) -> impl IntoView {
    let findings = &looking.judgement.findings;
    let nothing = if looking.answers.is_empty() {
        "Nothing has been looked at in this examination yet."
    } else {
        "No limit is reached by what was looked at."
    };
    let none = findings
        .is_empty()
        .then(|| view! { <p class="dim">{nothing}</p> });
    let elsewhere = elsewhere(looking.judgement.elsewhere.len());
    let each = findings
        .iter()
        .map(|finding| view! { <OneFinding looking=looking.clone() finding=finding.clone() /> })
        .collect_view();
    view! {
        <section class="stack">
            <h2>"Findings"</h2>
            {none}
            <ul class="stack">{each}</ul>
            {elsewhere}
        </section>
    }
}

#[component]
fn OneFinding(looking: Looking, finding: Finding) -> impl IntoView {
    let said = words::finding::finding(&finding, &looking.wheel, workshop().style());
    let rests = rests_on(&finding.entries);
    view! {
        <li class="card" data-finding=finding.question.code() data-grade=grade_code(finding.grade)>
            <h3>{said.heading}</h3>
            <GradeMark grade=finding.grade />
            <p class="capital">{said.where_}": "{said.how_much}</p>
            <p>"By "{said.limit}"."</p>
            {said.not_looked.map(|left| view! { <p>{left}</p> })}
            <details class="fold">
                <summary>"The entries it rests on ("{rests.len()}")"</summary>
                <ul class="list">
                    {rests.into_iter().map(|(says, hand)| view! { <li class="item"><span>{says}</span><span class="dim">{hand}</span></li> }).collect_view()}
                </ul>
            </details>
        </li>
    }
}

/// What each of these entries says, and who says it when.
fn rests_on(entries: &[EntryId]) -> Vec<(String, String)> {
    let shop = workshop();
    let Some(opened) = shop.in_hand() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let found = entries.iter().filter_map(|id| opened.book.entry(*id));
    found
        .map(|entry| {
            (
                wording::heading(&vehicle, entry, shop.style()),
                wording::hand(entry),
            )
        })
        .collect()
}

/// Readings of parts the wheel, as it is described now, has not.
fn elsewhere(count: usize) -> Option<impl IntoView> {
    (count > 0).then(|| {
        let readings = wording::counted(count, "reading", "readings");
        view! { <p class="warning">{readings}" of parts this wheel, as it is described now, does not have: kept, not judged."</p> }
    })
}
