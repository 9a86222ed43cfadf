//! The heat of one tyre for one wheel: how hot to drop it on, and how long there is.

use super::drop::{DropOn, Over};
use super::tyre::HotTyre;
use super::window::{Carry, Window, window};
use crate::tyring::refusal::Refusal;

/// A tyre that is to be heated, with all that is reckoned of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// The tyre.
    pub tyre: HotTyre,
    /// What it must go over.
    pub over: Over,
    /// How hot to drop it on.
    pub drop: DropOn,
    /// The working time of a tyre that leaves the fire as hot as is of use.
    pub window: Window,
}

impl Heat {
    /// The heat of this tyre over that wheel, carried so.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where nothing draws, or no heat is enough.
    pub fn of(tyre: HotTyre, over: Over, carry: &Carry) -> Result<Heat, Refusal> {
        let drop = over.drop_on(&tyre)?;
        Ok(Heat {
            tyre,
            over,
            drop,
            window: window(&tyre, &over, carry, drop.most_useful)?,
        })
    }
}
