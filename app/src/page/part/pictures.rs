//! The pictures of one part, and the taking of one. That a picture is waited for is kept as a draft, since the
//! browser may end the page while the camera is open.

use cartside_core::daybook::{Digest, EntryId, Kind, Says};
use cartside_core::wheel::Part;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::{File, HtmlInputElement};

use crate::correction_key::CorrectionKey;
use crate::fate::Fate;
use crate::photo::ObjectUrl;
use crate::picturing::{self, Erased};
use crate::workshop::{Workshop, workshop};
use crate::{draft, wording};

/// One picture.
#[derive(Clone, Debug, PartialEq)]
struct Picture {
    entry: EntryId,
    digest: Digest,
    hand: String,
    fate: Fate,
    erased: bool,
}

/// Pictures erased since the page was opened; each can still be brought back.
type ErasedHere = RwSignal<Vec<Erased>, LocalStorage>;

/// The pictures of one part.
#[component]
pub(super) fn Pictures(
    /// The vehicle.
    id: EntryId,
    /// The part.
    of: Part,
) -> impl IntoView {
    let shop = workshop();
    let pictures = Memo::new(move |_| pictures(shop, of));
    let erased: ErasedHere = RwSignal::new_local(Vec::new());
    view! {
        <section class="card">
            <h2>"Pictures"</h2>
            <Taking id of />
            <div class="pictures">
                {move || {
                    pictures
                        .get()
                        .into_iter()
                        .map(|picture| view! { <OnePicture id picture erased /> })
                        .collect_view()
                }}
            </div>
        </section>
    }
}

/// The key that opens the camera.
#[component]
fn Taking(id: EntryId, of: Part) -> impl IntoView {
    let shop = workshop();
    let lost = RwSignal::new(false);
    let busy = RwSignal::new(false);
    let name = move || draft::of_picture(id, of);
    spawn_local(async move {
        let waiting = draft::find(shop, &draft::of_picture(id, of)).await;
        lost.try_set(waiting.is_some());
    });
    let opening = move || {
        lost.set(false);
        draft::keep(shop, name(), "waiting for a picture".to_owned());
    };
    let chosen = move |input: HtmlInputElement| match file_of(&input) {
        Some(file) => spawn_local(take(shop, id, of, file, busy)),
        None => draft::drop_it(shop, name()),
    };
    view! {
        <Show when=move || lost.get()>
            <p class="warning" role="alert" data-lost="picture">
                "A picture was being taken here when the page was closed, and it was not received. Nothing else was lost: take it again."
            </p>
        </Show>
        <label class="key key-main" aria-busy=move || busy.get().to_string()>
            {move || if busy.get() { "Taking it up…" } else { "Take a picture" }}
            <input
                type="file"
                accept="image/*"
                capture="environment"
                on:click=move |_| opening()
                on:cancel=move |_: web_sys::Event| draft::drop_it(shop, name())
                on:change:target=move |event| chosen(event.target())
            />
        </label>
    }
}

/// The file that was chosen; the field is emptied, so that the same file can be chosen again.
fn file_of(input: &HtmlInputElement) -> Option<File> {
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

async fn take(shop: Workshop, id: EntryId, of: Part, file: File, busy: RwSignal<bool>) {
    busy.try_set(true);
    if picturing::take(shop, id, of, file).await.is_err() {
        // The file came, so nothing is waited for any more; why it was not taken is shown at the foot.
        draft::drop_it(shop, draft::of_picture(id, of));
    }
    busy.try_set(false);
}

#[component]
fn OnePicture(id: EntryId, picture: Picture, erased: ErasedHere) -> impl IntoView {
    let shop = workshop();
    let Picture {
        entry,
        digest,
        hand,
        fate,
        ..
    } = picture;
    let erase = move |_| {
        spawn_local(async move {
            if let Ok(Some(gone)) = picturing::erase(shop, id, digest).await {
                erased.try_update(|list| list.push(gone));
            }
        });
    };
    view! {
        <figure data-fate=fate.code()>
            {if picture.erased {
                view! { <Gone digest erased /> }.into_any()
            } else {
                view! { <Sight digest words=hand.clone() /> }.into_any()
            }}
            <figcaption>
                <span class:struck=fate.gone()>"Picture"</span>
                " "
                {fate.words()}
                <br />
                <span class="dim">{hand}</span>
            </figcaption>
            <div class="row">
                {fate.correction().map(|correction| view! { <CorrectionKey entry correction /> })}
                {(!picture.erased)
                    .then(|| view! { <button type="button" class="key key-plain" on:click=erase>"Erase this picture"</button> })}
            </div>
        </figure>
    }
}

/// What stands in the place of an erased picture.
#[component]
fn Gone(digest: Digest, erased: ErasedHere) -> impl IntoView {
    let shop = workshop();
    let held = move || {
        erased.with(|list| {
            list.iter()
                .rev()
                .find(|gone| gone.digest == digest)
                .cloned()
        })
    };
    let undo = move |_| {
        if let Some(gone) = held() {
            spawn_local(async move { drop(picturing::bring_back(shop, gone).await) });
        }
    };
    view! {
        <p class="dim" data-erased=digest.hex()>"This picture was erased. Its entry stays in the book."</p>
        <Show when=move || held().is_some()>
            <button type="button" class="key" on:click=undo>"Undo the erasing"</button>
        </Show>
    }
}

/// What there is to see of a picture.
#[derive(Clone)]
enum Seen {
    Wait,
    NotHere,
    Here(std::rc::Rc<ObjectUrl>),
}

/// A picture, small; large when tapped.
#[component]
fn Sight(digest: Digest, words: String) -> impl IntoView {
    let shop = workshop();
    let large = RwSignal::new(false);
    let seen = RwSignal::new_local(Seen::Wait);
    Effect::new(move |_| {
        let full = large.get();
        spawn_local(async move {
            let found = picturing::sight(shop, digest, full).await;
            seen.try_set(found.map_or(Seen::NotHere, |url| Seen::Here(url.into())));
        });
    });
    let words = StoredValue::new(format!("Picture, {words}"));
    move || {
        match seen.get() {
        Seen::Wait => view! { <p class="dim">"Fetching the picture…"</p> }.into_any(),
        Seen::NotHere => view! {
            <p class="dim" data-not-here=digest.hex()>"The picture is not on this device. Bring in a file that holds it."</p>
        }
        .into_any(),
        Seen::Here(url) => view! {
            <button
                type="button"
                class="key key-plain"
                aria-label=move || if large.get() { "Show it small" } else { "Show it large" }
                on:click=move |_| large.update(|large| *large = !*large)
            >
                <img data-picture=digest.hex() src=url.as_str().to_owned() alt=words.get_value() />
            </button>
        }
        .into_any(),
    }
    }
}

fn pictures(shop: Workshop, of: Part) -> Vec<Picture> {
    let Some(opened) = shop.opened.get() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let erased = view.erased();
    let mut pictures = Vec::new();
    for thread in view.vehicle(opened.vehicle).threads(&Kind::Picture) {
        for entry in thread.entries() {
            let fate = Fate::of(thread, entry);
            if let Says::Picture(said) = &entry.says
                && said.part == of
                && fate != Fate::Replaced
            {
                pictures.push(Picture {
                    entry: entry.id,
                    digest: said.digest,
                    hand: wording::hand(entry),
                    fate,
                    erased: erased.contains(&said.digest),
                });
            }
        }
    }
    pictures.reverse();
    pictures
}
