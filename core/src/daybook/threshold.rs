//! The shop's own value for one row of the table of limits. The table itself is in a room below;
//! here a row is known by its name alone, so that a row of another version is kept.

use crate::quantity::{Length, Percent};

/// At what a limit is reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Threshold {
    /// A length.
    Length(Length),
    /// A share of a whole.
    Percent(Percent),
    /// So many places.
    Count(u32),
}

/// What the shop sets for one row.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitSaid {
    /// The name of the row: question, grade and test, `tyre-gap/keep-empty/anywhere`.
    pub row: String,
    /// The value; `None` if the row is not used.
    pub threshold: Option<Threshold>,
}

/// Whether a slot has the form of a row's name: three words of small letters and hyphens.
pub fn is_row(slot: &str) -> bool {
    let word =
        |word: &str| !word.is_empty() && word.bytes().all(|c| c.is_ascii_lowercase() || c == b'-');
    slot.split('/').count() == 3 && slot.split('/').all(word)
}

#[cfg(test)]
mod tests {
    use super::is_row;

    #[test]
    fn a_row_has_three_words() {
        assert!(is_row("tyre-gap/keep-empty/anywhere"));
        for slot in [
            "tyre-gap", "a/b", "a/b/c/d", "a//c", "a/b/", "a/b/C", "a/b/3", "",
        ] {
            assert!(!is_row(slot), "{slot}");
        }
    }
}
