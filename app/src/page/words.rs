//! Every word of the trade in the chosen country's words, with the other country's beside it.

use cartside_core::words::Term;
use cartside_core::words::glossary::glossary;

use crate::component::terms::explained;
use crate::markup::{Piece, live, sheet};
use crate::workshop::workshop;

/// Every word of the trade, explained.
pub fn page() -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=words><h1>Words of the trade</h1>\
         <p class=dim>British or American words are chosen in the preferences; what the other country says stands \
         beside where it differs.</p>{}<a class=\"key key-plain\" href=#/preferences>To the preferences</a></main>",
        live(move || {
            let mut all: Vec<Term> = Vec::new();
            // In the order of the words as they are said, which is another in each country.
            for term in glossary(shop.style()) {
                let at = all.partition_point(|other| lower(other) <= lower(&term));
                all.insert(at, term);
            }
            explained(&all)
        })
    )
}

fn lower(term: &Term) -> String {
    term.word.to_ascii_lowercase()
}
