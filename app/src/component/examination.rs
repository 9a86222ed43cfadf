//! The beginning of an examination: asked for before anything is answered, when the latest is not of today.

use cartside_core::daybook::{EntryId, Says, Unwritten, Visit};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::clock;
use crate::component::plain::key;
use crate::looking::Examination;
use crate::markup::{Tag, tag};
use crate::workshop::{Workshop, workshop};

/// The examination of an earlier day that the person looking goes on with, as long as the app runs.
#[derive(Clone, Copy)]
pub struct GoingOn(pub RwSignal<Option<EntryId>>);

/// Whether this examination is the one to answer into: it is of today, or it was said to go on.
pub fn current(examination: &Examination, going_on: GoingOn) -> bool {
    let today = clock::now();
    today.starts_with(&examination.day) || going_on.0.get() == Some(examination.id)
}

/// A card that asks whether to begin an examination, or to go on with the latest, if there was one.
pub fn begin_examination(id: EntryId, latest: Option<Examination>) -> Tag {
    let going_on = expect_context::<GoingOn>();
    let said = match &latest {
        Some(latest) => format!(
            "The latest examination was begun on {}. An answer belongs to one day's looking.",
            latest.shown
        ),
        None => {
            "No examination of this vehicle has been begun. An answer belongs to one day's looking."
                .to_owned()
        }
    };
    let go_on = latest.map(|latest| {
        key("Go on with that one")
            .set("data-key", "go-on")
            .tap(move || going_on.0.set(Some(latest.id)))
    });
    tag("section")
        .class("card")
        .flag("data-begin-examination", true)
        .put(tag("h2").put("Today, or that day?"))
        .put(tag("p").put(said))
        .put(begin_key(id, true))
        .put(go_on)
}

/// The key that begins an examination; `main` where that is what its page is for.
pub fn begin_key(id: EntryId, main: bool) -> Tag {
    let shop = workshop();
    key("Begin a new examination")
        .class_if(main, "key-main")
        .set("data-key", "begin-examination")
        .tap(move || begin(shop, id))
}

fn begin(shop: Workshop, id: EntryId) {
    let Some(unwritten) = Unwritten::new(Some(id), Says::Visit(Visit::default())) else {
        return;
    };
    spawn_local(async move {
        // What went wrong is shown by the workshop, and the page is as it was.
        drop(shop.write(&unwritten, "examination begun").await);
    });
}
