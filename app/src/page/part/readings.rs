//! The readings of one part, examination by examination, the latest first.

use cartside_core::daybook::{Entry, EntryId, Kind, Says, Thread, VehicleView};
use cartside_core::survey::{Question, Slot};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::correction_key::CorrectionKey;
use crate::fate::Fate;
use crate::route::Route;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// One examination as far as it concerns the part.
#[derive(Clone, Debug, PartialEq)]
struct Examination {
    heading: String,
    lines: Vec<Line>,
    /// What has not been answered in it; only the latest can still be answered.
    open: Vec<(Question, String)>,
}

/// One reading.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    entry: EntryId,
    question: Question,
    says: String,
    hand: String,
    fate: Fate,
    /// Whether it can be answered anew: in the latest examination only.
    latest: bool,
}

/// The readings of one part of a wheel.
#[component]
pub(super) fn Readings(
    /// The vehicle.
    id: EntryId,
    /// The part.
    of: Part,
) -> impl IntoView {
    let shop = workshop();
    let examinations = Memo::new(move |_| examinations(shop, of));
    view! {
        <section class="card">
            <h2>"Readings"</h2>
            {move || match examinations.get() {
                none if none.is_empty() => {
                    view! { <p class="dim">"Nothing has been looked at here yet."</p> }.into_any()
                }
                some => some
                    .into_iter()
                    .map(|examination| view! { <OneExamination id of examination /> })
                    .collect_view()
                    .into_any(),
            }}
        </section>
    }
}

#[component]
fn OneExamination(id: EntryId, of: Part, examination: Examination) -> impl IntoView {
    let Examination {
        heading,
        lines,
        open,
    } = examination;
    let lines = (!lines.is_empty()).then(|| {
        let lines = lines.into_iter();
        let rows = lines
            .map(|line| view! { <OneReading id of line /> })
            .collect_view();
        view! { <ul class="list">{rows}</ul> }
    });
    view! {
        <div class="stack">
            <h3>{heading}</h3>
            {lines}
            <div class="row">
                {open
                    .into_iter()
                    .map(|(question, label)| {
                        let ask = ask(id, of, question);
                        view! { <a class="key" data-ask=question.code() href=ask>{label}</a> }
                    })
                    .collect_view()}
            </div>
        </div>
    }
}

#[component]
fn OneReading(id: EntryId, of: Part, line: Line) -> impl IntoView {
    let fate = line.fate;
    let correct = ask(id, of, line.question);
    let can_correct = line.latest && fate == Fate::Counts;
    view! {
        <li class="item" data-reading=line.question.code() data-fate=fate.code()>
            <p>
                <span class="strong" class:struck=fate.gone()>{line.says}</span>
                " "
                <span>{fate.words()}</span>
                <br />
                <span class="dim">{line.hand}</span>
            </p>
            <div class="row">
                {can_correct.then(|| view! { <a class="key" href=correct>"Correct"</a> })}
                {fate
                    .correction()
                    .map(|correction| view! { <CorrectionKey entry=line.entry correction /> })}
                {(fate == Fate::Disputed)
                    .then(|| view! { <a class="key" href=Route::Disputes(id).href()>"Settle the dispute"</a> })}
            </div>
        </li>
    }
}

/// Where a question about this part is answered.
fn ask(id: EntryId, of: Part, question: Question) -> String {
    let (position, place) = match of {
        Part::At(position, place) => (position, place),
        Part::Vehicle => (Position::Only, Place::Whole),
    };
    Route::Ask(id, position, question, Some(place)).href()
}

fn examinations(shop: Workshop, of: Part) -> Vec<Examination> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let threads: Vec<&Thread<'_>> = vehicle
        .threads(&Kind::Reading)
        .into_iter()
        .filter(|thread| is_of(thread, of))
        .collect();
    let visits = vehicle.visits();
    let latest = visits.last().map(|visit| visit.id);
    let mut known: Vec<Examination> = visits
        .iter()
        .rev()
        .map(|visit| examination(&vehicle, visit, latest, &threads, of, style))
        .filter(|examination| !examination.lines.is_empty() || !examination.open.is_empty())
        .collect();
    known.extend(elsewhere(&vehicle, &threads, style));
    known
}

fn is_of(thread: &Thread<'_>, of: Part) -> bool {
    let slot = thread.entries().first().map(|entry| entry.slot.as_str());
    slot.and_then(Slot::from_code)
        .is_some_and(|slot| slot.part() == of)
}

fn examination(
    vehicle: &VehicleView<'_, '_>,
    visit: &Entry,
    latest: Option<EntryId>,
    threads: &[&Thread<'_>],
    of: Part,
    style: Style,
) -> Examination {
    let is_latest = Some(visit.id) == latest;
    let ids = vehicle.visit_thread(visit.id);
    let lines: Vec<Line> = threads
        .iter()
        .flat_map(|thread| lines(thread, is_latest, style))
        .filter(|(visit, _)| ids.is_some_and(|thread| visit.is_some_and(|id| thread.has(id))))
        .map(|(_, line)| line)
        .collect();
    let said = wording::says(vehicle, visit, style);
    Examination {
        heading: format!("{} — {said}", words::when::day(&visit.at)),
        open: if is_latest {
            open(vehicle, of, &lines, style)
        } else {
            Vec::new()
        },
        lines,
    }
}

/// Readings of examinations that are struck out or not here.
fn elsewhere(
    vehicle: &VehicleView<'_, '_>,
    threads: &[&Thread<'_>],
    style: Style,
) -> Option<Examination> {
    let visits = vehicle.visits();
    let known = |id: EntryId| {
        let thread = vehicle.visit_thread(id);
        visits
            .iter()
            .any(|visit| thread.is_some_and(|thread| thread.has(visit.id)))
    };
    let lines: Vec<Line> = threads
        .iter()
        .flat_map(|thread| lines(thread, false, style))
        .filter(|(visit, _)| !visit.is_some_and(known))
        .map(|(_, line)| line)
        .collect();
    (!lines.is_empty()).then(|| Examination {
        heading: "Examinations that are struck out or not here".to_owned(),
        lines,
        open: Vec::new(),
    })
}

/// What a thread shows: what counts of it, or what was struck out. Earlier wordings stand among everything written.
fn lines(
    thread: &Thread<'_>,
    latest: bool,
    style: Style,
) -> impl Iterator<Item = (Option<EntryId>, Line)> {
    let shown: Vec<_> = thread
        .entries()
        .iter()
        .filter_map(|entry| {
            let fate = Fate::of(thread, entry);
            let Says::Reading(reading) = &entry.says else {
                return None;
            };
            let line = Line {
                entry: entry.id,
                question: reading.slot.question,
                says: words::answer::told(reading.slot.question, &reading.answer, style),
                hand: wording::hand(entry),
                fate,
                latest,
            };
            (fate != Fate::Replaced).then_some((entry.visit, line))
        })
        .collect();
    shown.into_iter()
}

/// The questions that can be put to this part and have no answer yet.
fn open(
    vehicle: &VehicleView<'_, '_>,
    of: Part,
    lines: &[Line],
    style: Style,
) -> Vec<(Question, String)> {
    let (Part::At(_, place), Some(wheel)) = (of, wording::wheel_at(vehicle, of)) else {
        return Vec::new();
    };
    let answered = |question: Question| {
        lines
            .iter()
            .any(|line| line.question == question && line.fate != Fate::Struck)
    };
    Question::all()
        .filter(|question| question.fits(place) && wheel.has(place) && question.asked_of(wheel))
        .filter(|question| !answered(*question))
        .map(|question| {
            (
                question,
                format!("Answer: {}", words::question::short(question, style)),
            )
        })
        .collect()
}
