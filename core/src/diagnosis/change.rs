//! Whether an answer is worse than an earlier one to the same question at the same place.

use crate::quantity::Length;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::survey::{Answer, Crack, Pad, Play, Question, Ring};

use super::seen::is_bad;

/// How what was found stands to what was found before, the gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Change {
    /// It is worse by more than the doubt of both readings.
    Worse,
    /// It differs, and which of the two is worse cannot be told.
    Differs,
    /// It was never looked at before.
    New,
    /// It was looked at before and is not now.
    NotLookedAt,
    /// It is better by more than the doubt of both readings.
    Better,
    /// No difference beyond what two readings may differ by.
    Same,
}

impl Change {
    /// Every change, the gravest first.
    pub const ALL: [Change; 6] = [
        Change::Worse,
        Change::Differs,
        Change::New,
        Change::NotLookedAt,
        Change::Better,
        Change::Same,
    ];

    /// The word that stands for this change in the state of a page.
    pub fn code(self) -> &'static str {
        match self {
            Change::Worse => "worse",
            Change::Differs => "differs",
            Change::New => "new",
            Change::NotLookedAt => "not-looked-at",
            Change::Better => "better",
            Change::Same => "same",
        }
    }
}

/// How bad an answer is: what tells sorts of answers apart, then by how much within one sort.
#[derive(Clone, Copy)]
struct Bad {
    rank: u8,
    by: f64,
    doubt: f64,
    /// It is at least so much.
    open: bool,
}

/// How bad an answer is beside others to its question; `None` where nobody could look. The dish is as
/// bad as it is far from the dish as built, which may not have been said.
fn badness(question: Question, built: Option<Length>, answer: &Answer) -> Option<Bad> {
    let rank = |rank: u8| Bad {
        rank,
        by: 0.0,
        doubt: 0.0,
        open: false,
    };
    Some(match answer {
        Answer::CannotSee => return None,
        Answer::NotThere => rank(u8::MAX),
        Answer::NothingFound => rank(0),
        Answer::Yes | Answer::No => rank(u8::from(is_bad(question, answer))),
        Answer::Play(Play::Tight) | Answer::Ring(Ring::Rings) => rank(0),
        Answer::Play(Play::JustMoves) | Answer::Ring(Ring::Dull) => rank(1),
        Answer::Crack(Crack::Hairline) => rank(1),
        Answer::Play(Play::Loose) | Answer::Ring(Ring::Dead) | Answer::Crack(Crack::Open) => {
            rank(2)
        }
        Answer::Crack(Crack::Across) => rank(3),
        Answer::Share(share) => Bad {
            by: share.to_paper(),
            ..rank(0)
        },
        Answer::Length(measured) => Bad {
            doubt: to_paper_mm(measured.doubt()),
            ..length(question, built, measured.value())
        },
        Answer::Over(least) => Bad {
            open: true,
            ..length(question, built, *least)
        },
    })
}

/// Nothing at all and something are told apart by looking, whatever a gauge may be out by.
fn length(question: Question, built: Option<Length>, value: Length) -> Bad {
    let something = value > millimetres(0.0);
    let (rank, by) = match (question, question.pad()) {
        (Question::TyreLeft, _) => (0, -value),
        (Question::Dish, _) => (0, (value - built.unwrap_or_default()).abs()),
        (_, Pad::Verdict(_)) if something => (2, value),
        (_, Pad::Gauge(_)) if something => (1, value),
        _ => (0, value),
    };
    Bad {
        rank,
        by: to_paper_mm(by),
        doubt: 0.0,
        open: false,
    }
}

/// The worst of several answers to one question at one place, of which a dispute holds more than one;
/// `None` if nobody could look.
pub fn worst(question: Question, built: Option<Length>, answers: &[Answer]) -> Option<Answer> {
    let bad = |answer: &&Answer| badness(question, built, answer).map(|bad| (bad.rank, bad.by));
    let looked = answers.iter().filter(|answer| answer.looked());
    looked
        .reduce(|one, other| if bad(&other) > bad(&one) { other } else { one })
        .copied()
}

/// How what is found now stands to what was found then; of several answers the worst counts.
pub fn change(
    question: Question,
    built: Option<Length>,
    then: &[Answer],
    now: &[Answer],
) -> Change {
    let bad = |answers| badness(question, built, &worst(question, built, answers)?);
    match (bad(then), bad(now)) {
        (None, Some(_)) => Change::New,
        (_, None) => Change::NotLookedAt,
        (Some(then), Some(now)) => match between(then, now) {
            Change::Same => Change::Same,
            _ if question == Question::Moisture => Change::Differs,
            _ if question == Question::Dish && built.is_none() => Change::Differs,
            told => told,
        },
    }
}

/// Two readings of one thing differ by no more than the root of the sum of their squared doubts.
fn between(then: Bad, now: Bad) -> Change {
    let by = now.by - then.by;
    let doubt = then.doubt * then.doubt + now.doubt * now.doubt;
    // What two decimal numbers differ by is seldom to the last place what it is on paper.
    let alike = by * by <= doubt + 1e-9;
    match (now.rank.cmp(&then.rank), then.open, now.open) {
        (std::cmp::Ordering::Greater, ..) => Change::Worse,
        (std::cmp::Ordering::Less, ..) => Change::Better,
        (_, true, true) if alike => Change::Same,
        (_, true, _) if by < 0.0 => Change::Better,
        (_, _, true) if by >= 0.0 && !then.open => Change::Worse,
        (_, true, _) | (_, _, true) => Change::Differs,
        _ if alike => Change::Same,
        _ if by > 0.0 => Change::Worse,
        _ => Change::Better,
    }
}

#[cfg(test)]
mod tests {
    use super::{Change, change, worst};
    use crate::quantity::Length;
    use crate::quantity::length::millimetres;
    use crate::quantity::{Measured, Percent};
    use crate::survey::{Answer, Crack, Play, Question, Ring};
    use std::collections::BTreeSet;

    /// Whether there is a gap is seen, however little the gauge can say of its width.
    #[test]
    fn from_nothing_to_a_gap_counts_within_the_doubt() {
        let gap = |mm| {
            let gap = Measured::new(millimetres(mm), millimetres(0.25)).unwrap();
            [Answer::Length(gap)]
        };
        let told = |then, now| change(Question::JointGap, None, &gap(then), &gap(now));
        assert_eq!(told(0.0, 0.25), Change::Worse);
        assert_eq!(told(0.25, 0.0), Change::Better);
        assert_eq!(told(0.25, 0.5), Change::Same);
    }

    fn mm(value: f64, doubt: f64) -> Answer {
        Answer::Length(Measured::new(millimetres(value), millimetres(doubt)).unwrap())
    }

    fn over(value: f64) -> Answer {
        Answer::Over(millimetres(value))
    }

    fn share(value: u8) -> Answer {
        Answer::Share(Percent::whole(value))
    }

    fn built(mm: f64) -> Option<Length> {
        Some(millimetres(mm))
    }

    /// Each pair of answers, and what the second is beside the first.
    #[test]
    fn what_is_worse() {
        use Change::*;
        use Question::*;
        let rows = [
            (JointGap, mm(1.0, 0.25), mm(2.0, 0.25), Worse),
            (JointGap, mm(2.0, 0.25), mm(1.0, 0.25), Better),
            (JointGap, mm(1.0, 0.25), mm(1.25, 0.25), Same),
            // Doubts of a quarter each come to 0.354 together, not to a half.
            (JointGap, mm(1.0, 0.25), mm(1.5, 0.25), Worse),
            (JointGap, mm(0.0, 0.25), mm(0.25, 0.25), Worse),
            (JointGap, Answer::NothingFound, mm(0.25, 0.25), Worse),
            (JointGap, Answer::NothingFound, mm(0.0, 0.25), Same),
            (JointGap, mm(3.0, 0.25), over(5.0), Worse),
            (JointGap, over(5.0), over(5.0), Same),
            (JointGap, over(5.0), over(6.0), Differs),
            (JointGap, over(5.0), mm(3.0, 0.25), Better),
            (JointGap, over(5.0), mm(6.0, 0.25), Differs),
            (JointGap, mm(6.0, 0.25), over(5.0), Differs),
            (
                SpokeFoot,
                Answer::Play(Play::Tight),
                Answer::Play(Play::JustMoves),
                Worse,
            ),
            (
                SpokeFoot,
                Answer::Play(Play::Loose),
                Answer::Play(Play::Tight),
                Better,
            ),
            (
                SpokeFoot,
                Answer::Play(Play::JustMoves),
                mm(0.5, 0.25),
                Worse,
            ),
            (SpokeFoot, Answer::Play(Play::Tight), mm(0.0, 0.25), Same),
            (SpokeFoot, mm(2.0, 0.25), Answer::NotThere, Worse),
            (
                TyreRing,
                Answer::Ring(Ring::Rings),
                Answer::Ring(Ring::Dead),
                Worse,
            ),
            (
                CrackNave,
                Answer::NothingFound,
                Answer::Crack(Crack::Hairline),
                Worse,
            ),
            (
                CrackNave,
                Answer::Crack(Crack::Across),
                Answer::Crack(Crack::Open),
                Better,
            ),
            (KeeperSecured, Answer::Yes, Answer::No, Worse),
            (TyreShifts, Answer::Yes, Answer::No, Better),
            (TyreShifts, Answer::NothingFound, Answer::No, Same),
            (TyreLeft, mm(12.0, 0.5), mm(10.0, 0.5), Worse),
            (TyreLeft, mm(10.0, 0.5), mm(12.0, 0.5), Better),
            (KeeperWorn, share(10), share(25), Worse),
            (Moisture, share(14), share(20), Differs),
            (Moisture, share(14), share(14), Same),
            (Shake, mm(5.0, 1.0), mm(6.0, 1.0), Same),
            (Shake, mm(0.0, 1.0), mm(1.0, 1.0), Same),
            (Dish, mm(30.0, 2.0), mm(20.0, 2.0), Differs),
        ];
        for (question, then, now, told) in rows {
            let found = change(question, None, &[then], &[now]);
            assert_eq!(found, told, "{question:?} {then:?} {now:?}");
        }
    }

    #[test]
    fn the_dish_is_held_against_the_dish_as_built() {
        let told =
            |built, then, now| change(Question::Dish, built, &[mm(then, 2.0)], &[mm(now, 2.0)]);
        assert_eq!(told(built(30.0), 30.0, 20.0), Change::Worse);
        assert_eq!(told(built(30.0), 30.0, 40.0), Change::Worse);
        assert_eq!(told(built(30.0), 20.0, 29.0), Change::Better);
        assert_eq!(told(built(-12.0), -12.0, 2.0), Change::Worse);
    }

    #[test]
    fn what_could_not_be_seen_was_not_looked_at() {
        let told = |then: &[Answer], now: &[Answer]| change(Question::JointGap, None, then, now);
        let seen = [mm(1.0, 0.25)];
        assert_eq!(told(&[], &seen), Change::New);
        assert_eq!(told(&[Answer::CannotSee], &seen), Change::New);
        assert_eq!(told(&seen, &[]), Change::NotLookedAt);
        assert_eq!(told(&seen, &[Answer::CannotSee]), Change::NotLookedAt);
    }

    /// Of a dispute the more cautious side counts, in whatever order its sides stand.
    #[test]
    fn of_several_answers_the_worst_counts() {
        let (low, high) = (mm(1.0, 0.25), mm(3.0, 0.25));
        for both in [[low, high], [high, low]] {
            assert_eq!(worst(Question::JointGap, None, &both), Some(high));
            let told = change(Question::JointGap, None, &[low], &both);
            assert_eq!(told, Change::Worse);
        }
        let blind = [Answer::CannotSee, low];
        assert_eq!(worst(Question::JointGap, None, &blind), Some(low));
        assert_eq!(worst(Question::JointGap, None, &[Answer::CannotSee]), None);
    }

    #[test]
    fn every_change_has_a_word_of_its_own() {
        let codes: BTreeSet<&str> = Change::ALL.map(Change::code).into_iter().collect();
        assert_eq!(codes.len(), Change::ALL.len());
        assert!(Change::ALL.is_sorted());
    }
}
