//! Our own number keys, since no telephone's have fractions. What is typed stays as it was typed.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use crate::markup::{Piece, heard, live, sheet, tap};

/// Digits alone, for counts.
pub const DIGITS: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
/// Digits, fractions and units, for lengths.
pub const LENGTHS: [&str; 18] = [
    "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½", "¼", "⅛", "1/16", "mm", "in",
    "thou",
];
/// Digits, fractions, units and a minus, for sizes that may be of either sign.
pub const SIZES: [&str; 18] = [
    "1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½", "¼", "⅛", "1/16", "mm", "in", "−",
];
/// Digits and a half, for shares.
pub const SHARES: [&str; 12] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½"];

/// A number being typed: the label of the field, the keys there are, what is typed so far, why what was typed is not
/// taken (empty while nothing is wrong), what takes it and what goes back without it.
pub fn number_pad(
    label: &'static str,
    keys: &'static [&'static str],
    typed: RwSignal<String>,
    refused: impl Fn() -> String + 'static,
    accept: impl Fn() + 'static,
    leave: impl Fn() + 'static,
) -> Piece {
    let keys: Vec<Piece> = keys.iter().map(|key| digit(typed, key)).collect();
    sheet!(
        "<form class=stack on:submit={} on:keydown={}><p class=strong>{}</p>\
         <output class=typed data-typed aria-label=\"Typed so far\">{}</output>\
         <p class=refusal role=alert>{}</p><div class=\"pad digits\">{}</div>\
         <div class=\"row evenly\"><button type=button class=key data-key=leave on:click={}>Back</button>\
         <button type=button class=key data-key=erase on:click={}>Rub out one</button></div>\
         <button type=submit class=\"key key-main\" data-key=accept>Take it</button></form>",
        heard(move |submit| {
            submit.prevent_default();
            accept();
        }),
        heard(move |pressed| by_keyboard(typed, &pressed)),
        label,
        live(move || typed.get()),
        live(refused),
        keys,
        tap(leave),
        tap(move || typed.update(rub_out))
    )
}

fn digit(typed: RwSignal<String>, digit: &'static str) -> Piece {
    sheet!(
        "<button type=button class=key data-digit={} on:click={}>{}</button>",
        digit,
        tap(move || type_on(typed, digit)),
        digit
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
