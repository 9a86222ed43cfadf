//! The words of the trade that stand on a page, each explained: a line under the heading that a tap opens.

use cartside_core::words::{self, Style, Term};

use crate::markup::{Piece, sheet};

/// The words of the trade in these texts; nothing if there is none.
pub fn terms(texts: &[&str], style: Style) -> Option<Piece> {
    let found = words::glossary::terms_in(&texts.join(" / "), style);
    let names: Vec<&str> = found.iter().map(|term| term.word.as_str()).collect();
    (!names.is_empty()).then(|| {
        sheet!(
            "<details class=fold data-terms><summary><span>Words: {}</span></summary>{}\
             <a class=key href=#/words>All words</a></details>",
            names.join(", "),
            explained(&found)
        )
    })
}

/// Words with their lines, and what another country calls them.
pub fn explained(terms: &[Term]) -> Piece {
    let rows = terms.iter().map(|term| {
        let other = term.other.as_ref();
        let other = other.map(|other| sheet!("<span class=dim> (elsewhere: {})</span>", other.clone()));
        sheet!(
            "<div data-term={}><dt class=strong><span class=capital>{}</span>{}</dt><dd>{}</dd></div>",
            term.word.clone(),
            term.word.clone(),
            other,
            term.line.clone()
        )
    });
    sheet!("<dl class=terms>{}</dl>", rows.collect::<Vec<Piece>>())
}
