//! Text as it is searched: without capitals and accents, so that who types in a barn need not hit them.

use cartside_core::words::within;
use js_sys::JsString;

/// Letters that are no other letter with an accent.
const PLAIN: [(char, &str); 7] = [
    ('ø', "o"),
    ('ł', "l"),
    ('đ', "d"),
    ('ı', "i"),
    ('ß', "ss"),
    ('æ', "ae"),
    ('œ', "oe"),
];

/// The text without capitals and accents. The browser has the tables that this takes.
pub fn folded(text: &str) -> String {
    let apart = JsString::from(text).to_lower_case().normalize("NFKD");
    plain(&String::from(apart))
}

fn plain(apart: &str) -> String {
    let mut said = String::with_capacity(apart.len());
    for letter in apart.chars() {
        match PLAIN.iter().find(|(odd, _)| *odd == letter) {
            Some((_, plain)) => said.push_str(plain),
            None if ('\u{300}'..='\u{36f}').contains(&letter) => {}
            None => said.push(letter),
        }
    }
    said
}

/// Whether a folded text holds every word of another, wherever they stand.
pub fn holds(text: &str, sought: &str) -> bool {
    sought
        .split_whitespace()
        .all(|word| within::find(text, word).is_some())
}

#[cfg(test)]
mod tests {
    use super::{holds, plain};

    #[test]
    fn accents_fall_away() {
        assert_eq!(plain("ju\u{308}rgen mo\u{301}r"), "jurgen mor");
        assert_eq!(plain("smørgård, łotr, straße"), "smorgård, lotr, strasse");
    }

    #[test]
    fn every_word_is_held_in_any_order() {
        let text = "hay cart, quillet farm cart";
        for sought in ["", " ", "cart", "farm hay", "quil  ca"] {
            assert!(holds(text, sought), "{sought}");
        }
        for sought in ["waggon", "hay waggon", "hayfarm"] {
            assert!(!holds(text, sought), "{sought}");
        }
    }
}
