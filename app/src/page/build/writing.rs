//! What saving a wheel writes: one entry that replaces every head of its description.

use cartside_core::daybook::{EntryId, Says, Thread, Unwritten, WheelSaid};
use cartside_core::wheel::{Position, Wheel};
use cartside_core::words;

use crate::workshop::Workshop;

/// The wheel's description, in the place of what was written of it, and what that is in a few words; `None` if the
/// vehicle is not in hand any more.
pub fn description(
    shop: Workshop,
    id: EntryId,
    position: Position,
    wheel: Wheel,
) -> Option<(Unwritten, String)> {
    let opened = shop.in_hand()?;
    let replaced = {
        let view = opened.book.view();
        let thread = view
            .vehicle(id)
            .wheel_thread(position)
            .map(Thread::to_replace);
        thread.unwrap_or_default()
    };
    let corrects = if replaced.is_empty() {
        ""
    } else {
        "; corrects what was written"
    };
    let what = format!("{} described{corrects}", words::place::wheel_at(position));
    let said = Says::Wheel(WheelSaid { position, wheel });
    Some((Unwritten::new(Some(id), said)?.replacing(replaced), what))
}
