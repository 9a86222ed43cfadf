//! Every sentence the app says about the wheel, the day book and the diagnosis, made from enums
//! with data. Trade words come from the one table in [`terms`], lengths are written as the
//! [`Style`] asks; nothing here decides anything.

pub mod within;
pub mod style;
pub mod terms;
pub mod term;
pub mod place;
pub mod question;
pub mod answer;
pub mod how;
pub mod need;
pub mod standing;
pub mod limit;
pub mod finding;
pub mod missing;
pub mod when;
pub mod marks;
pub mod says;
pub mod problem;
pub mod dispute;
pub mod outcome;
pub mod refusal;
pub mod visit;
pub mod caution;
pub mod cause;
pub mod cure;
pub mod glossary;
pub mod tyring;
pub mod history;
pub mod timber;
pub mod grip;
pub mod year;
pub mod drying;
pub mod report;

#[cfg(test)]
mod sample;
#[cfg(test)]
mod tests;

pub use cause::CauseWords;
pub use caution::Card;
pub use dispute::{DisputeWords, SideWords};
pub use finding::FindingWords;
pub use glossary::Term;
pub use how::HowWords;
pub use standing::Examined;
pub use style::Style;
pub use terms::Terms;

/// The text with its first letter made a capital.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut text = text.to_owned();
    // Every sentence here begins with a letter of ASCII; the table of all others weighs 6 kB of the download.
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// A length as it is said, without the mark that it is inexact.
fn unmarked(said: &str) -> &str {
    said.strip_prefix("≈ ").unwrap_or(said)
}

/// The words as a list: `a, b and c`.
fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
