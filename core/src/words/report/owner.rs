//! The owner's page, in plain words: what the vehicle may and must not do and until when, what is to be
//! done now, soon or later, and when to look again.

use super::super::{capital, caution, cure, finding, need, outcome, place, standing, term};
use super::NO_LEAVE;
use super::case::{Case, Wheeled};
use super::document::Block;
use super::tyred::tyrings;
use crate::diagnosis::{
    Cure, DecisionRefusal, Finding, Grade, Standing, before_a_draw, cures, in_the_way,
};

pub(super) fn owner(case: &Case) -> Vec<Block> {
    let mut page = vec![
        Block::Title(format!("{}: for its owner", case.name())),
        Block::Facts(case.identity()),
        Block::strong(NO_LEAVE),
        Block::heading("How its wheels stand"),
    ];
    page.extend(case.standings());
    page.push(Block::text(standing::vehicle()));
    if let Some(said) = may(case.standing(), case.uses()) {
        page.push(Block::heading("It may"));
        page.push(Block::Text(said));
        if case.passed() {
            page.push(Block::strong(standing::passed()));
        }
        if !case.signed() {
            let not = "This is proposed by the readings; it is not decided and signed yet.";
            page.push(Block::strong(not));
        }
    }
    page.extend(must_not(case));
    for (heading, grades) in [
        (
            "To be done now",
            &[Grade::NotOnThisWheel, Grade::KeepEmpty] as &[Grade],
        ),
        ("To be done soon", &[Grade::LightWorkOnly]),
        ("What can wait", &[Grade::Note]),
    ] {
        let points = to_do(case, grades);
        if !points.is_empty() {
            page.push(Block::Heading(heading.to_owned()));
            page.push(Block::Points(points));
        }
    }
    page.push(Block::heading("Look again by"));
    page.push(Block::Strong(look_again(case)));
    page.extend(tyrings(case));
    page.extend(pictures(case));
    for card in [caution::no_permission(), caution::no_cure(case.style)] {
        page.push(Block::Heading(card.heading));
        page.push(Block::Points(card.lines));
    }
    page.push(Block::heading("Whose word this is"));
    page.extend(decided(case));
    page.push(Block::Text(case.signature()));
    page
}

/// What a vehicle of this standing may do, as far as its wheels go; from *not judged* on nothing.
pub(super) fn may(standing: Standing, uses: Option<String>) -> Option<String> {
    match (standing, uses) {
        (Standing::NoFaultFound, Some(uses)) => Some(format!(
            "As far as its wheels go, it may be used as was asked: {uses}."
        )),
        (Standing::NoFaultFound, None) => Some("As far as its wheels go, no fault was found. What it is to be used for was not said, so no use is named here.".to_owned()),
        (Standing::LightWorkOnly, _) => Some("As far as its wheels go, it may go empty, or with up to a quarter of its load, at a walk, on level hard ground.".to_owned()),
        _ => None,
    }
}

/// What a wheel of this standing rules out; nothing only where no fault was found.
fn rules_out(standing: Standing) -> Option<&'static str> {
    match standing {
        Standing::NoFaultFound => None,
        Standing::LightWorkOnly => Some(
            "The vehicle must not carry people, take more than a quarter of its load, go faster than a walk or use a drag shoe, until these are put right and looked at again:",
        ),
        Standing::NotJudged => Some(
            "The wheel must not be taken as sound, and the vehicle must neither be loaded nor carry people on the word of this page, until these are looked at:",
        ),
        Standing::KeepEmpty => Some(
            "The vehicle must not be loaded or used, beyond being walked empty to the shed, until these are put right and looked at again:",
        ),
        Standing::NotOnThisWheel => Some(
            "The vehicle must not be moved on this wheel: chock it, take the weight off, and carry it or use a trailer, until these are put right and looked at again:",
        ),
    }
}

fn must_not(case: &Case) -> Vec<Block> {
    if case.standing() == Standing::NoFaultFound {
        return Vec::new();
    }
    let mut page = vec![Block::heading("What it must not do, and until when")];
    if case.people {
        page.push(Block::Strong(format!(
            "People must not be carried. {}",
            standing::people()
        )));
    }
    for it in &case.wheels {
        if let Some(said) = rules_out(it.standing) {
            page.push(Block::Under(capital(&place::wheel_at(it.position))));
            page.push(Block::text(said));
            page.push(Block::Points(until(case, it)));
        }
    }
    for position in &case.absent {
        page.push(Block::Under(capital(&place::wheel_at(*position))));
        page.extend(rules_out(Standing::NotJudged).map(Block::text));
        page.push(Block::Points(vec![
            "the whole wheel: it is not described".to_owned(),
        ]));
    }
    page
}

/// What the examiner decided of each wheel, and where that does not count.
pub(super) fn decided(case: &Case) -> Option<Block> {
    let each = case.wheels.iter().flat_map(|it| &it.decided);
    let lines: Vec<String> = each
        .map(|(_, said, stands)| {
            let words = capital(&outcome::decision(said));
            match stands {
                Ok(()) => format!("{words}."),
                Err(refusal) => format!("{words}. It does not count: {}.", falls(*refusal)),
            }
        })
        .collect();
    (!lines.is_empty()).then_some(Block::Points(lines))
}

/// Why a decision does not count.
fn falls(refusal: DecisionRefusal) -> String {
    match refusal {
        DecisionRefusal::People(_) => {
            "people are to be carried, and that is never enough for them".to_owned()
        }
        DecisionRefusal::NoReason { .. } => {
            "it is kinder than what is proposed and gives no reason".to_owned()
        }
        DecisionRefusal::Outgrown { then, now } => format!(
            "it was decided when “{}” was proposed, and now “{}” is",
            term::standing(then),
            term::standing(now)
        ),
        DecisionRefusal::NotSigned => "no name is signed".to_owned(),
        DecisionRefusal::AgainBefore => {
            "its day to look again lies before the examination".to_owned()
        }
    }
}

/// What is to be put right, and what is to be looked at, before a wheel may stand better.
fn until(case: &Case, it: &Wheeled) -> Vec<String> {
    let bad = |found: &&Finding| found.grade.proposes().is_some();
    let found = it.judgement.findings.iter().filter(bad);
    let mut points: Vec<String> = found.map(|found| what(case, it, found)).collect();
    let missing = it.judgement.missing.iter();
    let missing: Vec<String> = missing
        .map(|left| need::need(left.need, case.style))
        .collect();
    if !missing.is_empty() {
        points.push(format!(
            "Not looked at yet, or not everywhere: {}",
            missing.join("; ")
        ));
    }
    if points.is_empty() {
        points.push("what the examiner decided it for".to_owned());
    }
    points
}

/// A finding in a line.
fn what(case: &Case, it: &Wheeled, found: &Finding) -> String {
    let said = finding::finding(found, it.wheel, case.style);
    format!("{}, {}: {}", said.heading, said.where_, said.how_much)
}

/// The findings of these grades, each with what can be done about it.
fn to_do(case: &Case, grades: &[Grade]) -> Vec<String> {
    let mut points = Vec::new();
    for grade in grades {
        for it in &case.wheels {
            for found in it.judgement.findings.iter().filter(|it| it.grade == *grade) {
                points.push(format!(
                    "{}: {}. {}",
                    capital(&place::wheel_at(it.position)),
                    what(case, it, found),
                    weighed(case, it, found)
                ));
            }
        }
    }
    points
}

/// The cures in the order in which they are weighed, last those that wait, with what they wait for;
/// what is bad is not left.
fn weighed(case: &Case, it: &Wheeled, found: &Finding) -> String {
    let (mut now, mut waiting) = (String::new(), String::new());
    for cure in cures(found, &it.judgement) {
        if cure == Cure::LeaveAndLook && found.grade > Grade::LightWorkOnly {
            continue;
        }
        let waits = !in_the_way(cure, &it.judgement).is_empty();
        let said = if waits { &mut waiting } else { &mut now };
        said.push(' ');
        said.push_str(&cure::cure(cure, case.style));
    }
    if now.is_empty() && waiting.is_empty() {
        return "To be looked at closely.".to_owned();
    }
    let mut said = "What can be done, the least first:".to_owned();
    said.push_str(&now);
    if !waiting.is_empty() {
        let ways = before_a_draw(&it.judgement);
        let once = cure::once(&ways, case.style);
        said.push_str(if now.is_empty() { " " } else { " Then, " });
        said.push_str(&if now.is_empty() { capital(&once) } else { once });
        said.push(':');
        said.push_str(&waiting);
    }
    said
}

fn look_again(case: &Case) -> String {
    match case.look_again() {
        Some(said) => said,
        None if case.standing() == Standing::NoFaultFound => {
            "No day is set. Wheels are looked at again each season, and before heavy work."
                .to_owned()
        }
        None => "No day is set; the examiner must set one before any work.".to_owned(),
    }
}

pub(super) fn pictures(case: &Case) -> Vec<Block> {
    let mut pictures = case.pictures();
    if !pictures.is_empty() {
        pictures.insert(0, Block::heading("Pictures"));
    }
    pictures
}
