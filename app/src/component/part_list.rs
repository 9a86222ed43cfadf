//! The list beside the drawing: each part in words, what was answered there and what that comes to.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};

use crate::component::mark::grade_mark;
use crate::looking::{Look, Looking};
use crate::markup::{Tag, tag};
use crate::route::Route;
use crate::workshop::workshop;

/// Each part of a wheel; a tap leads to its page.
pub fn part_list(id: EntryId, position: Position, looking: &Looking) -> Tag {
    let style = workshop().style();
    let row = |place| one_row(id, position, looking, place, style);
    tag("section")
        .class("stack")
        .put(tag("h2").put("Part by part"))
        .put(
            tag("ul")
                .class("list")
                .each(looking.places().into_iter().map(row)),
        )
}

fn one_row(id: EntryId, position: Position, looking: &Looking, place: Place, style: Style) -> Tag {
    let name = words::place::place(place, Some(&looking.wheel), style);
    let grade = match looking.look(place) {
        Look::Found(grade) => Some(grade_mark(grade)),
        Look::Open | Look::Sound => None,
    };
    let item = tag("a")
        .class("item")
        .set("href", Route::Part(id, Part::At(position, place)).href())
        .set("data-place", place.code())
        .put(tag("span").class("strong capital").put(name))
        .put(tag("span").put(told(looking, place, style)))
        .put(grade);
    tag("li").put(item)
}

/// What was answered at a place.
fn told(looking: &Looking, place: Place, style: Style) -> String {
    let here = looking.answers.iter().filter(|((_, at), _)| *at == place);
    let each: Vec<String> = here
        .flat_map(|((question, _), answers)| {
            answers
                .iter()
                .map(|answer| words::answer::told(*question, answer, style))
        })
        .collect();
    if each.is_empty() {
        "not looked at".to_owned()
    } else {
        each.join("; ")
    }
}
