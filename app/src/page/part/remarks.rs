//! The remarks on one part, and the writing of one. What is being typed is kept as a draft.

use cartside_core::daybook::{EntryId, Kind, Says};
use cartside_core::wheel::Part;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::correction_key::CorrectionKey;
use crate::fate::Fate;
use crate::picturing::{in_latest_visit, told};
use crate::workshop::{Notice, Step, Workshop, workshop};
use crate::{draft, wording};

/// One remark.
#[derive(Clone, Debug, PartialEq)]
struct Remark {
    entry: EntryId,
    text: String,
    hand: String,
    fate: Fate,
}

/// The remarks on one part.
#[component]
pub(super) fn Remarks(
    /// The vehicle.
    id: EntryId,
    /// The part.
    of: Part,
) -> impl IntoView {
    let shop = workshop();
    let remarks = Memo::new(move |_| remarks(shop, of));
    view! {
        <section class="card">
            <h2>"Remarks"</h2>
            <Writing id of />
            {move || {
                let remarks = remarks.get();
                (!remarks.is_empty()).then(|| view! { <Written remarks /> })
            }}
        </section>
    }
}

#[component]
fn Written(remarks: Vec<Remark>) -> impl IntoView {
    view! {
        <ul class="list">
            {remarks.into_iter().map(|remark| view! { <OneRemark remark /> }).collect_view()}
        </ul>
    }
}

#[component]
fn OneRemark(remark: Remark) -> impl IntoView {
    let fate = remark.fate;
    view! {
        <li class="item" data-remark=remark.entry.hex() data-fate=fate.code()>
            <p>
                <span class:struck=fate.gone()>{remark.text}</span>
                " "
                <span>{fate.words()}</span>
                <br />
                <span class="dim">{remark.hand}</span>
            </p>
            {fate
                .correction()
                .map(|correction| view! { <CorrectionKey entry=remark.entry correction /> })}
        </li>
    }
}

/// The field for a new remark.
#[component]
fn Writing(id: EntryId, of: Part) -> impl IntoView {
    let shop = workshop();
    let text = RwSignal::new(String::new());
    let restored = RwSignal::new(false);
    let name = StoredValue::new(draft::of_remark(id, of));
    spawn_local(async move {
        let found = draft::find(shop, &draft::of_remark(id, of)).await;
        if let Some(found) = found.filter(|found| !found.is_empty()) {
            // The page may be gone, or something may have been typed meanwhile: then the draft stays as it is.
            if text.try_with_untracked(String::is_empty) == Some(true) {
                text.try_set(found);
                restored.try_set(true);
            }
        }
    });
    let typed = move |typed: String| {
        restored.set(false);
        text.set(typed.clone());
        draft::keep(shop, name.get_value(), typed);
    };
    view! {
        <Show when=move || restored.get()>
            <p class="dim" data-restored="remark">"This was typed before and not yet saved."</p>
        </Show>
        <label class="field">
            "Remark"
            <textarea prop:value=text on:input:target=move |event| typed(event.target().value())></textarea>
        </label>
        <button
            type="button"
            class="key key-main"
            on:click=move |_| spawn_local(save(shop, id, of, text))
        >
            "Save the remark"
        </button>
    }
}

/// Saves what is typed; the field is emptied only of what was saved.
async fn save(shop: Workshop, id: EntryId, of: Part, text: RwSignal<String>) {
    let Some(typed) = text.try_get_untracked() else {
        return;
    };
    let saved = match typed.trim() {
        "" => Err(
            "There is nothing to save yet: write the remark first. Nothing was changed.".to_owned(),
        ),
        said => write(shop, id, of, said.to_owned()).await,
    };
    match saved {
        Ok(()) if text.try_get_untracked() == Some(typed) => drop(text.try_set(String::new())),
        Ok(()) => {}
        Err(sentence) => shop.notice.set(Notice::Trouble(sentence)),
    }
}

async fn write(shop: Workshop, id: EntryId, of: Part, said: String) -> Step<()> {
    let opened = shop.in_hand();
    let entry = opened.and_then(|opened| in_latest_visit(&opened, id, Says::Remark(of, said)));
    let entry = entry
        .ok_or("The vehicle is not in hand any more. Nothing was saved; what was typed is kept.")?;
    let mut scribe = shop.scribe();
    scribe.write(&entry)?;
    scribe.drop_drafts.push(draft::of_remark(id, of));
    let what = told(shop, &scribe.entries);
    shop.save(scribe, &what).await
}

fn remarks(shop: Workshop, of: Part) -> Vec<Remark> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let mut remarks: Vec<Remark> = Vec::new();
    for thread in view.vehicle(opened.vehicle).threads(&Kind::Remark) {
        for entry in thread.entries() {
            let fate = Fate::of(thread, entry);
            if let Says::Remark(part, text) = &entry.says
                && *part == of
                && fate != Fate::Replaced
            {
                remarks.push(Remark {
                    entry: entry.id,
                    text: text.clone(),
                    hand: wording::hand(entry),
                    fate,
                });
            }
        }
    }
    remarks.reverse();
    remarks
}
