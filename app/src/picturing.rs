//! Pictures of parts: taken into the book together with the entry that speaks of them, erased, brought back, shown.

use cartside_core::daybook::{Digest, EntryId, Picture, Says, Unwritten};
use cartside_core::wheel::Part;
use leptos::prelude::*;
use web_sys::File;

use crate::photo::{self, ObjectUrl};
use crate::storage::{NewPicture, StoredPicture};
use crate::workshop::{Notice, Opened, Step, Workshop, sentence};
use crate::{draft, wording};

/// A picture whose bytes were erased a moment ago: as long as the page holds it, the erasing can be undone.
#[derive(Clone)]
pub struct Erased {
    /// The SHA-256 of its bytes.
    pub digest: Digest,
    erasure: EntryId,
    picture: StoredPicture,
}

/// Takes a file from the camera into the book: the entry, the bytes and the draft that waited for them in one step.
///
/// # Errors
/// Nothing was saved; the sentence is shown too.
pub async fn take(shop: Workshop, vehicle: EntryId, part: Part, file: File) -> Step<()> {
    let prepared = prepare(shop, vehicle, part, &file).await;
    let (entry, picture) = prepared.inspect_err(|sentence| trouble(shop, sentence))?;
    let mut scribe = shop.scribe();
    scribe
        .write(&entry)
        .inspect_err(|sentence| trouble(shop, sentence))?;
    scribe.pictures.push(picture);
    scribe.drop_drafts.push(draft::of_picture(vehicle, part));
    let what = told(shop, &scribe.entries);
    shop.save(scribe, &what).await
}

async fn prepare(
    shop: Workshop,
    vehicle: EntryId,
    part: Part,
    file: &File,
) -> Step<(Unwritten, NewPicture)> {
    let taken = photo::take(file).await.map_err(|error| error.to_string())?;
    let bytes = taken.bytes.to_vec();
    let digest = Digest::of(&bytes);
    let opened = shop.in_hand().ok_or(NOT_IN_HAND)?;
    if opened.book.view().erased().contains(&digest) {
        return Err(WAS_ERASED.to_owned());
    }
    let says = Says::Picture(Picture {
        part,
        digest,
        width: taken.width,
        height: taken.height,
        bytes: taken.bytes.length(),
    });
    let entry = in_latest_visit(&opened, vehicle, says).ok_or(NOT_IN_HAND)?;
    let picture = NewPicture {
        digest: digest.hex(),
        bytes: taken.bytes,
        thumbnail: taken.thumbnail,
        width: taken.width,
        height: taken.height,
    };
    Ok((entry, picture))
}

const NOT_IN_HAND: &str =
    "The vehicle is not in hand any more. Nothing was saved; open it again and repeat this step.";

const WAS_ERASED: &str = "This very picture was erased from this book. Nothing was saved. To have it back, strike out \
    its erasure among everything written, then take it up again.";

/// An entry that says this of a part, within the latest examination if there is one.
pub fn in_latest_visit(opened: &Opened, vehicle: EntryId, says: Says) -> Option<Unwritten> {
    let entry = Unwritten::new(Some(vehicle), says)?;
    let view = opened.book.view();
    let visits = view.vehicle(vehicle).visits();
    Some(match visits.last() {
        Some(visit) => entry.in_visit(visit.id),
        None => entry,
    })
}

/// Erases a picture's bytes and thumbnail, and says so in the book. What is given back undoes it.
///
/// # Errors
/// Nothing was erased; the sentence is shown too.
pub async fn erase(shop: Workshop, vehicle: EntryId, digest: Digest) -> Step<Option<Erased>> {
    let picture = stored(shop, digest)
        .await
        .inspect_err(|sentence| trouble(shop, sentence))?;
    let entry = Unwritten::new(Some(vehicle), Says::Erasure(digest)).ok_or(NOT_IN_HAND)?;
    let mut scribe = shop.scribe();
    let erasure = scribe.write(&entry)?;
    scribe.erase_pictures.push(digest);
    shop.save(scribe, "a picture is erased").await?;
    Ok(picture.map(|picture| Erased {
        digest,
        erasure,
        picture,
    }))
}

/// Undoes an erasing: strikes the erasure out and keeps the bytes again, in one step.
///
/// # Errors
/// The picture stays erased.
pub fn bring_back(shop: Workshop, erased: &Erased) -> Step<()> {
    let opened = shop.in_hand().ok_or(NOT_IN_HAND)?;
    let erasure = opened.book.entry(erased.erasure).ok_or(NOT_IN_HAND)?;
    let mut scribe = shop.scribe();
    scribe.write(&Unwritten::striking(erasure, vec![erasure.id]))?;
    scribe.pictures.push(NewPicture::again(&erased.picture));
    shop.save_then(scribe, "the picture is brought back".to_owned(), |_| {});
    Ok(())
}

/// An address of a picture to show: of the small one, or of the full one where there is no small one or `full` is
/// asked for. `None` if the picture is not here.
pub async fn sight(shop: Workshop, digest: Digest, full: bool) -> Option<ObjectUrl> {
    let picture = stored(shop, digest).await.ok()??;
    let small = !full && picture.thumbnail.byte_length() > 0;
    ObjectUrl::jpeg(if small {
        &picture.thumbnail
    } else {
        &picture.bytes
    })
}

async fn stored(shop: Workshop, digest: Digest) -> Step<Option<StoredPicture>> {
    shop.store()?.picture(&digest.hex()).await.map_err(sentence)
}

fn trouble(shop: Workshop, sentence: &str) {
    shop.notice.set(Notice::Trouble(sentence.to_owned()));
}

/// What the last of these entries says of the vehicle in hand.
pub fn told(shop: Workshop, entries: &[cartside_core::daybook::Entry]) -> String {
    let (Some(opened), Some(entry)) = (shop.in_hand(), entries.last()) else {
        return String::new();
    };
    let style = shop.preferences.get_untracked().style();
    let view = opened.book.view();
    wording::says(&view.vehicle(opened.vehicle), entry, style)
}
