//! One finding: what, where, how much, by which limit, and what was not looked at.

use super::answer::play;
use super::limit::{limit, number};
use super::place::places;
use super::style::Style;
use super::terms::Terms;
use crate::diagnosis::{Finding, Measure, Test};
use crate::survey::Question;
use crate::wheel::{Place, Wheel};

/// A finding in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FindingWords {
    /// What was found.
    pub heading: String,
    /// Where.
    pub where_: String,
    /// How much.
    pub how_much: String,
    /// The limit that is reached, and whose it is.
    pub limit: String,
    /// The places of the same row that were not looked at, if there are any.
    pub not_looked: Option<String>,
}

/// Puts a finding on this wheel into words.
#[must_use]
pub fn finding(finding: &Finding, wheel: &Wheel, style: Style) -> FindingWords {
    FindingWords {
        heading: heading(finding, style),
        where_: places(&finding.places, wheel, style),
        how_much: how_much(finding, style),
        limit: limit(&finding.limit, style),
        not_looked: not_looked(&finding.not_looked, wheel, style),
    }
}

fn heading(finding: &Finding, style: Style) -> String {
    let Terms {
        tyre, felloe, foot, ..
    } = style.terms;
    let many = finding.places.len() > 1;
    let spokes = if many { "Spokes" } else { "Spoke" };
    match finding.question {
        Question::KeeperPresent => "Nothing keeps the wheel on its arm".to_owned(),
        Question::KeeperRight => "The wrong part keeps the wheel on".to_owned(),
        Question::KeeperSecured => "What keeps the wheel on is not secured".to_owned(),
        Question::TyreGap => format!("Gap under the {tyre}"),
        Question::TyreShifts => format!("The {tyre} shifts by hand"),
        Question::JointGap if many => "Open joints".to_owned(),
        Question::JointGap => "Open joint".to_owned(),
        Question::FelloeStep => format!("Step between {felloe}s"),
        Question::SpokeFoot => format!("{spokes} loose at the {foot}"),
        Question::SpokeRimEnd => format!("{spokes} loose at the rim end"),
        Question::SpokeBroken if finding.limit.test == Test::BesideALooseOne => {
            format!("{spokes} broken beside a loose one")
        }
        Question::SpokeBroken => format!("{spokes} broken or missing"),
    }
}

fn how_much(finding: &Finding, style: Style) -> String {
    let many = finding.places.len() > 1;
    match finding.measure {
        Measure::Greatest(length) if many => format!("up to {}", style.gap(length)),
        Measure::Greatest(length) => style.gap(length),
        Measure::Sum(length) if many => format!("{} together", style.gap(length)),
        Measure::Sum(length) => style.gap(length),
        Measure::Places { reach, of } => counted(&finding.limit.test, reach, of),
        Measure::Said => said(finding),
    }
}

fn counted(test: &Test, reach: usize, of: usize) -> String {
    match test {
        Test::AQuarter => format!("{reach} of the wheel's {of} spokes"),
        Test::Neighbours => format!("{reach} beside each other, of {of} looked at"),
        _ => format!("{reach} of the {of} places looked at"),
    }
}

fn said(finding: &Finding) -> String {
    match (&finding.limit.test, finding.places.as_slice()) {
        (Test::Felt(least), _) => format!("“{}” or worse by hand, not measured", play(*least)),
        (_, [Place::Whole]) => "as answered".to_owned(),
        (_, [_]) => "one".to_owned(),
        (_, places) => number(places.len()),
    }
}

fn not_looked(left: &[Place], wheel: &Wheel, style: Style) -> Option<String> {
    (!left.is_empty()).then(|| format!("Not looked at: {}.", places(left, wheel, style)))
}
