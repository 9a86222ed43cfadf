//! The pictures of a file put beside the book, one batch after the other, each read from the file when it is its turn.

use cartside_core::daybook::Digest;
use js_sys::Uint8Array;

use super::{Incoming, Plan};
use crate::photo;
use crate::progress::Progress;
use crate::storage::NewPicture;
use crate::workshop::{Step, Workshop, sentence};

/// How many bytes of pictures are put down at once.
const BATCH: u32 = 8_000_000;

/// Puts all that the plan would add beside the book, and gives the names of the batches.
///
/// # Errors
/// One of them could not be read or kept, or it is to stop. Those put down so far are still beside the book.
pub(super) async fn stage(
    shop: Workshop,
    incoming: &Incoming,
    plan: &Plan,
    progress: Progress,
) -> Step<Vec<String>> {
    let store = shop.store()?;
    let mut staged = Vec::new();
    let (mut batch, mut bytes) = (Vec::new(), 0);
    let of = plan.pictures.len();
    let pictures = incoming.holds.pictures().iter();
    let wanted = pictures.filter(|picture| plan.pictures.contains(&picture.digest));
    for (done, picture) in wanted.enumerate() {
        progress.step(done, of)?;
        let jpeg = incoming.picture(picture).await?;
        bytes += jpeg.length();
        batch.push(with_thumbnail(picture.digest, jpeg).await);
        if bytes >= BATCH || done + 1 == of {
            let batch = std::mem::take(&mut batch);
            staged.push(store.stage(batch).await.map_err(sentence)?);
            bytes = 0;
        }
    }
    progress.step(of, of)?;
    Ok(staged)
}

/// A picture to keep; one that this browser cannot draw is kept without a small one.
async fn with_thumbnail(digest: Digest, bytes: Uint8Array) -> NewPicture {
    let drawn = photo::thumbnail(&bytes).await;
    let (width, height) = drawn
        .as_ref()
        .map_or((0, 0), |small| (small.width, small.height));
    NewPicture {
        digest: digest.hex(),
        bytes,
        thumbnail: drawn.map_or_else(|| Uint8Array::new_with_length(0), |small| small.bytes),
        width,
        height,
    }
}
