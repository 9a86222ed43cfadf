//! The browser's promise to keep the book: asked for once, after the first step saved in one's own book, when there
//! is something to be kept.

use leptos::task::spawn_local;

use crate::storage::{Store, Which, ask_to_keep};

/// The name under which the device remembers that it has asked.
const ASKED: &str = "asked-to-keep";

/// Asks the browser to keep the book, unless it was asked before. The answer is shown among the preferences; nobody
/// waits for it, since some browsers put the question to the user.
pub fn ask_once(store: Store) {
    if store.which() == Which::Own {
        spawn_local(async move { ask(&store).await });
    }
}

async fn ask(store: &Store) {
    // A book that cannot be read at this moment is asked for after the next step.
    if let Ok(None) = store.meta(ASKED).await
        && store.put_meta(ASKED, "yes").await.is_ok()
    {
        ask_to_keep().await;
    }
}
