//! The readings of one part, examination by examination, the latest first.

use cartside_core::daybook::{Entry, EntryId, Kind, Says, VehicleView};
use cartside_core::survey::{Question, Reading};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::plain::link;
use crate::correction_key::{correction_key, told};
use crate::fate::Fate;
use crate::markup::{Piece, Tag, nothing, tag};
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
pub(super) fn readings(shop: Workshop, id: EntryId, of: Part) -> Tag {
    tag("section")
        .class("card")
        .put(tag("h2").put("Readings"))
        .live(move || examinations(shop, id, of))
}

fn examinations(shop: Workshop, id: EntryId, of: Part) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let mut left = lines(&vehicle, of);
    let mut shown: Vec<Tag> = Vec::new();
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
            let said = wording::says(&vehicle, visit, style);
            let items = here
                .iter()
                .map(|line| item(shop, id, of, line, latest, style));
            shown.push(examination(
                format!("{} — {said}", words::when::day(&visit.at)),
                items.collect(),
                open,
            ));
        }
        latest = false;
    }
    if !left.is_empty() {
        let items = left
            .iter()
            .map(|line| item(shop, id, of, line, false, style));
        shown.push(examination(
            "Examinations that are struck out or not here".to_owned(),
            items.collect(),
            Vec::new(),
        ));
    }
    if shown.is_empty() {
        let none = "Nothing has been looked at here yet.";
        return tag("p").class("dim").put(none).into();
    }
    shown.into()
}

/// One examination as far as it concerns the part: what it read, and where it can still be answered.
fn examination(heading: String, items: Vec<Tag>, open: Vec<Tag>) -> Tag {
    let list = (!items.is_empty()).then(|| tag("ul").class("list").each(items));
    tag("div")
        .class("stack")
        .put(tag("h3").put(heading))
        .put(list)
        .put(tag("div").class("row").each(open))
}

fn item(shop: Workshop, id: EntryId, of: Part, line: &Line<'_>, latest: bool, style: Style) -> Tag {
    let Line {
        entry,
        reading,
        fate,
    } = *line;
    let question = reading.slot.question;
    let says = words::answer::told(question, &reading.answer, style);
    let says = tag("span").class("strong").put(says);
    let can_correct = latest && fate == Fate::Counts;
    let correct = fate.correction();
    let settle = fate == Fate::Disputed;
    tag("li")
        .class("item")
        .set("data-reading", question.code())
        .set("data-fate", fate.code())
        .put(told(says, fate, nothing(), wording::hand(entry)))
        .put(
            tag("div")
                .class("row")
                .put(can_correct.then(|| link(ask(id, of, question), "Correct")))
                .put(correct.map(|how| correction_key(shop, entry.id, how)))
                .put(settle.then(|| link(Route::Disputes(id).href(), "Settle the dispute"))),
        )
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
fn open(vehicle: &VehicleView<'_, '_>, of: Part, lines: &[Line<'_>], style: Style) -> Vec<Tag> {
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
            let label = words::question::short(question, style);
            link(ask(vehicle.id(), of, question), format!("Answer: {label}"))
                .set("data-ask", question.code())
        })
        .collect()
}
