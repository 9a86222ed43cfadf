//! Every row at, just under and just over each of its thresholds. The grades are written down here
//! a second time, apart from the table they check.

use super::*;
use crate::wheel::{Keeper, Sizes};
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

/// The new rows that look at one length at a time; sizes are said: dish 36 mm, tyre 16 mm.
fn more_lengths() -> Vec<Case> {
    let (keep, light, note, none) = (Some(KeepEmpty), Some(LightWorkOnly), Some(Note), None);
    let not_on = Some(NotOnThisWheel);
    let any = [(0.0, none), (0.01, note), (30.0, note)];
    let rot = [
        (0.0, none),
        (1.99, none),
        (2.0, note),
        (2.01, note),
        (5.99, note),
        (6.0, light),
        (6.01, light),
        (9.99, light),
        (10.0, keep),
        (10.01, keep),
    ];
    let rows: [(Question, Place, &[Step]); 11] = [
        (Question::JointBelly, Place::Joint(3), &any),
        (Question::StandOff, Place::Spoke(3), &any),
        (Question::RotFelloe, Place::Felloe(6), &rot),
        (Question::RotSpoke, Place::Spoke(6), &rot),
        (Question::RotNave, Place::Nave, &rot),
        (
            Question::RunOut,
            Place::Whole,
            &[
                (0.0, none),
                (5.99, none),
                (6.0, note),
                (11.99, note),
                (12.0, light),
                (12.01, light),
                (24.99, light),
                (25.0, keep),
                (25.01, keep),
            ],
        ),
        (
            Question::OutOfRound,
            Place::Whole,
            &[
                (0.0, none),
                (3.99, none),
                (4.0, note),
                (9.99, note),
                (10.0, light),
                (10.01, light),
                (19.99, light),
                (20.0, keep),
                (20.01, keep),
            ],
        ),
        (
            Question::Shake,
            Place::Whole,
            &[
                (0.0, none),
                (5.99, none),
                (6.0, note),
                (14.99, note),
                (15.0, light),
                (15.01, light),
                (29.99, light),
                (30.0, keep),
                (30.01, keep),
            ],
        ),
        // 75 % of 16 mm is 12 mm, 50 % is 8 mm, 30 % is 4.8 mm.
        (
            Question::TyreLeft,
            Place::Between(3),
            &[
                (16.0, none),
                (12.01, none),
                (12.0, note),
                (11.99, note),
                (8.01, note),
                (8.0, light),
                (7.99, light),
                (5.01, light),
                (5.0, light),
                (4.99, keep),
                (4.8, keep),
                (4.79, keep),
            ],
        ),
        // A third of 36 mm is 12 mm, two thirds are 24 mm, a half is 18 mm.
        (
            Question::Dish,
            Place::Whole,
            &[
                (36.0, none),
                (24.01, none),
                (24.0, note),
                (23.99, note),
                (12.01, note),
                (12.0, light),
                (11.99, light),
                (0.0, light),
                // The doubt of these readings is a quarter of a millimetre.
                (-5.24, light),
                (-5.25, not_on),
                (-5.26, not_on),
            ],
        ),
        (
            Question::Dish,
            Place::Whole,
            &[(53.99, none), (54.0, light), (54.01, light)],
        ),
    ];
    rows.into_iter()
        .flat_map(|(question, place, steps)| {
            steps.iter().map(move |(value, expect)| Case {
                question,
                given: vec![(question, place, mm(*value))],
                expect: *expect,
            })
        })
        .collect()
}

fn shares() -> Vec<Case> {
    let (keep, light, note, none) = (Some(KeepEmpty), Some(LightWorkOnly), Some(Note), None);
    let worn = [
        (0.0, none),
        (9.99, none),
        (10.0, note),
        (10.01, note),
        (24.99, note),
        (25.0, light),
        (25.01, light),
        (49.99, light),
        (50.0, keep),
        (100.0, keep),
    ];
    let moist = [
        (0.0, note),
        (9.99, note),
        (10.0, note),
        (10.01, none),
        (14.0, none),
        (17.99, none),
        (18.0, note),
        (18.01, note),
    ];
    let row = |question, place, (percent, expect): (f64, Option<Grade>)| Case {
        question,
        given: vec![(question, place, share(percent))],
        expect,
    };
    let worn = worn.map(|step| row(Question::KeeperWorn, Place::Whole, step));
    let moist = moist.map(|step| row(Question::Moisture, Place::Felloe(2), step));
    worn.into_iter().chain(moist).collect()
}

fn sounds_and_cracks() -> Vec<Case> {
    let (keep, light, note) = (Some(KeepEmpty), Some(LightWorkOnly), Some(Note));
    let mut cases = Vec::new();
    let mut case = |question, given: Vec<Given>, expect| {
        cases.push(Case {
            question,
            given,
            expect,
        });
    };
    let rings = |rings: [Ring; 4]| -> Vec<Given> {
        let at = [1, 4, 7, 10].into_iter().zip(rings);
        at.map(|(n, ring)| (Question::TyreRing, Place::Between(n), Answer::Ring(ring)))
            .collect()
    };
    use Ring::{Dead, Dull, Rings};
    case(Question::TyreRing, rings([Rings; 4]), None);
    case(Question::TyreRing, rings([Rings, Rings, Dull, Rings]), note);
    case(Question::TyreRing, rings([Dead, Dead, Dead, Dull]), note);
    case(Question::TyreRing, rings([Dead; 4]), keep);
    for (question, place) in [
        (Question::CrackFelloe, Place::Felloe(2)),
        (Question::CrackSpoke, Place::Spoke(2)),
    ] {
        let crack = |crack| vec![(question, place, Answer::Crack(crack))];
        case(
            question,
            vec![(question, place, Answer::NothingFound)],
            None,
        );
        case(question, crack(Crack::Hairline), note);
        case(question, crack(Crack::Open), light);
        case(question, crack(Crack::Across), keep);
    }
    let nave = |crack, bonds| {
        vec![
            (Question::CrackNave, Place::Nave, Answer::Crack(crack)),
            (Question::Bonds, Place::Nave, bonds),
        ]
    };
    let tight = Answer::Play(Play::Tight);
    case(Question::CrackNave, nave(Crack::Hairline, tight), note);
    case(Question::CrackNave, nave(Crack::Hairline, loose()), note);
    case(Question::CrackNave, nave(Crack::Open, tight), light);
    case(Question::CrackNave, nave(Crack::Across, tight), light);
    for bonds in [Answer::Play(Play::JustMoves), loose(), Answer::NotThere] {
        case(Question::CrackNave, nave(Crack::Open, bonds), keep);
        case(Question::CrackNave, nave(Crack::Across, bonds), keep);
    }
    for (answer, expect) in [
        (tight, None),
        (Answer::Play(Play::JustMoves), light),
        (loose(), light),
        (Answer::NotThere, keep),
    ] {
        let bonds = vec![(Question::Bonds, Place::Nave, answer)];
        case(Question::Bonds, bonds, expect);
    }
    cases
}

/// Questions answered by yes or no at one place, with the grade of the bad answer.
fn bad_answers() -> Vec<Case> {
    let rows = [
        (Question::FirstKeeper, Place::Whole, NotOnThisWheel),
        (Question::FirstTyre, Place::Whole, KeepEmpty),
        (Question::FirstSpokes, Place::Whole, KeepEmpty),
        (Question::FirstDish, Place::Whole, NotOnThisWheel),
        (Question::FirstJoints, Place::Whole, LightWorkOnly),
        (Question::FirstNave, Place::Whole, KeepEmpty),
        (Question::FirstRot, Place::Whole, LightWorkOnly),
        (Question::TyreOffCentre, Place::Whole, NotOnThisWheel),
        (Question::TyreCracked, Place::Whole, NotOnThisWheel),
        (Question::TongueProud, Place::Spoke(3), Note),
        (Question::BoxMoves, Place::Nave, Note),
        (Question::DishGives, Place::Whole, NotOnThisWheel),
        (Question::Binds, Place::Whole, LightWorkOnly),
    ];
    let mut cases = Vec::new();
    for (question, place, expect) in rows {
        let first = question.code().starts_with("first-");
        let (sound, bad) = match first {
            true => (Answer::Yes, Answer::No),
            false => (Answer::No, Answer::Yes),
        };
        for (answer, expect) in [(sound, None), (bad, Some(expect))] {
            cases.push(Case {
                question,
                given: vec![(question, place, answer)],
                expect,
            });
        }
    }
    cases
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
    cases.extend(more_lengths());
    cases.extend(several_lengths());
    cases.extend(shares());
    cases.extend(sounds_and_cracks());
    cases.extend(bad_answers());
    cases.extend(verdicts());
    cases.extend(answers());
    cases.extend(side_by_side());
    cases
}

#[test]
fn each_row_gets_the_grade_written_down_for_it() {
    for case in cases() {
        let got = grade(&sized(wheel(12)), &case.given, case.question);
        assert_eq!(got, case.expect, "{:?} {:?}", case.question, case.given);
    }
}

/// End play by what keeps the wheel on; what is not said may be the closest.
#[test]
fn end_play_is_judged_by_its_own_keeper() {
    let (keep, light, note, none) = (Some(KeepEmpty), Some(LightWorkOnly), Some(Note), None);
    let pin: &[Step] = &[
        (0.0, none),
        (13.0, none),
        (13.01, note),
        (20.0, note),
        (20.01, light),
        (30.0, light),
        (30.01, keep),
    ];
    let nut: &[Step] = &[
        (6.0, none),
        (6.01, note),
        (10.0, note),
        (10.01, light),
        (15.0, light),
        (15.01, keep),
    ];
    let close: &[Step] = &[
        (0.0, none),
        (1.0, none),
        (1.01, note),
        (2.0, note),
        (2.01, light),
        (3.0, light),
        (3.01, keep),
    ];
    for (keeper, steps) in [
        (Some(Keeper::LinchPin), pin),
        (Some(Keeper::Nut), nut),
        (Some(Keeper::Collinge), close),
        (Some(Keeper::Mail), close),
        (None, close),
    ] {
        let wheel = Wheel {
            keeper,
            ..wheel(12)
        };
        for (value, expect) in steps {
            let given = [(Question::EndPlay, Place::Whole, mm(*value))];
            let got = grade(&wheel, &given, Question::EndPlay);
            assert_eq!(got, *expect, "{keeper:?} {value}");
        }
    }
}

/// Strakes go by the bonds.
#[test]
fn strakes_get_the_grades_written_down_for_them() {
    let joint = |question, answer| vec![(question, Place::Joint(2), answer)];
    for (question, answer, expect) in [
        (Question::Strake, Answer::Play(Play::Tight), None),
        (
            Question::Strake,
            Answer::Play(Play::JustMoves),
            Some(LightWorkOnly),
        ),
        (Question::Strake, loose(), Some(LightWorkOnly)),
        (Question::Strake, Answer::NotThere, Some(KeepEmpty)),
        (Question::StrakeCracked, Answer::No, None),
        (Question::StrakeCracked, Answer::Yes, Some(LightWorkOnly)),
    ] {
        assert_eq!(
            grade(&straked(12), &joint(question, answer), question),
            expect
        );
    }
}

/// A third of the part as it is said; of one that is not said, of 30 mm.
#[test]
fn rot_is_held_against_the_part() {
    let sizes = Sizes::default().with(Size::FelloeDepth, Some(millimetres(75.0)));
    let deep = Wheel {
        sizes: sizes.with(Size::SpokeDepth, Some(millimetres(45.0))),
        ..wheel(12)
    };
    for (question, place, third) in [
        (Question::RotFelloe, Place::Felloe(1), 25.0),
        (Question::RotSpoke, Place::Spoke(1), 15.0),
    ] {
        for (value, expect) in [
            (third - 0.01, LightWorkOnly),
            (third, KeepEmpty),
            (third + 0.01, KeepEmpty),
        ] {
            let given = [(question, place, mm(value))];
            assert_eq!(grade(&deep, &given, question), Some(expect), "{value}");
        }
    }
    let odd = Wheel {
        sizes: Sizes::default().with(Size::FelloeDepth, Some(millimetres(-75.0))),
        ..wheel(12)
    };
    let given = [(Question::RotFelloe, Place::Felloe(1), mm(9.99))];
    assert_eq!(
        grade(&odd, &given, Question::RotFelloe),
        Some(LightWorkOnly)
    );
}

/// By thickness alone, where the thickness as new is not said.
#[test]
fn iron_is_judged_by_itself_where_it_is_not_said_what_it_was() {
    for (value, expect) in [
        (8.0, None),
        (7.99, Some(Note)),
        (5.0, Some(Note)),
        (4.99, Some(KeepEmpty)),
    ] {
        let given = [(Question::TyreLeft, Place::Spoke(1), mm(value))];
        assert_eq!(
            grade(&wheel(12), &given, Question::TyreLeft),
            expect,
            "{value}"
        );
    }
}

/// In thick iron the share is reached before 5 mm are: 30 % of 30 mm is 9 mm.
#[test]
fn thick_iron_is_judged_by_what_is_left_of_it() {
    let thick = Wheel {
        sizes: Sizes::default().with(Size::TyreThickness, Some(millimetres(30.0))),
        ..wheel(12)
    };
    for (value, expect) in [(9.01, LightWorkOnly), (9.0, KeepEmpty), (8.99, KeepEmpty)] {
        let given = [(Question::TyreLeft, Place::Spoke(1), mm(value))];
        let got = grade(&thick, &given, Question::TyreLeft);
        assert_eq!(got, Some(expect), "{value}");
    }
}

/// Against the dish as built: a third of a small dish is not yet 5 mm, a wheel built back-dished is
/// looked at from the other side, and one of which nothing is said is not judged.
#[test]
fn dish_is_held_against_the_dish_as_built() {
    let built = |dish: Option<f64>| Wheel {
        sizes: Sizes::default().with(Size::Dish, dish.map(millimetres)),
        ..wheel(12)
    };
    for (dish, now, expect) in [
        (Some(6.0), 1.01, None),
        (Some(6.0), 1.0, Some(LightWorkOnly)),
        (Some(6.0), 10.99, None),
        (Some(6.0), 11.0, Some(LightWorkOnly)),
        (Some(-36.0), -24.0, Some(Note)),
        (Some(-36.0), -54.0, Some(LightWorkOnly)),
        (Some(-36.0), 5.25, Some(NotOnThisWheel)),
        (Some(-36.0), 5.24, Some(LightWorkOnly)),
        (Some(0.0), -4.99, None),
        (Some(0.0), -30.0, Some(LightWorkOnly)),
        (Some(0.0), 5.0, Some(LightWorkOnly)),
        (None, -30.0, None),
        (None, 90.0, None),
    ] {
        let given = [(Question::Dish, Place::Whole, mm(now))];
        assert_eq!(
            grade(&built(dish), &given, Question::Dish),
            expect,
            "{dish:?} {now}"
        );
    }
}

/// Were a limit never the one that is reached, a slip in it would go unseen.
#[test]
fn each_limit_is_the_one_reached_in_some_case() {
    let of = |wheel: &Wheel, given: &[Given], beside: &Beside| -> Vec<Limit> {
        let judgement = judge(wheel, &taken(given), &house_limits(), beside);
        let findings = judgement.findings.into_iter();
        findings.map(|finding| finding.limit).collect()
    };
    let none = Beside::default();
    let wheels = [sized(wheel(12)), wheel(12), straked(12)];
    let mut reached: Vec<Limit> = cases()
        .iter()
        .flat_map(|case| {
            wheels
                .iter()
                .flat_map(|wheel| of(wheel, &case.given, &none))
        })
        .collect();
    for keeper in Keeper::ALL {
        for value in [1.5, 2.5, 7.0, 11.0, 14.0, 16.0, 21.0, 31.0] {
            let wheel = Wheel {
                keeper: Some(keeper),
                ..wheel(12)
            };
            let given = [(Question::EndPlay, Place::Whole, mm(value))];
            reached.extend(of(&wheel, &given, &none));
        }
    }
    for (question, answer) in [
        (Question::Strake, loose()),
        (Question::Strake, Answer::NotThere),
        (Question::StrakeCracked, Answer::Yes),
    ] {
        reached.extend(of(
            &straked(12),
            &[(question, Place::Joint(1), answer)],
            &none,
        ));
    }
    let thin = [(Question::TyreLeft, Place::Spoke(1), mm(7.0))];
    let thick = sized(wheel(12));
    let thick = Wheel {
        sizes: thick
            .sizes
            .with(Size::TyreThickness, Some(millimetres(30.0))),
        ..thick
    };
    let third = [(Question::TyreLeft, Place::Spoke(1), mm(8.5))];
    reached.extend([of(&wheel(12), &thin, &none), of(&thick, &third, &none)].concat());
    let dish = taken(&[(Question::Dish, Place::Whole, mm(30.0))]);
    let own = [(Question::Dish, Place::Whole, mm(36.0))];
    reached.extend(of(
        &wheel(12),
        &own,
        &Beside {
            dish,
            tyre_off: false,
            built: None,
        },
    ));
    let mut bound: Vec<Given> = spokes(Question::StandOff, &(1..=12).collect::<Vec<_>>(), mm(1.0));
    bound.extend(joint_gaps(&[0.0; 6]));
    reached.extend(of(&wheel(12), &bound, &none));
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
