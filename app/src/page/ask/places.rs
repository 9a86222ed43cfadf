//! Which place: the chooser of another one, and what to do when every place is answered.

use cartside_core::diagnosis::Grade;
use cartside_core::survey::Places;
use cartside_core::wheel::Place;
use cartside_core::words;
use leptos::prelude::{Get, Set};

use super::asking::Asking;
use super::onward;
use super::sweep;
use crate::component::mark::grade_mark;
use crate::looking::Looking;
use crate::markup::{Piece, sheet, tap};

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
    let said = asking.said(looking, place);
    sheet!(
        "<button type=button class=key data-go-to={} on:click={}><span class=capital>{}{}</span></button>",
        place.code(),
        tap(move || asking.go_to(place)),
        words::place::place(place, Some(&looking.wheel), asking.shop.style()),
        said.map(|said| format!(" ✓ {said}")).unwrap_or_default()
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

/// Every place is answered: what was said, with the way to correct it, and what comes next.
pub fn all_answered(asking: Asking) -> Piece {
    let looking = asking.looking.get();
    sheet!(
        "<section class=card data-at=none><h2>Every place is answered</h2>{}<ul class=list>{}</ul>{}</section>",
        looking.as_ref().map(|looking| onward::keys(
            looking,
            asking.wheel(),
            Some(asking.question)
        )),
        looking.as_ref().map(|looking| answered(asking, looking)),
        sweep::key(asking)
    )
}

/// What was said, places alike together, each with the key that takes one of them in hand again.
fn answered(asking: Asking, looking: &Looking) -> Vec<Piece> {
    let mut alike: Vec<(String, Option<Grade>, Vec<Place>)> = Vec::new();
    let here = looking.answers.iter();
    for ((question, place), _) in here.filter(|((of, _), _)| *of == asking.question) {
        let said = asking.said(looking, *place).unwrap_or_default();
        let grade = looking.grade(*question, *place);
        match alike
            .iter_mut()
            .find(|(as_here, bad, _)| *as_here == said && *bad == grade)
        {
            Some((_, _, places)) => places.push(*place),
            None => alike.push((said, grade, vec![*place])),
        }
    }
    let rows = alike.into_iter();
    let rows = rows.map(|(said, grade, places)| one_answer(asking, looking, said, grade, &places));
    rows.collect()
}

fn one_answer(
    asking: Asking,
    looking: &Looking,
    said: String,
    grade: Option<Grade>,
    places: &[Place],
) -> Piece {
    let only = match places {
        [only] => Some(*only),
        _ => None,
    };
    let at = words::place::places(places, &looking.wheel, asking.shop.style());
    sheet!(
        "<li class=item data-answered><div><p class=\"strong capital\">{}</p>{}<p>{}</p></div>\
         <button type=button class=key data-key=correct on:click={}>{}</button></li>",
        said,
        grade.map(grade_mark),
        at,
        tap(move || match only {
            Some(only) => asking.go_to(only),
            None => asking.choosing.set(true),
        }),
        if only.is_some() {
            "Change"
        } else {
            "Change one"
        }
    )
}
