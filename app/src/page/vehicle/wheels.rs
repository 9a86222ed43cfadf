//! The vehicle's wheels, each with its standing, and the standing of them all.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::{Standing, lowest, standing_at};
use cartside_core::wheel::{Position, Vehicle};
use cartside_core::words;

use crate::component::in_hand::whole;
use crate::component::mark::standing_mark;
use crate::looking::{Examination, Looking};
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::Workshop;

/// The wheels of a vehicle.
pub fn wheels(id: EntryId, vehicle: &VehicleView<'_, '_>, shop: Workshop) -> Piece {
    let limits = &shop.limits();
    let latest = Examination::latest(vehicle);
    let standing = |position| {
        let latest = latest.as_ref();
        let now = latest.and_then(|latest| standing_at(vehicle, latest.id, position, limits));
        now.unwrap_or(Standing::NotJudged)
    };
    let rows = vehicle.wheels().into_iter();
    let rows = rows.map(|(position, _)| {
        let looking = Looking::of(vehicle, position, shop);
        one_wheel(id, position, standing(position), looking.as_ref())
    });
    let absent = absent(vehicle).into_iter();
    let absent = absent.map(|position| one_absent(id, position));
    let lowest = lowest(vehicle, limits).map(|standing| {
        sheet!(
            "<p class=row><span class=strong>The vehicle:</span>{}</p>",
            standing_mark(standing)
        )
    });
    sheet!(
        "<section class=stack><h2>Wheels</h2><ul class=stands>{}</ul><div class=row>{}</div>{}\
         <p class=dim>{}</p></section>",
        rows.collect::<Vec<Piece>>(),
        absent.collect::<Vec<Piece>>(),
        lowest,
        words::standing::vehicle()
    )
}

/// Where a wheel of such a vehicle stands and none is described.
fn absent(vehicle: &VehicleView<'_, '_>) -> Vec<Position> {
    let kind = vehicle.described().map(|Vehicle { kind, .. }| *kind);
    let there = vehicle.wheels();
    let positions = kind.map(|kind| kind.positions()).unwrap_or_default();
    let open = |position: &Position| there.iter().all(|(at, _)| at != position);
    positions.iter().copied().filter(open).collect()
}

/// A wheel, drawn small, where it stands: near wheels at the left, off wheels at the right, as the driver sits.
fn one_wheel(
    id: EntryId,
    position: Position,
    standing: Standing,
    looking: Option<&Looking>,
) -> Piece {
    sheet!(
        "<li><a class=\"key stand\" href={} data-wheel={} data-standing={}>{}\
         <span class=\"strong capital\">{}</span>{}</a></li>",
        Route::Wheel(id, position).href(),
        position.code(),
        standing.code(),
        looking.map(whole),
        words::place::wheel_at(position),
        standing_mark(standing)
    )
}

fn one_absent(id: EntryId, position: Position) -> Piece {
    sheet!(
        "<a class=key href={} data-describe={}>Describe the {}</a>",
        Route::Build(id, position).href(),
        position.code(),
        words::place::wheel_at(position)
    )
}
