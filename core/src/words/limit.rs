//! What a limit is and whose it is.

use super::answer::{bad, crack, share};
use super::style::Style;
use crate::diagnosis::{Limit, Origin, Test};
use crate::survey::{Crack, Pad, Places, Play, Question, Ring};
use crate::wheel::Keeper;

/// A limit and its origin: `the limit Cartside comes with: 1 mm or more anywhere; common practice, no
/// source`.
#[must_use]
pub fn limit(limit: &Limit, style: Style) -> String {
    let test = test(limit.question, &limit.test, style);
    match limit.origin {
        Origin::Published(source) => format!("a published limit: {test}; source: {source}"),
        Origin::Trade(source) => format!("a rule of the trade: {test}; source: {source}"),
        Origin::House => {
            format!("the limit Cartside comes with: {test}; common practice, no source")
        }
        Origin::Shop => format!("set by this shop: {test}"),
    }
}

/// Where the limits come from as they come.
pub const ORIGIN: &str = "No published wear limit for wooden wheels is known to us: as they come, these are common practice, without a source, and meant to be set by the shop that uses them.";

/// What comes of setting one.
pub const SETTING: &str = "Each that has a value can be set, or left out, by an entry in the book; what was set before stays to be read. Every finding names the limit it was judged by. Findings already handed over are not changed.";

/// Of a row that has no value.
pub const FIXED: &str = "This row has no value that could be set: it is reached or it is not.";

/// How a row stands now: by the value in force, or not used.
#[must_use]
pub fn in_force(row: &Limit, now: Option<&Limit>, style: Style) -> String {
    match now {
        None => "not used in this shop".to_owned(),
        Some(now) if now.origin == Origin::Shop => limit(now, style),
        Some(_) => reached(row, style),
    }
}

/// The row as it comes: `As it comes: 1 mm or more anywhere; common practice, no source.`
#[must_use]
pub fn as_it_comes(row: &Limit, style: Style) -> String {
    match row.origin {
        Origin::House => format!(
            "As it comes: {}; common practice, no source.",
            reached(row, style)
        ),
        _ => format!("As it comes, {}.", limit(row, style)),
    }
}

/// When a row is reached, without whose it is: `1 mm or more anywhere`.
#[must_use]
pub fn reached(limit: &Limit, style: Style) -> String {
    test(limit.question, &limit.test, style)
}

/// When a limit is reached: `1 mm or more anywhere`.
pub(super) fn test(question: Question, test: &Test, style: Style) -> String {
    let length = |length| style.read(question, length);
    match test {
        Test::Any => format!("any {} at all", noun(question)),
        Test::Anywhere(least) => format!("{} or more{}", length(*least), anywhere(question)),
        Test::Under(limit) => format!("less than {}{}", length(*limit), anywhere(question)),
        Test::MoreThan { than, on } => format!("more than {}{}", length(*than), kept_by(on, style)),
        Test::AThird => "a third of the part or more, taken as 30 mm deep where its depth has not been said".to_owned(),
        Test::ShareAtLeast(least) => format!("{} or more", share(*least)),
        Test::ShareOutside(low, high) => {
            format!("{} or less, or {} or more", share(*low), share(*high))
        }
        Test::ShareOfNew(most) => format!("{} or less of its thickness as new", share(*most)),
        Test::DishLost(1) => "a third or more of the dish as built lost, and 5 mm or more".to_owned(),
        Test::DishLost(_) => {
            "two thirds or more of the dish as built lost, and 5 mm or more".to_owned()
        }
        Test::DishGrown => {
            "dish grown by half of the dish as built or more, and by 5 mm or more".to_owned()
        }
        Test::DishReversed => {
            "5 mm or more the wrong way beyond doubt, in a wheel built with dish".to_owned()
        }
        Test::PairDiffers(least) => format!(
            "{} or more apart from the other wheel of the axle",
            length(*least)
        ),
        Test::AtPlacesAndAQuarter { each, places } => format!(
            "{} or more at {} or more places that are also a quarter of those looked at",
            length(*each),
            number(*places)
        ),
        Test::Sum(least) => format!("{} or more, all places together", length(*least)),
        Test::Felt(verdict) => format!("{} at any place", felt(*verdict)),
        Test::Sounds(least) => format!("{} at any place", sounds(*least)),
        Test::DeadAllRound => "dead all round".to_owned(),
        Test::Cracked(least) => format!("a crack: {}", cracked(*least, style)),
        Test::CrackedWithLooseBond(least) => style.fill(&format!(
            "a crack: {}; and a {{bond}} loose or missing",
            cracked(*least, style)
        )),
        Test::NotThere => "missing".to_owned(),
        Test::Answered(times) => answered(question, *times, style),
        Test::Neighbours => "two side by side, each loose enough for light work only".to_owned(),
        Test::AQuarter => {
            "a quarter of the wheel's spokes, each loose enough for light work only".to_owned()
        }
        Test::BesideALooseOne => "a broken spoke beside one that is loose at either end".to_owned(),
        Test::FelloeBound => style.fill("all joints at the {sole} together open less than 2π times the mean stand-off of the shoulders, with the {tyre} on"),
    }
}

fn anywhere(question: Question) -> &'static str {
    match question.places() {
        Places::Whole | Places::Nave => "",
        _ => " anywhere",
    }
}

fn kept_by(keepers: &[Keeper], style: Style) -> String {
    let names = keepers.iter().map(|keeper| match keeper {
        Keeper::LinchPin => "{linch_pin}",
        Keeper::Nut => "nut",
        Keeper::Collinge => "Collinge axle",
        Keeper::Mail => "mail axle",
    });
    let names: Vec<&str> = names.collect();
    style.fill(&format!(" on a wheel kept on by a {}", names.join(" or ")))
}

fn noun(question: Question) -> &'static str {
    match question.pad() {
        Pad::Verdict(_) => "play",
        _ => "gap",
    }
}

fn answered(question: Question, times: usize, style: Style) -> String {
    match question {
        Question::SpokeBroken if times == 1 => "one broken spoke".to_owned(),
        Question::SpokeBroken => format!("{} or more broken spokes", number(times)),
        _ if question.pad() != Pad::YesNo => {
            format!("a bad answer at {} or more places", number(times))
        }
        _ if times == 1 || question.places() == Places::Whole => bad(question, style),
        _ => format!(
            "{} at {} or more places",
            bad(question, style),
            number(times)
        ),
    }
}

/// What a blow must sound like at best.
pub(super) fn sounds(least: Ring) -> &'static str {
    match least {
        Ring::Rings => "ringing or worse",
        Ring::Dull => "dull or dead",
        Ring::Dead => "dead",
    }
}

/// What a crack must be at least.
pub(super) fn cracked(least: Crack, style: Style) -> String {
    match least {
        Crack::Hairline => "a hairline along the grain, or worse".to_owned(),
        Crack::Open => format!("{}, or worse", crack(least, style)),
        Crack::Across => crack(least, style),
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
    use super::{FIXED, ORIGIN, SETTING, as_it_comes, in_force, limit, number};
    use crate::diagnosis::{Grade, Limit, Origin, Test, house_limits};
    use crate::quantity::length::millimetres;
    use crate::survey::Question;
    use crate::words::sample::{inches, style};

    #[test]
    fn every_house_limit_says_what_it_is_and_whose() {
        let row = |row: &Limit| format!("{:?}: {}", row.question, limit(row, style()));
        insta::assert_snapshot!(house_limits().iter().map(row).collect::<Vec<_>>().join("\n"), @r"
        FirstKeeper: the limit Cartside comes with: keeper missing or wrong; common practice, no source
        FirstTyre: the limit Cartside comes with: tyre off or not central; common practice, no source
        FirstSpokes: the limit Cartside comes with: a spoke broken or missing; common practice, no source
        FirstDish: the limit Cartside comes with: dish not the right way; common practice, no source
        FirstJoints: the limit Cartside comes with: a joint open to the eye; common practice, no source
        FirstNave: the limit Cartside comes with: nave split at the bonds; common practice, no source
        FirstRot: the limit Cartside comes with: rot or worm where it has stood; common practice, no source
        KeeperPresent: the limit Cartside comes with: keeper not there; common practice, no source
        KeeperRight: the limit Cartside comes with: keeper not the right part; common practice, no source
        KeeperSecured: the limit Cartside comes with: keeper not secured; common practice, no source
        KeeperWorn: the limit Cartside comes with: 10 % or more; common practice, no source
        KeeperWorn: the limit Cartside comes with: 25 % or more; common practice, no source
        KeeperWorn: the limit Cartside comes with: 50 % or more; common practice, no source
        TyreRing: the limit Cartside comes with: dull or dead at any place; common practice, no source
        TyreRing: the limit Cartside comes with: dead all round; common practice, no source
        TyreGap: the limit Cartside comes with: any gap at all; common practice, no source
        TyreGap: the limit Cartside comes with: ½ mm or more at two or more places that are also a quarter of those looked at; common practice, no source
        TyreGap: the limit Cartside comes with: 1 mm or more anywhere; common practice, no source
        TyreGap: the limit Cartside comes with: 3 mm or more anywhere; common practice, no source
        TyreShifts: the limit Cartside comes with: tyre shifts by hand; common practice, no source
        TyreOffCentre: the limit Cartside comes with: tyre off-centre by over a quarter of its width; common practice, no source
        TyreCracked: the limit Cartside comes with: tyre cracked through; common practice, no source
        TyreLeft: the limit Cartside comes with: less than 8 mm anywhere; common practice, no source
        TyreLeft: the limit Cartside comes with: 75 % or less of its thickness as new; common practice, no source
        TyreLeft: the limit Cartside comes with: 50 % or less of its thickness as new; common practice, no source
        TyreLeft: the limit Cartside comes with: less than 5 mm anywhere; common practice, no source
        TyreLeft: the limit Cartside comes with: 30 % or less of its thickness as new; common practice, no source
        Strake: the limit Cartside comes with: moves by hand at any place; common practice, no source
        Strake: the limit Cartside comes with: missing; common practice, no source
        StrakeCracked: the limit Cartside comes with: strake cracked; common practice, no source
        JointGap: the limit Cartside comes with: any gap at all; common practice, no source
        JointGap: the limit Cartside comes with: 2 mm or more, all places together; common practice, no source
        JointGap: the limit Cartside comes with: 10 mm or more, all places together; common practice, no source
        JointBelly: the limit Cartside comes with: any gap at all; common practice, no source
        FelloeStep: the limit Cartside comes with: 3 mm or more anywhere; common practice, no source
        CrackFelloe: the limit Cartside comes with: a crack: a hairline along the grain, or worse; common practice, no source
        CrackFelloe: the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; common practice, no source
        CrackFelloe: the limit Cartside comes with: a crack: across the grain, or running out of the wood; common practice, no source
        RotFelloe: the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        RotFelloe: the limit Cartside comes with: 6 mm or more anywhere; common practice, no source
        RotFelloe: the limit Cartside comes with: a third of the part or more, taken as 30 mm deep where its depth has not been said; common practice, no source
        Moisture: the limit Cartside comes with: 10 % or less, or 18 % or more; common practice, no source
        SpokeFoot: the limit Cartside comes with: moves by hand at any place; common practice, no source
        SpokeFoot: the limit Cartside comes with: any play at all; common practice, no source
        SpokeFoot: the limit Cartside comes with: 1½ mm or more anywhere; common practice, no source
        SpokeFoot: the limit Cartside comes with: two side by side, each loose enough for light work only; common practice, no source
        SpokeFoot: the limit Cartside comes with: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: ½ mm or more anywhere; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: moves by hand at any place; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: loose by hand at any place; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: 5 mm or more anywhere; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: two side by side, each loose enough for light work only; common practice, no source
        SpokeRimEnd: the limit Cartside comes with: a quarter of the wheel's spokes, each loose enough for light work only; common practice, no source
        SpokeBroken: the limit Cartside comes with: one broken spoke; common practice, no source
        SpokeBroken: the limit Cartside comes with: two or more broken spokes; common practice, no source
        SpokeBroken: the limit Cartside comes with: a broken spoke beside one that is loose at either end; common practice, no source
        StandOff: the limit Cartside comes with: all joints at the sole together open less than 2π times the mean stand-off of the shoulders, with the tyre on; common practice, no source
        StandOff: the limit Cartside comes with: any gap at all; common practice, no source
        TongueProud: the limit Cartside comes with: tongue proud; common practice, no source
        CrackSpoke: the limit Cartside comes with: a crack: a hairline along the grain, or worse; common practice, no source
        CrackSpoke: the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; common practice, no source
        CrackSpoke: the limit Cartside comes with: a crack: across the grain, or running out of the wood; common practice, no source
        RotSpoke: the limit Cartside comes with: 2 mm or more anywhere; common practice, no source
        RotSpoke: the limit Cartside comes with: 6 mm or more anywhere; common practice, no source
        RotSpoke: the limit Cartside comes with: a third of the part or more, taken as 30 mm deep where its depth has not been said; common practice, no source
        Bonds: the limit Cartside comes with: moves by hand at any place; common practice, no source
        Bonds: the limit Cartside comes with: missing; common practice, no source
        CrackNave: the limit Cartside comes with: a crack: a hairline along the grain, or worse; common practice, no source
        CrackNave: the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; common practice, no source
        CrackNave: the limit Cartside comes with: a crack: open 1 mm or more, or reaching a tongue or mortise, or worse; and a bond loose or missing; common practice, no source
        RotNave: the limit Cartside comes with: 2 mm or more; common practice, no source
        RotNave: the limit Cartside comes with: 6 mm or more; common practice, no source
        RotNave: the limit Cartside comes with: 10 mm or more; common practice, no source
        BoxMoves: the limit Cartside comes with: box moves in the nave; common practice, no source
        Dish: the limit Cartside comes with: a third or more of the dish as built lost, and 5 mm or more; common practice, no source
        Dish: the limit Cartside comes with: 5 mm or more apart from the other wheel of the axle; common practice, no source
        Dish: the limit Cartside comes with: two thirds or more of the dish as built lost, and 5 mm or more; common practice, no source
        Dish: the limit Cartside comes with: dish grown by half of the dish as built or more, and by 5 mm or more; common practice, no source
        Dish: the limit Cartside comes with: 5 mm or more the wrong way beyond doubt, in a wheel built with dish; common practice, no source
        DishGives: the limit Cartside comes with: rim gives in and out by hand; common practice, no source
        RunOut: the limit Cartside comes with: 6 mm or more; common practice, no source
        RunOut: the limit Cartside comes with: 12 mm or more; common practice, no source
        RunOut: the limit Cartside comes with: 25 mm or more; common practice, no source
        OutOfRound: the limit Cartside comes with: 4 mm or more; common practice, no source
        OutOfRound: the limit Cartside comes with: 10 mm or more; common practice, no source
        OutOfRound: the limit Cartside comes with: 20 mm or more; common practice, no source
        EndPlay: the limit Cartside comes with: more than 13 mm on a wheel kept on by a linch pin; common practice, no source
        EndPlay: the limit Cartside comes with: more than 20 mm on a wheel kept on by a linch pin; common practice, no source
        EndPlay: the limit Cartside comes with: more than 30 mm on a wheel kept on by a linch pin; common practice, no source
        EndPlay: the limit Cartside comes with: more than 6 mm on a wheel kept on by a nut; common practice, no source
        EndPlay: the limit Cartside comes with: more than 10 mm on a wheel kept on by a nut; common practice, no source
        EndPlay: the limit Cartside comes with: more than 15 mm on a wheel kept on by a nut; common practice, no source
        EndPlay: the limit Cartside comes with: more than 1 mm on a wheel kept on by a Collinge axle or mail axle; common practice, no source
        EndPlay: the limit Cartside comes with: more than 2 mm on a wheel kept on by a Collinge axle or mail axle; common practice, no source
        EndPlay: the limit Cartside comes with: more than 3 mm on a wheel kept on by a Collinge axle or mail axle; common practice, no source
        Binds: the limit Cartside comes with: binds; common practice, no source
        Shake: the limit Cartside comes with: 6 mm or more; common practice, no source
        Shake: the limit Cartside comes with: 15 mm or more; common practice, no source
        Shake: the limit Cartside comes with: 30 mm or more; common practice, no source
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
        let row = |origin| Limit {
            question: Question::TyreGap,
            grade: Grade::Note,
            test: Test::Anywhere(millimetres(0.5)),
            origin,
        };
        insta::assert_snapshot!([ORIGIN, SETTING, FIXED].join("\n"), @r"
        No published wear limit for wooden wheels is known to us: as they come, these are common practice, without a source, and meant to be set by the shop that uses them.
        Each that has a value can be set, or left out, by an entry in the book; what was set before stays to be read. Every finding names the limit it was judged by. Findings already handed over are not changed.
        This row has no value that could be set: it is reached or it is not.
        ");
        let (comes, set) = (row(Origin::House), row(Origin::Shop));
        let each = [None, Some(&comes), Some(&set)].map(|now| in_force(&comes, now, style()));
        insta::assert_snapshot!(each.join("\n"), @r"
        not used in this shop
        ½ mm or more anywhere
        set by this shop: ½ mm or more anywhere
        ");
        insta::assert_snapshot!(as_it_comes(&comes, style()), @"As it comes: ½ mm or more anywhere; common practice, no source.");
        insta::assert_snapshot!(as_it_comes(&row(Origin::Trade("as told in the county")), style()), @"As it comes, a rule of the trade: ½ mm or more anywhere; source: as told in the county.");
        insta::assert_snapshot!(from(Origin::Shop), @"set by this shop: 12 thou or more anywhere");
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
        the limit Cartside comes with: keeper missing or wrong; common practice, no source
        the limit Cartside comes with: tyre off or not central; common practice, no source
        the limit Cartside comes with: a spoke broken or missing; common practice, no source
        the limit Cartside comes with: dish not the right way; common practice, no source
        the limit Cartside comes with: a joint open to the eye; common practice, no source
        the limit Cartside comes with: nave split at the bonds; common practice, no source
        the limit Cartside comes with: rot or worm where it has stood; common practice, no source
        the limit Cartside comes with: keeper not there; common practice, no source
        the limit Cartside comes with: keeper not the right part; common practice, no source
        the limit Cartside comes with: keeper not secured; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: tyre shifts by hand; common practice, no source
        the limit Cartside comes with: tyre off-centre by over a quarter of its width; common practice, no source
        the limit Cartside comes with: tyre cracked through; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: strake cracked at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: three or more broken spokes; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: tongue proud at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: box moves in the nave at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: rim gives in and out by hand; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        the limit Cartside comes with: binds; common practice, no source
        the limit Cartside comes with: a bad answer at three or more places; common practice, no source
        ");
        assert_eq!(
            [0, 1, 2, 3, 4, 5].map(number).join(" "),
            "0 one two three four 5"
        );
    }
}
