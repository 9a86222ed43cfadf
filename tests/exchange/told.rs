//! All that a book comes to, to be held beside another's.

use cartside_core::daybook::{Book, Digest, EntryId, Problem, State, Thread, VehicleView, View};
use cartside_core::diagnosis::{Limit, examined, limits};
use cartside_core::paper::summary::Summary;
use cartside_core::quantity::format::{FeelerStyle, LengthStyle};
use cartside_core::words::{Style, finding, missing};

/// What one thread comes to.
#[derive(Debug, PartialEq)]
pub(crate) struct ThreadTold {
    pub(crate) entries: Vec<EntryId>,
    pub(crate) heads: Vec<EntryId>,
    pub(crate) not_here: Vec<EntryId>,
    pub(crate) comes_to: &'static str,
    settled_by: Option<EntryId>,
}

/// What a book comes to.
#[derive(Debug, PartialEq)]
pub(crate) struct Told {
    pub(crate) ids: Vec<EntryId>,
    pub(crate) threads: Vec<ThreadTold>,
    pub(crate) hidden: Vec<EntryId>,
    pub(crate) erased: Vec<Digest>,
    problems: Vec<Problem>,
    by_newer: usize,
    next_n: u64,
    /// The disputes of each vehicle, by a head of each.
    disputes: Vec<(EntryId, Vec<EntryId>)>,
}

impl Told {
    pub(crate) fn of(book: &Book) -> Told {
        let view = book.view();
        Told {
            ids: book.entries().map(|entry| entry.id).collect(),
            threads: view.threads().map(thread).collect(),
            hidden: hidden(&view),
            erased: view.erased().iter().copied().collect(),
            problems: view.problems().to_vec(),
            by_newer: view.written_by_newer(),
            next_n: book.next_n(),
            disputes: view
                .vehicles()
                .into_iter()
                .map(|id| (id, disputes(&view.vehicle(id))))
                .collect(),
        }
    }
}

fn ids(entries: &[&cartside_core::daybook::Entry]) -> Vec<EntryId> {
    entries.iter().map(|entry| entry.id).collect()
}

fn thread(thread: &Thread<'_>) -> ThreadTold {
    ThreadTold {
        entries: ids(thread.entries()),
        heads: ids(thread.heads()),
        not_here: thread.not_here().to_vec(),
        comes_to: match thread.state() {
            Some(State::Settled(_)) => "settled",
            Some(State::Struck(_)) => "struck",
            Some(State::Dispute(_)) => "dispute",
            None => "nothing",
        },
        settled_by: thread.last_settlement().map(|entry| entry.id),
    }
}

fn hidden(view: &View<'_>) -> Vec<EntryId> {
    let mut hidden = Vec::new();
    for id in view.vehicles() {
        let vehicle = view.vehicle(id);
        let entries = vehicle.entries().into_iter();
        hidden.extend(
            entries
                .filter(|entry| vehicle.hidden(entry))
                .map(|entry| entry.id),
        );
    }
    hidden
}

fn disputes(vehicle: &VehicleView<'_, '_>) -> Vec<EntryId> {
    let disputes = vehicle.disputes().into_iter();
    let heads = disputes.filter_map(|thread| thread.heads().first().map(|head| head.id));
    heads.collect()
}

/// What takes longest to work out: the limits in force, and summary and findings of each vehicle in words.
#[derive(Debug, PartialEq)]
pub(crate) struct Words {
    limits: Vec<Limit>,
    vehicles: Vec<(String, Vec<String>)>,
}

impl Words {
    pub(crate) fn of(book: &Book) -> Words {
        let view = book.view();
        let limits = limits(&view);
        let of = |id| {
            let summary = Summary::of(book, id, &limits).write();
            (summary, findings(&view.vehicle(id), &limits))
        };
        let vehicles = view.vehicles().into_iter().map(of).collect();
        Words { limits, vehicles }
    }
}

/// Every finding and what is missing, of every wheel at the latest examination.
fn findings(vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> Vec<String> {
    let style = Style::british(LengthStyle::Millimetres, FeelerStyle::Millimetres);
    let mut told = Vec::new();
    let Some(visit) = vehicle.visits().last().map(|visit| visit.id) else {
        return told;
    };
    for (position, wheel) in vehicle.wheels() {
        let Some(judgement) = examined(vehicle, visit, position, limits) else {
            continue;
        };
        let found = judgement
            .findings
            .iter()
            .map(|it| finding::finding(it, wheel, style));
        told.extend(found.map(|words| format!("{words:?}")));
        told.extend(
            judgement
                .missing
                .iter()
                .map(|it| missing::missing(it, wheel, style)),
        );
    }
    told
}
