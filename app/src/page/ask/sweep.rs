//! What is left of a group, answered by one key: all of it was looked at, and all of it is sound. The key says each
//! answer that it will write.

use cartside_core::survey::{Group, Question, Slot};
use cartside_core::wheel::Place;
use cartside_core::words;
use leptos::prelude::Get;
use web_sys::Event;

use super::asking::Asking;
use super::given::{Given, sound};
use crate::looking::Looking;
use crate::markup::{Piece, heard, sheet};

/// What one question is answered at all the places where it is still open.
#[derive(Clone, Debug, PartialEq)]
pub struct Left {
    /// The question.
    pub question: Question,
    /// Its open places.
    pub places: Vec<Place>,
    /// What each of them is answered.
    pub given: Given,
}

/// What is still open of the group and has a sound answer, the question in hand first.
pub fn left(asking: Asking, looking: &Looking) -> Vec<Left> {
    let group = asking.question.group();
    let style = asking.shop.style();
    let open = looking.questions().filter_map(|question| {
        let places = looking.left(question);
        let bare = question.group() != group || places.is_empty();
        let given =
            sound(question, style).filter(|_| !bare && looking.barred(question).is_none())?;
        Some(Left {
            question,
            places,
            given,
        })
    });
    let mut left: Vec<Left> = open.collect();
    left.sort_by_key(|it| it.question != asking.question);
    left
}

/// The slots of what is left, each with its answer.
pub fn slots(asking: Asking, left: &[Left]) -> Vec<(Slot, &Given)> {
    let mut slots = Vec::new();
    for it in left {
        slots.extend(
            it.places
                .iter()
                .map(|place| (asking.slot(it.question, *place), &it.given)),
        );
    }
    slots
}

/// What is measured in this group and no standing needs: passed when all else is said to be sound.
pub fn passed(looking: &Looking, group: Group) -> Vec<Question> {
    let measured = [Question::TyreLeft, Question::Moisture];
    let open = |it: &Question| it.group() == group && !looking.left(*it).is_empty();
    measured.into_iter().filter(open).collect()
}

/// The key, where it answers more than the question in hand.
pub fn key(asking: Asking) -> Option<Piece> {
    let looking = asking.looking.get()?;
    let left = left(asking, &looking);
    if !left.iter().any(|it| it.question != asking.question) {
        return None;
    }
    let style = asking.shop.style();
    let each = left
        .iter()
        .map(|it| words::answer::sound(it.question, &it.given.answer, style));
    let each = each.collect::<Vec<String>>().join("; ");
    let group = words::question::group(asking.question.group(), style);
    let tapped = move |tap: Event| asking.tap_sound(&left, tap.time_stamp());
    Some(sheet!(
        "<button type=button class=\"key sweep\" data-key=all-sound on:click={}>\
         <span class=strong>The rest of it sound: {}</span><span>{}</span></button>",
        heard(tapped),
        group,
        each
    ))
}
