//! The keys to choose by, in a step of a page that asks for a choice.

use crate::markup::{Hole, Piece, sheet};

/// A key for one of several choices: the word that stands for it, whether it is chosen, what stands on it and what a
/// tap does. What stands on it begins with a capital.
pub fn choice(code: &'static str, chosen: bool, words: Hole, ear: Hole) -> Piece {
    let words = sheet!("<span class=capital>{}</span>", words);
    plain_choice(code.into(), chosen, words.into(), ear)
}

/// As [`choice`], with what stands on it as it is.
pub fn plain_choice(code: Hole, chosen: bool, words: Hole, ear: Hole) -> Piece {
    sheet!(
        "<button type=button class=key data-choice={} aria-pressed={} on:click={}>{}</button>",
        code,
        if chosen { "true" } else { "false" },
        ear,
        words
    )
}
