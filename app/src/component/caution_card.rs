//! A card of cautions.

use cartside_core::words::Card;

use crate::markup::{Piece, sheet};

/// A card of cautions, folded.
pub fn folded_card(card: Card) -> Piece {
    sheet!(
        "<details class=fold><summary>{}</summary>{}</details>",
        card.heading,
        lines(card.lines)
    )
}

/// A card of cautions, open.
pub fn open_card(card: Card) -> Piece {
    sheet!(
        "<section class=card><h2>{}</h2>{}</section>",
        card.heading,
        lines(card.lines)
    )
}

fn lines(lines: Vec<String>) -> Piece {
    let lines = lines.into_iter();
    let lines = lines.map(|line| sheet!("<li>{}</li>", line));
    sheet!("<ol class=cautions>{}</ol>", lines.collect::<Vec<Piece>>())
}
