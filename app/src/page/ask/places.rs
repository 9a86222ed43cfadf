//! Which place: the chooser of another one, and what to do when every place is answered.

use cartside_core::survey::Places;
use cartside_core::wheel::Place;
use cartside_core::words;
use leptos::prelude::Get;

use super::asking::Asking;
use crate::looking::Looking;
use crate::markup::{Piece, sheet, tap};
use crate::route::Route;

/// Every place the question can be put to; one tap takes it in hand.
pub fn chooser(asking: Asking) -> Piece {
    let keys = asking.looking.get().map(|looking| {
        let places = candidates(&looking, asking).into_iter();
        let keys = places.map(|place| one_place(asking, &looking, place));
        keys.collect::<Vec<Piece>>()
    });
    sheet!(
        "<section class=card><h2>Which place?</h2><div class=choices>{}</div></section>",
        keys
    )
}

fn one_place(asking: Asking, looking: &Looking, place: Place) -> Piece {
    let answered = looking.answered(asking.question, place);
    sheet!(
        "<button type=button class=key data-go-to={} on:click={}><span class=capital>{}{}</span></button>",
        place.code(),
        tap(move || asking.go_to(place)),
        words::place::place(place, Some(&looking.wheel), asking.shop.style()),
        if answered { " ✓ answered" } else { "" }
    )
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
pub fn all_answered(asking: Asking) -> Piece {
    sheet!(
        "<section class=card data-at=none><h2>Every place is answered</h2>{}</section>",
        next(asking)
    )
}

fn next(asking: Asking) -> Option<Piece> {
    let (id, position) = asking.wheel();
    let looking = asking.looking.get()?;
    let next = looking.next_question(Some(asking.question))?;
    let (done, all) = looking.progress(next);
    let short = words::question::short(next, asking.shop.style());
    Some(sheet!(
        "<a class=\"key key-main\" data-ask={} href={}>{}</a>",
        next.code(),
        Route::Ask(id, position, next, None).href(),
        format!("Next: {short}, {done} of {all}")
    ))
}
