//! What a limit is and whose it is.

use super::style::Style;
use crate::diagnosis::{Limit, Origin, Test};
use crate::survey::{Pad, Play, Question};

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

/// When a limit is reached: `1 mm or more anywhere`.
pub(super) fn test(question: Question, test: &Test, style: Style) -> String {
    match test {
        Test::Any => format!("any {} at all", noun(question)),
        Test::Anywhere(least) => format!("{} or more anywhere", style.gap(*least)),
        Test::AtPlacesAndAQuarter { each, places } => format!(
            "{} or more at {} or more places that are also a quarter of those looked at",
            style.gap(*each),
            number(*places)
        ),
        Test::Sum(least) => format!("{} or more, all places together", style.gap(*least)),
        Test::Felt(verdict) => format!("{} at any place", felt(*verdict)),
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

/// What the hand must say at least.
pub(super) fn felt(least: Play) -> &'static str {
    match least {
        Play::Tight => "felt by hand",
        Play::JustMoves => "moves by hand",
        Play::Loose => "loose by hand",
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

#[cfg(test)]
mod tests {
    use super::{limit, number};
    use crate::diagnosis::{Grade, Limit, Origin, Test, house_limits};
    use crate::quantity::length::millimetres;
    use crate::survey::Question;
    use crate::words::sample::{inches, style};

    #[test]
    fn every_house_limit_says_what_it_is_and_whose() {
        let row = |row: &Limit| format!("{:?}: {}", row.question, limit(row, style()));
        insta::assert_snapshot!(house_limits().iter().map(row).collect::<Vec<_>>().join("\n"), @r"
        KeeperPresent: the shop's own limit: what keeps the wheel on is not there; common practice, no source
        KeeperRight: the shop's own limit: what keeps the wheel on is not the right part; common practice, no source
        KeeperSecured: the shop's own limit: what keeps the wheel on is not secured; common practice, no source
        TyreGap: the shop's own limit: any gap at all; common practice, no source
        TyreGap: the shop's own limit: ½ mm or more at two or more places that are also a quarter of those looked at; common practice, no source
        TyreGap: the shop's own limit: 1 mm or more anywhere; common practice, no source
        TyreGap: the shop's own limit: 3 mm or more anywhere; common practice, no source
        TyreShifts: the shop's own limit: the tyre shifts by hand; common practice, no source
        JointGap: the shop's own limit: any gap at all; common practice, no source
        JointGap: the shop's own limit: 2 mm or more, all places together; common practice, no source
        JointGap: the shop's own limit: 10 mm or more, all places together; common practice, no source
        FelloeStep: the shop's own limit: 3 mm or more anywhere; common practice, no source
        SpokeFoot: the shop's own limit: moves by hand at any place; common practice, no source
        SpokeFoot: the shop's own limit: any play at all; common practice, no source
        SpokeFoot: the shop's own limit: 1½ mm or more anywhere; common practice, no source
        SpokeFoot: the shop's own limit: two side by side, each loose enough for light work only; common practice, no source
        SpokeFoot: the shop's own limit: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        SpokeRimEnd: the shop's own limit: ½ mm or more anywhere; common practice, no source
        SpokeRimEnd: the shop's own limit: moves by hand at any place; common practice, no source
        SpokeRimEnd: the shop's own limit: 2 mm or more anywhere; common practice, no source
        SpokeRimEnd: the shop's own limit: loose by hand at any place; common practice, no source
        SpokeRimEnd: the shop's own limit: 5 mm or more anywhere; common practice, no source
        SpokeRimEnd: the shop's own limit: two side by side, each loose enough for light work only; common practice, no source
        SpokeRimEnd: the shop's own limit: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        SpokeBroken: the shop's own limit: one broken spoke; common practice, no source
        SpokeBroken: the shop's own limit: two or more broken spokes; common practice, no source
        SpokeBroken: the shop's own limit: a broken spoke beside one that is loose at either end; common practice, no source
        ");
    }

    #[test]
    fn a_source_is_named() {
        let from = |origin| {
            let row = Limit {
                question: Question::TyreGap,
                grade: Grade::Note,
                test: Test::Anywhere(millimetres(0.3048)),
                origin,
            };
            limit(&row, inches())
        };
        insta::assert_snapshot!(from(Origin::Published("a handbook, p. 3")), @"a published limit: 12 thou or more anywhere; source: a handbook, p. 3");
        insta::assert_snapshot!(from(Origin::Trade("as told in the county")), @"a rule of the trade: 12 thou or more anywhere; source: as told in the county");
    }

    /// A row this shop has not must still read, since limits can be edited.
    #[test]
    fn any_bad_answer_to_any_question_reads() {
        let row = |question| {
            let row = Limit {
                question,
                grade: Grade::Note,
                test: Test::Answered(3),
                origin: Origin::House,
            };
            limit(&row, style())
        };
        insta::assert_snapshot!(Question::all().map(row).collect::<Vec<_>>().join("\n"), @r"
        the shop's own limit: what keeps the wheel on is not there; common practice, no source
        the shop's own limit: what keeps the wheel on is not the right part; common practice, no source
        the shop's own limit: what keeps the wheel on is not secured; common practice, no source
        the shop's own limit: a bad answer at three or more places; common practice, no source
        the shop's own limit: the tyre shifts by hand; common practice, no source
        the shop's own limit: a bad answer at three or more places; common practice, no source
        the shop's own limit: a bad answer at three or more places; common practice, no source
        the shop's own limit: a bad answer at three or more places; common practice, no source
        the shop's own limit: a bad answer at three or more places; common practice, no source
        the shop's own limit: three or more broken spokes; common practice, no source
        ");
        assert_eq!(
            [0, 1, 2, 3, 4, 5].map(number).join(" "),
            "0 one two three four 5"
        );
    }
}
