//! A standing or a grade as a mark: a ring filled the further the harsher it is, beside its words, so that neither
//! the colour nor the shape stands alone.

use cartside_core::diagnosis::{Grade, Standing};
use cartside_core::words::{self, term};

use crate::looking::Looking;
use crate::markup::{Piece, sheet};

/// A wheel's or a vehicle's standing.
pub fn standing_mark(standing: Standing) -> Piece {
    mark(standing.code(), term::standing(standing))
}

/// What stands below *not judged*, wherever it is said: what was found so far.
pub fn so_far(standing: Standing, looking: &Looking) -> Option<Piece> {
    let looked = !looking.answers.is_empty();
    told(standing, looking.judgement.so_far(), looked)
}

/// The same of several wheels together.
pub fn so_far_of_all<'l>(
    standing: Standing,
    all: impl Iterator<Item = &'l Looking> + Clone,
) -> Option<Piece> {
    let found = all.clone().filter_map(|it| it.judgement.so_far()).max();
    let looked = all.into_iter().any(|it| !it.answers.is_empty());
    told(standing, found, looked)
}

fn told(standing: Standing, found: Option<Standing>, looked: bool) -> Option<Piece> {
    let not_yet = standing == Standing::NotJudged;
    not_yet.then(|| {
        sheet!(
            "<p class=dim data-found>{}</p>",
            words::standing::so_far(found, looked)
        )
    })
}

/// How bad one finding is.
pub fn grade_mark(grade: Grade) -> Piece {
    mark(grade.code(), term::grade(grade))
}

fn mark(code: &'static str, words: &'static str) -> Piece {
    sheet!(
        "<span class=mark data-mark={}><svg viewBox=\"0 0 32 32\" aria-hidden=true>\
         <circle cx=16 cy=16 r=12 stroke-dasharray={}/><path class=solid d={}/></svg><span>{}</span></span>",
        code,
        ring(code),
        filled(code),
        words
    )
}

/// The ring round a mark: broken while nothing is judged.
fn ring(code: &str) -> &'static str {
    if code == "not-judged" { "5 5" } else { "none" }
}

/// What of a ring of 12 about (16, 16) is filled: nothing, a dot, a quarter, a half, all.
pub fn filled(code: &str) -> &'static str {
    match code {
        "note" => "M16 12a4 4 0 1 1-.01 0z",
        "light-work-only" => "M16 16V4a12 12 0 0 1 12 12z",
        "keep-empty" => "M4 16a12 12 0 0 0 24 0z",
        "not-on-this-wheel" => "M16 4a12 12 0 1 1-.01 0z",
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::filled;
    use cartside_core::diagnosis::Standing;
    use std::collections::BTreeSet;

    #[test]
    fn no_two_grades_look_alike() {
        let bad = Standing::ALL.iter().map(|standing| standing.code());
        let filled: BTreeSet<&str> = bad.chain(["note"]).map(filled).collect();
        // No fault found and not judged are both empty: the latter's ring is broken.
        assert_eq!(filled.len(), 5);
    }
}
