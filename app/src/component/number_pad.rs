//! Our own number keys, since no telephone's have fractions. What is typed stays as it was typed.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::plain::{key, refusal};
use crate::markup::{Tag, tag};

/// Digits alone, for counts.
pub const DIGITS: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
/// Digits, fractions and units, for lengths.
pub const LENGTHS: [&str; 18] = [
    "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½", "¼", "⅛", "1/16", "mm", "in",
    "thou",
];

/// A number being typed: the label of the field, the keys there are, what is typed so far, why what was typed is not
/// taken (empty while nothing is wrong), what takes it and what goes back without it.
pub fn number_pad(
    label: &'static str,
    keys: &'static [&'static str],
    typed: RwSignal<String>,
    refused: impl Fn() -> String + 'static,
    accept: impl Fn() + 'static,
    leave: impl Fn() + 'static,
) -> Tag {
    let digit = |digit: &'static str| {
        key(digit)
            .set("data-digit", digit)
            .tap(move || type_on(typed, digit))
    };
    let output = tag("output")
        .class("typed")
        .flag("data-typed", true)
        .set("aria-label", "Typed so far")
        .live(move || typed.get());
    let rub = move || typed.update(rub_out);
    tag("form")
        .class("stack")
        .on("submit", move |submit| {
            submit.prevent_default();
            accept();
        })
        .on("keydown", move |pressed| by_keyboard(typed, &pressed))
        .put(tag("p").class("strong").put(label))
        .put(output)
        .live(move || refusal(refused()))
        .put(
            tag("div")
                .class("pad digits")
                .each(keys.iter().copied().map(digit)),
        )
        .put(
            tag("div")
                .class("row evenly")
                .put(key("Back").set("data-key", "leave").tap(leave))
                .put(key("Rub out one").set("data-key", "erase").tap(rub)),
        )
        .put(
            key("Take it")
                .class("key-main")
                .set("type", "submit")
                .set("data-key", "accept"),
        )
}

/// A keyboard's figures, signs and letters are typed too; a blank and Enter tap the key in focus instead.
fn by_keyboard(typed: RwSignal<String>, pressed: &Event) {
    let Some(pressed) = pressed.dyn_ref::<KeyboardEvent>() else {
        return;
    };
    if pressed.ctrl_key() || pressed.meta_key() || pressed.alt_key() {
        return;
    }
    let key = pressed.key();
    let mut signs = key.chars();
    match (signs.next(), signs.next()) {
        (Some(sign), None) if !sign.is_whitespace() => typed.update(|text| text.push(sign)),
        _ if key == "Backspace" => typed.update(rub_out),
        _ => {}
    }
}

/// Adds what stands on a key; a unit, and a fraction of several signs after a figure, is set off by a blank.
fn type_on(typed: RwSignal<String>, key: &str) {
    typed.update(|text| {
        let after_figure = text.ends_with(|last: char| last.is_ascii_digit());
        let set_off = key.len() > 1 && key.is_ascii() && !text.is_empty() && !text.ends_with(' ');
        if set_off && (after_figure || !key.contains('/')) {
            text.push(' ');
        }
        text.push_str(key);
    });
}

fn rub_out(text: &mut String) {
    text.pop();
}
