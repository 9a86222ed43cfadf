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

#[cfg(test)]
mod tests {
    use super::{answer, told};
    use crate::quantity::Measured;
    use crate::quantity::length::millimetres;
    use crate::survey::{Answer, Question};
    use crate::words::sample::{answers, inches, mm, style};

    #[test]
    fn every_answer_has_words() {
        let rows = answers().map(|said| answer(&said, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        ½ mm ± ¼ mm
        over 5 mm
        tight
        just moves
        loose
        yes
        no
        can't see
        not there
        looked, nothing found
        ");
    }

    #[test]
    fn a_measure_is_written_as_the_reader_likes() {
        let sure = Measured::new(millimetres(1.5), millimetres(0.0)).unwrap();
        assert_eq!(answer(&Answer::Length(sure), style()), "1½ mm");
        insta::assert_snapshot!(answer(&mm(0.508), inches()), @"20 thou ± 10 thou");
        insta::assert_snapshot!(answer(&mm(0.3), style()), @"0.3 mm ± ¼ mm");
    }

    #[test]
    fn every_answer_to_every_question_has_words() {
        let row = |question| {
            let told = answers().map(|said| told(question, &said, style()));
            format!("{question:?}: {}", told.join(" | "))
        };
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        KeeperPresent: keeper ½ mm ± ¼ mm | keeper over 5 mm | keeper tight | keeper just moves | keeper loose | keeper there | keeper not there | keeper: can't see | keeper: not there | keeper: looked, nothing found
        KeeperRight: right keeper ½ mm ± ¼ mm | right keeper over 5 mm | right keeper tight | right keeper just moves | right keeper loose | keeper the right part | keeper not the right part | right keeper: can't see | right keeper: not there | right keeper: looked, nothing found
        KeeperSecured: keeper's securing ½ mm ± ¼ mm | keeper's securing over 5 mm | keeper's securing tight | keeper's securing just moves | keeper's securing loose | keeper secured | keeper not secured | keeper's securing: can't see | keeper's securing: not there | keeper's securing: looked, nothing found
        TyreGap: tyre gap ½ mm ± ¼ mm | tyre gap over 5 mm | tyre gap tight | tyre gap just moves | tyre gap loose | tyre gap: yes | tyre gap: no | tyre gap: can't see | tyre gap: not there | tyre gap: looked, nothing found
        TyreShifts: shift of the tyre ½ mm ± ¼ mm | shift of the tyre over 5 mm | shift of the tyre tight | shift of the tyre just moves | shift of the tyre loose | tyre shifts by hand | tyre does not shift by hand | shift of the tyre: can't see | shift of the tyre: not there | shift of the tyre: looked, nothing found
        JointGap: gap ½ mm ± ¼ mm | gap over 5 mm | gap tight | gap just moves | gap loose | gap: yes | gap: no | gap: can't see | gap: not there | gap: looked, nothing found
        FelloeStep: step ½ mm ± ¼ mm | step over 5 mm | step tight | step just moves | step loose | step: yes | step: no | step: can't see | step: not there | step: looked, nothing found
        SpokeFoot: foot ½ mm ± ¼ mm | foot over 5 mm | foot tight | foot just moves | foot loose | foot: yes | foot: no | foot: can't see | foot: not there | foot: looked, nothing found
        SpokeRimEnd: rim end ½ mm ± ¼ mm | rim end over 5 mm | rim end tight | rim end just moves | rim end loose | rim end: yes | rim end: no | rim end: can't see | rim end: not there | rim end: looked, nothing found
        SpokeBroken: spoke ½ mm ± ¼ mm | spoke over 5 mm | spoke tight | spoke just moves | spoke loose | broken | not broken | spoke: can't see | spoke: not there | spoke: looked, nothing found
        ");
    }
}
