//! The list beside the drawing: each part in words, what was answered there and what that comes to.

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Part, Place, Position};
use cartside_core::words::{self, Style};

use crate::component::mark::grade_mark;
use crate::looking::{Look, Looking};
use crate::markup::{Piece, sheet};
use crate::route::Route;
use crate::workshop::workshop;

/// Each part of a wheel; a tap leads to its page.
pub fn part_list(id: EntryId, position: Position, looking: &Looking) -> Piece {
    let style = workshop().style();
    let rows = looking.places().into_iter();
    let rows: Vec<Piece> = rows
        .map(|place| one_row(id, position, looking, place, style))
        .collect();
    sheet!(
        "<section class=stack><h2>Part by part</h2><ul class=list>{}</ul></section>",
        rows
    )
}

fn one_row(
    id: EntryId,
    position: Position,
    looking: &Looking,
    place: Place,
    style: Style,
) -> Piece {
    let grade = match looking.look(place) {
        Look::Found(grade) => Some(grade_mark(grade)),
        Look::Open | Look::Sound => None,
    };
    sheet!(
        "<li><a class=item href={} data-place={}>\
         <span class=\"strong capital\">{}</span><span>{}</span>{}</a></li>",
        Route::Part(id, Part::At(position, place)).href(),
        place.code(),
        words::place::place(place, Some(&looking.wheel), style),
        told(looking, place, style),
        grade
    )
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
