//! What each question is called and how it is asked.

use super::style::Style;
use super::terms::Terms;
use crate::survey::Question;

/// The short label of a question, without an article: `tyre gap`.
#[must_use]
pub fn short(question: Question, style: Style) -> String {
    let Terms {
        tyre, foot, felloe, ..
    } = style.terms;
    match question {
        Question::KeeperPresent => "keeper there".to_owned(),
        Question::KeeperRight => "keeper the right part".to_owned(),
        Question::KeeperSecured => "keeper secured".to_owned(),
        Question::TyreGap => format!("{tyre} gap"),
        Question::TyreShifts => format!("{tyre} shifts"),
        Question::JointGap => "joint gap".to_owned(),
        Question::FelloeStep => format!("{felloe} step"),
        Question::SpokeFoot => format!("spoke {foot}"),
        Question::SpokeRimEnd => "spoke rim end".to_owned(),
        Question::SpokeBroken => "spoke broken".to_owned(),
    }
}

/// The question as it is asked at one place.
#[must_use]
pub fn asks(question: Question, style: Style) -> String {
    let Terms {
        tyre,
        foot,
        felloe,
        sole,
        nave,
        tongue,
        ..
    } = style.terms;
    match question {
        Question::KeeperPresent => "Is what keeps the wheel on its arm there?".to_owned(),
        Question::KeeperRight => {
            "Is it the right part, and not a nail or a bolt in its stead?".to_owned()
        }
        Question::KeeperSecured => "Is it secured, so that it cannot work out?".to_owned(),
        Question::TyreGap => format!("How wide is the gap between {tyre} and {felloe}?"),
        Question::TyreShifts => format!("Does the {tyre} shift on the rim when pushed by hand?"),
        Question::JointGap => format!("How far does the joint stand open at the {sole}?"),
        Question::FelloeStep => format!("How high is the step between the two {felloe}s?"),
        Question::SpokeFoot => format!("Does the {foot} move in the {nave}?"),
        Question::SpokeRimEnd => format!("Does the {tongue} move in the {felloe}?"),
        Question::SpokeBroken => "Is the spoke broken?".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{asks, short};
    use crate::survey::Question;
    use crate::words::sample::style;

    #[test]
    fn every_question_has_a_label_and_is_asked() {
        let row = |question| format!("{}: {}", short(question, style()), asks(question, style()));
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        keeper there: Is what keeps the wheel on its arm there?
        keeper the right part: Is it the right part, and not a nail or a bolt in its stead?
        keeper secured: Is it secured, so that it cannot work out?
        tyre gap: How wide is the gap between tyre and felloe?
        tyre shifts: Does the tyre shift on the rim when pushed by hand?
        joint gap: How far does the joint stand open at the sole?
        felloe step: How high is the step between the two felloes?
        spoke foot: Does the foot move in the nave?
        spoke rim end: Does the tongue move in the felloe?
        spoke broken: Is the spoke broken?
        ");
    }
}
