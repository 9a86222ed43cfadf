//! The readings of one part, examination by examination, the latest first.

use cartside_core::daybook::{Entry, EntryId, Kind, Says, VehicleView};
use cartside_core::survey::{Question, Reading, Slot};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::history_plot::earlier;
use crate::correction_key::{correction_key, settle_key, strong, told};
use crate::fate::Fate;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording;
use crate::workshop::Workshop;

/// One reading.
struct Line<'a> {
    entry: &'a Entry,
    reading: &'a Reading,
    fate: Fate,
}

/// The readings of one part of a wheel.
pub(super) fn readings(shop: Workshop, id: EntryId, of: Part) -> Piece {
    sheet!(
        "<section class=card><h2>Readings</h2>{}{}</section>",
        live(move || examinations(shop, id, of)),
        live(move || earlier_values(shop, of)),
    )
}

fn examinations(shop: Workshop, id: EntryId, of: Part) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let mut left = lines(&vehicle, of);
    let mut shown: Vec<Piece> = Vec::new();
    let mut latest = true;
    for visit in vehicle.visits().into_iter().rev() {
        let thread = vehicle.visit_thread(visit.id);
        let of_it = |id| thread.is_some_and(|thread| thread.has(id));
        let (here, others) = left
            .into_iter()
            .partition::<Vec<Line>, _>(|line| line.entry.visit.is_some_and(of_it));
        left = others;
        // Only the latest examination can still be answered.
        let open = if latest {
            open(&vehicle, of, &here, style)
        } else {
            Vec::new()
        };
        if !here.is_empty() || !open.is_empty() {
            let now = vehicle.visit(visit.id);
            let said = now.map_or_else(String::new, |(said, _)| words::visit::visit(said));
            shown.push(examination(
                sheet!("{} — {}", words::when::day(&visit.at), said),
                items(shop, id, of, &here, latest, style),
                open,
            ));
        }
        latest = false;
    }
    if !left.is_empty() {
        shown.push(examination(
            "Examinations that are struck out or not here".into(),
            items(shop, id, of, &left, false, style),
            Vec::new(),
        ));
    }
    if shown.is_empty() {
        return sheet!("<p class=dim>Nothing has been looked at here yet.</p>");
    }
    shown.into()
}

/// The values of earlier examinations, question by question.
fn earlier_values(shop: Workshop, of: Part) -> Option<Piece> {
    let (opened, Part::At(position, place)) = (shop.opened.get()?, of) else {
        return None;
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let latest = vehicle.visits().last().map(|visit| visit.id);
    let asked = Question::all().filter(|question| question.fits(place));
    let folds = asked.filter_map(|question| {
        let slot = Slot {
            position,
            place,
            question,
        };
        let fold = earlier(&vehicle, slot, latest, style)?;
        let name = words::question::short(question, style);
        Some(sheet!("<h4 class=capital>{}</h4>{}", name, fold))
    });
    let folds: Vec<Piece> = folds.collect();
    (!folds.is_empty()).then(|| sheet!("<div class=stack><h3>Earlier values</h3>{}</div>", folds))
}

/// One examination as far as it concerns the part: what it read, and where it can still be answered.
fn examination(heading: Piece, items: Vec<Piece>, open: Vec<Piece>) -> Piece {
    let list = (!items.is_empty()).then(|| sheet!("<ul class=list>{}</ul>", items));
    sheet!(
        "<div class=stack><h3>{}</h3>{}<div class=choices>{}</div></div>",
        heading,
        list,
        open,
    )
}

fn items(
    shop: Workshop,
    id: EntryId,
    of: Part,
    lines: &[Line<'_>],
    latest: bool,
    style: Style,
) -> Vec<Piece> {
    let item = |line: &Line<'_>| {
        let Line {
            entry,
            reading,
            fate,
        } = *line;
        let question = reading.slot.question;
        let says = words::answer::told(question, &reading.answer, style);
        let correct = (latest && fate == Fate::Counts)
            .then(|| sheet!("<a class=key href={}>Correct</a>", ask(id, of, question)));
        let correction = fate.correction();
        sheet!(
            "<li class=item data-reading={} data-fate={}>{}<div class=row>{}{}{}</div></li>",
            question.code(),
            fate.code(),
            told(says, strong(fate), fate, nothing(), wording::hand(entry)),
            correct,
            correction.map(|how| correction_key(shop, entry.id, how)),
            settle_key(fate, id),
        )
    };
    lines.iter().map(item).collect()
}

/// Where a question about this part is answered.
fn ask(id: EntryId, of: Part, question: Question) -> String {
    let (position, place) = match of {
        Part::At(position, place) => (position, place),
        Part::Vehicle => (Position::Only, Place::Whole),
    };
    Route::Ask(id, position, question, Some(place)).href()
}

/// What counts of the part's readings, and what was struck out. Earlier wordings stand among everything written.
fn lines<'a>(vehicle: &VehicleView<'_, 'a>, of: Part) -> Vec<Line<'a>> {
    let mut lines = Vec::new();
    for thread in vehicle.threads(&Kind::Reading) {
        for entry in thread.entries().iter().copied() {
            let fate = Fate::of(thread, entry);
            if let Says::Reading(reading) = &entry.says
                && reading.slot.part() == of
                && fate != Fate::Replaced
            {
                lines.push(Line {
                    entry,
                    reading,
                    fate,
                });
            }
        }
    }
    lines
}

/// The questions that can be put to this part and have no answer yet.
fn open(vehicle: &VehicleView<'_, '_>, of: Part, lines: &[Line<'_>], style: Style) -> Vec<Piece> {
    let (Part::At(_, place), Some(wheel)) = (of, wording::wheel_at(vehicle, of)) else {
        return Vec::new();
    };
    let answered = |question: Question| {
        lines
            .iter()
            .any(|line| line.reading.slot.question == question && line.fate != Fate::Struck)
    };
    Question::all()
        .filter(|question| question.fits(place) && wheel.has(place) && question.asked_of(wheel))
        .filter(|question| !answered(*question))
        .map(|question| {
            sheet!(
                "<a class=key href={} data-ask={}>Answer: {}</a>",
                ask(vehicle.id(), of, question),
                question.code(),
                words::question::short(question, style),
            )
        })
        .collect()
}
