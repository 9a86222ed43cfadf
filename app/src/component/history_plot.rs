//! A reading's earlier values: a small plot by day with the moisture beneath it, and every figure in a list beside
//! it, so that nothing is said by the drawing alone.

use cartside_core::daybook::VehicleView;
use cartside_core::diagnosis::{History, Point, history, worst};
use cartside_core::quantity::decimal;
use cartside_core::quantity::length::{millimetres, to_paper_mm};
use cartside_core::survey::{Answer, Pad, Play, Question, Slot};
use cartside_core::words::{self, Style};

use crate::markup::{Piece, sheet};

/// The width of the drawing, and how far its lines keep from its edges.
const WIDTH: f64 = 320.0;
const EDGE: f64 = 8.0;

/// The values of one question at one place before this examination, folded under the latest of them; nothing if
/// there were none.
pub fn earlier(
    vehicle: &VehicleView<'_, '_>,
    slot: Slot,
    visit: Option<cartside_core::daybook::EntryId>,
    style: Style,
) -> Option<Piece> {
    let found = history(vehicle, slot);
    let before = |point: &&Point<'_>| Some(point.visit.id) != visit;
    let last = found.points.iter().rev().find(before)?;
    Some(sheet!(
        "<details class=fold data-history={}><summary><span>Before: {}</span></summary>{}</details>",
        slot.question.code(),
        words::history::point(slot.question, last, style),
        figures(slot.question, &found, style)
    ))
}

/// The plot, if there are numbers to plot, and the list of all values, the latest first.
fn figures(question: Question, found: &History<'_>, style: Style) -> Piece {
    let rows = found.points.iter().rev().map(|point| {
        let said = words::history::point(question, point, style);
        sheet!("<li class=item>{}</li>", said)
    });
    sheet!(
        "<div class=stack>{}<ul class=list>{}</ul></div>",
        plot(question, found, style),
        rows.collect::<Vec<Piece>>()
    )
}

/// A line of values by day: what stands at its greatest and its least, and where it runs.
struct Line {
    values: Vec<(u32, f64)>,
    most: String,
    least: String,
    top: f64,
    height: f64,
}

fn plot(question: Question, found: &History<'_>, style: Style) -> Option<Piece> {
    let points = || found.points.iter().filter(|point| !point.other_numbers);
    let day = |point: &Point<'_>| point.visit.at.day_count();
    let values: Vec<(u32, f64)> = points()
        .filter_map(|point| Some((day(point), amount(question, &point.answers)?)))
        .collect();
    let moist: Vec<(u32, f64)> = points()
        .filter(|_| question != Question::Moisture)
        .filter_map(|point| Some((day(point), point.moisture?)))
        .map(|(day, (low, high))| (day, (low.to_paper() + high.to_paper()) / 2.0))
        .collect();
    let (first, last) = (points().next()?, points().next_back()?);
    if values.len() < 2 {
        return None;
    }
    let label = |value: f64| match question.pad() {
        Pad::Share => percent(value),
        _ => style.read(question, millimetres(value)),
    };
    let upper = line(values, 24.0, 60.0, &label);
    let lower = (moist.len() > 1).then(|| {
        line(moist, 140.0, 34.0, &|value| {
            format!("moisture {}", percent(value))
        })
    });
    let height = if lower.is_some() { 226.0 } else { 134.0 };
    Some(sheet!(
        "<svg class=plot viewBox={} aria-hidden=true>{}{}\
         <text x=8 y={}>{}</text><text class=end x=312 y={}>{}</text></svg>",
        format!("0 0 320 {}", decimal(height, 0)),
        drawn(&upper, day(first), day(last)),
        lower.map(|lower| drawn(&lower, day(first), day(last))),
        decimal(height - 6.0, 0),
        words::when::day(&first.visit.at),
        decimal(height - 6.0, 0),
        words::when::day(&last.visit.at)
    ))
}

fn percent(value: f64) -> String {
    format!("{} %", decimal(value, 1))
}

/// What an answer is in numbers, where it is one: of a dispute the worst side, in millimetres or percent.
fn amount(question: Question, answers: &[Answer]) -> Option<f64> {
    let gauge = matches!(question.pad(), Pad::Gauge(_) | Pad::Verdict(_));
    match worst(question, None, answers)? {
        Answer::Length(measured) => Some(to_paper_mm(measured.value())),
        Answer::Over(least) => Some(to_paper_mm(least)),
        Answer::Share(share) => Some(share.to_paper()),
        Answer::NothingFound | Answer::Play(Play::Tight) if gauge => Some(0.0),
        _ => None,
    }
}

fn line(values: Vec<(u32, f64)>, top: f64, height: f64, label: &dyn Fn(f64) -> String) -> Line {
    let most = values
        .iter()
        .map(|(_, value)| *value)
        .fold(f64::MIN, f64::max);
    let least = values
        .iter()
        .map(|(_, value)| *value)
        .fold(f64::MAX, f64::min);
    let span = most - least;
    let place = |(day, value): &(u32, f64)| {
        let down = if span > 0.0 {
            (most - value) / span
        } else {
            0.5
        };
        (*day, top + down * height)
    };
    Line {
        most: label(most),
        least: if span > 0.0 {
            label(least)
        } else {
            String::new()
        },
        values: values.iter().map(place).collect(),
        top,
        height,
    }
}

/// A line with a dot at each value, between the heights of its greatest and its least.
fn drawn(line: &Line, first: u32, last: u32) -> Piece {
    let across = |day: u32| {
        let whole = last.saturating_sub(first).max(1);
        EDGE + (WIDTH - 2.0 * EDGE) * f64::from(day.saturating_sub(first)) / f64::from(whole)
    };
    let at = |(day, y): &(u32, f64)| (decimal(across(*day), 1), decimal(*y, 1));
    let places: Vec<(String, String)> = line.values.iter().map(at).collect();
    let path: Vec<String> = places.iter().map(|(x, y)| format!("{x} {y}")).collect();
    let dots = places
        .into_iter()
        .map(|(x, y)| sheet!("svg:<circle cx={} cy={} r=5/>", x, y));
    sheet!(
        "svg:<g><path class=thin d={}/><path d={}/>{}<text x=8 y={}>{}</text><text x=8 y={}>{}</text></g>",
        format!(
            "M8 {}H312M8 {}H312",
            decimal(line.top, 0),
            decimal(line.top + line.height, 0)
        ),
        format!("M{}", path.join("L")),
        dots.collect::<Vec<Piece>>(),
        decimal(line.top - 9.0, 0),
        line.most.clone(),
        decimal(line.top + line.height + 21.0, 0),
        line.least.clone()
    )
}
