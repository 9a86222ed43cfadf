//! Which spoke of a wheel is at the top now, so that drawings stand as the wheel does. Wheels turn: it is kept only
//! while the app runs, and is no fact about the wheel.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Place, Position, Wheel};
use leptos::prelude::*;

/// The spokes that were said to be at the top. Copies are the same.
#[derive(Clone, Copy)]
pub struct Turned(RwSignal<Vec<(EntryId, Position, u16)>>);

impl Turned {
    /// Every wheel with its mark at the top.
    pub fn new() -> Turned {
        Turned(RwSignal::new(Vec::new()))
    }

    /// The spoke at the top of this wheel, if it was said.
    pub fn spoke(self, (id, position): (EntryId, Position)) -> Option<u16> {
        self.0.with(|turned| {
            let here = |it: &&(EntryId, Position, u16)| (it.0, it.1) == (id, position);
            turned.iter().find(here).map(|it| it.2)
        })
    }

    /// How far round the wheel stands, in turns.
    pub fn top(self, at: (EntryId, Position), wheel: &Wheel) -> f64 {
        let spoke = self.spoke(at).map(Place::Spoke);
        spoke
            .and_then(|spoke| wheel.turn(spoke))
            .unwrap_or_default()
    }

    /// Says that this spoke is at the top now; none: the mark is.
    pub fn set(self, (id, position): (EntryId, Position), spoke: Option<u16>) {
        self.0.update(|turned| {
            turned.retain(|it| (it.0, it.1) != (id, position));
            turned.extend(spoke.map(|spoke| (id, position, spoke)));
        });
    }
}
