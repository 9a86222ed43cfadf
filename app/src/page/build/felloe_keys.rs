//! What each felloe carries, clockwise from the mark, with keys for one spoke more or fewer.

use leptos::prelude::*;

use super::{Setting, change};
use crate::markup::{Piece, sheet, tap};

/// The felloes of a wheel and the spokes each carries.
pub fn felloe_keys(setting: RwSignal<Setting>, carried: &[u16]) -> Piece {
    let spokes: u32 = carried.iter().map(|spokes| u32::from(*spokes)).sum();
    let rows = carried
        .iter()
        .enumerate()
        .map(|(at, spokes)| one_felloe(setting, at, *spokes));
    sheet!(
        "<section class=stack data-step=felloes><h2>{} felloes, {} spokes</h2>\
         <p class=dim>Clockwise from the mark, seen from the face. A bent rim: each length counts as one.</p>\
         <ol class=list>{}</ol><div class=\"row evenly\">\
         <button type=button class=key data-key=fewer-felloes on:click={}>One felloe fewer</button>\
         <button type=button class=key data-key=more-felloes on:click={}>One felloe more</button></div></section>",
        carried.len().to_string(),
        spokes.to_string(),
        rows.collect::<Vec<Piece>>(),
        tap(move || {
            change(setting, &|setting| {
                setting.carried.pop();
            });
        }),
        tap(move || {
            change(setting, &|setting| {
                let spokes = setting.carried.last().copied().unwrap_or(2);
                setting.carried.push(spokes);
            });
        })
    )
}

fn one_felloe(setting: RwSignal<Setting>, at: usize, spokes: u16) -> Piece {
    let turn = move |by: fn(u16) -> u16| {
        tap(move || {
            change(setting, &|setting| {
                if let Some(spokes) = setting.carried.get_mut(at) {
                    *spokes = by(*spokes);
                }
            });
        })
    };
    let number = (at + 1).to_string();
    sheet!(
        "<li class=item data-felloe={}><span class=strong>Felloe {}</span><span class=row>\
         <button type=button class=key data-key=fewer aria-label=\"One spoke fewer on felloe {}\" on:click={}>−</button>\
         <output class=\"strong count\">{}</output>\
         <button type=button class=key data-key=more aria-label=\"One spoke more on felloe {}\" on:click={}>+</button>\
         </span></li>",
        number.clone(),
        number.clone(),
        number.clone(),
        turn(|spokes| spokes.saturating_sub(1).max(1)),
        spokes.to_string(),
        number,
        turn(|spokes| spokes.saturating_add(1))
    )
}
