//! What can be given as an answer: by a key, or typed on the number pad. The key's own text is read by the same
//! door as typing, so that what is written and what is meant cannot differ.

use cartside_core::quantity::format::FeelerStyle;
use cartside_core::quantity::{Length, LengthRange, Measured, Refusal, spelling};
use cartside_core::survey::{Answer, Pad, Play, Question};
use cartside_core::words;

/// An answer with the text it was given in.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// The answer.
    pub answer: Answer,
    /// The text on the key or in the field.
    pub written: String,
}

/// A key that gives an answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Key {
    /// The word that stands for it in the state of the page.
    pub code: &'static str,
    /// Its text.
    pub label: String,
    /// What it gives.
    pub given: Given,
}

/// The leaves of the gauge: the key's word, in millimetres, in thousandths of an inch. Common practice, no source.
const LEAVES: [(&str, &str, &str); 8] = [
    ("0", "0 mm", "0 thou"),
    ("0.25", "¼ mm", "10 thou"),
    ("0.5", "½ mm", "20 thou"),
    ("1", "1 mm", "40 thou"),
    ("1.5", "1½ mm", "60 thou"),
    ("2", "2 mm", "80 thou"),
    ("3", "3 mm", "120 thou"),
    ("5", "5 mm", "200 thou"),
];

/// How far a leaf or a reading by hand may be out, either way. Common practice, no source.
fn doubt(style: FeelerStyle) -> &'static str {
    match style {
        FeelerStyle::Millimetres => "¼ mm",
        FeelerStyle::Thou => "10 thou",
    }
}

/// The great keys of a question.
pub fn keys(question: Question, style: FeelerStyle) -> Vec<Key> {
    match question.pad() {
        Pad::Gauge(range) => gauge(range, style),
        Pad::Verdict(_) => Play::ALL.into_iter().map(verdict).collect(),
        Pad::YesNo => vec![
            plain("yes", "Yes", Answer::Yes),
            plain("no", "No", Answer::No),
            plain("cannot-see", "Can't see", Answer::CannotSee),
        ],
    }
}

/// The lesser keys of a question, which say that there is nothing to say.
pub fn lesser_keys(question: Question) -> Vec<Key> {
    let cannot_see = plain("cannot-see", "Can't see", Answer::CannotSee);
    let not_there = plain("not-there", "Not there", Answer::NotThere);
    match question.pad() {
        Pad::Gauge(_) => vec![
            cannot_see,
            plain("nothing-found", "Looked, nothing", Answer::NothingFound),
        ],
        Pad::Verdict(_) => vec![cannot_see, not_there],
        Pad::YesNo if question == Question::SpokeBroken => vec![not_there],
        Pad::YesNo => Vec::new(),
    }
}

/// The key that answers for every place still open, where there is one: all is sound.
pub fn rest_key(question: Question, style: FeelerStyle) -> Option<Key> {
    Some(match question {
        Question::SpokeFoot | Question::SpokeRimEnd => Key {
            code: "rest-tight",
            ..plain("tight", "The rest: tight", Answer::Play(Play::Tight))
        },
        Question::JointGap | Question::FelloeStep => Key {
            code: "rest-shut",
            label: if question == Question::JointGap {
                "The rest: shut"
            } else {
                "The rest: no step"
            }
            .to_owned(),
            ..gauge(range(question)?, style).into_iter().next()?
        },
        Question::SpokeBroken => Key {
            code: "rest-no",
            label: "The rest: not broken".to_owned(),
            ..plain("no", "No", Answer::No)
        },
        _ => return None,
    })
}

/// The range of what can be measured for a question, where anything can.
pub fn range(question: Question) -> Option<LengthRange> {
    match question.pad() {
        Pad::Gauge(range) | Pad::Verdict(range) => Some(range),
        Pad::YesNo => None,
    }
}

/// What was typed, as an answer.
///
/// # Errors
/// The text is not one length within the range; nothing is changed.
pub fn typed(text: &str, range: LengthRange, style: FeelerStyle) -> Result<Given, Refusal> {
    let value = spelling::parse(text, range, style.bare_unit())?;
    Ok(Given {
        answer: Answer::Length(Measured::new(value, length(doubt(style), style)?)?),
        written: text.to_owned(),
    })
}

fn gauge(range: LengthRange, style: FeelerStyle) -> Vec<Key> {
    let leaf = |(code, millimetres, thou): (&'static str, &str, &str)| {
        let text = match style {
            FeelerStyle::Millimetres => millimetres,
            FeelerStyle::Thou => thou,
        };
        Some(Key {
            code,
            label: text.to_owned(),
            given: typed(text, range, style).ok()?,
        })
    };
    LEAVES
        .into_iter()
        .filter_map(leaf)
        .chain(over(style))
        .collect()
}

/// The key for more than the thickest leaf.
fn over(style: FeelerStyle) -> Option<Key> {
    let (_, millimetres, thou) = LEAVES.last()?;
    let thickest = match style {
        FeelerStyle::Millimetres => millimetres,
        FeelerStyle::Thou => thou,
    };
    let answer = Answer::Over(length(thickest, style).ok()?);
    Some(plain("over", &format!("over {thickest}"), answer))
}

fn length(text: &str, style: FeelerStyle) -> Result<Length, Refusal> {
    spelling::parse(text, LengthRange::General, style.bare_unit())
}

fn verdict(play: Play) -> Key {
    let code = play.code();
    plain(code, words::answer::play(play), Answer::Play(play))
}

fn plain(code: &'static str, label: &str, answer: Answer) -> Key {
    Key {
        code,
        label: label.to_owned(),
        given: Given {
            answer,
            written: label.to_owned(),
        },
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use cartside_core::quantity::length::to_paper_mm;

    fn value(key: &Key) -> Option<f64> {
        key.given.answer.length().map(to_paper_mm)
    }

    #[test]
    fn each_leaf_means_what_stands_on_it() {
        let keys = keys(Question::TyreGap, FeelerStyle::Millimetres);
        let values: Vec<Option<f64>> = keys.iter().map(value).collect();
        assert_eq!(
            values,
            [0.0, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 5.0].map(Some)
        );
        for key in keys.iter().filter(|key| key.code != "over") {
            assert_eq!(key.code.parse::<f64>().ok(), value(key), "{}", key.label);
        }
    }

    #[test]
    fn a_leaf_in_thou_reaches_the_limits_its_neighbour_in_millimetres_reaches() {
        // 25.4 mm are 1000 thou: 20 thou are 0.508 mm, over the limit of 0.5 mm, and so on for 1, 1.5, 2, 3 mm.
        let thou = keys(Question::TyreGap, FeelerStyle::Thou);
        let reached = [0.0, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0];
        for (key, least) in thou.iter().zip(reached) {
            let value = value(key).unwrap();
            assert!(
                value >= least && value < least + 0.1,
                "{}: {value}",
                key.label
            );
        }
    }

    #[test]
    fn every_leaf_has_its_doubt() {
        for key in keys(Question::JointGap, FeelerStyle::Millimetres) {
            match key.given.answer {
                Answer::Length(measured) => assert_eq!(to_paper_mm(measured.doubt()), 0.25),
                other => assert!(matches!(other, Answer::Over(_)), "{other:?}"),
            }
        }
    }

    #[test]
    fn what_is_typed_is_kept_as_typed_or_refused() {
        let range = range(Question::SpokeFoot).unwrap();
        let given = typed("1 1/2 mm", range, FeelerStyle::Thou).unwrap();
        assert_eq!(given.written, "1 1/2 mm");
        assert_eq!(given.answer.length().map(to_paper_mm), Some(1.5));
        assert!(typed("9999", range, FeelerStyle::Millimetres).is_err());
    }
}
