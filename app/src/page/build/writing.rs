//! What saving a wheel writes: one entry that replaces every head of its description.

use cartside_core::daybook::{EntryId, Says, Thread, Unwritten, WheelSaid};
use cartside_core::wheel::{Position, Wheel};
use cartside_core::words;

use crate::workshop::{Step, Workshop};

/// Saves the wheel's description, in the place of what was written of it.
///
/// # Errors
/// Nothing was stored; the sentence is shown too.
pub async fn write(shop: Workshop, id: EntryId, position: Position, wheel: Wheel) -> Step<()> {
    let opened = shop
        .in_hand()
        .ok_or("The vehicle is not in hand. Nothing was saved; open it and try again.")?;
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
    let unwritten = Unwritten::new(Some(id), said).ok_or("This is no wheel. Nothing was saved.")?;
    shop.write(&unwritten.replacing(replaced), &what).await?;
    Ok(())
}
