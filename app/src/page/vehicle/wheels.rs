//! The vehicle's wheels, each with its standing, and the standing of them all.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::{Limit, Standing, examined, lowest};
use cartside_core::wheel::{Position, Vehicle};
use cartside_core::words;

use crate::component::mark::standing_mark;
use crate::component::plain::link;
use crate::looking::Examination;
use crate::markup::{Tag, tag};
use crate::route::Route;

/// The wheels of a vehicle.
pub fn wheels(id: EntryId, vehicle: &VehicleView<'_, '_>, limits: &[Limit]) -> Tag {
    let latest = Examination::latest(vehicle);
    let standing = |position| {
        let judged = latest
            .as_ref()
            .and_then(|latest| examined(vehicle, latest.id, position, limits));
        judged.map_or(Standing::NotJudged, |judged| judged.proposed())
    };
    let rows = vehicle
        .wheels()
        .into_iter()
        .map(|(position, _)| one_wheel(id, position, standing(position)));
    let absent = absent(vehicle).into_iter();
    let lowest = lowest(vehicle, limits).map(|standing| {
        tag("p")
            .class("row")
            .put(tag("span").class("strong").put("The vehicle:"))
            .put(standing_mark(standing))
    });
    tag("section")
        .class("stack")
        .put(tag("h2").put("Wheels"))
        .put(tag("ul").class("list").each(rows))
        .put(
            tag("div")
                .class("row")
                .each(absent.map(|position| one_absent(id, position))),
        )
        .put(lowest)
        .put(tag("p").class("dim").put(words::standing::vehicle()))
}

/// Where a wheel of such a vehicle stands and none is described.
fn absent(vehicle: &VehicleView<'_, '_>) -> Vec<Position> {
    let kind = vehicle.described().map(|Vehicle { kind, .. }| *kind);
    let there = vehicle.wheels();
    let positions = kind.map(|kind| kind.positions()).unwrap_or_default();
    let open = |position: &Position| there.iter().all(|(at, _)| at != position);
    positions.iter().copied().filter(open).collect()
}

fn one_wheel(id: EntryId, position: Position, standing: Standing) -> Tag {
    let name = words::place::wheel_at(position);
    let item = tag("a")
        .class("item")
        .set("href", Route::Wheel(id, position).href())
        .set("data-wheel", position.code())
        .set("data-standing", standing.code())
        .put(tag("span").class("strong capital").put(name))
        .put(standing_mark(standing));
    tag("li").put(item)
}

fn one_absent(id: EntryId, position: Position) -> Tag {
    let name = words::place::wheel_at(position);
    link(
        Route::Build(id, position).href(),
        format!("Describe the {name}"),
    )
    .set("data-describe", position.code())
}
