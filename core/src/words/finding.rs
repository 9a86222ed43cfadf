//! One finding: what, where, how much, by which limit, and what was not looked at.

use super::limit::{felt, limit, number};
use super::place::places;
use super::style::Style;
use super::terms::Terms;
use crate::diagnosis::{Finding, Measure, Test};
use crate::survey::{Places, Question};
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
        where_: where_(finding, wheel, style),
        how_much: how_much(finding, style),
        limit: limit(&finding.limit, style),
        not_looked: not_looked(&finding.not_looked, wheel, style),
    }
}

fn where_(finding: &Finding, wheel: &Wheel, style: Style) -> String {
    let at = places(&finding.places, wheel, style);
    let over = finding.question.places() == Places::RoundTheTyre
        && finding
            .places
            .iter()
            .any(|place| matches!(place, Place::Spoke(_)));
    // Spokes come first in a list of places.
    if over { format!("over {at}") } else { at }
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
        Test::Neighbours => format!("{reach} with a loose one beside, of {of} looked at"),
        _ => format!("{reach} of the {of} places looked at"),
    }
}

fn said(finding: &Finding) -> String {
    match (&finding.limit.test, finding.places.as_slice()) {
        (Test::Felt(least), _) => felt(*least).to_owned(),
        (_, [Place::Whole]) => "as answered".to_owned(),
        (_, [_]) => "one".to_owned(),
        (_, places) => number(places.len()),
    }
}

fn not_looked(left: &[Place], wheel: &Wheel, style: Style) -> Option<String> {
    (!left.is_empty()).then(|| format!("Not looked at: {}.", places(left, wheel, style)))
}

#[cfg(test)]
mod tests {
    use super::finding;
    use crate::daybook::{Entry, Says};
    use crate::diagnosis::{Taken, house_limits, judge};
    use crate::quantity::length::millimetres;
    use crate::survey::{Answer, Play, Question};
    use crate::wheel::Place;
    use crate::words::sample::{mm, reading, style, wheel};

    type Given = (Question, Place, Answer);

    /// What these readings come to, each finding on its own lines.
    fn found(given: &[Given]) -> String {
        let entries = (1..).zip(given);
        let taken: Vec<Taken> = entries
            .map(|(n, (question, place, answer))| taken(reading(n, *question, *place, *answer)))
            .collect();
        let findings = judge(&wheel(), &taken, &house_limits()).findings;
        let rows = findings.iter().map(|it| {
            let words = finding(it, &wheel(), style());
            format!(
                "{} | {} | {}\n{}\n{}",
                words.heading,
                words.where_,
                words.how_much,
                words.limit,
                words.not_looked.unwrap_or_else(|| "-".to_owned())
            )
        });
        rows.collect::<Vec<_>>().join("\n")
    }

    fn taken(entry: Entry) -> Taken {
        let Says::Reading(reading) = entry.says else {
            panic!("no reading");
        };
        Taken {
            entry: entry.id,
            reading,
        }
    }

    fn spokes(question: Question, numbers: &[u16], answer: Answer) -> Vec<Given> {
        let at = |n: &u16| (question, Place::Spoke(*n), answer);
        numbers.iter().map(at).collect()
    }

    /// Whatever a bad answer to a question is, the finding has words.
    #[test]
    fn every_question_can_be_found_bad() {
        let bad = |question: Question| match question {
            Question::KeeperPresent | Question::KeeperRight | Question::KeeperSecured => Answer::No,
            Question::TyreShifts | Question::SpokeBroken => Answer::Yes,
            _ => mm(4.0),
        };
        let rows = Question::all().map(|question| {
            let place = question.places_on(&wheel())[0];
            found(&[(question, place, bad(question))])
        });
        insta::assert_snapshot!(rows.collect::<Vec<_>>().join("\n"), @r"
        Nothing keeps the wheel on its arm | whole wheel | as answered
        the shop's own limit: what keeps the wheel on is not there; common practice, no source
        -
        The wrong part keeps the wheel on | whole wheel | as answered
        the shop's own limit: what keeps the wheel on is not the right part; common practice, no source
        -
        What keeps the wheel on is not secured | whole wheel | as answered
        the shop's own limit: what keeps the wheel on is not secured; common practice, no source
        -
        Gap under the tyre | between 1 and 2 | 4 mm
        the shop's own limit: 3 mm or more anywhere; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8, between 10 and 11.
        The tyre shifts by hand | whole wheel | as answered
        the shop's own limit: the tyre shifts by hand; common practice, no source
        -
        Open joint | joint 1, the mark | 4 mm
        the shop's own limit: 2 mm or more, all places together; common practice, no source
        Not looked at: joints 2 to 6.
        Step between felloes | joint 1, the mark | 4 mm
        the shop's own limit: 3 mm or more anywhere; common practice, no source
        Not looked at: joints 2 to 6.
        Spoke loose at the foot | spoke 1 | 4 mm
        the shop's own limit: 1½ mm or more anywhere; common practice, no source
        Not looked at: spokes 2 to 12.
        Spoke loose at the rim end | spoke 1 | 4 mm
        the shop's own limit: 2 mm or more anywhere; common practice, no source
        Not looked at: spokes 2 to 12.
        Spoke broken or missing | spoke 1 | one
        the shop's own limit: one broken spoke; common practice, no source
        Not looked at: spokes 2 to 12.
        ");
    }

    #[test]
    fn how_much_is_told_by_each_measure() {
        let gap = |n, value| (Question::TyreGap, Place::Between(n), mm(value));
        let joint = |n, value| (Question::JointGap, Place::Joint(n), mm(value));
        let over = Answer::Over(millimetres(5.0));
        let (loose, moves) = (Answer::Play(Play::Loose), Answer::Play(Play::JustMoves));
        let mut beside = spokes(Question::SpokeBroken, &[12], Answer::Yes);
        beside.extend(spokes(Question::SpokeFoot, &[1], loose));
        let rows = [
            found(&[gap(1, 0.25), gap(12, 0.5)]),
            found(&[gap(1, 0.5), gap(4, 0.75), gap(7, 0.0), gap(10, 0.0)]),
            found(&[gap(1, 3.0), (Question::TyreGap, Place::Spoke(6), over)]),
            found(&[joint(1, 1.5), joint(2, 1.0), joint(4, 0.25)]),
            found(&spokes(Question::SpokeFoot, &[3], moves)),
            found(&spokes(Question::SpokeRimEnd, &[3], loose)),
            found(&spokes(Question::SpokeFoot, &[12, 1], loose)),
            found(&spokes(Question::SpokeFoot, &[1, 3, 5], loose)),
            found(&spokes(Question::SpokeRimEnd, &[1, 3, 5], mm(2.0))),
            found(&spokes(Question::SpokeBroken, &[2, 9, 11], Answer::Yes)),
            found(&beside),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        Gap under the tyre | between 1 and 2, between 12 and 1 | up to ½ mm
        the shop's own limit: any gap at all; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8.
        Gap under the tyre | between 1 and 2, between 4 and 5 | 2 of the 4 places looked at
        the shop's own limit: ½ mm or more at two or more places that are also a quarter of those looked at; common practice, no source
        -
        Gap under the tyre | over spoke 6; between 1 and 2 | up to 5 mm
        the shop's own limit: 3 mm or more anywhere; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8.
        Open joints | joints 1, 2 and 4 | 2¾ mm together
        the shop's own limit: 2 mm or more, all places together; common practice, no source
        Not looked at: joints 3, 5 and 6.
        Spoke loose at the foot | spoke 3 | moves by hand
        the shop's own limit: moves by hand at any place; common practice, no source
        Not looked at: spokes 1, 2 and 4 to 12.
        Spoke loose at the rim end | spoke 3 | loose by hand
        the shop's own limit: loose by hand at any place; common practice, no source
        Not looked at: spokes 1, 2 and 4 to 12.
        Spokes loose at the foot | spokes 1 and 12 | 2 with a loose one beside, of 2 looked at
        the shop's own limit: two side by side, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2 to 11.
        Spokes loose at the foot | spokes 1, 3 and 5 | 3 of the wheel's 12 spokes
        the shop's own limit: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2, 4 and 6 to 12.
        Spokes loose at the rim end | spokes 1, 3 and 5 | 3 of the wheel's 12 spokes
        the shop's own limit: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2, 4 and 6 to 12.
        Spokes broken or missing | spokes 2, 9 and 11 | three
        the shop's own limit: two or more broken spokes; common practice, no source
        Not looked at: spokes 1, 3 to 8, 10 and 12.
        Spoke broken beside a loose one | spoke 12 | one
        the shop's own limit: a broken spoke beside one that is loose at either end; common practice, no source
        Not looked at: spokes 1 to 11.
        Spoke loose at the foot | spoke 1 | moves by hand
        the shop's own limit: moves by hand at any place; common practice, no source
        Not looked at: spokes 2 to 12.
        ");
    }

    #[test]
    fn a_row_fully_looked_at_leaves_nothing_out() {
        let all: Vec<u16> = (1..=12).collect();
        let told = found(&spokes(Question::SpokeRimEnd, &all, mm(0.5)));
        assert!(told.ends_with("\n-"), "{told}");
    }
}
