//! What a limit is and whose it is.

use super::answer::play;
use super::style::Style;
use crate::diagnosis::{Limit, Origin, Test};
use crate::survey::{Pad, Question};

/// A limit and its origin: `the shop's own limit: 1 mm or more anywhere; common practice, no
/// source`.
#[must_use]
pub fn limit(limit: &Limit, style: Style) -> String {
    let test = test(limit.question, &limit.test, style);
    match limit.origin {
        Origin::Published(source) => format!("a published limit: {test}; source: {source}"),
        Origin::Trade(source) => format!("a rule of the trade: {test}; source: {source}"),
        Origin::House => format!("the shop's own limit: {test}; common practice, no source"),
    }
}

fn test(question: Question, test: &Test, style: Style) -> String {
    match test {
        Test::Any => format!("any {} at all", noun(question)),
        Test::Anywhere(least) => format!("{} or more anywhere", style.gap(*least)),
        Test::AtPlacesAndAQuarter { each, places } => format!(
            "{} or more at {} or more places that are also a quarter of those looked at",
            style.gap(*each),
            number(*places)
        ),
        Test::Sum(least) => format!("{} or more, all places together", style.gap(*least)),
        Test::Felt(verdict) => format!("by hand, “{}” or worse at any place", play(*verdict)),
        Test::Answered(times) => answered(question, *times, style),
        Test::Neighbours => "two side by side, each loose enough for light work only".to_owned(),
        Test::AQuarter => {
            "a quarter of the wheel's spokes, each loose enough for light work only".to_owned()
        }
        Test::BesideALooseOne => "a broken spoke beside one that is loose at either end".to_owned(),
    }
}

fn noun(question: Question) -> &'static str {
    match question.pad() {
        Pad::Verdict(_) => "play",
        Pad::Gauge(_) | Pad::YesNo => "gap",
    }
}

fn answered(question: Question, times: usize, style: Style) -> String {
    let tyre = style.terms.tyre;
    match question {
        Question::KeeperPresent => "what keeps the wheel on is not there".to_owned(),
        Question::KeeperRight => "what keeps the wheel on is not the right part".to_owned(),
        Question::KeeperSecured => "what keeps the wheel on is not secured".to_owned(),
        Question::TyreShifts => format!("the {tyre} shifts by hand"),
        Question::SpokeBroken if times == 1 => "one broken spoke".to_owned(),
        Question::SpokeBroken => format!("{} or more broken spokes", number(times)),
        Question::TyreGap
        | Question::JointGap
        | Question::FelloeStep
        | Question::SpokeFoot
        | Question::SpokeRimEnd => format!("a bad answer at {} or more places", number(times)),
    }
}

/// Small numbers as words.
pub(super) fn number(count: usize) -> String {
    match count {
        1 => "one".to_owned(),
        2 => "two".to_owned(),
        3 => "three".to_owned(),
        4 => "four".to_owned(),
        _ => count.to_string(),
    }
}
