//! The work done on the vehicle from the examination on, with the readings of its part before and after.

use super::super::answer::told;
use super::super::{capital, outcome, when};
use super::case::Case;
use super::document::{Block, short};
use crate::daybook::{Entry, Kind, Says, WorkDone};

pub(super) fn work(case: &Case) -> Vec<Block> {
    let threads = case.vehicle.threads(&Kind::Work);
    let counts = threads.into_iter().flat_map(|thread| thread.counts());
    let rows: Vec<Vec<String>> = counts
        .filter(|entry| entry.n >= case.begun.n && !case.vehicle.hidden(entry))
        .filter_map(|entry| match &entry.says {
            Says::Work(said) => Some(row(case, entry, said)),
            _ => None,
        })
        .collect();
    let mut blocks = vec![Block::heading("Work done")];
    blocks.push(if rows.is_empty() {
        Block::text("No work is written down from this examination on.")
    } else {
        Block::Table(vec!["Work", "Before", "After", "Written by", "Entry"], rows)
    });
    blocks
}

fn row(case: &Case, entry: &Entry, said: &WorkDone) -> Vec<String> {
    let wheel = said.part.position().and_then(|at| case.vehicle.wheel(at));
    let (mut before, mut after) = (Vec::new(), Vec::new());
    for thread in case.vehicle.threads(&Kind::Reading) {
        for reading in thread.entries() {
            if let Says::Reading(taken) = &reading.says
                && taken.slot.part() == said.part
                && !case.vehicle.hidden(reading)
            {
                let words = told(taken.slot.question, &taken.answer, case.style);
                let side = if reading.n < entry.n {
                    &mut before
                } else {
                    &mut after
                };
                keep_latest(side, taken.slot.question.code(), words);
            }
        }
    }
    vec![
        capital(&outcome::work_done(
            said,
            wheel.map(|(wheel, _)| wheel),
            case.style,
        )),
        joined(&before, "nothing read"),
        joined(&after, "not looked at since"),
        format!("{}, {}", when::by(entry), when::moment(&entry.at)),
        short(&entry.id),
    ]
}

/// Of one question only the latest counts; threads come earliest first.
fn keep_latest(side: &mut Vec<(&'static str, String)>, question: &'static str, words: String) {
    side.retain(|(of, _)| *of != question);
    side.push((question, words));
}

fn joined(side: &[(&str, String)], none: &str) -> String {
    if side.is_empty() {
        return none.to_owned();
    }
    let words: Vec<&str> = side.iter().map(|(_, words)| words.as_str()).collect();
    words.join("; ")
}
