//! The full examination: what was examined and how, every reading, what was found by whose limit, what
//! was not looked at, what is in dispute, and the entries it all rests on.

use super::super::{
    capital, cause, caution, cure, dispute, finding, missing, place, standing, term, visit, when,
};
use super::case::{Case, Wheeled};
use super::document::{Block, fact, short, shorts};
use super::owner::{decided, pictures};
use super::readings::{readings, ways};
use super::tyred::tyrings;
use super::work::work;
use super::{CORE, Detail, NO_LEAVE};
use crate::daybook::digests::Digests;
use crate::daybook::{Digest, Entry, Kind};
use crate::diagnosis::{Cure, Finding, before_a_draw, causes, cures, in_the_way};
use crate::survey::{Answer, Question};
use crate::wheel::{Position, Wheel};

pub(super) fn full(case: &Case, detail: Detail) -> Vec<Block> {
    let mut page = vec![
        Block::Title(format!("{}: full examination of its wheels", case.name())),
        Block::strong(NO_LEAVE),
        Block::Facts(identity(case)),
        Block::heading("What it comes to"),
    ];
    page.extend(case.standings());
    page.push(Block::text(standing::vehicle()));
    page.extend(decided(case));
    page.push(Block::Text(case.signature()));
    if detail == Detail::DrawnTogether {
        page.push(Block::strong("So that this text can be kept, like answers are drawn together here. Who gave each, when and in which entry stands in the day book."));
    }
    for position in Position::ALL {
        page.extend(wheel(case, position, detail));
    }
    page.extend(disputes(case));
    page.extend(remarks(case));
    page.extend(work(case));
    page.extend(tyrings(case));
    page.extend(pictures(case));
    page.push(Block::heading("How each reading is to be taken"));
    page.push(ways(case));
    page.extend(entries(case));
    for card in [caution::no_permission(), caution::no_cure(case.style)] {
        page.push(Block::Heading(card.heading));
        page.push(Block::Points(card.lines));
    }
    page
}

fn identity(case: &Case) -> Vec<(String, String)> {
    let mut facts = case.identity();
    let mut stages: Vec<&str> = case.visits().map(|it| visit::stage(it.stage)).collect();
    stages.dedup();
    let again = case.look_again();
    facts.push(fact("Stage, as said last", stages.join("; or: ")));
    facts.push(fact("Conditions", case.told(|visit| &visit.conditions)));
    let again = again.unwrap_or_else(|| "no day is set".to_owned());
    facts.push(fact("Look again by", again));
    facts
}

/// One wheel; where none is described, only the readings that name it.
fn wheel(case: &Case, position: Position, detail: Detail) -> Vec<Block> {
    let list = readings(case, position, detail);
    let it = case.wheels.iter().find(|it| it.position == position);
    let absent = case.absent.contains(&position);
    if it.is_none() && list.is_none() && !absent {
        return Vec::new();
    }
    let mut page = vec![Block::Heading(capital(&place::wheel_at(position)))];
    match it {
        Some(it) => page.extend(one(case, it)),
        None => page.push(Block::text(
            "This wheel is not described: it was not examined, and nothing is said for it.",
        )),
    }
    if let Some(list) = list {
        page.push(Block::under("Every reading"));
        page.push(list);
    }
    page
}

fn one(case: &Case, it: &Wheeled) -> Vec<Block> {
    let mut page = vec![
        Block::Facts(built(case, it)),
        Block::Standing("Standing".to_owned(), it.standing),
    ];
    page.extend(it.so_far());
    if it.proposed != it.standing {
        page.push(Block::Standing(
            "Proposed by the readings".to_owned(),
            it.proposed,
        ));
    }
    page.extend([Block::Drawing(it.position), Block::under("Findings")]);
    if it.judgement.findings.is_empty() {
        page.push(Block::text("No limit is reached by what was looked at."));
    }
    page.extend(before_any_draw(case, it));
    for found in &it.judgement.findings {
        page.extend(finding_blocks(case, it, found));
    }
    page.push(Block::under("Not examined"));
    page.push(Block::Points(not_examined(case, it)));
    page
}

/// What stands in the way of every cure that draws, where one is named; said once.
fn before_any_draw(case: &Case, it: &Wheeled) -> Option<Block> {
    let ways = before_a_draw(&it.judgement);
    let draws = |found: &Finding| cures(found, &it.judgement).into_iter().any(Cure::draws);
    let said = !ways.is_empty() && it.judgement.findings.iter().any(draws);
    let words = ways.iter().map(|way| cure::in_the_way(*way, case.style));
    let first = cure::before_a_draw(case.style);
    let words: Vec<String> = [first].into_iter().chain(words).collect();
    said.then(|| Block::Text(words.join(" ")))
}

/// How it is built and by which entry that is said.
fn built(case: &Case, it: &Wheeled) -> Vec<(String, String)> {
    let Wheel {
        felloes,
        rim,
        tyre,
        arm,
        keeper,
        sizes,
    } = it.wheel;
    let said = |words: Option<String>| words.unwrap_or_else(|| "not said".to_owned());
    let style = case.style;
    let entry = case
        .vehicle
        .wheel(it.position)
        .map(|(_, entry)| short(&entry));
    let mut facts = vec![
        (
            style.fill("Spokes, {felloe}s"),
            format!("{}, {}", felloes.spokes(), felloes.felloes()),
        ),
        fact("Rim", said(rim.map(|rim| term::rim(rim, style)))),
        (
            capital(style.terms.tyre),
            said(tyre.map(|tyre| term::tyre(tyre, style))),
        ),
        fact("Arm", said(arm.map(|arm| term::arm(arm).to_owned()))),
        fact(
            "Kept on by",
            said(keeper.map(|it| term::keeper(it, style).to_owned())),
        ),
    ];
    for (size, length) in sizes.said() {
        facts.push((capital(&term::size(size, style)), style.size(length)));
    }
    facts.push(fact("Described in entry", said(entry)));
    facts
}

fn finding_blocks(case: &Case, it: &Wheeled, found: &Finding) -> Vec<Block> {
    let style = case.style;
    let said = finding::finding(found, it.wheel, style);
    let entries = shorts(&found.entries);
    let mut points = vec![
        format!("{}: {}", capital(&said.where_), said.how_much),
        format!("By {}.", said.limit),
    ];
    points.extend(said.not_looked);
    points.push(format!("Rests on {entries}."));
    for (likely, told) in causes(found, &it.judgement) {
        let words = cause::cause(likely, style);
        let mut line = format!("Likely cause: {}. ", words.name);
        if let Some(told) = cause::told(told) {
            line.push_str(told);
            line.push(' ');
        }
        line.push_str("Told by: ");
        line.push_str(&words.told_by);
        points.push(line);
    }
    for cure in cures(found, &it.judgement) {
        let mut line = format!("Cure: {}", cure::cure(cure, style));
        if !in_the_way(cure, &it.judgement).is_empty() {
            line.push(' ');
            line.push_str(cure::waits());
        }
        points.push(line);
    }
    vec![
        Block::Under(format!("{} – {}", said.heading, term::grade(found.grade))),
        Block::Points(points),
    ]
}

/// What is missing, what could not be seen, what was not asked at all.
fn not_examined(case: &Case, it: &Wheeled) -> Vec<String> {
    let style = case.style;
    let left = it.judgement.missing.iter();
    let mut points: Vec<String> = left
        .map(|left| missing::missing(left, it.wheel, style))
        .collect();
    let mut unanswered = Vec::new();
    let readings = case.vehicle.readings(case.begun.id);
    let here = || {
        readings
            .iter()
            .filter(|(_, reading)| reading.slot.position == it.position)
    };
    for question in Question::all().filter(|question| question.asked_of(it.wheel)) {
        let name = super::super::question::short(question, style);
        let (mut answered, mut unseen) = (false, Vec::new());
        for (_, reading) in here().filter(|(_, reading)| reading.slot.question == question) {
            answered = true;
            if reading.answer == Answer::CannotSee {
                unseen.push(reading.slot.place);
            }
        }
        if !answered {
            unanswered.push(name.clone());
        }
        if !unseen.is_empty() {
            let at = place::places(&unseen, it.wheel, style);
            points.push(format!("Could not be seen: {name}, {at}."));
        }
    }
    if !unanswered.is_empty() {
        points.push(format!("Not answered at all: {}.", unanswered.join(", ")));
    }
    if !it.judgement.elsewhere.is_empty() {
        let entries = shorts(&it.judgement.elsewhere);
        points.push(format!(
            "Readings of parts this wheel, as it is described, does not have, kept and not judged: {entries}."
        ));
    }
    if points.is_empty() {
        points.push("Everything that is asked of such a wheel was answered.".to_owned());
    }
    points
}

fn disputes(case: &Case) -> Vec<Block> {
    let mut page = vec![Block::heading("In dispute")];
    for thread in case.vehicle.disputes() {
        let at = thread.heads().first().and_then(|head| wheel_of(case, head));
        let Some(said) = dispute::dispute(thread, at, case.style) else {
            continue;
        };
        let sides = said.sides.iter();
        let sides = sides.map(|side| {
            format!(
                "{} ({}, {}; {})",
                side.says,
                side.by,
                side.when,
                short(&side.entry)
            )
        });
        page.push(Block::Under(said.heading));
        page.push(Block::Points(sides.collect()));
        page.push(Block::Text(said.meanwhile));
    }
    if page.len() == 1 {
        page.push(Block::text("Nothing is in dispute."));
    }
    page
}

/// The wheel an entry is about, if it is about one that is described.
fn wheel_of<'a>(case: &Case<'_, 'a>, entry: &Entry) -> Option<&'a Wheel> {
    let (at, _) = entry.slot.split_once('/').unwrap_or((&entry.slot, ""));
    Some(case.vehicle.wheel(Position::from_code(at)?)?.0)
}

fn remarks(case: &Case) -> Vec<Block> {
    let rows: Vec<Vec<String>> = case
        .remarks()
        .into_iter()
        .map(|(entry, part, text)| {
            vec![
                capital(&case.part(part)),
                text.to_owned(),
                format!("{}, {}", when::by(entry), when::moment(&entry.at)),
                short(&entry.id),
            ]
        })
        .collect();
    if rows.is_empty() {
        return Vec::new();
    }
    vec![
        Block::heading("Remarks"),
        Block::Table(vec!["Part", "Remark", "By whom, when", "Entry"], rows),
    ]
}

/// How many entries there are about the vehicle, and the digest of all their names.
fn entries(case: &Case) -> Vec<Block> {
    let all = case.vehicle.entries();
    let told = all.iter().filter(|entry| entry.kind != Kind::Report);
    let names: Digests = told.map(|entry| entry.id).collect();
    let newer = all.iter().filter(|entry| !entry.is_read()).count();
    let mut text = String::new();
    for name in names.iter() {
        text.push_str(&name.hex());
        text.push('\n');
    }
    let mut page = vec![
        Block::heading("The entries this rests on"),
        Block::Facts(vec![
            fact("Vehicle", case.vehicle.id().hex()),
            fact("Examination", case.begun.id.hex()),
            fact("Entries about the vehicle", names.len().to_string()),
            fact("Digest of the set", Digest::of(text.as_bytes()).hex()),
            fact("Worked out by", format!("Cartside {CORE}")),
        ]),
        Block::text(
            "Each entry goes by the SHA-256 of its line in the day book; its first eight signs stand beside what it says. The digest of the set is the SHA-256 of all names in order, each on a line of its own, reports handed over left out.",
        ),
    ];
    if newer > 0 {
        page.push(Block::Text(format!(
            "{newer} of them were written by a newer Cartside: kept, counted, not read here."
        )));
    }
    page
}
