//! What an answer is called, alone and together with its question.

use super::style::Style;
use super::terms::Terms;
use crate::quantity::Measured;
use crate::quantity::length::millimetres;
use crate::survey::{Answer, Play, Question};

/// An answer alone: `½ mm ± ¼ mm`, `over 5 mm`, `tight`.
#[must_use]
pub fn answer(answer: &Answer, style: Style) -> String {
    match answer {
        Answer::Length(measured) => measured_gap(*measured, style),
        Answer::Over(least) => format!("over {}", style.gap(*least)),
        Answer::Play(verdict) => play(*verdict).to_owned(),
        Answer::Yes => "yes".to_owned(),
        Answer::No => "no".to_owned(),
        Answer::CannotSee => "can't see".to_owned(),
        Answer::NotThere => "not there".to_owned(),
        Answer::NothingFound => "looked, nothing found".to_owned(),
    }
}

fn measured_gap(measured: Measured, style: Style) -> String {
    let value = style.gap(measured.value());
    if measured.doubt() == millimetres(0.0) {
        value
    } else {
        format!(
            "{value} ± {}",
            style.gap(measured.doubt()).trim_start_matches("≈ ")
        )
    }
}

/// A verdict of the hand.
#[must_use]
pub fn play(play: Play) -> &'static str {
    match play {
        Play::Tight => "tight",
        Play::JustMoves => "just moves",
        Play::Loose => "loose",
    }
}

/// An answer with what it was an answer to: `foot loose`, `keeper not secured`.
#[must_use]
pub fn told(question: Question, said: &Answer, style: Style) -> String {
    let (noun, yes_no) = nouns(question, style.terms);
    let words = answer(said, style);
    match (said, yes_no) {
        (Answer::Yes, Some((yes, _))) => yes,
        (Answer::No, Some((_, no))) => no,
        (Answer::Length(_) | Answer::Over(_) | Answer::Play(_), _) => format!("{noun} {words}"),
        _ => format!("{noun}: {words}"),
    }
}

/// What is asked about, and what *yes* and *no* mean where the question takes them.
fn nouns(question: Question, terms: &Terms) -> (String, Option<(String, String)>) {
    let Terms { tyre, foot, .. } = terms;
    let said = |yes: String, no: String| Some((yes, no));
    match question {
        Question::KeeperPresent => (
            "keeper".to_owned(),
            said("keeper there".to_owned(), "keeper not there".to_owned()),
        ),
        Question::KeeperRight => (
            "right keeper".to_owned(),
            said(
                "keeper the right part".to_owned(),
                "keeper not the right part".to_owned(),
            ),
        ),
        Question::KeeperSecured => (
            "keeper's securing".to_owned(),
            said("keeper secured".to_owned(), "keeper not secured".to_owned()),
        ),
        Question::TyreGap => (format!("{tyre} gap"), None),
        Question::TyreShifts => (
            format!("shift of the {tyre}"),
            said(
                format!("{tyre} shifts by hand"),
                format!("{tyre} does not shift by hand"),
            ),
        ),
        Question::JointGap => ("gap".to_owned(), None),
        Question::FelloeStep => ("step".to_owned(), None),
        Question::SpokeFoot => ((*foot).to_owned(), None),
        Question::SpokeRimEnd => ("rim end".to_owned(), None),
        Question::SpokeBroken => (
            "spoke".to_owned(),
            said("broken".to_owned(), "not broken".to_owned()),
        ),
    }
}
