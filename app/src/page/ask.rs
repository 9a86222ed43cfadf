//! One question, put to place after place of a wheel: the screen at the cart. A tap is an answer, stored, and the
//! next place is in hand.

mod asking;
pub mod given;
mod keys;
pub mod onward;
mod places;
mod sweep;
pub mod trail;
pub mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::survey::{Places, Question};
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, caution};
use leptos::prelude::*;

use crate::component::caution_card::open_card;
use crate::component::examination::{GoingOn, begin_examination, current};
use crate::component::in_hand::in_hand;
use crate::component::mark::grade_mark;
use crate::component::terms::terms;
use crate::component::turned::Turned;
use crate::looking::{Examination, Looking};
use crate::markup::{Hole, Piece, live, nothing, sheet, tap};
use crate::page::wheel::no_wheel;
use crate::route::Route;
use crate::workshop::workshop;
use asking::{Asking, Showing};

/// What the page can do at this moment.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    NoWheel,
    NotAsked,
    NotNow,
    Barred(&'static str),
    Begin(Option<Examination>),
    Ask,
}

/// One question, put to place after place: to this place first, or else to the first that has no answer.
pub fn page(id: EntryId, position: Position, question: Question, place: Option<Place>) -> Piece {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let looking = Looking::follow(shop, position);
    let asking = Asking::new(shop, id, position, question, place, looking);
    let stage = Memo::new(move |_| stage(looking.get(), question, going_on));
    sheet!(
        "<main class=\"page ask\" data-page=ask data-question={}><div class=ask-head>{}</div>{}\
         <a class=\"key key-plain\" href={}>To the wheel</a>{}</main>",
        question.code(),
        live(move || sheet!(
            "<h1 class=capital>{}: {}</h1><p class=dim>{}</p>",
            words::place::wheel_at(position),
            words::question::short(question, shop.style()),
            asking.progress()
        )),
        live(move || match stage.get() {
            Stage::Ask => asked(asking),
            Stage::Begin(latest) => begin_examination(id, latest),
            Stage::NoWheel => no_wheel(),
            Stage::NotNow => not_now(id, looking.get()),
            Stage::Barred(why) => barred(id, why),
            Stage::NotAsked => sheet!(
                "<p class=warning>This is not asked of a wheel that is built like this one.</p>"
            ),
        }),
        Route::Wheel(id, position).href(),
        live(move || {
            let here = stage.get() == Stage::Ask && asking.showing() != Showing::Numbers;
            here.then(|| bottom_keys(asking))
        })
    )
}

fn stage(looking: Option<Looking>, question: Question, going_on: GoingOn) -> Stage {
    match looking {
        None => Stage::NoWheel,
        Some(looking) if !question.asked_of(&looking.wheel) => Stage::NotAsked,
        Some(looking) => match looking.examination {
            Some(ref examination) if current(examination, going_on) => {
                match looking.barred(question) {
                    _ if !question.asked_when(looking.stage()) => Stage::NotNow,
                    Some(why) => Stage::Barred(why),
                    None => Stage::Ask,
                }
            }
            latest => Stage::Begin(latest),
        },
    }
}

/// That this cannot be answered while the wheel is taken apart as far as it is said to be.
fn not_now(id: EntryId, looking: Option<Looking>) -> Piece {
    let stage = looking.map(|looking| looking.stage()).unwrap_or_default();
    sheet!(
        "<p class=warning data-not-now={}>{}</p><a class=key href={}>How far it is taken apart</a>",
        stage.code(),
        words::visit::not_asked(stage, workshop().style()),
        Route::Examination(id).href()
    )
}

/// That the wheel is not to be lifted for this, with what comes before lifting.
fn barred(id: EntryId, why: &'static str) -> Piece {
    sheet!(
        "<p class=warning data-barred>{}</p>{}<a class=key href={}>Say that it is safe</a>",
        why,
        open_card(caution::before_lifting()),
        Route::FirstLook(id).href()
    )
}

/// The place in hand with its keys, or that every place is answered.
fn asked(asking: Asking) -> Piece {
    let in_hand = live(move || match asking.at.get() {
        Some(place) => place_in_hand(asking, place),
        None if asking.choosing.get() => nothing(),
        None => places::all_answered(asking),
    });
    let below = live(move || match asking.showing() {
        Showing::Places => places::chooser(asking),
        Showing::Numbers => keys::measuring(asking),
        Showing::Keys => sheet!(
            "{}{}{}",
            live(move || keys::pad(asking)),
            live(move || asking.earlier()),
            live(move || how_and_why(asking))
        ),
        Showing::Nothing => nothing(),
    });
    sheet!("{}{}", in_hand, below)
}

/// The place in hand as it stands. Of a spoke it is a key that turns the drawing: this one is at the top now.
fn lens(asking: Asking, place: Place, looking: &Looking) -> Piece {
    let turned = expect_context::<Turned>();
    let at = asking.wheel();
    let drawn = in_hand(
        looking,
        asking.question,
        place,
        turned.top(at, &looking.wheel),
    );
    match place {
        Place::Spoke(spoke) if turned.spoke(at) != Some(spoke) => sheet!(
            "<button type=button class=lens data-key=at-the-top aria-label={} on:click={}>{}<span aria-hidden=true>⤒</span></button>",
            format!("Spoke {spoke} is at the top now"),
            tap(move || turned.set(at, Some(spoke))),
            drawn
        ),
        _ => drawn,
    }
}

/// Where to look, what is asked, how far one has come, and what the place has been answered already.
fn place_in_hand(asking: Asking, place: Place) -> Piece {
    let style = asking.shop.style();
    let looking = asking.looking.get();
    let wheel = looking.as_ref().map(|looking| &looking.wheel);
    sheet!(
        "<section class=in-hand data-at={}><div><h2 class=\"place capital\" aria-live=polite>{}</h2>\
         <p>{}</p></div>{}</section>{}",
        place.code(),
        words::place::place(place, wheel, style),
        words::question::asks(asking.question, style),
        looking.as_ref().map(|looking| lens(asking, place, looking)),
        asking.already().map(|(said, grade)| sheet!(
            "<div class=already>{}<p>{}</p></div>",
            grade.map(grade_mark),
            said
        ))
    )
}

fn how_and_why(asking: Asking) -> Piece {
    let (question, style) = (asking.question, asking.shop.style());
    let words = words::how::how(question, style);
    let (short, asks) = (
        words::question::short(question, style),
        words::question::asks(question, style),
    );
    let explained = terms(&[&short, &asks, &words.how, &words.why], style);
    sheet!(
        "{}<details class=fold><summary>How it is taken, and why</summary>\
         <div class=stack><p>{}</p><p>{}</p></div></details>",
        explained,
        words.how,
        words.why
    )
}

/// Undo at the left, another place, and the way past this question; in sight however far the page is scrolled.
fn bottom_keys(asking: Asking) -> Piece {
    let other = (asking.question.places() != Places::Whole).then(|| {
        sheet!(
            "<button type=button class=key data-key=other-place on:click={}>Other place</button>",
            tap(move || asking.choosing.update(|open| *open = !*open))
        )
    });
    let pass = asking.at.get().map(|_| {
        sheet!(
            "<button type=button class=key data-key=not-today on:click={}>Not today</button>",
            tap(move || asking.pass())
        )
    });
    let (id, position) = asking.wheel();
    let picture = asking.at.get().map(|place| {
        sheet!(
            "<a class=\"key camera\" data-key=picture aria-label=\"Picture of it\" href={}><svg viewBox=\"0 0 32 32\" aria-hidden=true>\
             <path d=\"M3 10h6l3-4h8l3 4h6v16H3z\"/><circle cx=16 cy=17 r=5/></svg></a>",
            Route::Part(id, Part::At(position, place)).href()
        )
    });
    let undo = asking.undoes();
    sheet!(
        "<div class=bottom-keys>\
         <button type=button class=key data-key=undo disabled={} on:click={}>{}</button>{}{}{}</div>",
        Hole::Flag(undo.is_none()),
        tap(move || asking.undo()),
        undo.unwrap_or_else(|| "Undo".to_owned()),
        other,
        picture,
        pass
    )
}
