//! What the fourth tap writes: the vehicle, its wheels and the first examination, all or nothing.

use cartside_core::daybook::{EntryId, Says, Unwritten, Visit, WheelSaid};
use cartside_core::wheel::{Felloes, Position, Vehicle, VehicleKind, Wheel};
use cartside_core::words;
use leptos::prelude::*;

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

/// The beginning as a step, what that is in a few words, and the vehicle begun.
///
/// # Errors
/// The numbers make no wheel, or it cannot be written down. Nothing was stored.
pub fn beginning(shop: Workshop, begun: &Begun) -> Step<(Scribe, String, EntryId)> {
    let mut scribe = shop.scribe();
    let id = begun.write(&mut scribe)?;
    let style = shop
        .preferences
        .with_untracked(|preferences| preferences.style());
    let what = format!("{} begun", words::term::vehicle_kind(begun.kind, style));
    Ok((scribe, what, id))
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
