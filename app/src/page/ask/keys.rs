//! The keys of a question.

use cartside_core::quantity::format::{FeelerStyle, LengthStyle};
use cartside_core::survey::Pad;
use leptos::prelude::Set;
use web_sys::Event;

use super::asking::Asking;
use super::given::{self, Key};
use super::sweep;
use crate::component::number_pad::{LENGTHS, SHARES, SIZES, number_pad_beside};
use crate::markup::{Piece, heard, nothing, sheet, tap};

/// The keys that answer for the place in hand; where there are none but the number pad, that. What answers for the rest
/// stands above the lesser keys: on a sound wheel it is the most useful of all.
pub fn pad(asking: Asking) -> Piece {
    let question = asking.question;
    let great = given::keys(question, asking.shop.style()).into_iter();
    let mut lesser = given::lesser_keys(question).into_iter();
    if great.len() == 0 {
        let lesser = lesser.next().map(|key| answer_key(asking, key, "key"));
        let digits = measure_pad(asking, lesser.unwrap_or_else(nothing));
        return sheet!("{}{}{}", same_again(asking), digits, sweep::key(asking));
    }
    let measure = given::is_typed(question).then(|| {
        sheet!(
            "<button type=button class=\"key key-small\" data-key=measure on:click={}>Type it</button>",
            tap(move || asking.measure())
        )
    });
    let great = great.map(|key| answer_key(asking, key, "key"));
    let lesser = lesser.map(|key| answer_key(asking, key, "key key-small"));
    let keys = great
        .chain(rest_key(asking))
        .chain(sweep::key(asking))
        .chain(same_again(asking))
        .chain(measure)
        .chain(lesser);
    // What a crack is takes more words than a narrow key has room for.
    let class = match question.pad() {
        Pad::Crack => "pad pad-wide",
        _ => "pad",
    };
    sheet!(
        "<div class={}>{}</div>",
        class,
        keys.collect::<Vec<Piece>>()
    )
}

/// The number pad in the place of the keys that answer, with the way back to those.
pub fn measuring(asking: Asking) -> Piece {
    let back = sheet!(
        "<button type=button class=key data-key=leave on:click={}>Back</button>",
        tap(move || asking.measuring.set(false))
    );
    measure_pad(asking, back)
}

fn answer_key(asking: Asking, key: Key, class: &'static str) -> Piece {
    let Key { code, label, given } = key;
    let tapped = move |tap: Event| asking.tap(code, given.clone(), tap.time_stamp());
    sheet!(
        "<button type=button class={} data-key={} on:click={}><span class=capital>{}</span></button>",
        class,
        code,
        heard(tapped),
        label
    )
}

/// The key that gives this place what the last one was given, where that was typed.
fn same_again(asking: Asking) -> Option<Piece> {
    let given = asking.last_given()?;
    let keys = given::keys(asking.question, asking.shop.style());
    if keys.iter().any(|key| key.given.answer == given.answer) {
        return None;
    }
    let label = format!("Same again: {}", given.written);
    let tapped = move |tap: Event| asking.tap("same-again", given.clone(), tap.time_stamp());
    Some(sheet!(
        "<button type=button class=\"key key-small rest\" data-key=same-again on:click={}>{}</button>",
        heard(tapped),
        label
    ))
}

/// The key that answers for every place still open, where a question has one.
fn rest_key(asking: Asking) -> Option<Piece> {
    let left = asking.rest().len();
    let rest = given::rest_key(asking.question, asking.shop.style()).filter(|_| left > 0)?;
    let Key { code, label, given } = rest;
    let tapped = move |tap: Event| asking.tap_rest(code, given.clone(), tap.time_stamp());
    Some(sheet!(
        "<button type=button class=\"key key-small rest\" data-key={} on:click={}>{} ({})</button>",
        code,
        heard(tapped),
        label,
        left.to_string()
    ))
}

/// The number pad for what is measured, with a key beside the one that takes it.
fn measure_pad(asking: Asking, beside: Piece) -> Piece {
    let style = asking.shop.style();
    let (label, keys): (_, &'static [&'static str]) = match asking.question.pad() {
        Pad::Share => ("per cent", &SHARES),
        Pad::Size(_) => match style.length {
            LengthStyle::Millimetres => ("taken as mm", &SIZES),
            LengthStyle::Inches(_) => ("taken as inches", &SIZES),
        },
        _ => match style.feeler {
            FeelerStyle::Millimetres => ("taken as mm", &LENGTHS),
            FeelerStyle::Thou => ("taken as thou", &LENGTHS),
        },
    };
    number_pad_beside(
        label,
        keys,
        asking.typed,
        asking.draft(),
        move || asking.refused(),
        move || asking.accept(),
        beside,
    )
}
