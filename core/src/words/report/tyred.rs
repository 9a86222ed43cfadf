//! The tyring of each wheel: rounds as they were run with what they come to, the draw, how hot, how long, the proof.

use super::super::tyring::{heat, measure, said, told};
use super::super::{capital, place, when};
use super::case::Case;
use super::document::Block;
use crate::daybook::tyred::{Tyred, entries};
use crate::daybook::{Entry, Says};
use crate::wheel::Position;

/// The tyrings of one examination; nothing if it has none.
pub(super) fn tyrings(case: &Case) -> Vec<Block> {
    let mut page = Vec::new();
    for position in Position::ALL {
        let points = points(case, position);
        if points.is_empty() {
            continue;
        }
        if page.is_empty() {
            page.push(Block::Heading(capital(case.style.terms.tyring)));
        }
        page.push(Block::Under(capital(&place::wheel_at(position))));
        page.push(Block::Points(points));
    }
    page
}

fn points(case: &Case, position: Position) -> Vec<String> {
    let Some(tyred) = Tyred::of(case.vehicle, case.begun.id, position) else {
        return Vec::new();
    };
    let style = case.style;
    let entries = entries(case.vehicle, case.begun.id, position).into_iter();
    let mut points: Vec<String> = entries.map(|entry| dated(entry, &tyred, case)).collect();
    match told::taken(&tyred, style) {
        Ok(taken) => points.extend(taken),
        Err(why) => points.extend(told::sentence(Err(why), style)),
    }
    if let Ok(hot) = tyred.heat() {
        points.push(heat::stick(hot.over.stick(), style));
        points.push(heat::drop_on(&hot.drop));
        points.push(heat::window(&hot.window, style));
    }
    points.extend(told::sentence(told::proof(&tyred, style), style));
    points
}

/// A round as it was run, with what it comes to, or what was chosen; with its day.
fn dated(entry: &Entry, tyred: &Tyred, case: &Case) -> String {
    let style = case.style;
    let words = match &entry.says {
        Says::Round(round) => {
            let came = tyred.round(round.ran);
            let came = came.map(|came| format!(": {}", measure::round(&came, style)));
            format!(
                "{}{} ({})",
                said::ran(round.ran, style),
                came.unwrap_or_default(),
                said::how(round, style)
            )
        }
        Says::Tyring(chosen) => said::chosen(chosen, style),
        _ => String::new(),
    };
    capital(&format!("{words}; {}.", when::day(&entry.at)))
}
