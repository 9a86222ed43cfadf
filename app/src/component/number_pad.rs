//! Our own number keys, since no telephone's have fractions. What is typed stays as it was typed.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use crate::draft;
use crate::markup::{Hole, Piece, heard, live, sheet, tap};
use crate::workshop::{Workshop, workshop};

/// Digits alone, for counts.
pub const DIGITS: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];
/// Digits, what makes any fraction, and units, for lengths.
pub const LENGTHS: [&str; 20] = [
    "1", "2", "3", "½", "4", "5", "6", "¼", "7", "8", "9", "¾", ".", "0", "/", BLANK, "mm", "in",
    "thou", "⅛",
];
/// Digits, what makes any fraction, units and a minus, for sizes that may be of either sign.
pub const SIZES: [&str; 20] = [
    "1", "2", "3", "½", "4", "5", "6", "¼", "7", "8", "9", "¾", ".", "0", "/", BLANK, "mm", "in",
    "−", "⅛",
];
/// Digits and a half, for shares.
pub const SHARES: [&str; 12] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "½"];

/// The key that sets a fraction off from the whole number before it.
const BLANK: &str = "space";

/// What is typed on a pad. Copies are the same; its own signals live as long as the pad stands.
#[derive(Clone, Copy)]
struct Typing {
    shop: Workshop,
    typed: RwSignal<String>,
    /// The name of its draft.
    draft: RwSignal<String>,
    /// Whether it came back from its draft.
    restored: RwSignal<bool>,
}

impl Typing {
    /// Goes on with what was typed before and not taken.
    fn begin(typed: RwSignal<String>, draft: String) -> Typing {
        let typing = Typing {
            shop: workshop(),
            typed,
            draft: RwSignal::new(draft.clone()),
            restored: RwSignal::new(false),
        };
        draft::find(typing.shop, draft, move |text| {
            let empty = typed.try_with_untracked(String::is_empty) == Some(true);
            // Where the pad is gone, what is typed on another is let be.
            if empty && typing.restored.try_set(true).is_none() {
                typed.set(text);
            }
        });
        typing
    }

    fn change(self, how: &dyn Fn(&mut String)) {
        let mut text = self.typed.get_untracked();
        how(&mut text);
        draft::keep(self.shop, self.draft.get_untracked(), text.clone());
        self.restored.set(false);
        self.typed.set(text);
    }
}

/// A number being typed: the label of the field, the keys there are, what is typed so far, the name of the draft that
/// keeps it, why what was typed is not taken (empty while nothing is wrong), what takes it and what goes back without it.
/// Whoever takes it drops the draft.
pub fn number_pad(
    label: &'static str,
    keys: &'static [&'static str],
    typed: RwSignal<String>,
    draft: String,
    refused: impl Fn() -> String + 'static,
    accept: impl Fn() + 'static,
    leave: impl Fn() + 'static,
) -> Piece {
    let back = sheet!(
        "<button type=button class=key data-key=leave on:click={}>Back</button>",
        tap(leave)
    );
    number_pad_beside(label, keys, typed, draft, refused, accept, back)
}

/// As [`number_pad`], with another key in the place of the one that goes back.
pub fn number_pad_beside(
    label: &'static str,
    keys: &'static [&'static str],
    typed: RwSignal<String>,
    draft: String,
    refused: impl Fn() -> String + 'static,
    accept: impl Fn() + 'static,
    beside: Piece,
) -> Piece {
    let class = if keys.len() > SHARES.len() {
        "pad digits fours"
    } else {
        "pad digits"
    };
    let typing = Typing::begin(typed, draft);
    let keys: Vec<Piece> = keys.iter().map(|key| digit(typing, key)).collect();
    sheet!(
        "<form class=number on:submit={} on:keydown={}>\
         <div class=typing>{}\
         <output class=typed data-typed aria-label=\"Typed so far\">{}</output></div>\
         <p class=refusal role=alert>{}</p><div class={}>{}</div><div class=taking>{}\
         <button type=button class=key data-key=erase on:click={}>Rub out one</button>\
         <button type=submit class=\"key key-main\" data-key=accept>Take it</button></div></form>",
        heard(move |submit| {
            submit.prevent_default();
            accept();
        }),
        heard(move |pressed| by_keyboard(typing, &pressed)),
        live(move || sheet!(
            "<p class=strong data-restored={}>{}</p>",
            Hole::Flag(typing.restored.get()),
            label
        )),
        live(move || typed.get()),
        live(refused),
        class,
        keys,
        beside,
        tap(move || typing.change(&rub_out))
    )
}

fn digit(typing: Typing, digit: &'static str) -> Piece {
    sheet!(
        "<button type=button class=key data-digit={} on:click={}>{}</button>",
        digit,
        tap(move || typing.change(&|text| type_on(text, digit))),
        digit
    )
}

/// A keyboard's figures, signs and letters are typed too; a blank and Enter tap the key in focus instead.
fn by_keyboard(typing: Typing, pressed: &Event) {
    let Some(pressed) = pressed.dyn_ref::<KeyboardEvent>() else {
        return;
    };
    if pressed.ctrl_key() || pressed.meta_key() || pressed.alt_key() {
        return;
    }
    let key = pressed.key();
    let mut signs = key.chars();
    match (signs.next(), signs.next()) {
        (Some(sign), None) if !sign.is_whitespace() => typing.change(&|text| text.push(sign)),
        _ if key == "Backspace" => typing.change(&rub_out),
        _ => {}
    }
}

/// Adds what stands on a key; a unit is set off by a blank, and no blank follows another.
fn type_on(text: &mut String, key: &str) {
    let unit = key.len() > 1 && key.is_ascii();
    if unit && !text.is_empty() && !text.ends_with(' ') {
        text.push(' ');
    }
    if key != BLANK {
        text.push_str(key);
    }
}

fn rub_out(text: &mut String) {
    text.pop();
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{BLANK, LENGTHS, SIZES, type_on};
    use cartside_core::quantity::LengthRange;
    use cartside_core::quantity::length::to_paper_mm;
    use cartside_core::quantity::spelling::{self, BareUnit};

    fn typed(keys: &[&str]) -> String {
        let mut text = String::new();
        for key in keys {
            type_on(&mut text, key);
        }
        text
    }

    #[test]
    fn any_fraction_can_be_typed_by_keys_alone() {
        // An inch is 25.4 mm by definition.
        let typing: [(&[&str], &str, f64); 4] = [
            (
                &["1", BLANK, "1", "5", "/", "1", "6", "in"],
                "1 15/16 in",
                31.0 / 16.0,
            ),
            (&["3", "/", "8", "in"], "3/8 in", 3.0 / 8.0),
            (
                &["5", "0", BLANK, "3", "/", "1", "6", "in"],
                "50 3/16 in",
                50.1875,
            ),
            (
                &["3", "1", "/", "3", "2", BLANK, "in"],
                "31/32 in",
                31.0 / 32.0,
            ),
        ];
        for (keys, text, inches) in typing {
            for pad in [LENGTHS, SIZES] {
                assert!(keys.iter().all(|key| pad.contains(key)), "{text}");
            }
            assert_eq!(typed(keys), text);
            let read = spelling::parse(text, LengthRange::General, BareUnit::Millimetre).unwrap();
            assert!((to_paper_mm(read) - inches * 25.4).abs() < 1e-9, "{text}");
        }
    }

    #[test]
    fn no_blank_stands_first_or_follows_another() {
        assert_eq!(typed(&[BLANK, "1", BLANK, BLANK, "½"]), "1 ½");
    }
}
