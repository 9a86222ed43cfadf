//! One finding: what, where, how much, by which limit, and what was not looked at.

use super::answer::{bad, share};
use super::limit::{cracked, felt, limit, number, sounds};
use super::place::places;
use super::style::Style;
use super::{capital, unmarked};
use crate::diagnosis::{Finding, Measure, Test};
use crate::quantity::Length;
use crate::quantity::length::to_paper_mm;
use crate::survey::{Places, Question};
use crate::wheel::{Place, Size, Wheel};

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
        how_much: how_much(finding, wheel, style),
        limit: limit(&finding.limit, style),
        not_looked: not_looked(&finding.not_looked, wheel, style),
    }
}

/// The question that measures what this one of the first look asks for; `None` of any other.
#[must_use]
pub fn measured_by(first: Question) -> Option<Question> {
    Some(match first {
        Question::FirstKeeper => Question::KeeperPresent,
        Question::FirstTyre => Question::TyreGap,
        Question::FirstSpokes => Question::SpokeBroken,
        Question::FirstDish => Question::Dish,
        Question::FirstJoints => Question::JointGap,
        Question::FirstNave => Question::CrackNave,
        Question::FirstRot => Question::RotFelloe,
        _ => return None,
    })
}

/// Said of a finding of the first look once this question was answered.
#[must_use]
pub fn measured_since(question: Question, style: Style) -> String {
    format!(
        "Measured since: see {}.",
        super::question::short(question, style)
    )
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
    let many = finding.places.len() > 1;
    let one_or = |one: &'static str, several: &'static str| if many { several } else { one };
    let said = match (finding.question, &finding.limit.test) {
        (Question::KeeperPresent, _) => "Nothing keeps the wheel on its arm",
        (Question::KeeperRight, _) => "The wrong part keeps the wheel on",
        (Question::KeeperSecured, _) => "What keeps the wheel on is not secured",
        (Question::KeeperWorn, _) => "{linch_pin} worn",
        (Question::TyreRing, Test::DeadAllRound) => "The {tyre} is dead all round",
        (Question::TyreRing, _) => "The {tyre} does not ring",
        (Question::TyreGap, _) => "Gap under the {tyre}",
        (Question::TyreShifts, _) => "The {tyre} shifts by hand",
        (Question::TyreLeft, _) => "Little iron left",
        (Question::Strake, Test::NotThere) => one_or("Strake missing", "Strakes missing"),
        (Question::Strake, _) => one_or("Strake loose", "Strakes loose"),
        (Question::JointGap, _) => one_or("Open joint", "Open joints"),
        (Question::JointBelly, _) => "Joints open at the {belly}",
        (Question::FelloeStep, _) => "Step between {felloe}s",
        (Question::CrackFelloe, _) => one_or("{felloe} cracked", "{felloe}s cracked"),
        (Question::RotFelloe, _) => one_or("Rot in a {felloe}", "Rot in the {felloe}s"),
        (Question::Moisture, _) => "Too dry or too wet for {tyring}",
        (Question::SpokeFoot, _) => {
            one_or("Spoke loose at the {foot}", "Spokes loose at the {foot}")
        }
        (Question::SpokeRimEnd, _) => {
            one_or("Spoke loose at the rim end", "Spokes loose at the rim end")
        }
        (Question::SpokeBroken, Test::BesideALooseOne) => one_or(
            "Spoke broken beside a loose one",
            "Spokes broken beside a loose one",
        ),
        (Question::SpokeBroken, _) => one_or("Spoke broken or missing", "Spokes broken or missing"),
        (Question::StandOff, Test::FelloeBound) => "{felloe}-bound: the spokes cannot come home",
        (Question::StandOff, _) => "Shoulders off the {felloe}s",
        (Question::TongueProud, _) => one_or(
            "{tongue} proud of the {sole}",
            "{tongue}s proud of the {sole}",
        ),
        (Question::CrackSpoke, _) => one_or("Spoke cracked", "Spokes cracked"),
        (Question::RotSpoke, _) => one_or("Rot in a spoke", "Rot in the spokes"),
        (Question::Bonds, Test::NotThere) => "A {bond} is missing",
        (Question::Bonds, _) => "A {bond} is loose",
        (Question::CrackNave, Test::CrackedWithLooseBond(_)) => {
            "The {nave} is split and a {bond} does not hold"
        }
        (Question::CrackNave, _) => "The {nave} is cracked",
        (Question::RotNave, _) => "Rot in the {nave}",
        (Question::Dish, Test::DishLost(_)) => "Dish lost",
        (Question::Dish, Test::DishGrown) => "Dish grown",
        (Question::Dish, Test::DishReversed) => "Dish the wrong way",
        (Question::Dish, Test::PairDiffers(_)) => "Dish unlike the other wheel's",
        (Question::Dish, _) => "Dish",
        (Question::RunOut, _) => "The rim runs out",
        (Question::OutOfRound, _) => "The wheel is out of round",
        (Question::EndPlay, _) => "Too much {end_play}",
        (Question::Binds, _) => "The wheel binds",
        (Question::Shake, _) => "Shake at the rim",
        (question, _) => return capital(&bad(question, style)),
    };
    capital(&style.fill(said))
}

fn how_much(finding: &Finding, wheel: &Wheel, style: Style) -> String {
    let many = finding.places.len() > 1;
    let said = |length| style.read(finding.question, length);
    match finding.measure {
        Measure::Greatest(length) if many => format!("up to {}", said(length)),
        Measure::Least(length) if many => format!("down to {}", said(length)),
        Measure::Greatest(length) | Measure::Least(length) => said(length),
        Measure::Sum(length) if many => format!("{} together", said(length)),
        Measure::Sum(length) => said(length),
        Measure::By(length) => {
            dish(finding, length, wheel, style).unwrap_or_else(|| format!("by {}", said(length)))
        }
        Measure::Apart { by, now } => match wheel.sizes.get(Size::Dish) {
            Some(built) => {
                let (by, built) = (said(by), said(built));
                format!("by {by}: built {built}, now {}", said(now))
            }
            None => format!("by {}", said(by)),
        },
        Measure::Ease(length) => format!(
            "ease the joints by at least {} in all",
            unmarked(&style.size(length))
        ),
        Measure::Share(percent) if many => format!("up to {}", share(percent)),
        Measure::Share(percent) => share(percent),
        Measure::Places {
            reach,
            of,
            greatest,
        } => {
            let counted = counted(&finding.limit.test, reach, of);
            match greatest {
                Some(length) => format!("{counted}, up to {}", said(length)),
                None => counted,
            }
        }
        Measure::Said => said_only(finding, style),
    }
}

/// What a dish was built with, is now, and has lost or grown by: `built 36 mm, now 24 mm: 12 mm lost`.
fn dish(finding: &Finding, by: Length, wheel: &Wheel, style: Style) -> Option<String> {
    let (way, done) = match finding.limit.test {
        Test::DishLost(_) => (-1.0, "lost"),
        Test::DishGrown => (1.0, "more"),
        _ => return None,
    };
    let built = wheel.sizes.get(Size::Dish)?;
    let back = to_paper_mm(built) < 0.0;
    let now = built + by * if back { -way } else { way };
    let said = |length| style.read(finding.question, length);
    Some(format!(
        "built {}, now {}: {} {done}",
        said(built),
        said(now),
        said(by)
    ))
}

fn counted(test: &Test, reach: usize, of: usize) -> String {
    match test {
        Test::AQuarter => format!("{reach} of the wheel's {of} spokes"),
        Test::Neighbours => format!("{reach} with a loose one beside, of {of} looked at"),
        _ => format!("{reach} of the {of} places looked at"),
    }
}

fn said_only(finding: &Finding, style: Style) -> String {
    match (&finding.limit.test, finding.places.as_slice()) {
        (Test::Felt(least), _) => felt(*least).to_owned(),
        (Test::Sounds(least), _) => sounds(*least).to_owned(),
        (Test::DeadAllRound, _) => "dead".to_owned(),
        (Test::Cracked(least) | Test::CrackedWithLooseBond(least), _) => cracked(*least, style),
        (_, [Place::Whole | Place::Nave]) => "as answered".to_owned(),
        (_, [_]) => "one".to_owned(),
        (_, places) => number(places.len()),
    }
}

fn not_looked(left: &[Place], wheel: &Wheel, style: Style) -> Option<String> {
    (!left.is_empty()).then(|| format!("Not looked at: {}.", places(left, wheel, style)))
}

#[cfg(test)]
mod tests {
    use super::{finding, measured_by, measured_since};
    use crate::daybook::{Entry, Says};
    use crate::diagnosis::{Beside, Taken, house_limits, judge};
    use crate::quantity::Percent;
    use crate::quantity::length::millimetres;
    use crate::survey::{Answer, Crack, Group, Pad, Play, Question, Ring};
    use crate::wheel::{Place, Size, Sizes, Tyre, Wheel};
    use crate::words::sample::{mm, reading, style, wheel};

    type Given = (Question, Place, Answer);

    /// What these readings come to, each finding on its own lines.
    fn found(given: &[Given]) -> String {
        found_on(&wheel(), given, &Beside::default())
    }

    fn tyred(tyre: Tyre) -> Wheel {
        Wheel {
            tyre: Some(tyre),
            ..wheel()
        }
    }

    fn found_on(on: &Wheel, given: &[Given], beside: &Beside) -> String {
        let entries = (1..).zip(given);
        let taken: Vec<Taken> = entries
            .map(|(n, (question, place, answer))| taken(reading(n, *question, *place, *answer)))
            .collect();
        let findings = judge(on, &taken, &house_limits(), beside).findings;
        let rows = findings.iter().map(|it| {
            let words = finding(it, on, style());
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

    #[test]
    fn every_question_of_the_first_look_is_measured_by_another() {
        let rows = Question::all().filter_map(|first| {
            let measured = measured_by(first);
            assert_eq!(measured.is_some(), first.group() == Group::FirstLook);
            measured.map(|by| measured_since(by, style()))
        });
        insta::assert_snapshot!(rows.collect::<Vec<_>>().join("\n"), @r"
        Measured since: see keeper there.
        Measured since: see tyre gap.
        Measured since: see spoke broken.
        Measured since: see dish.
        Measured since: see joint gap.
        Measured since: see nave cracks.
        Measured since: see felloe rot.
        ");
    }

    /// Whatever a bad answer to a question is, the finding has words.
    #[test]
    fn every_question_can_be_found_bad() {
        let bad = |question: Question| match question.pad() {
            Pad::YesNo if question.sound_is_yes() => Answer::No,
            Pad::YesNo => Answer::Yes,
            Pad::Ring => Answer::Ring(Ring::Dead),
            Pad::Crack => Answer::Crack(Crack::Across),
            Pad::Fastening => Answer::Play(Play::Loose),
            Pad::Share => Answer::Share(Percent::whole(30)),
            Pad::Size(_) if question == Question::TyreLeft => mm(4.0),
            Pad::Size(_) if question == Question::Dish => mm(-30.0),
            Pad::Size(_) => mm(32.0),
            _ => mm(4.0),
        };
        let rows = Question::all().map(|question| {
            let place = question.places_on(&wheel())[0];
            let built = Size::Dish;
            let wheel = Wheel {
                tyre: [Tyre::Hoop, Tyre::Strakes]
                    .into_iter()
                    .find(|tyre| question.asked_of(&tyred(*tyre))),
                sizes: Sizes::default().with(built, Some(millimetres(36.0))),
                ..wheel()
            };
            found_on(
                &wheel,
                &[(question, place, bad(question))],
                &Beside::default(),
            )
        });
        insta::assert_snapshot!(rows.collect::<Vec<_>>().join("\n"), @r"
        Keeper missing or wrong | whole wheel | as answered
        the limit Cartside comes with: keeper missing or wrong; common practice, no source
        -
        Tyre off or not central | whole wheel | as answered
        the limit Cartside comes with: tyre off or not central; common practice, no source
        -
        A spoke broken or missing | whole wheel | as answered
        the limit Cartside comes with: a spoke broken or missing; common practice, no source
        -
        Dish not the right way | whole wheel | as answered
        the limit Cartside comes with: dish not the right way; common practice, no source
        -
        A joint open to the eye | whole wheel | as answered
        the limit Cartside comes with: a joint open to the eye; common practice, no source
        -
        Nave split at the bonds | whole wheel | as answered
        the limit Cartside comes with: nave split at the bonds; common practice, no source
        -
        Rot or worm where it has stood | whole wheel | as answered
        the limit Cartside comes with: rot or worm where it has stood; common practice, no source
        -
        Nothing keeps the wheel on its arm | whole wheel | as answered
        the limit Cartside comes with: keeper not there; common practice, no source
        -
        The wrong part keeps the wheel on | whole wheel | as answered
        the limit Cartside comes with: keeper not the right part; common practice, no source
        -
        What keeps the wheel on is not secured | whole wheel | as answered
        the limit Cartside comes with: keeper not secured; common practice, no source
        -
        Linch pin worn | whole wheel | 30 %
        the limit Cartside comes with: 25 % or more; common practice, no source
        -
        The tyre does not ring | between 1 and 2 | dull or dead
        the limit Cartside comes with: dull or dead at any place; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8, between 10 and 11.
        Gap under the tyre | between 1 and 2 | 4 mm
        the limit Cartside comes with: 3 mm or more anywhere; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8, between 10 and 11.
        The tyre shifts by hand | whole wheel | as answered
        the limit Cartside comes with: tyre shifts by hand; common practice, no source
        -
        Tyre off-centre by over a quarter of its width | whole wheel | as answered
        the limit Cartside comes with: tyre off-centre by over a quarter of its width; common practice, no source
        -
        Tyre cracked through | whole wheel | as answered
        the limit Cartside comes with: tyre cracked through; common practice, no source
        -
        Little iron left | between 1 and 2 | 4 mm
        the limit Cartside comes with: less than 5 mm anywhere; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8, between 10 and 11.
        Strake loose | joint 1, the mark | moves by hand
        the limit Cartside comes with: moves by hand at any place; common practice, no source
        Not looked at: joints 2 to 6.
        Strake cracked | joint 1, the mark | one
        the limit Cartside comes with: strake cracked; common practice, no source
        Not looked at: joints 2 to 6.
        Open joint | joint 1, the mark | 4 mm
        the limit Cartside comes with: 2 mm or more, all places together; common practice, no source
        Not looked at: joints 2 to 6.
        Joints open at the belly | joint 1, the mark | 4 mm
        the limit Cartside comes with: any gap at all; common practice, no source
        Not looked at: joints 2 to 6.
        Step between felloes | joint 1, the mark | 4 mm
        the limit Cartside comes with: 3 mm or more anywhere; common practice, no source
        Not looked at: joints 2 to 6.
        Felloe cracked | felloe 1 | across the grain, or running out of the wood
        the limit Cartside comes with: a crack: across the grain, or running out of the wood; common practice, no source
        Not looked at: felloes 2 to 6.
        Rot in a felloe | felloe 1 | 4 mm
        the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        Not looked at: felloes 2 to 6.
        Too dry or too wet for tyring | felloe 1 | 30 %
        the limit Cartside comes with: 10 % or less, or 18 % or more; common practice, no source
        Not looked at: felloes 2 to 6.
        Spoke loose at the foot | spoke 1 | 4 mm
        the limit Cartside comes with: 1½ mm or more anywhere; common practice, no source
        Not looked at: spokes 2 to 12.
        Spoke loose at the rim end | spoke 1 | 4 mm
        the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        Not looked at: spokes 2 to 12.
        Spoke broken or missing | spoke 1 | one
        the limit Cartside comes with: one broken spoke; common practice, no source
        Not looked at: spokes 2 to 12.
        Shoulders off the felloes | spoke 1 | 4 mm
        the limit Cartside comes with: any gap at all; common practice, no source
        Not looked at: spokes 2 to 12.
        Tongue proud of the sole | spoke 1 | one
        the limit Cartside comes with: tongue proud; common practice, no source
        Not looked at: spokes 2 to 12.
        Spoke cracked | spoke 1 | across the grain, or running out of the wood
        the limit Cartside comes with: a crack: across the grain, or running out of the wood; common practice, no source
        Not looked at: spokes 2 to 12.
        Rot in a spoke | spoke 1 | 4 mm
        the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        Not looked at: spokes 2 to 12.
        A bond is loose | nave | moves by hand
        the limit Cartside comes with: moves by hand at any place; common practice, no source
        -
        The nave is cracked | nave | open 1 mm or more, or reaching a tongue or mortise, or worse
        the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; common practice, no source
        -
        Rot in the nave | nave | 4 mm
        the limit Cartside comes with: 2 mm or more; common practice, no source
        -
        Box moves in the nave | nave | as answered
        the limit Cartside comes with: box moves in the nave; common practice, no source
        -
        Dish the wrong way | whole wheel | by 29.75 mm
        the limit Cartside comes with: 5 mm or more the wrong way beyond doubt, in a wheel built with dish; common practice, no source
        -
        Rim gives in and out by hand | whole wheel | as answered
        the limit Cartside comes with: rim gives in and out by hand; common practice, no source
        -
        The rim runs out | whole wheel | 32 mm
        the limit Cartside comes with: 25 mm or more; common practice, no source
        -
        The wheel is out of round | whole wheel | 32 mm
        the limit Cartside comes with: 20 mm or more; common practice, no source
        -
        Too much end play | whole wheel | 32 mm
        the limit Cartside comes with: more than 30 mm on a wheel kept on by a linch pin; common practice, no source
        -
        The wheel binds | whole wheel | as answered
        the limit Cartside comes with: binds; common practice, no source
        -
        Shake at the rim | whole wheel | 32 mm
        the limit Cartside comes with: 30 mm or more; common practice, no source
        -
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
        the limit Cartside comes with: any gap at all; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8.
        Gap under the tyre | between 1 and 2, between 4 and 5 | 2 of the 4 places looked at, up to ¾ mm
        the limit Cartside comes with: ½ mm or more at two or more places that are also a quarter of those looked at; common practice, no source
        -
        Gap under the tyre | over spoke 6; between 1 and 2 | up to 5 mm
        the limit Cartside comes with: 3 mm or more anywhere; common practice, no source
        Not looked at: between 4 and 5, between 7 and 8.
        Open joints | joints 1, 2 and 4 | 2¾ mm together
        the limit Cartside comes with: 2 mm or more, all places together; common practice, no source
        Not looked at: joints 3, 5 and 6.
        Spoke loose at the foot | spoke 3 | moves by hand
        the limit Cartside comes with: moves by hand at any place; common practice, no source
        Not looked at: spokes 1, 2 and 4 to 12.
        Spoke loose at the rim end | spoke 3 | loose by hand
        the limit Cartside comes with: loose by hand at any place; common practice, no source
        Not looked at: spokes 1, 2 and 4 to 12.
        Spokes loose at the foot | spokes 1 and 12 | 2 with a loose one beside, of 2 looked at
        the limit Cartside comes with: two side by side, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2 to 11.
        Spokes loose at the foot | spokes 1, 3 and 5 | 3 of the wheel's 12 spokes
        the limit Cartside comes with: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2, 4 and 6 to 12.
        Spokes loose at the rim end | spokes 1, 3 and 5 | 3 of the wheel's 12 spokes, up to 2 mm
        the limit Cartside comes with: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        Not looked at: spokes 2, 4 and 6 to 12.
        Spokes broken or missing | spokes 2, 9 and 11 | three
        the limit Cartside comes with: two or more broken spokes; common practice, no source
        Not looked at: spokes 1, 3 to 8, 10 and 12.
        Spoke broken beside a loose one | spoke 12 | one
        the limit Cartside comes with: a broken spoke beside one that is loose at either end; common practice, no source
        Not looked at: spokes 1 to 11.
        Spoke loose at the foot | spoke 1 | moves by hand
        the limit Cartside comes with: moves by hand at any place; common practice, no source
        Not looked at: spokes 2 to 12.
        ");
    }

    #[test]
    fn dish_is_told_by_what_it_is_held_against() {
        let on = Wheel {
            sizes: Sizes::default().with(Size::Dish, Some(millimetres(36.0))),
            ..wheel()
        };
        let dish = |value| (Question::Dish, Place::Whole, mm(value));
        let other = reading(9, Question::Dish, Place::Whole, mm(30.0));
        let beside = Beside {
            dish: vec![taken(other)],
            ..Beside::default()
        };
        let none = Beside::default();
        let rows = [
            found_on(&on, &[dish(24.0)], &none),
            found_on(&on, &[dish(12.0)], &none),
            found_on(&on, &[dish(60.0)], &none),
            found_on(&on, &[dish(-10.0)], &none),
            found_on(&on, &[dish(36.0)], &beside),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        Dish lost | whole wheel | built 36 mm, now 24 mm: 12 mm lost
        the limit Cartside comes with: a third or more of the dish as built lost, and 5 mm or more; common practice, no source
        -
        Dish lost | whole wheel | built 36 mm, now 12 mm: 24 mm lost
        the limit Cartside comes with: two thirds or more of the dish as built lost, and 5 mm or more; common practice, no source
        -
        Dish grown | whole wheel | built 36 mm, now 60 mm: 24 mm more
        the limit Cartside comes with: dish grown by half of the dish as built or more, and by 5 mm or more; common practice, no source
        -
        Dish the wrong way | whole wheel | by 9.75 mm
        the limit Cartside comes with: 5 mm or more the wrong way beyond doubt, in a wheel built with dish; common practice, no source
        -
        Dish unlike the other wheel's | whole wheel | by 6 mm: built 36 mm, now 36 mm
        the limit Cartside comes with: 5 mm or more apart from the other wheel of the axle; common practice, no source
        -
        ");
    }

    #[test]
    fn what_is_heard_seen_and_summed_has_words() {
        let rings = [1, 4, 7, 10].map(|n| {
            (
                Question::TyreRing,
                Place::Between(n),
                Answer::Ring(Ring::Dead),
            )
        });
        let nave = [
            (
                Question::CrackNave,
                Place::Nave,
                Answer::Crack(Crack::Across),
            ),
            (Question::Bonds, Place::Nave, Answer::NotThere),
        ];
        let share = |percent| Answer::Share(Percent::whole(percent));
        let moist = [1, 2].map(|n| (Question::Moisture, Place::Felloe(n), share(18 + n as u8)));
        let left = [1, 4].map(|n| {
            (
                Question::TyreLeft,
                Place::Between(n),
                mm(6.0 - f64::from(n) / 2.0),
            )
        });
        let off = (1..=12).map(|n| (Question::StandOff, Place::Spoke(n), mm(2.0)));
        let shut = (1..=6).map(|n| (Question::JointGap, Place::Joint(n), mm(0.0)));
        let bound: Vec<Given> = off.chain(shut).collect();
        let strakes = [
            (Question::Strake, Place::Joint(1), Answer::NotThere),
            (Question::Strake, Place::Joint(2), Answer::NotThere),
        ];
        let rows = [
            found(&rings),
            found(&nave),
            found(&moist),
            found(&left),
            found(&bound),
            found_on(&tyred(Tyre::Strakes), &strakes, &Beside::default()),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        The tyre is dead all round | between 1 and 2, between 4 and 5, between 7 and 8, between 10 and 11 | dead
        the limit Cartside comes with: dead all round; common practice, no source
        -
        A bond is missing | nave | as answered
        the limit Cartside comes with: missing; common practice, no source
        -
        The nave is split and a bond does not hold | nave | open 1 mm or more, or reaching a tongue or mortise, or worse
        the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; and a bond loose or missing; common practice, no source
        -
        Too dry or too wet for tyring | felloes 1 and 2 | up to 20 %
        the limit Cartside comes with: 10 % or less, or 18 % or more; common practice, no source
        Not looked at: felloes 3 to 6.
        Little iron left | between 4 and 5 | 4 mm
        the limit Cartside comes with: less than 5 mm anywhere; common practice, no source
        Not looked at: between 7 and 8, between 10 and 11.
        Felloe-bound: the spokes cannot come home | spokes 1 to 12 | ease the joints by at least 12.57 mm in all
        the limit Cartside comes with: all joints at the sole together open less than 2π times the mean stand-off of the shoulders, with the tyre on; common practice, no source
        -
        Strakes missing | joints 1 and 2 | two
        the limit Cartside comes with: missing; common practice, no source
        Not looked at: joints 3 to 6.
        ");
    }

    #[test]
    fn a_row_fully_looked_at_leaves_nothing_out() {
        let all: Vec<u16> = (1..=12).collect();
        let told = found(&spokes(Question::SpokeRimEnd, &all, mm(0.5)));
        assert!(told.ends_with("\n-"), "{told}");
    }
}
