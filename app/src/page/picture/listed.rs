//! The marks in words, one under the other: a field for what is written beside a pin, and a key that takes a mark away.

use cartside_core::daybook::Mark;
use cartside_core::daybook::marks::LONGEST_BESIDE;
use cartside_core::words::{self, capital};
use leptos::prelude::untrack;

use super::board::Board;
use crate::markup::{Piece, heard, live, nothing, sheet, tap, typed};

/// The list; nothing while there are no marks.
pub(super) fn listed(board: Board) -> Piece {
    live(move || {
        let all = board.all();
        if all.is_empty() {
            return nothing();
        }
        let words = words::marks::each(&all).into_iter();
        let rows = words.zip(&all).enumerate();
        let rows = rows.map(|(at, (said, mark))| row(board, at, &said, mark));
        let rows: Vec<Piece> = rows.collect();
        sheet!(
            "<h2>Marks</h2><ol class=\"list marks-listed\">{}</ol>",
            rows
        )
    })
}

fn row(board: Board, at: usize, said: &str, mark: &Mark) -> Piece {
    let beside = match mark {
        Mark::Pin(_, text) => Some(beside(board, at, said, text)),
        _ => None,
    };
    sheet!(
        "<li class=item data-mark-no={}><span class=strong>{}</span>\
         <button type=button class=\"key key-plain\" aria-label=\"Take away: {}\" on:click={}>Take away</button>{}</li>",
        (at + 1).to_string(),
        capital(said),
        said.to_owned(),
        tap(move || {
            let mut all = untrack(|| board.all());
            if at < all.len() {
                all.remove(at);
                board.change(all);
            }
        }),
        beside
    )
}

/// The field for the remark at a pin. It is kept with the marks, not as typing by itself, so it is no label's field.
fn beside(board: Board, at: usize, said: &str, text: &str) -> Piece {
    let pin = said.split(',').next().unwrap_or_default().to_owned();
    sheet!(
        "<div class=\"field whole-row\"><input type=text autocomplete=off maxlength={} aria-label=\"Written at {}\" \
         placeholder=\"What is there?\" value={} on:input={}/></div>",
        LONGEST_BESIDE.to_string(),
        pin,
        text.to_owned(),
        heard(move |event| {
            let mut all = untrack(|| board.all());
            if let Some(Mark::Pin(_, text)) = all.get_mut(at) {
                *text = typed(&event).chars().take(LONGEST_BESIDE).collect();
                board.set(all);
            }
        })
    )
}
