//! The keys of a question.

use cartside_core::quantity::format::FeelerStyle;
use leptos::prelude::{Get, Set};

use super::asking::Asking;
use super::given::{self, Key};
use crate::component::number_pad::{LENGTHS, number_pad};
use crate::component::plain::key;
use crate::markup::{Tag, tag};

/// The keys that answer for the place in hand.
pub fn pad(asking: Asking) -> Tag {
    let question = asking.question;
    let great = given::keys(question, asking.feeler());
    let lesser = given::lesser_keys(question);
    let measure = given::range(question).is_some().then(|| {
        key("Type it")
            .class("key-small")
            .set("data-key", "measure")
            .tap(move || asking.measuring.set(true))
    });
    tag("div")
        .class("pad")
        .each(great.into_iter().map(|key| answer_key(asking, key)))
        .put(measure)
        .each(
            lesser
                .into_iter()
                .map(|key| answer_key(asking, key).class("key-small")),
        )
}

fn answer_key(asking: Asking, answer: Key) -> Tag {
    let Key { code, label, given } = answer;
    tag("button")
        .set("type", "button")
        .class("key")
        .set("data-key", code)
        .on("click", move |tap| {
            asking.tap(code, given.clone(), tap.time_stamp());
        })
        .put(tag("span").class("capital").put(label))
}

/// The key that answers for every place still open, where a question has one.
pub fn rest_key(asking: Asking) -> Option<Tag> {
    let left = asking.rest().len();
    let rest = given::rest_key(asking.question, asking.feeler()).filter(|_| left > 0)?;
    let Key { code, label, given } = rest;
    let rest = key(format!("{label} ({left})")).set("data-key", code);
    Some(rest.on("click", move |tap| {
        asking.tap_rest(code, given.clone(), tap.time_stamp());
    }))
}

/// The number pad for what is measured.
pub fn measure_pad(asking: Asking) -> Tag {
    let label = match asking.feeler() {
        FeelerStyle::Millimetres => "How much, in mm unless another unit is typed",
        FeelerStyle::Thou => "How much, in thou unless another unit is typed",
    };
    number_pad(
        label,
        &LENGTHS,
        asking.typed,
        move || asking.refusal.get(),
        move || asking.accept(),
        move || asking.measuring.set(false),
    )
}
