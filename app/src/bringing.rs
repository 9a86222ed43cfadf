//! A file from outside taken into the book: first what it would do, then, once that is accepted, all of it in one
//! transaction. The book becomes the union of the two, so twice adds nothing.

mod erasures;
mod incoming;
mod plan;
mod staging;
mod told;

use std::rc::Rc;

use cartside_core::daybook::Digests;
use leptos::prelude::Set;

use crate::carrying;
use crate::progress::Progress;
use crate::storage::{Saved, Store};
use crate::wording::counted;
use crate::workshop::{Notice, Step, Workshop, sentence};

pub use incoming::{Incoming, read};
pub use plan::Plan;
pub use told::{came_of, foreseen};

/// What bringing a file in came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Brought {
    /// How many entries were added.
    pub entries: usize,
    /// How many pictures were added.
    pub pictures: usize,
    /// How many pictures went, because the file says that they are erased.
    pub erased: usize,
    /// Whether this device has given itself a new name.
    pub renamed: bool,
}

/// What bringing this file in would do to the open book.
///
/// # Errors
/// The book cannot be reached.
pub async fn plan(shop: Workshop, incoming: &Incoming) -> Step<Plan> {
    let store = shop.store()?;
    // What another page left lying beside the book would be taken for the book's own.
    store.clear_beside().await.map_err(sentence)?;
    Plan::of(shop, &store, incoming, &Digests::default()).await
}

/// Brings the file in: its pictures are put beside the book one after the other, then all that it holds becomes the
/// book's in one transaction. What it would do is worked out afresh if the book has grown since it was planned.
///
/// # Errors
/// Nothing was brought in, or it is to stop; nothing is left of it.
pub async fn bring_in(
    shop: Workshop,
    incoming: &Incoming,
    planned: Rc<Plan>,
    progress: Progress,
) -> Step<Brought> {
    progress.begin("Bringing it in…");
    let planned = match planned.holds(&shop.store()?).await? {
        true => planned,
        false => Rc::new(plan(shop, incoming).await?),
    };
    let done = stage_and_take_in(shop, incoming, planned, progress).await;
    if done.is_err() {
        // What cannot be cleared away now is when the book is opened next.
        drop(shop.store()?.clear_beside().await);
    }
    done
}

async fn stage_and_take_in(
    shop: Workshop,
    incoming: &Incoming,
    planned: Rc<Plan>,
    progress: Progress,
) -> Step<Brought> {
    let staged = staging::stage(shop, incoming, &planned, progress).await?;
    if planned.own_name {
        // Before any line: from here on no line of this device can be taken for one of the other's.
        shop.rename_device().await?;
    }
    let (mut plan, beside) = (Rc::clone(&planned), planned.pictures.clone());
    let make = async |store: &Store| {
        if !plan.holds(store).await? {
            plan = Rc::new(Plan::of(shop, store, incoming, &beside).await?);
        }
        Ok(plan.batch(shop, incoming, staged))
    };
    let saved = shop.take_in(make, noted).await?;
    let known = carrying::remember_came_from(shop, incoming.from(), plan.already, saved);
    if let Err(sentence) = known.await {
        // The file is in; only the next one for that device holds more than it need.
        shop.notice.set(Notice::Trouble(sentence));
    }
    Ok(Brought {
        entries: saved.new_lines,
        pictures: plan.pictures.len(),
        erased: plan.erase.len(),
        renamed: planned.own_name,
    })
}

fn noted(saved: Saved) -> String {
    match saved.new_lines {
        0 => "nothing new was in the file".to_owned(),
        new => format!("{} brought in", counted(new, "entry", "entries")),
    }
}
