//! A file from outside taken into the book: first what it would do, then, once that is accepted, all of it in one
//! transaction. The book becomes the union of the two, so twice adds nothing.

mod erasures;
mod incoming;
mod plan;
mod told;

use cartside_core::daybook::Digest;

use crate::photo::{self, Thumbnail};
use crate::storage::{NewPicture, Saved};
use crate::wording::counted;
use crate::workshop::{Step, Workshop};

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
    Plan::of(shop, &shop.store()?, incoming).await
}

/// Brings the file in. What it would do is worked out afresh, since the book may have grown meanwhile.
///
/// # Errors
/// Nothing was brought in; the sentence is shown too.
pub async fn bring_in(shop: Workshop, incoming: &Incoming) -> Step<Brought> {
    let expected = plan(shop, incoming).await?;
    if expected.own_name {
        // Before anything else: from here on no line of this device can be taken for one of the other's.
        shop.rename_device().await?;
    }
    let small = thumbnails(incoming, &expected).await;
    let mut brought = None;
    let saved = shop
        .take_in(
            async |store| {
                let plan = Plan::of(shop, store, incoming).await?;
                brought = Some((plan.pictures.len(), plan.erase.len()));
                Ok(plan.batch(shop, incoming, |digest, bytes| {
                    with_thumbnail(&small, digest, bytes)
                }))
            },
            noted,
        )
        .await?;
    let (pictures, erased) = brought.unwrap_or_default();
    Ok(Brought {
        entries: saved.new_lines,
        pictures,
        erased,
        renamed: expected.own_name,
    })
}

fn noted(saved: Saved) -> String {
    match saved.new_lines {
        0 => "nothing new was in the file".to_owned(),
        new => format!("{} brought in", counted(new, "entry", "entries")),
    }
}

/// Made before the transaction, which would not wait for them.
async fn thumbnails(incoming: &Incoming, plan: &Plan) -> Vec<(Digest, Thumbnail)> {
    let mut small = Vec::new();
    for (digest, bytes) in &incoming.pictures {
        if plan.pictures.contains(digest)
            && let Some(thumbnail) = photo::thumbnail(bytes).await
        {
            small.push((*digest, thumbnail));
        }
    }
    small
}

/// A picture to keep; one that this browser cannot draw is kept without a small one. The small ones stand by digest.
fn with_thumbnail(
    small: &[(Digest, Thumbnail)],
    digest: Digest,
    bytes: js_sys::Uint8Array,
) -> NewPicture {
    let drawn = small.binary_search_by(|(of, _)| of.cmp(&digest));
    let drawn = drawn.ok().and_then(|at| small.get(at));
    let drawn = drawn.map(|(_, small)| small);
    NewPicture {
        digest: digest.hex(),
        bytes,
        thumbnail: drawn.map_or_else(
            || js_sys::Uint8Array::new_with_length(0),
            |small| small.bytes.clone(),
        ),
        width: drawn.map_or(0, |small| small.width),
        height: drawn.map_or(0, |small| small.height),
    }
}
