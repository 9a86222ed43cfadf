//! What can be given as an answer: by a key, or typed on the number pad. The key's own text is read by the same
//! door as typing, so that what is written and what is meant cannot differ.

use cartside_core::quantity::format::{FeelerStyle, LengthStyle};
use cartside_core::quantity::spelling::{self, BareUnit};
use cartside_core::quantity::{Length, LengthRange, Measured, Percent, Refusal};
use cartside_core::survey::{Answer, Crack, Pad, Places, Play, Question, Ring};
use cartside_core::words::{self, Style};

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

/// How deep a blade goes in, in the same way: rot's limits lie deeper than any leaf. Common practice, no source.
const DEPTHS: [(&str, &str, &str); 8] = [
    ("0", "0 mm", "0 thou"),
    ("1", "1 mm", "40 thou"),
    ("2", "2 mm", "80 thou"),
    ("4", "4 mm", "160 thou"),
    ("6", "6 mm", "240 thou"),
    ("8", "8 mm", "320 thou"),
    ("10", "10 mm", "400 thou"),
    ("15", "15 mm", "600 thou"),
];

/// How far a rim wanders or shakes, which is read off a rule: in millimetres, in inches. A reading between two of them is
/// typed. Common practice, no source.
const MOVES: [(&str, &str, &str); 9] = [
    ("0", "0 mm", "0 in"),
    ("2", "2 mm", "1/16 in"),
    ("4", "4 mm", "3/16 in"),
    ("6", "6 mm", "1/4 in"),
    ("8", "8 mm", "5/16 in"),
    ("10", "10 mm", "3/8 in"),
    ("12", "12 mm", "1/2 in"),
    ("20", "20 mm", "13/16 in"),
    ("30", "30 mm", "1 3/16 in"),
];

/// How far a wheel slides along its arm, in the same way: the limits of a mail axle lie near 1 mm, those of a farm cart
/// near 20. Common practice, no source.
const SLIDES: [(&str, &str, &str); 9] = [
    ("0", "0 mm", "0 in"),
    ("1", "1 mm", "1/32 in"),
    ("2", "2 mm", "1/16 in"),
    ("3", "3 mm", "1/8 in"),
    ("6", "6 mm", "1/4 in"),
    ("10", "10 mm", "3/8 in"),
    ("14", "14 mm", "9/16 in"),
    ("21", "21 mm", "13/16 in"),
    ("31", "31 mm", "1 1/4 in"),
];

/// Moisture as a meter gives it, in per cent of the dry weight.
const MOIST: [&str; 9] = ["8", "10", "12", "14", "15", "16", "18", "20", "25"];

fn leaves(range: LengthRange) -> [(&'static str, &'static str, &'static str); 8] {
    match range {
        LengthRange::RotDepth => DEPTHS,
        _ => LEAVES,
    }
}

/// How far a leaf or a reading by hand may be out, either way. Common practice, no source.
fn doubt(style: FeelerStyle) -> &'static str {
    match style {
        FeelerStyle::Millimetres => "¼ mm",
        FeelerStyle::Thou => "10 thou",
    }
}

/// How far a size that is typed may be out, either way. Common practice, no source.
fn doubt_of_size(question: Question) -> &'static str {
    match question {
        Question::Dish => "2 mm",
        Question::EndPlay | Question::TyreLeft => "½ mm",
        _ => "1 mm",
    }
}

/// The great keys of a question.
pub fn keys(question: Question, style: Style) -> Vec<Key> {
    match question.pad() {
        Pad::Gauge(range) => gauge(range, style.feeler),
        Pad::Verdict(_) => Play::ALL.into_iter().map(verdict).collect(),
        Pad::Fastening => vec![verdict(Play::Tight), verdict(Play::Loose)],
        Pad::Ring => Ring::ALL.into_iter().map(ring).collect(),
        Pad::Crack => [plain("nothing-found", "No crack", Answer::NothingFound)]
            .into_iter()
            .chain(Crack::ALL.map(|found| {
                let words = words::answer::crack(found, style);
                plain(found.code(), &words, Answer::Crack(found))
            }))
            .collect(),
        Pad::Share if question == Question::KeeperWorn => {
            WORN.into_iter().filter_map(worn).collect()
        }
        Pad::Share => MOIST.into_iter().filter_map(moist).collect(),
        Pad::Size(_) => sizes(question, style),
        Pad::YesNo => vec![
            plain("yes", "Yes", Answer::Yes),
            plain("no", "No", Answer::No),
            plain("cannot-see", "Can't see", Answer::CannotSee),
        ],
    }
}

/// How far a pin may be worn, as it is judged by eye.
const WORN: [(&str, &str); 4] = [
    ("0", "not worn"),
    ("10", "10 %"),
    ("25", "25 %"),
    ("50", "50 % or more"),
];

fn worn((code, label): (&'static str, &str)) -> Option<Key> {
    let share = Percent::parse(code).ok()?;
    Some(plain(code, label, Answer::Share(share)))
}

fn moist(code: &'static str) -> Option<Key> {
    let share = Percent::parse(code).ok()?;
    Some(plain(code, &format!("{code} %"), Answer::Share(share)))
}

/// The keys of a size that is mostly small; those of the others are the digits.
fn sizes(question: Question, style: Style) -> Vec<Key> {
    let table = match question {
        Question::RunOut | Question::OutOfRound | Question::Shake => &MOVES,
        Question::EndPlay => &SLIDES,
        _ => return Vec::new(),
    };
    let keys = table.iter().filter_map(|(code, millimetres, inches)| {
        let text = match style.length {
            LengthStyle::Millimetres => millimetres,
            LengthStyle::Inches(_) => inches,
        };
        Some(plain(code, text, typed(text, question, style).ok()?.answer))
    });
    keys.collect()
}

fn ring(sound: Ring) -> Key {
    plain(
        sound.code(),
        words::answer::ring(sound),
        Answer::Ring(sound),
    )
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
        Pad::Fastening => vec![plain("not-there", "Missing", Answer::NotThere), cannot_see],
        Pad::Ring | Pad::Crack | Pad::Size(_) | Pad::Share => vec![cannot_see],
        Pad::YesNo if question == Question::SpokeBroken => vec![not_there],
        Pad::YesNo => Vec::new(),
    }
}

/// What is given where all is sound; none for what is measured whatever the wheel is like.
pub fn sound(question: Question, style: Style) -> Option<Given> {
    let looked = || Given {
        answer: Answer::NothingFound,
        written: "Looked, nothing".to_owned(),
    };
    Some(match question.pad() {
        Pad::Verdict(_) | Pad::Fastening => verdict(Play::Tight).given,
        Pad::Ring => ring(Ring::Rings).given,
        Pad::Crack => looked(),
        Pad::Gauge(range) => match question {
            Question::RotFelloe | Question::RotSpoke | Question::RotNave | Question::TyreGap => {
                looked()
            }
            _ => nought(range, style)?.given,
        },
        Pad::YesNo if question.sound_is_yes() => plain("yes", "Yes", Answer::Yes).given,
        Pad::YesNo => plain("no", "No", Answer::No).given,
        Pad::Share if question == Question::KeeperWorn => WORN.into_iter().find_map(worn)?.given,
        Pad::Size(_) | Pad::Share => return None,
    })
}

/// The key that answers for every place still open, where there is one: all is sound. A gap under the tyre is not
/// among them: each of its places is tried with a leaf of its own.
pub fn rest_key(question: Question, style: Style) -> Option<Key> {
    if matches!(question.places(), Places::Whole | Places::Nave) || question == Question::TyreGap {
        return None;
    }
    let (code, label) = match question.pad() {
        Pad::Verdict(_) | Pad::Fastening => ("rest-tight", "The rest: tight"),
        Pad::Ring => ("rest-rings", "The rest: rings"),
        Pad::Crack => ("rest-whole", "The rest: no crack"),
        Pad::Gauge(_) => match question {
            Question::RotFelloe | Question::RotSpoke => ("rest-sound", "The rest: sound"),
            Question::FelloeStep => ("rest-shut", "The rest: no step"),
            Question::StandOff => ("rest-home", "The rest: home"),
            _ => ("rest-shut", "The rest: shut"),
        },
        Pad::YesNo if question == Question::SpokeBroken => ("rest-no", "The rest: not broken"),
        Pad::YesNo => ("rest-no", "The rest: no"),
        Pad::Size(_) | Pad::Share => return None,
    };
    Some(Key {
        code,
        label: label.to_owned(),
        given: sound(question, style)?,
    })
}

fn nought(range: LengthRange, style: Style) -> Option<Key> {
    gauge(range, style.feeler).into_iter().next()
}

/// Whether an answer can be typed.
pub fn is_typed(question: Question) -> bool {
    matches!(
        question.pad(),
        Pad::Gauge(_) | Pad::Verdict(_) | Pad::Size(_) | Pad::Share
    )
}

/// What was typed, as an answer.
///
/// # Errors
/// The text is not what is asked for, or not within its range; nothing is changed.
pub fn typed(text: &str, question: Question, style: Style) -> Result<Given, Refusal> {
    let answer = match question.pad() {
        Pad::Size(range) => {
            let value = spelling::parse(text, range, style.length.bare_unit())?;
            let doubt = spelling::parse(
                doubt_of_size(question),
                LengthRange::General,
                BareUnit::Millimetre,
            )?;
            Answer::Length(Measured::new(value, doubt)?)
        }
        Pad::Gauge(range) | Pad::Verdict(range) => read(text, range, style.feeler)?,
        _ => Answer::Share(Percent::parse(text)?),
    };
    Ok(Given {
        answer,
        written: text.to_owned(),
    })
}

fn read(text: &str, range: LengthRange, style: FeelerStyle) -> Result<Answer, Refusal> {
    let value = spelling::parse(text, range, style.bare_unit())?;
    Ok(Answer::Length(Measured::new(
        value,
        length(doubt(style), style)?,
    )?))
}

fn gauge(range: LengthRange, style: FeelerStyle) -> Vec<Key> {
    let leaf = |(code, millimetres, thou): (&'static str, &str, &str)| {
        let text = match style {
            FeelerStyle::Millimetres => millimetres,
            FeelerStyle::Thou => thou,
        };
        Some(plain(code, text, read(text, range, style).ok()?))
    };
    leaves(range)
        .into_iter()
        .filter_map(leaf)
        .chain(over(range, style))
        .collect()
}

/// The key for more than the thickest leaf.
fn over(range: LengthRange, style: FeelerStyle) -> Option<Key> {
    let (_, millimetres, thou) = *leaves(range).last()?;
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
    use cartside_core::quantity::format::Fraction;
    use cartside_core::quantity::length::to_paper_mm;
    use std::collections::BTreeSet;

    fn in_thou() -> Style {
        let millimetres = Style::default();
        Style::british(millimetres.length, FeelerStyle::Thou)
    }

    fn value(key: &Key) -> Option<f64> {
        key.given.answer.length().map(to_paper_mm)
    }

    #[test]
    fn each_leaf_means_what_stands_on_it() {
        let keys = keys(Question::TyreGap, Style::default());
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
        let thou = keys(Question::TyreGap, in_thou());
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
    fn a_depth_of_rot_reaches_each_of_its_limits_by_a_key() {
        for style in [Style::default(), in_thou()] {
            let keys = keys(Question::RotNave, style);
            for least in [2.0, 6.0, 10.0] {
                let reaches =
                    |key: &Key| value(key).is_some_and(|mm| (least..least + 0.2).contains(&mm));
                assert!(keys.iter().any(reaches), "{least}");
            }
        }
    }

    #[test]
    fn a_size_that_is_mostly_small_reaches_each_of_its_limits_by_a_key() {
        let limits: [(Question, &[f64]); 4] = [
            (Question::RunOut, &[6.0, 12.0]),
            (Question::OutOfRound, &[4.0, 10.0, 20.0]),
            (Question::Shake, &[6.0, 30.0]),
            // Over 13, 20 and 30 on a farm's linch pin, over 1, 2 and 3 on a mail axle.
            (Question::EndPlay, &[14.0, 21.0, 31.0, 2.0, 3.0, 6.0]),
        ];
        let inches = Style::british(LengthStyle::Inches(Fraction::Sixteenths), FeelerStyle::Thou);
        for style in [Style::default(), inches] {
            for (question, limits) in limits {
                for least in limits {
                    let reaches = |key: &Key| {
                        value(key).is_some_and(|mm| (*least - 0.5..least + 1.0).contains(&mm))
                    };
                    assert!(
                        keys(question, style).iter().any(reaches),
                        "{question:?} {least}"
                    );
                }
            }
        }
    }

    #[test]
    fn what_is_sound_reaches_no_limit_and_is_what_a_key_gives() {
        for question in Question::all() {
            let Some(given) = sound(question, Style::default()) else {
                continue;
            };
            let keys = keys(question, Style::default()).into_iter();
            let mut keys = keys
                .chain(lesser_keys(question))
                .map(|key| key.given.answer);
            assert!(keys.any(|answer| answer == given.answer), "{question:?}");
            let nought = given
                .answer
                .length()
                .is_none_or(|mm| to_paper_mm(mm) == 0.0);
            assert!(nought && given.answer.looked(), "{question:?}");
        }
    }

    #[test]
    fn every_leaf_has_its_doubt() {
        for key in keys(Question::JointGap, Style::default()) {
            match key.given.answer {
                Answer::Length(measured) => assert_eq!(to_paper_mm(measured.doubt()), 0.25),
                other => assert!(matches!(other, Answer::Over(_)), "{other:?}"),
            }
        }
    }

    #[test]
    fn what_is_typed_is_kept_as_typed_or_refused() {
        let given = typed("1 1/2 mm", Question::SpokeFoot, in_thou()).unwrap();
        assert_eq!(given.written, "1 1/2 mm");
        assert_eq!(given.answer.length().map(to_paper_mm), Some(1.5));
        assert!(typed("9999", Question::SpokeFoot, Style::default()).is_err());
        let dish = typed("−12", Question::Dish, Style::default()).unwrap();
        assert_eq!(dish.answer.length().map(to_paper_mm), Some(-12.0));
        let share = typed("12½", Question::Moisture, Style::default()).unwrap();
        assert_eq!(
            share.answer,
            Answer::Share(Percent::from_paper(12.5).unwrap())
        );
        assert!(typed("101", Question::Moisture, Style::default()).is_err());
    }

    #[test]
    fn every_question_can_be_answered_by_keys_that_its_pad_takes() {
        for question in Question::all() {
            let keys = keys(question, Style::default());
            let lesser = lesser_keys(question);
            assert!(!keys.is_empty() || is_typed(question), "{question:?}");
            let codes: BTreeSet<&str> = keys.iter().chain(&lesser).map(|key| key.code).collect();
            assert_eq!(codes.len(), keys.len() + lesser.len(), "{question:?}");
            assert!(codes.contains("cannot-see"), "{question:?}");
        }
    }
}
