//! Everything written about one vehicle, the newest first, and what is odd about it.

use cartside_core::daybook::{EntryId, Kind, Problem, Says, Thread, VehicleView, View};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::correction_key::CorrectionKey;
use crate::fate::Fate;
use crate::route::Route;
use crate::wording::{self, counted};
use crate::workshop::{Opened, Workshop, workshop};

/// One entry.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    entry: EntryId,
    n: u64,
    says: String,
    hand: String,
    fate: Fate,
    /// Whether its vehicle or its examination is struck out.
    hidden: bool,
    /// Whether a newer Cartside wrote it, or a part of it.
    newer: bool,
    /// Whether there is something that the key beside it would do.
    correctable: bool,
}

/// Everything written about one vehicle.
#[component]
pub fn EntriesPage(
    /// The vehicle.
    id: EntryId,
) -> impl IntoView {
    let shop = workshop();
    let lines = Memo::new(move |_| lines(shop));
    let oddities = Memo::new(move |_| oddities(shop));
    view! {
        <main class="page" data-page="entries">
            <h1>"Everything written"</h1>
            <a class="key key-plain" href=Route::Vehicle(id).href()>"To the vehicle"</a>
            <p class="dim">{move || counted(lines.get().len(), "entry", "entries")}", the newest first. Nothing is ever rubbed out."</p>
            {move || {
                oddities
                    .get()
                    .into_iter()
                    .map(|(code, said)| view! { <p class="warning" data-oddity=code>{said}</p> })
                    .collect_view()
            }}
            <ul class="list">
                {move || lines.get().into_iter().map(|line| view! { <OneEntry id line /> }).collect_view()}
            </ul>
        </main>
    }
}

#[component]
fn OneEntry(id: EntryId, line: Line) -> impl IntoView {
    let fate = line.fate;
    let correction = fate.correction().filter(|_| line.correctable);
    view! {
        <li class="item" data-entry=line.entry.hex() data-fate=fate.code()>
            <p>
                <span class="strong" class:struck=fate.gone()>{line.says}</span>
                " "
                <span>{fate.words()}</span>
                {line.hidden.then_some(" hidden: its vehicle or examination is struck out")}
                {line.newer.then_some(" written by a newer Cartside")}
                <br />
                <span class="dim">{line.hand}", no. "{line.n}</span>
            </p>
            {correction.map(|correction| view! { <CorrectionKey entry=line.entry correction /> })}
            {(fate == Fate::Disputed)
                .then(|| view! { <a class="key" href=Route::Disputes(id).href()>"Settle the dispute"</a> })}
        </li>
    }
}

fn lines(shop: Workshop) -> Vec<Line> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let vehicle = view.vehicle(opened.vehicle);
    let mut lines: Vec<Line> = view
        .threads()
        .flat_map(|thread| lines_of(&vehicle, thread, style))
        .collect();
    lines.sort_by_key(|line| std::cmp::Reverse((line.n, line.entry)));
    lines
}

fn lines_of(vehicle: &VehicleView<'_, '_>, thread: &Thread<'_>, style: Style) -> Vec<Line> {
    let line = |entry: &&cartside_core::daybook::Entry| {
        let fate = Fate::of(thread, entry);
        Line {
            entry: entry.id,
            n: entry.n,
            says: wording::heading(vehicle, entry, style),
            hand: wording::hand(entry),
            fate,
            hidden: entry.kind != Kind::Vehicle && vehicle.hidden(entry),
            newer: entry.says == Says::Unread || entry.unread_fields > 0,
            correctable: fate
                .correction()
                .is_some_and(|correction| correction.of(entry.id, thread).is_some()),
        }
    };
    thread.entries().iter().map(line).collect()
}

/// What is odd about what is written, each with the word that stands for it in the state of the page.
fn oddities(shop: Workshop) -> Vec<(&'static str, String)> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let (view, style) = (opened.book.view(), shop.style());
    let counts = [unreadable(&opened), newer(&view), earlier(&view)];
    let problems = view
        .problems()
        .iter()
        .filter(|problem| !matches!(problem, Problem::EarlierNotHere { .. }))
        .map(|problem| {
            (
                "problem",
                words::problem::problem(problem, &opened.book, style),
            )
        });
    counts.into_iter().flatten().chain(problems).collect()
}

fn unreadable(opened: &Opened) -> Option<(&'static str, String)> {
    (opened.unreadable > 0).then(|| {
        let lines = counted(opened.unreadable, "stored line", "stored lines");
        (
            "unreadable",
            format!("{lines} of this vehicle cannot be read and are left as they are."),
        )
    })
}

fn newer(view: &View<'_>) -> Option<(&'static str, String)> {
    let count = view.written_by_newer();
    (count > 0).then(|| {
        let entries = counted(count, "entry", "entries");
        ("newer", format!("{entries} written by a newer Cartside: kept whole, and read as far as this one can."))
    })
}

fn earlier(view: &View<'_>) -> Option<(&'static str, String)> {
    let count: usize = view.threads().map(|thread| thread.not_here().len()).sum();
    (count > 0).then(|| {
        let entries = counted(count, "earlier entry", "earlier entries");
        ("not-here", format!("{entries} that later ones replace: not on this device. The later ones count all the same."))
    })
}
