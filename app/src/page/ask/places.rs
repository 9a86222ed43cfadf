//! Which place: the chooser of another one, and what to do when every place is answered.

use cartside_core::survey::Places;
use cartside_core::wheel::Place;
use cartside_core::words;
use leptos::prelude::Get;

use super::asking::Asking;
use crate::component::plain::link;
use crate::looking::Looking;
use crate::markup::{Tag, tag};
use crate::route::Route;

/// Every place the question can be put to; one tap takes it in hand.
pub fn chooser(asking: Asking) -> Tag {
    let keys = asking.looking.get().map(|looking| {
        let places = candidates(&looking, asking).into_iter();
        let keys = places.map(|place| one_place(asking, &looking, place));
        keys.collect::<Vec<_>>()
    });
    tag("section")
        .class("card")
        .put(tag("h2").put("Which place?"))
        .put(tag("div").class("choices").put(keys))
}

fn one_place(asking: Asking, looking: &Looking, place: Place) -> Tag {
    let mut name = words::place::place(place, Some(&looking.wheel), asking.shop.style());
    if looking.answered(asking.question, place) {
        name.push_str(" ✓ answered");
    }
    tag("button")
        .set("type", "button")
        .class("key")
        .set("data-go-to", place.code())
        .tap(move || asking.go_to(place))
        .put(tag("span").class("capital").put(name))
}

/// Round the tyre every place over a spoke or between two will do.
fn candidates(looking: &Looking, asking: Asking) -> Vec<Place> {
    match asking.question.places() {
        Places::RoundTheTyre => (1..=looking.wheel.felloes.spokes())
            .flat_map(|n| [Place::Spoke(n), Place::Between(n)])
            .collect(),
        _ => asking.question.places_on(&looking.wheel),
    }
}

/// Every place is answered: what comes next.
pub fn all_answered(asking: Asking) -> Tag {
    tag("section")
        .class("card")
        .set("data-at", "none")
        .put(tag("h2").put("Every place is answered"))
        .put(next(asking))
}

fn next(asking: Asking) -> Option<Tag> {
    let (id, position) = asking.wheel();
    let looking = asking.looking.get()?;
    let next = looking.next_question(Some(asking.question))?;
    let (done, all) = looking.progress(next);
    let short = words::question::short(next, asking.shop.style());
    let href = Route::Ask(id, position, next, None).href();
    let next_key = link(href, format!("Next: {short}, {done} of {all}"));
    Some(next_key.class("key-main").set("data-ask", next.code()))
}
