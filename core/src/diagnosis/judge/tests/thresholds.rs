//! Every row at, just under and just over each of its thresholds. The grades are written down here
//! a second time, apart from the table they check.

use super::*;
use Grade::{KeepEmpty, LightWorkOnly, NotOnThisWheel, Note};

/// A length in mm and the grade it must get.
type Step = (f64, Option<Grade>);

/// One row of readings and the grade it must get.
struct Case {
    question: Question,
    given: Vec<Given>,
    expect: Option<Grade>,
}

fn single_lengths() -> Vec<Case> {
    let (keep, light, note, none) = (Some(KeepEmpty), Some(LightWorkOnly), Some(Note), None);
    let rows: [(Question, Place, &[Step]); 5] = [
        (
            Question::TyreGap,
            Place::Between(3),
            &[
                (0.0, none),
                (0.01, note),
                (0.99, note),
                (1.0, light),
                (1.01, light),
                (2.99, light),
                (3.0, keep),
                (3.01, keep),
            ],
        ),
        (
            Question::JointGap,
            Place::Joint(2),
            &[
                (0.0, none),
                (0.01, note),
                (1.99, note),
                (2.0, light),
                (2.01, light),
                (9.99, light),
                (10.0, keep),
                (10.01, keep),
            ],
        ),
        (
            Question::FelloeStep,
            Place::Joint(1),
            &[(0.0, none), (2.99, none), (3.0, keep), (3.01, keep)],
        ),
        (
            Question::SpokeFoot,
            Place::Spoke(12),
            &[
                (0.0, none),
                (0.01, light),
                (1.49, light),
                (1.5, keep),
                (1.51, keep),
            ],
        ),
        (
            Question::SpokeRimEnd,
            Place::Spoke(1),
            &[
                (0.0, none),
                (0.49, none),
                (0.5, note),
                (0.51, note),
                (1.99, note),
                (2.0, light),
                (2.01, light),
                (4.99, light),
                (5.0, keep),
                (5.01, keep),
            ],
        ),
    ];
    rows.into_iter()
        .flat_map(|(question, place, steps)| {
            steps.iter().flat_map(move |(value, expect)| {
                let over = Answer::Over(millimetres(*value));
                [mm(*value), over].map(|answer| Case {
                    question,
                    given: vec![(question, place, answer)],
                    expect: *expect,
                })
            })
        })
        .collect()
}

fn tyre_gaps(values: &[f64]) -> Vec<Given> {
    (1..)
        .zip(values)
        .map(|(n, value)| (Question::TyreGap, Place::Between(n), mm(*value)))
        .collect()
}

fn joint_gaps(values: &[f64]) -> Vec<Given> {
    (1..)
        .zip(values)
        .map(|(n, value)| (Question::JointGap, Place::Joint(n), mm(*value)))
        .collect()
}

fn several_lengths() -> Vec<Case> {
    let tyre: [(&[f64], Option<Grade>); 7] = [
        (&[0.5, 0.49, 0.0, 0.0], Some(Note)),
        (&[0.49, 0.49, 0.49, 0.49], Some(Note)),
        (&[0.5, 0.5, 0.0, 0.0], Some(LightWorkOnly)),
        (&[0.51, 0.51, 0.0, 0.0], Some(LightWorkOnly)),
        // Two of eight are a quarter, two of nine are not.
        (
            &[0.5, 0.5, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
            Some(LightWorkOnly),
        ),
        (&[0.5, 0.5, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], Some(Note)),
        (
            &[0.5, 0.5, 0.5, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
            Some(LightWorkOnly),
        ),
    ];
    let joint: [(&[f64], Option<Grade>); 6] = [
        (&[1.0, 0.99, 0.0], Some(Note)),
        (&[1.0, 1.0, 0.0], Some(LightWorkOnly)),
        (&[0.33, 0.33, 0.33, 0.33, 0.33, 0.35], Some(LightWorkOnly)),
        (&[0.33, 0.33, 0.33, 0.33, 0.33, 0.34], Some(Note)),
        (&[3.3, 3.3, 3.39], Some(LightWorkOnly)),
        (&[3.3, 3.3, 3.4], Some(KeepEmpty)),
    ];
    let tyre = tyre.map(|(values, expect)| Case {
        question: Question::TyreGap,
        given: tyre_gaps(values),
        expect,
    });
    let joint = joint.map(|(values, expect)| Case {
        question: Question::JointGap,
        given: joint_gaps(values),
        expect,
    });
    tyre.into_iter().chain(joint).collect()
}

fn verdicts() -> Vec<Case> {
    let rows = [
        (Question::SpokeFoot, Play::Tight, None),
        (Question::SpokeFoot, Play::JustMoves, Some(LightWorkOnly)),
        (Question::SpokeFoot, Play::Loose, Some(LightWorkOnly)),
        (Question::SpokeRimEnd, Play::Tight, None),
        (Question::SpokeRimEnd, Play::JustMoves, Some(Note)),
        (Question::SpokeRimEnd, Play::Loose, Some(LightWorkOnly)),
    ];
    rows.map(|(question, play, expect)| Case {
        question,
        given: vec![(question, Place::Spoke(4), Answer::Play(play))],
        expect,
    })
    .into_iter()
    .collect()
}

fn answers() -> Vec<Case> {
    let whole = [
        (Question::KeeperPresent, Answer::No, NotOnThisWheel),
        (Question::KeeperRight, Answer::No, NotOnThisWheel),
        (Question::KeeperSecured, Answer::No, NotOnThisWheel),
        (Question::TyreShifts, Answer::Yes, KeepEmpty),
    ];
    let mut cases = Vec::new();
    for (question, bad, expect) in whole {
        for (answer, expect) in [(bad, Some(expect)), (clean(question), None)] {
            cases.push(Case {
                question,
                given: vec![(question, Place::Whole, answer)],
                expect,
            });
        }
    }
    let broken = |numbers: &[u16]| spokes(Question::SpokeBroken, numbers, Answer::Yes);
    let with = |mut given: Vec<Given>, more: Given| {
        given.push(more);
        given
    };
    let foot = |n| (Question::SpokeFoot, Place::Spoke(n), loose());
    let rim = |n, answer| (Question::SpokeRimEnd, Place::Spoke(n), answer);
    for (given, expect) in [
        (broken(&[]), None),
        (spokes(Question::SpokeBroken, &[1, 2, 3], Answer::No), None),
        (broken(&[3]), Some(KeepEmpty)),
        (broken(&[3, 9]), Some(NotOnThisWheel)),
        (broken(&[3, 9, 11]), Some(NotOnThisWheel)),
        (with(broken(&[3]), foot(4)), Some(NotOnThisWheel)),
        (with(broken(&[3]), foot(2)), Some(NotOnThisWheel)),
        (with(broken(&[3]), foot(5)), Some(KeepEmpty)),
        (with(broken(&[12]), foot(1)), Some(NotOnThisWheel)),
        (with(broken(&[1]), rim(12, loose())), Some(NotOnThisWheel)),
        (with(broken(&[1]), rim(12, mm(2.0))), Some(NotOnThisWheel)),
        (with(broken(&[1]), rim(12, mm(1.99))), Some(KeepEmpty)),
        (
            with(broken(&[1]), rim(12, Answer::Play(Play::JustMoves))),
            Some(KeepEmpty),
        ),
    ] {
        cases.push(Case {
            question: Question::SpokeBroken,
            given,
            expect,
        });
    }
    cases
}

fn side_by_side() -> Vec<Case> {
    let mut cases = Vec::new();
    for question in [Question::SpokeFoot, Question::SpokeRimEnd] {
        for (numbers, expect) in [
            (&[4, 5][..], KeepEmpty),
            (&[1, 12], KeepEmpty),
            (&[4, 6], LightWorkOnly),
            (&[1, 11], LightWorkOnly),
            (&[2, 5, 8], KeepEmpty),
        ] {
            cases.push(Case {
                question,
                given: spokes(question, numbers, loose()),
                expect: Some(expect),
            });
        }
    }
    cases
}

fn cases() -> Vec<Case> {
    let mut cases = single_lengths();
    cases.extend(several_lengths());
    cases.extend(verdicts());
    cases.extend(answers());
    cases.extend(side_by_side());
    cases
}

#[test]
fn each_row_gets_the_grade_written_down_for_it() {
    for case in cases() {
        let got = grade(&wheel(12), &case.given, case.question);
        assert_eq!(got, case.expect, "{:?} {:?}", case.question, case.given);
    }
}

/// Were a limit never the one that is reached, a slip in it would go unseen.
#[test]
fn each_limit_is_the_one_reached_in_some_case() {
    let reached: Vec<Limit> = cases()
        .iter()
        .flat_map(|case| judged(&wheel(12), &case.given).findings)
        .map(|finding| finding.limit)
        .collect();
    for limit in house_limits() {
        assert!(reached.contains(&limit), "{limit:?}");
    }
}

#[test]
fn every_question_has_a_limit() {
    for question in Question::all() {
        let mut limits = house_limits().into_iter();
        assert!(
            limits.any(|limit| limit.question == question),
            "{question:?}"
        );
    }
}

/// Ten times 0.2 mm is 2 mm on paper, whatever a binary sum makes of it.
#[test]
fn a_sum_that_reaches_its_limit_on_paper_reaches_it() {
    let even = Wheel::of(Felloes::even(20, 20).unwrap());
    for (count, value) in [(10, 0.2), (20, 0.1), (16, 0.125)] {
        let given = joint_gaps(&vec![value; count]);
        assert_eq!(
            grade(&even, &given, Question::JointGap),
            Some(LightWorkOnly),
            "{count} times {value}"
        );
    }
    // In metres both of these come to a little less than a hundredth.
    for values in [vec![0.4; 25], vec![0.05, 9.95]] {
        let rim = Wheel::of(Felloes::even(32, 32).unwrap());
        let given = joint_gaps(&values);
        assert_eq!(grade(&rim, &given, Question::JointGap), Some(KeepEmpty));
    }
}

#[test]
fn what_cannot_be_or_is_below_nought_is_no_gap() {
    let given = [(Question::TyreGap, Place::Between(1), mm(-4.0))];
    assert_eq!(grade(&wheel(12), &given, Question::TyreGap), None);
}
