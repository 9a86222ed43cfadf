//! One question, put to place after place of a wheel: the screen at the cart. A tap is an answer, stored, and the
//! next place is in hand.

mod asking;
mod given;
mod keys;
mod places;
mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::survey::Question;
use cartside_core::wheel::{Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::examination::{GoingOn, begin_examination, current};
use crate::component::locator::locator;
use crate::component::plain::{key, link, page_of};
use crate::looking::{Examination, Looking};
use crate::markup::{Piece, Tag, live, tag};
use crate::page::wheel::no_wheel;
use crate::route::Route;
use crate::workshop::workshop;
use asking::{Asking, Showing};

/// What the page can do at this moment.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    NoWheel,
    NotAsked,
    Begin(Option<Examination>),
    Ask,
}

/// One question, put to place after place: to this place first, or else to the first that has no answer.
pub fn page(id: EntryId, position: Position, question: Question, place: Option<Place>) -> Tag {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let looking = Memo::new(move |_| Looking::at(shop, position));
    let asking = Asking::new(shop, id, position, question, place, looking);
    let stage = Memo::new(move |_| stage(looking.get(), question, going_on));
    let head = move || {
        let name = words::place::wheel_at(position);
        let short = words::question::short(question, shop.style());
        tag("div")
            .class("ask-head")
            .put(tag("h1").class("capital").put(format!("{name}: {short}")))
            .put(tag("p").class("dim").put(asking.progress()))
    };
    page_of("ask")
        .class("ask")
        .live(head)
        .live(move || match stage.get() {
            Stage::Ask => asked(asking),
            Stage::Begin(latest) => begin_examination(id, latest).into(),
            Stage::NoWheel => no_wheel().into(),
            Stage::NotAsked => tag("p")
                .class("warning")
                .put("This is asked of a wheel with a hoop tyre only.")
                .into(),
        })
        .put(link(Route::Wheel(id, position).href(), "To the wheel").class("key-plain"))
        .live(move || {
            let here = stage.get() == Stage::Ask && asking.showing() != Showing::Numbers;
            here.then(|| bottom_keys(asking))
        })
}

fn stage(looking: Option<Looking>, question: Question, going_on: GoingOn) -> Stage {
    match looking {
        None => Stage::NoWheel,
        Some(looking) if !question.asked_of(&looking.wheel) => Stage::NotAsked,
        Some(looking) => match looking.examination {
            Some(examination) if current(&examination, going_on) => Stage::Ask,
            latest => Stage::Begin(latest),
        },
    }
}

/// The place in hand with its keys, or that every place is answered.
fn asked(asking: Asking) -> Piece {
    Piece::Several(vec![
        live(move || match asking.at.get() {
            Some(place) => place_in_hand(asking, place),
            None => places::all_answered(asking).into(),
        }),
        live(move || match asking.showing() {
            Showing::Places => places::chooser(asking).into(),
            Showing::Numbers => keys::measure_pad(asking).into(),
            Showing::Keys => Piece::Several(vec![
                live(move || keys::pad(asking)),
                live(move || keys::rest_key(asking)),
                live(move || how_and_why(asking)),
            ]),
            Showing::Nothing => Piece::Several(Vec::new()),
        }),
    ])
}

/// Where to look, what is asked, how far one has come, and what the place has been answered already.
fn place_in_hand(asking: Asking, place: Place) -> Piece {
    let style = asking.shop.style();
    let wheel = asking.looking.get().map(|looking| looking.wheel);
    let name = tag("h2")
        .class("place capital")
        .set("aria-live", "polite")
        .put(words::place::place(place, wheel.as_ref(), style));
    let asks = words::question::asks(asking.question, style);
    let said = tag("div").put(name).put(tag("p").put(asks));
    let in_hand = tag("section")
        .class("in-hand")
        .set("data-at", place.code())
        .put(said)
        .put(wheel.map(|wheel| locator(&wheel, place)));
    let already = asking.already();
    Piece::Several(vec![
        in_hand.into(),
        already
            .map(|said| tag("p").class("already").put(said))
            .into(),
    ])
}

fn how_and_why(asking: Asking) -> Tag {
    let words = words::how::how(asking.question, asking.shop.style());
    let stack = tag("div")
        .class("stack")
        .put(tag("p").put(words.how))
        .put(tag("p").put(words.why));
    tag("details")
        .class("fold")
        .put(tag("summary").put("How it is taken, and why"))
        .put(stack)
}

/// Undo at the bottom left, another place at the right; in sight however far the page is scrolled.
fn bottom_keys(asking: Asking) -> Tag {
    let undo = key("Undo")
        .set("data-key", "undo")
        .flag("disabled", asking.steps.with(Vec::is_empty))
        .tap(move || asking.undo());
    let other = key("Other place")
        .set("data-key", "other-place")
        .tap(move || asking.choosing.update(|open| *open = !*open));
    tag("div").class("bottom-keys").put(undo).put(other)
}
