//! The beginning of an examination: asked for before anything is answered, when the latest is not of today.

use cartside_core::daybook::{EntryId, Says, Unwritten, Visit};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::clock;
use crate::looking::Examination;
use crate::workshop::{Workshop, workshop};

/// The examination of an earlier day that the person looking goes on with, as long as the app runs.
#[derive(Clone, Copy)]
pub struct GoingOn(pub RwSignal<Option<EntryId>>);

/// Whether this examination is the one to answer into: it is of today, or it was said to go on.
pub fn current(examination: &Examination, going_on: GoingOn) -> bool {
    let today = clock::now();
    today.starts_with(&examination.day) || going_on.0.get() == Some(examination.id)
}

/// A card that asks whether to begin an examination.
#[component]
pub fn BeginExamination(
    /// The vehicle.
    id: EntryId,
    /// The latest examination, if there was one.
    latest: Option<Examination>,
) -> impl IntoView {
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
        view! {
            <button type="button" class="key" data-key="go-on" on:click=move |_| going_on.0.set(Some(latest.id))>
                "Go on with that one"
            </button>
        }
    });
    view! {
        <section class="card" data-begin-examination>
            <h2>"Today, or that day?"</h2>
            <p>{said}</p>
            <BeginKey id main=true />
            {go_on}
        </section>
    }
}

/// The key that begins an examination.
#[component]
pub fn BeginKey(
    /// The vehicle.
    id: EntryId,
    /// Whether this is what its page is for.
    main: bool,
) -> impl IntoView {
    let shop = workshop();
    view! {
        <button type="button" class="key" class:key-main=main data-key="begin-examination" on:click=move |_| begin(shop, id)>
            "Begin a new examination"
        </button>
    }
}

fn begin(shop: Workshop, id: EntryId) {
    let visit = Visit {
        place: String::new(),
    };
    let Some(unwritten) = Unwritten::new(Some(id), Says::Visit(visit)) else {
        return;
    };
    spawn_local(async move {
        // What went wrong is shown by the workshop, and the page is as it was.
        drop(shop.write(&unwritten, "examination begun").await);
    });
}
