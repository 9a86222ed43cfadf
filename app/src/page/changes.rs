//! Since last time: the latest examination beside those before it, wheel by wheel, the gravest first.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::{Change, Difference, rounds_since, since_last};
use cartside_core::wheel::{Part, Position, Wheel};
use cartside_core::words;
use leptos::prelude::Get;

use crate::component::mark::grade_mark;
use crate::markup::{Piece, live, nothing, sheet};
use crate::route::Route;
use crate::wording::counted;
use crate::workshop::{Workshop, workshop};

/// The latest examination of a vehicle beside those before it.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=changes><h1>Since last time</h1>{}\
         <a class=\"key key-plain\" href={}>To the vehicle</a></main>",
        live(move || of_vehicle(shop)),
        Route::Vehicle(id).href()
    )
}

fn of_vehicle(shop: Workshop) -> Piece {
    let Some(opened) = shop.opened.get() else {
        return nothing();
    };
    let view = opened.book.view();
    let vehicle = view.vehicle(opened.vehicle);
    let visits = vehicle.visits();
    let Some(latest) = visits.last().filter(|_| visits.len() > 1) else {
        return sheet!(
            "<p>There is no earlier examination that counts, and so nothing to stand beside. \
             From the second on, this page lists what has changed.</p>"
        );
    };
    let wheels = vehicle.wheels().into_iter();
    let wheels =
        wheels.map(|(position, wheel)| of_wheel(&vehicle, latest.id, position, wheel, shop));
    sheet!(
        "<p>The examination of {}, each reading beside the latest before it. A difference counts where it is more \
         than two readings of the same thing may differ by; from nothing at all to a gap or to play, or back, it \
         always counts.</p>{}",
        words::when::day(&latest.at),
        wheels.collect::<Vec<Piece>>()
    )
}

fn of_wheel(
    vehicle: &VehicleView<'_, '_>,
    visit: EntryId,
    position: Position,
    wheel: &Wheel,
    shop: Workshop,
) -> Piece {
    let all = since_last(vehicle, visit, position, &shop.limits());
    let (gone, all): (Vec<_>, Vec<_>) = all.into_iter().partition(|it| it.gone);
    let row = |it: &Difference<'_>| one_row(vehicle.id(), it, wheel, shop);
    let group = |change: Change| {
        let rows: Vec<Piece> = all
            .iter()
            .filter(|it| it.change == change)
            .map(row)
            .collect();
        let folded = matches!(change, Change::New | Change::NotLookedAt | Change::Same);
        (!rows.is_empty())
            .then(|| grouped(change.code(), words::history::change(change), rows, folded))
    };
    let gone: Vec<Piece> = gone.iter().map(row).collect();
    let gone = (!gone.is_empty()).then(|| {
        grouped(
            "gone",
            "on parts the wheel does not have, or counts otherwise",
            gone,
            true,
        )
    });
    let rounds = rounds_since(vehicle, visit, position);
    let rounds = of_rounds(words::history::rounds(&rounds, shop.style()));
    let none = (all.is_empty() && gone.is_none() && rounds.is_none())
        .then(|| sheet!("<p class=dim>Nothing was ever looked at here.</p>"));
    sheet!(
        "<section class=stack data-wheel={}><h2 class=capital>{}</h2>{}{}{}{}</section>",
        position.code(),
        words::place::wheel_at(position),
        none,
        rounds,
        Change::ALL
            .map(group)
            .into_iter()
            .flatten()
            .collect::<Vec<Piece>>(),
        gone
    )
}

/// The rounds beside those of last time, and the tyrings in between; nothing if there are none.
fn of_rounds(said: Vec<String>) -> Option<Piece> {
    let each: Vec<Piece> = said
        .into_iter()
        .map(|words| sheet!("<li>{}</li>", words))
        .collect();
    (!each.is_empty()).then(|| {
        sheet!(
            "<h3>Rounds</h3><ul class=\"points stack\" data-rounds>{}</ul>",
            each
        )
    })
}

/// The readings that changed in one way; those that are not news are folded.
fn grouped(code: &'static str, heading: &'static str, rows: Vec<Piece>, folded: bool) -> Piece {
    let count = counted(rows.len(), "reading", "readings");
    if folded {
        return sheet!(
            "<details class=fold data-change={}><summary><span class=capital>{}: {}</span></summary>\
             <ul class=list>{}</ul></details>",
            code,
            heading,
            count,
            rows
        );
    }
    sheet!(
        "<div class=stack data-change={}><h3 class=capital>{}: {}</h3><ul class=list>{}</ul></div>",
        code,
        heading,
        count,
        rows
    )
}

fn one_row(id: EntryId, difference: &Difference<'_>, wheel: &Wheel, shop: Workshop) -> Piece {
    let (slot, style) = (difference.slot, shop.style());
    sheet!(
        "<li><a class=item href={} data-difference={}><span class=whole-row>\
         <span class=\"strong capital\">{}: {}</span><span>{}</span></span>{}</a></li>",
        Route::Part(id, Part::At(slot.position, slot.place)).href(),
        slot.code(),
        words::place::place(slot.place, Some(wheel), style),
        words::question::short(slot.question, style),
        words::history::then_and_now(difference, style),
        difference.grade.map(grade_mark)
    )
}
