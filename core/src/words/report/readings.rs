//! Every reading of one wheel: where, what, how it was to be taken, by whom, when, at which stage, in
//! which entry. Like readings taken together stand in one row that names them all.

use super::super::{answer, capital, how, place, question, visit, when};
use super::Detail;
use super::case::Case;
use super::document::{Block, shorts};
use crate::daybook::{Entry, EntryId, Says};
use crate::survey::{Answer, Pad, Question, Reading, Stage};
use crate::wheel::{Place, Position};

/// A row of like readings.
struct Row {
    question: Question,
    said: String,
    hand: String,
    places: Vec<Place>,
    entries: Vec<EntryId>,
}

/// The readings of the wheel at this position; nothing if there are none.
pub(super) fn readings(case: &Case, position: Position, detail: Detail) -> Option<Block> {
    let rows = rows(case, position, detail);
    if rows.is_empty() {
        return None;
    }
    let cells = rows.iter().map(|row| cells(case, position, row, detail));
    let head = match detail {
        Detail::Each => vec![
            "Reading",
            "Where",
            "Answer",
            "By whom, when, stage",
            "Entries",
        ],
        Detail::DrawnTogether => vec!["Reading", "Where", "Answer"],
    };
    Some(Block::Table(head, cells.collect()))
}

fn rows(case: &Case, position: Position, detail: Detail) -> Vec<Row> {
    let all = case.vehicle.readings(case.begun.id);
    let mut rows: Vec<Row> = Vec::new();
    for asked in Question::all() {
        let first = rows.len();
        for (entry, reading) in &all {
            if (reading.slot.position, reading.slot.question) == (position, asked) {
                add(case, &mut rows, first, entry, reading, detail);
            }
        }
    }
    rows
}

/// Adds a reading to the row of its like among those from the first on, or as a row of its own.
fn add(
    case: &Case,
    rows: &mut Vec<Row>,
    first: usize,
    entry: &Entry,
    reading: &Reading,
    detail: Detail,
) {
    let said = said(case, entry, reading);
    let hand = match detail {
        Detail::Each => hand(case, entry),
        Detail::DrawnTogether => String::new(),
    };
    let like = |row: &&mut Row| row.said == said && row.hand == hand;
    match rows.iter_mut().skip(first).find(like) {
        Some(row) => {
            row.places.push(reading.slot.place);
            row.entries.push(entry.id);
        }
        None => rows.push(Row {
            question: reading.slot.question,
            said,
            hand,
            places: vec![reading.slot.place],
            entries: vec![entry.id],
        }),
    }
}

fn said(case: &Case, entry: &Entry, reading: &Reading) -> String {
    let asked = reading.slot.question;
    let mut words = answer::answered(asked, &reading.answer, case.style);
    let typed = matches!(reading.answer, Answer::Length(_) | Answer::Share(_))
        && !matches!(asked.pad(), Pad::Gauge(_))
        && !reading.written.is_empty();
    if typed && reading.written != words {
        words.push_str(&format!(", typed “{}”", reading.written));
    }
    if case
        .vehicle
        .disputes()
        .iter()
        .any(|thread| thread.has(entry.id))
    {
        words.push_str(", in dispute");
    }
    words
}

fn hand(case: &Case, entry: &Entry) -> String {
    let stage = visit::stage(stage_at(case, entry));
    format!("{}, {}; {stage}", when::by(entry), when::moment(&entry.at))
}

/// How far the wheel was taken apart when this was written: what was last said of it by then.
fn stage_at(case: &Case, entry: &Entry) -> Stage {
    let thread = case.vehicle.visit_thread(case.begun.id);
    let said = thread.into_iter().flat_map(|thread| thread.entries());
    let mut stage = Stage::default();
    for at in said.filter(|at| at.n <= entry.n || at.id == case.begun.id) {
        if let Says::Visit(visit) = &at.says {
            stage = visit.stage;
        }
    }
    stage
}

fn cells(case: &Case, position: Position, row: &Row, detail: Detail) -> Vec<String> {
    let wheel = case.vehicle.wheel(position).map(|(wheel, _)| wheel);
    let at = match wheel {
        Some(wheel) => place::places(&row.places, wheel, case.style),
        None => {
            let each = row.places.iter();
            let each: Vec<_> = each.map(|at| place::place(*at, None, case.style)).collect();
            each.join(", ")
        }
    };
    let name = capital(&question::short(row.question, case.style));
    let mut cells = vec![
        format!("{name} ({})", taken_with(row.question)),
        at,
        row.said.clone(),
    ];
    if detail == Detail::Each {
        cells.push(row.hand.clone());
        cells.push(shorts(&row.entries));
    }
    cells
}

/// With what a reading is asked to be taken.
fn taken_with(question: Question) -> &'static str {
    match (question, question.pad()) {
        (Question::RotFelloe | Question::RotSpoke | Question::RotNave, _) => "bradawl",
        (Question::Moisture, _) => "moisture meter",
        (Question::RunOut | Question::OutOfRound, _) => "fixed stick and rule",
        (Question::FelloeStep, _) => "straight edge and feeler",
        (Question::TyreShifts | Question::BoxMoves | Question::DishGives | Question::Binds, _)
        | (_, Pad::Verdict(_)) => "by hand",
        (_, Pad::Gauge(_)) => "feeler",
        (_, Pad::Size(_) | Pad::Share) => "rule",
        (_, Pad::Fastening) => "hand and hammer",
        (_, Pad::Ring) => "hammer, by ear",
        (_, Pad::Crack | Pad::YesNo) => "by eye",
    }
}

/// How each question that was answered is asked to be taken, in full.
pub(super) fn ways(case: &Case) -> Block {
    let all = case.vehicle.readings(case.begun.id);
    let asked = |question: &Question| all.iter().any(|(_, it)| it.slot.question == *question);
    let rows = Question::all().filter(asked).map(|question| {
        let name = capital(&question::short(question, case.style));
        format!("{name}: {}", how::how(question, case.style).how)
    });
    Block::Points(rows.collect())
}
