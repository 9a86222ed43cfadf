//! The shop's own limits as they come: common practice, no source.

use super::limit::{Limit, Origin, Test};
use super::standing::Grade::{self, KeepEmpty, LightWorkOnly, NotOnThisWheel, Note};
use crate::quantity::Percent;
use crate::quantity::length::millimetres;
use crate::survey::Question::{self, *};
use crate::survey::{Crack, Play, Ring};
use crate::wheel::Keeper;

const PIN: &[Keeper] = &[Keeper::LinchPin];
const NUT: &[Keeper] = &[Keeper::Nut];
const CLOSE: &[Keeper] = &[Keeper::Collinge, Keeper::Mail];

/// The shop's limits as they come: common practice, no source. Worst grades may stand in any order,
/// but of two limits of one grade the one that says more stands first.
pub fn house_limits() -> Vec<Limit> {
    let all = [FIRST_LOOK, KEEPER_AND_TYRE, RIM, SPOKES, NAVE, WHOLE];
    let row = |(question, grade, test): &Row| Limit {
        question: *question,
        grade: *grade,
        test: *test,
        origin: Origin::House,
    };
    all.into_iter().flatten().map(row).collect()
}

type Row = (Question, Grade, Test);

const BAD: Test = Test::Answered(1);

const fn at(mm: f64) -> Test {
    Test::Anywhere(millimetres(mm))
}

const fn under(mm: f64) -> Test {
    Test::Under(millimetres(mm))
}

const fn over(mm: f64, on: &'static [Keeper]) -> Test {
    let than = millimetres(mm);
    Test::MoreThan { than, on }
}

const fn sum(mm: f64) -> Test {
    Test::Sum(millimetres(mm))
}

const fn worn(percent: u8) -> Test {
    Test::ShareAtLeast(Percent::whole(percent))
}

const fn of_new(percent: u8) -> Test {
    Test::ShareOfNew(Percent::whole(percent))
}

const FIRST_LOOK: &[Row] = &[
    (FirstKeeper, NotOnThisWheel, BAD),
    (FirstTyre, KeepEmpty, BAD),
    (FirstSpokes, KeepEmpty, BAD),
    (FirstDish, NotOnThisWheel, BAD),
    (FirstJoints, LightWorkOnly, BAD),
    (FirstNave, KeepEmpty, BAD),
    (FirstRot, LightWorkOnly, BAD),
];

const KEEPER_AND_TYRE: &[Row] = &[
    (KeeperPresent, NotOnThisWheel, BAD),
    (KeeperRight, NotOnThisWheel, BAD),
    (KeeperSecured, NotOnThisWheel, BAD),
    (KeeperWorn, Note, worn(10)),
    (KeeperWorn, LightWorkOnly, worn(25)),
    (KeeperWorn, KeepEmpty, worn(50)),
    (TyreRing, Note, Test::Sounds(Ring::Dull)),
    (TyreRing, KeepEmpty, Test::DeadAllRound),
    (TyreGap, Note, Test::Any),
    (
        TyreGap,
        LightWorkOnly,
        Test::AtPlacesAndAQuarter {
            each: millimetres(0.5),
            places: 2,
        },
    ),
    (TyreGap, LightWorkOnly, at(1.0)),
    (TyreGap, KeepEmpty, at(3.0)),
    (TyreShifts, KeepEmpty, BAD),
    (TyreOffCentre, NotOnThisWheel, BAD),
    (TyreCracked, NotOnThisWheel, BAD),
    (TyreLeft, Note, under(8.0)),
    (TyreLeft, Note, of_new(75)),
    (TyreLeft, LightWorkOnly, of_new(50)),
    (TyreLeft, KeepEmpty, under(5.0)),
    (TyreLeft, KeepEmpty, of_new(30)),
    // Strakes go by the bonds: both are iron bands that hold lengths of wood together.
    (Strake, LightWorkOnly, Test::Felt(Play::JustMoves)),
    (Strake, KeepEmpty, Test::NotThere),
    (StrakeCracked, LightWorkOnly, BAD),
];

const RIM: &[Row] = &[
    (JointGap, Note, Test::Any),
    (JointGap, LightWorkOnly, sum(2.0)),
    (JointGap, KeepEmpty, sum(10.0)),
    (JointBelly, Note, Test::Any),
    (FelloeStep, KeepEmpty, at(3.0)),
    (CrackFelloe, Note, Test::Cracked(Crack::Hairline)),
    (CrackFelloe, LightWorkOnly, Test::Cracked(Crack::Open)),
    (CrackFelloe, KeepEmpty, Test::Cracked(Crack::Across)),
    (RotFelloe, Note, at(2.0)),
    (RotFelloe, LightWorkOnly, at(6.0)),
    (RotFelloe, KeepEmpty, Test::AThird),
    (
        Moisture,
        Note,
        Test::ShareOutside(Percent::whole(10), Percent::whole(18)),
    ),
];

const SPOKES: &[Row] = &[
    (SpokeFoot, LightWorkOnly, Test::Felt(Play::JustMoves)),
    (SpokeFoot, LightWorkOnly, Test::Any),
    (SpokeFoot, KeepEmpty, at(1.5)),
    (SpokeFoot, KeepEmpty, Test::Neighbours),
    (SpokeFoot, KeepEmpty, Test::AQuarter),
    (SpokeRimEnd, Note, at(0.5)),
    (SpokeRimEnd, Note, Test::Felt(Play::JustMoves)),
    (SpokeRimEnd, LightWorkOnly, at(2.0)),
    (SpokeRimEnd, LightWorkOnly, Test::Felt(Play::Loose)),
    (SpokeRimEnd, KeepEmpty, at(5.0)),
    (SpokeRimEnd, KeepEmpty, Test::Neighbours),
    (SpokeRimEnd, KeepEmpty, Test::AQuarter),
    (SpokeBroken, KeepEmpty, Test::Answered(1)),
    (SpokeBroken, NotOnThisWheel, Test::Answered(2)),
    (SpokeBroken, NotOnThisWheel, Test::BesideALooseOne),
    (StandOff, Note, Test::FelloeBound),
    (StandOff, Note, Test::Any),
    (TongueProud, Note, BAD),
    (CrackSpoke, Note, Test::Cracked(Crack::Hairline)),
    (CrackSpoke, LightWorkOnly, Test::Cracked(Crack::Open)),
    (CrackSpoke, KeepEmpty, Test::Cracked(Crack::Across)),
    (RotSpoke, Note, at(2.0)),
    (RotSpoke, LightWorkOnly, at(6.0)),
    (RotSpoke, KeepEmpty, Test::AThird),
];

const NAVE: &[Row] = &[
    (Bonds, LightWorkOnly, Test::Felt(Play::JustMoves)),
    (Bonds, KeepEmpty, Test::NotThere),
    (CrackNave, Note, Test::Cracked(Crack::Hairline)),
    (CrackNave, LightWorkOnly, Test::Cracked(Crack::Open)),
    (
        CrackNave,
        KeepEmpty,
        Test::CrackedWithLooseBond(Crack::Open),
    ),
    (RotNave, Note, at(2.0)),
    (RotNave, LightWorkOnly, at(6.0)),
    (RotNave, KeepEmpty, at(10.0)),
    (BoxMoves, Note, BAD),
];

const WHOLE: &[Row] = &[
    (Dish, Note, Test::DishLost(1)),
    (Dish, Note, Test::PairDiffers(millimetres(5.0))),
    (Dish, LightWorkOnly, Test::DishLost(2)),
    (Dish, LightWorkOnly, Test::DishGrown),
    (Dish, NotOnThisWheel, Test::DishReversed),
    (DishGives, NotOnThisWheel, BAD),
    (RunOut, Note, at(6.0)),
    (RunOut, LightWorkOnly, at(12.0)),
    (RunOut, KeepEmpty, at(25.0)),
    (OutOfRound, Note, at(4.0)),
    (OutOfRound, LightWorkOnly, at(10.0)),
    (OutOfRound, KeepEmpty, at(20.0)),
    (EndPlay, Note, over(13.0, PIN)),
    (EndPlay, LightWorkOnly, over(20.0, PIN)),
    (EndPlay, KeepEmpty, over(30.0, PIN)),
    (EndPlay, Note, over(6.0, NUT)),
    (EndPlay, LightWorkOnly, over(10.0, NUT)),
    (EndPlay, KeepEmpty, over(15.0, NUT)),
    (EndPlay, Note, over(1.0, CLOSE)),
    (EndPlay, LightWorkOnly, over(2.0, CLOSE)),
    (EndPlay, KeepEmpty, over(3.0, CLOSE)),
    (Binds, LightWorkOnly, BAD),
    (Shake, Note, at(6.0)),
    (Shake, LightWorkOnly, at(15.0)),
    (Shake, KeepEmpty, at(30.0)),
];
