//! The keys of a question.

use leptos::prelude::*;

use super::asking::Asking;
use super::given::{self, Key};
use crate::component::number_pad::{LENGTHS, NumberPad};

/// The keys that answer for the place in hand.
#[component]
pub fn Pads(asking: Asking) -> impl IntoView {
    let question = asking.question;
    let feeler = move || {
        asking
            .shop
            .preferences
            .with(|preferences| preferences.feeler())
    };
    let measurable = given::range(question).is_some();
    let measure = measurable.then(|| {
        view! {
            <button type="button" class="key key-small" data-key="measure" on:click=move |_| asking.measuring.set(true)>
                "Type it"
            </button>
        }
    });
    view! {
        <div class="pad">
            {move || given::keys(question, feeler()).into_iter().map(|key| answer_key(asking, key, "key")).collect_view()}
            {measure}
            {given::lesser_keys(question).into_iter().map(|key| answer_key(asking, key, "key key-small")).collect_view()}
        </div>
    }
}

fn answer_key(asking: Asking, key: Key, class: &'static str) -> impl IntoView {
    let Key { code, label, given } = key;
    view! {
        <button type="button" class=class data-key=code on:click=move |tap| asking.tap(code, given.clone(), tap.time_stamp())>
            <span class="capital">{label}</span>
        </button>
    }
}

/// The key that answers for every place still open, where a question has one.
#[component]
pub fn RestKey(asking: Asking) -> impl IntoView {
    move || {
        let feeler = asking
            .shop
            .preferences
            .with(|preferences| preferences.feeler());
        let left = asking.rest().len();
        let key = given::rest_key(asking.question, feeler).filter(|_| left > 0)?;
        let Key { code, label, given } = key;
        Some(view! {
            <button type="button" class="key" data-key=code on:click=move |tap| asking.tap_rest(code, given.clone(), tap.time_stamp())>
                {label}" ("{left}")"
            </button>
        })
    }
}

/// The number pad for what is measured.
#[component]
pub fn MeasurePad(asking: Asking) -> impl IntoView {
    let label = move || {
        let feeler = asking
            .shop
            .preferences
            .with_untracked(|preferences| preferences.feeler());
        match feeler {
            cartside_core::quantity::format::FeelerStyle::Millimetres => {
                "How much, in mm unless another unit is typed"
            }
            cartside_core::quantity::format::FeelerStyle::Thou => {
                "How much, in thou unless another unit is typed"
            }
        }
    };
    view! {
        <NumberPad
            label=label().to_owned()
            keys=&LENGTHS
            typed=asking.typed
            refusal=asking.refusal
            accept=Callback::new(move |()| asking.accept())
            leave=Callback::new(move |()| asking.measuring.set(false))
        />
    }
}
