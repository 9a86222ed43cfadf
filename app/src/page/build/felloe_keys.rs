//! What each felloe carries, clockwise from the mark, with keys for one spoke more or fewer.

use leptos::prelude::*;

use super::{Setting, change};
use crate::component::choice::step;
use crate::component::plain::key;
use crate::markup::{Tag, tag};

/// The felloes of a wheel and the spokes each carries.
pub fn felloe_keys(setting: RwSignal<Setting>, carried: &[u16]) -> Tag {
    let spokes: u32 = carried.iter().map(|spokes| u32::from(*spokes)).sum();
    let heading = format!("{} felloes, {spokes} spokes", carried.len());
    let round =
        "Clockwise from the mark, seen from the face. A bent rim: each length counts as one.";
    let rows = carried
        .iter()
        .enumerate()
        .map(|(at, spokes)| one_felloe(setting, at, *spokes));
    let fewer = key("One felloe fewer")
        .set("data-key", "fewer-felloes")
        .tap(move || {
            change(setting, &|setting| {
                setting.carried.pop();
            });
        });
    let more = key("One felloe more")
        .set("data-key", "more-felloes")
        .tap(move || {
            change(setting, &|setting| {
                let spokes = setting.carried.last().copied().unwrap_or(2);
                setting.carried.push(spokes);
            });
        });
    step("felloes", heading)
        .put(tag("p").class("dim").put(round))
        .put(tag("ol").class("list").each(rows))
        .put(tag("div").class("row evenly").put(fewer).put(more))
}

fn one_felloe(setting: RwSignal<Setting>, at: usize, spokes: u16) -> Tag {
    let turn = move |by: fn(u16) -> u16| {
        change(setting, &|setting| {
            if let Some(spokes) = setting.carried.get_mut(at) {
                *spokes = by(*spokes);
            }
        });
    };
    let number = at + 1;
    let fewer = key("−")
        .set("data-key", "fewer")
        .set("aria-label", format!("One spoke fewer on felloe {number}"))
        .tap(move || turn(|spokes| spokes.saturating_sub(1).max(1)));
    let more = key("+")
        .set("data-key", "more")
        .set("aria-label", format!("One spoke more on felloe {number}"))
        .tap(move || turn(|spokes| spokes.saturating_add(1)));
    let count = tag("output").class("strong count").put(spokes.to_string());
    tag("li")
        .class("item")
        .set("data-felloe", number.to_string())
        .put(tag("span").class("strong").put(format!("Felloe {number}")))
        .put(tag("span").class("row").put(fewer).put(count).put(more))
}
