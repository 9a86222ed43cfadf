//! What the fourth tap writes: the vehicle, its wheels and the first examination, all or nothing.

use cartside_core::daybook::{EntryId, Says, Unwritten, Visit, WheelSaid};
use cartside_core::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};
use cartside_core::words;
use leptos::prelude::*;

use crate::route::Route;
use crate::scribe::Scribe;
use crate::workshop::{Step, Workshop};

/// What was chosen.
pub struct Begun {
    /// What kind of vehicle it is.
    pub kind: VehicleKind,
    /// Where the wheels stand that are looked at.
    pub positions: Vec<Position>,
    /// Spokes a wheel.
    pub spokes: u16,
    /// Felloes a wheel.
    pub felloes: u16,
}

/// Saves the beginning and goes to the vehicle's page.
///
/// # Errors
/// Nothing was stored, or the numbers make no wheel.
pub async fn write(shop: Workshop, begun: &Begun) -> Step<()> {
    let mut scribe = shop.scribe();
    let id = begun.write(&mut scribe)?;
    let style = shop
        .preferences
        .with_untracked(|preferences| preferences.style());
    let what = format!("{} begun", words::term::vehicle_kind(begun.kind, style));
    // What went wrong in saving is shown at the foot.
    if shop.save(scribe, &what).await.is_ok() {
        Route::Vehicle(id).go_instead();
    }
    Ok(())
}

impl Begun {
    fn write(&self, scribe: &mut Scribe) -> Step<EntryId> {
        let felloes =
            Felloes::even(self.spokes, self.felloes).map_err(|refusal| refusal.to_string())?;
        let vehicle = Vehicle {
            kind: self.kind,
            name: String::new(),
        };
        let id = scribe.write(&unwritten(None, Says::Vehicle(vehicle))?)?;
        for position in &self.positions {
            let wheel = Wheel::of(felloes.clone());
            let said = WheelSaid {
                position: *position,
                wheel,
            };
            scribe.write(&unwritten(Some(id), Says::Wheel(said))?)?;
        }
        scribe.write(&unwritten(Some(id), Says::Visit(Visit::default()))?)?;
        Ok(id)
    }
}

fn unwritten(vehicle: Option<EntryId>, says: Says) -> Step<Unwritten> {
    Unwritten::new(vehicle, says)
        .ok_or_else(|| "This cannot be begun. Nothing was saved.".to_owned())
}
