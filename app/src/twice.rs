//! The book kept twice: what one of the two places lacks is copied from the other. A browser can lose the first
//! place; then it is made whole again from the second before a page is shown.

use cartside_core::daybook::{Book, Digest, Digests, Entry};
use cartside_core::paper::line;
use leptos::prelude::{GetUntracked, Set};
use leptos::task::spawn_local;

use crate::scribe::new_line;
use crate::storage::{Batch, NewPicture, StorageError, Store, Which, open_second};
use crate::wording::counted;
use crate::workshop::{Notice, Workshop};

/// How many lines are copied in one transaction.
const CHUNK: u32 = 500;

/// Sees to it that a book is kept twice from now on. A first place that is empty is filled from the second before
/// anything is read from it; otherwise nobody waits for the second.
pub async fn keep(shop: Workshop, store: &Store) {
    if store.which() == Which::Own {
        let empty = store.held().await.is_ok_and(|held| held.lines == 0);
        let store = store.clone();
        if empty {
            tell(shop, second(&store).await);
        } else {
            spawn_local(async move {
                let found = second(&store).await;
                let current = shop.store().is_ok_and(|open| open.which() == Which::Own);
                if found > 0 && current {
                    shop.look_again().await;
                }
                tell(shop, found);
            });
        }
    }
}

fn tell(shop: Workshop, found: u64) {
    if found > 0 && shop.notice.get_untracked() == Notice::Quiet {
        let entries = counted(found as usize, "entry", "entries");
        shop.notice.set(Notice::Trouble(format!(
            "The browser had lost {entries} of the book. They are back from its second copy on this device, with \
             their pictures. Carry the book out now, so that there is a copy elsewhere too."
        )));
    }
}

/// Opens the second place, and copies to each what it lacks of the other; how many lines the first had lost. A place
/// that cannot be opened or filled is tried again at the next start.
async fn second(store: &Store) -> u64 {
    let Some(second) = open_second(store.which()).await else {
        return 0;
    };
    // From now on nothing is saved in one place only, so what is copied below is all that can be missing.
    store.keep_twice(second.clone());
    match (store.held().await, second.held().await) {
        (Ok(here), Ok(there)) if here != there => {
            let mended = mend(store, &second, here.lines == 0 && there.lines > 0).await;
            let now = store.held().await.map_or(here.lines, |held| held.lines);
            // Even where not all could be copied, what came back is worth telling.
            drop(mended);
            now.saturating_sub(here.lines).min(there.lines)
        }
        _ => 0,
    }
}

async fn mend(store: &Store, second: &Store, lost: bool) -> Result<(), StorageError> {
    copy_lines(second, store).await?;
    let book = copy_lines(store, second).await?;
    let erased = book.view().erased();
    let spoken: Digests = book.entries().filter_map(Entry::pictured).collect();
    // A picture of which no entry speaks was put down beside the book by a bringing in that did not come to its end.
    // Where the first place had lost all, an entry of a newer Cartside may speak of it, which is not read here.
    let counts = |hex: &str| {
        let digest = Digest::from_hex(hex);
        digest.is_some_and(|it| !erased.contains(&it) && (lost || spoken.contains(&it)))
    };
    copy_pictures(second, store, &counts).await?;
    copy_pictures(store, second, &counts).await?;
    let here = store.picture_digests().await?;
    let mut stray = second.picture_digests().await?;
    stray.retain(|hex| !here.contains(hex));
    let erase_pictures = stray;
    second
        .save(Batch {
            erase_pictures,
            ..Batch::default()
        })
        .await?;
    Ok(())
}

/// Copies the lines that are missing; the book of all that can be read.
async fn copy_lines(from: &Store, to: &Store) -> Result<Book, StorageError> {
    let mut entries = Vec::new();
    let mut next = Some(0);
    while let Some(at) = next {
        let chunk = from.all_lines(at, CHUNK).await?;
        let mut batch = Batch::default();
        for (_, text) in chunk.lines {
            if let Ok(entry) = line::read(&text) {
                batch.lines.push(new_line(&entry, text));
                entries.push(entry);
            }
        }
        to.save(batch).await?;
        next = chunk.next;
    }
    Ok(entries.into_iter().collect())
}

/// Copies the pictures that are missing and count, one at a time.
async fn copy_pictures(
    from: &Store,
    to: &Store,
    counts: &dyn Fn(&str) -> bool,
) -> Result<(), StorageError> {
    let there = to.picture_digests().await?;
    for hex in from.picture_digests().await? {
        if !there.contains(&hex)
            && counts(&hex)
            && let Some(stored) = from.picture(&hex).await?
        {
            let pictures = vec![NewPicture::again(&stored)];
            to.save(Batch {
                pictures,
                ..Batch::default()
            })
            .await?;
        }
    }
    Ok(())
}
