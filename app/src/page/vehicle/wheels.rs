//! The vehicle's wheels, each with its standing, and the standing of them all.

use cartside_core::daybook::{EntryId, VehicleView};
use cartside_core::diagnosis::{Standing, standing_by};
use cartside_core::wheel::{Position, Vehicle};
use cartside_core::words;

use crate::component::in_hand::whole;
use crate::component::mark::{self, standing_mark};
use crate::looking::Looking;
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::Workshop;

/// The wheels of a vehicle.
pub fn wheels(id: EntryId, vehicle: &VehicleView<'_, '_>, shop: Workshop) -> Piece {
    let wheels = vehicle.wheels().into_iter();
    let wheels = wheels.filter_map(|(position, _)| {
        let looking = Looking::of(vehicle, position, shop)?;
        Some((position, standing(vehicle, position, &looking), looking))
    });
    let wheels: Vec<_> = wheels.collect();
    let rows = wheels.iter();
    let rows = rows.map(|(position, standing, looking)| {
        let standing = standing.unwrap_or(Standing::NotJudged);
        one_wheel(id, *position, standing, looking)
    });
    let absent = absent(vehicle).into_iter();
    let absent = absent.map(|position| one_absent(id, position));
    let lowest = wheels.iter().filter_map(|(_, standing, _)| *standing).max();
    let lowest = lowest.map(|standing| {
        sheet!(
            "<p class=row><span class=strong>The vehicle:</span>{}</p>{}",
            standing_mark(standing),
            mark::so_far_of_all(standing, wheels.iter().map(|(_, _, looking)| looking))
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

/// The standing of a wheel at its latest examination; `None` before the first. What holds of those before is gone through
/// once, for the wheel as it is looked at, since an old vehicle has many.
fn standing(
    vehicle: &VehicleView<'_, '_>,
    position: Position,
    looking: &Looking,
) -> Option<Standing> {
    let latest = looking.examination.as_ref()?;
    let proposed = looking.judgement.proposed();
    let held = looking.held.as_ref().map(|(held, _)| *held);
    let of = (latest.id, position);
    Some(standing_by(vehicle, of, proposed, held))
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
fn one_wheel(id: EntryId, position: Position, standing: Standing, looking: &Looking) -> Piece {
    sheet!(
        "<li><a class=\"key stand\" href={} data-wheel={} data-standing={}>{}\
         <span class=\"strong capital\">{}</span>{}{}</a></li>",
        Route::Wheel(id, position).href(),
        position.code(),
        standing.code(),
        whole(looking),
        words::place::wheel_at(position),
        standing_mark(standing),
        mark::so_far(standing, looking)
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
