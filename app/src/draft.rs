//! What is begun and not yet saved: typing, and a picture being waited for. It outlives the page.

use cartside_core::daybook::EntryId;
use cartside_core::survey::Slot;
use cartside_core::wheel::Part;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::storage::StorageError;
use crate::workshop::{Notice, Workshop, sentence};

/// The name of the draft that waits for a picture of a part.
pub fn of_picture(vehicle: EntryId, part: Part) -> String {
    format!("picture/{vehicle}/{}", part.code())
}

/// The name of the draft of a number that is typed as an answer.
pub fn of_number(vehicle: EntryId, slot: Slot) -> String {
    format!("number/{vehicle}/{}", slot.code())
}

/// Keeps a draft; an empty text drops it.
pub fn keep(shop: Workshop, name: String, text: String) {
    spawn_local(async move {
        let Ok(store) = shop.store() else { return };
        let done = if text.is_empty() {
            store.delete_draft(&name).await
        } else {
            store.put_draft(&name, &text).await
        };
        tell(shop, done);
    });
}

/// Drops a draft.
pub fn drop_it(shop: Workshop, name: String) {
    keep(shop, name, String::new());
}

/// Waits until every draft that was being kept is stored, or could not be.
pub async fn all_kept(shop: Workshop) {
    if let Ok(store) = shop.store() {
        // Reading waits for whatever was begun to be written before; what is read does not matter.
        drop(store.draft("").await);
    }
}

/// Looks for a draft and goes on with its text, if there is one. A book that cannot be read has none to show.
pub fn find(shop: Workshop, name: String, then: impl FnOnce(String) + 'static) {
    look(shop, name, Box::new(then));
}

fn look(shop: Workshop, name: String, then: Box<dyn FnOnce(String)>) {
    spawn_local(async move {
        if let Ok(store) = shop.store()
            && let Ok(Some(text)) = store.draft(&name).await
        {
            then(text);
        }
    });
}

/// Every draft whose name begins so, with its text. A book that cannot be read has none to show.
pub async fn all(shop: Workshop, beginning: &str) -> Vec<(String, String)> {
    match shop.store() {
        Ok(store) => store.drafts(beginning).await.unwrap_or_default(),
        Err(_) => Vec::new(),
    }
}

fn tell(shop: Workshop, done: Result<(), StorageError>) {
    if let Err(error) = done {
        shop.notice.set(Notice::Trouble(sentence(error)));
    }
}
