//! The sheet: one row a question, in the order in which they are asked. Codes stand in slots for
//! ever and are never changed or used again.

use super::group::Group::{self, FirstLook, Keeper, Nave, Rim, Spokes, Tyre, Whole};
use super::question::Pad::{self, Crack, Fastening, Gauge, Ring, Share, Size, Verdict, YesNo};
use super::question::Places;
use super::question::Question::{self, *};
use crate::quantity::LengthRange;

/// Which wheels a question is put to.
#[derive(Clone, Copy)]
pub(super) enum Of {
    /// Every wheel.
    All,
    /// One with a tyre of any sort, or not said.
    Tyred,
    /// One with a hoop or with rubber in a channel, or not said.
    Round,
    /// One with a hoop, or not said.
    Hoop,
    /// One with strakes.
    Strakes,
    /// One kept on by a linch pin, or not said.
    Pin,
}

/// One question: its code, the places and the wheels it is put to, its keys and its group.
pub(super) struct Row {
    pub(super) question: Question,
    pub(super) code: &'static str,
    pub(super) places: Places,
    pub(super) of: Of,
    pub(super) pad: Pad,
    pub(super) group: Group,
}

const fn row(
    question: Question,
    code: &'static str,
    places: Places,
    of: Of,
    pad: Pad,
    group: Group,
) -> Row {
    Row {
        question,
        code,
        places,
        of,
        pad,
        group,
    }
}

const ONE: Places = Places::Whole;
const SPOKES: Places = Places::Spokes;
const JOINTS: Places = Places::Joints;
const FELLOES: Places = Places::Felloes;
const NAVE: Places = Places::Nave;
const ROUND: Places = Places::RoundTheTyre;

const PLAY: Pad = Verdict(LengthRange::SpokePlay);
const GAP: Pad = Gauge(LengthRange::JointGap);
const ROT: Pad = Gauge(LengthRange::RotDepth);

pub(super) const ROWS: [Row; 43] = [
    row(FirstKeeper, "first-keeper", ONE, Of::All, YesNo, FirstLook),
    row(FirstTyre, "first-tyre", ONE, Of::Tyred, YesNo, FirstLook),
    row(FirstSpokes, "first-spokes", ONE, Of::All, YesNo, FirstLook),
    row(FirstDish, "first-dish", ONE, Of::All, YesNo, FirstLook),
    row(FirstJoints, "first-joints", ONE, Of::All, YesNo, FirstLook),
    row(FirstNave, "first-nave", ONE, Of::All, YesNo, FirstLook),
    row(FirstRot, "first-rot", ONE, Of::All, YesNo, FirstLook),
    row(KeeperPresent, "keeper-present", ONE, Of::All, YesNo, Keeper),
    row(KeeperRight, "keeper-right", ONE, Of::All, YesNo, Keeper),
    row(KeeperSecured, "keeper-secured", ONE, Of::All, YesNo, Keeper),
    row(KeeperWorn, "keeper-worn", ONE, Of::Pin, Share, Keeper),
    row(TyreRing, "ring", ROUND, Of::Hoop, Ring, Tyre),
    row(
        TyreGap,
        "tyre-gap",
        ROUND,
        Of::Hoop,
        Gauge(LengthRange::FeelerGap),
        Tyre,
    ),
    row(TyreShifts, "tyre-shifts", ONE, Of::Hoop, YesNo, Tyre),
    row(
        TyreOffCentre,
        "tyre-off-centre",
        ONE,
        Of::Round,
        YesNo,
        Tyre,
    ),
    row(TyreCracked, "tyre-cracked", ONE, Of::Round, YesNo, Tyre),
    row(
        TyreLeft,
        "tyre-left",
        ROUND,
        Of::Hoop,
        Size(LengthRange::TyreThickness),
        Tyre,
    ),
    row(Strake, "strake", JOINTS, Of::Strakes, Fastening, Tyre),
    row(
        StrakeCracked,
        "strake-cracked",
        JOINTS,
        Of::Strakes,
        YesNo,
        Tyre,
    ),
    row(JointGap, "joint-gap", JOINTS, Of::All, GAP, Rim),
    row(JointBelly, "joint-belly", JOINTS, Of::All, GAP, Rim),
    row(FelloeStep, "felloe-step", JOINTS, Of::All, GAP, Rim),
    row(CrackFelloe, "crack-felloe", FELLOES, Of::All, Crack, Rim),
    row(RotFelloe, "rot-felloe", FELLOES, Of::All, ROT, Rim),
    row(Moisture, "moisture", FELLOES, Of::All, Share, Rim),
    row(SpokeFoot, "spoke-foot", SPOKES, Of::All, PLAY, Spokes),
    row(SpokeRimEnd, "spoke-rim-end", SPOKES, Of::All, PLAY, Spokes),
    row(SpokeBroken, "spoke-broken", SPOKES, Of::All, YesNo, Spokes),
    row(
        StandOff,
        "stand-off",
        SPOKES,
        Of::All,
        Gauge(LengthRange::StandOff),
        Spokes,
    ),
    row(TongueProud, "tongue-proud", SPOKES, Of::All, YesNo, Spokes),
    row(CrackSpoke, "crack-spoke", SPOKES, Of::All, Crack, Spokes),
    row(RotSpoke, "rot-spoke", SPOKES, Of::All, ROT, Spokes),
    row(Bonds, "bonds", NAVE, Of::All, Fastening, Nave),
    row(CrackNave, "crack-nave", NAVE, Of::All, Crack, Nave),
    row(RotNave, "rot-nave", NAVE, Of::All, ROT, Nave),
    row(BoxMoves, "box-moves", NAVE, Of::All, YesNo, Nave),
    row(Dish, "dish", ONE, Of::All, Size(LengthRange::Dish), Whole),
    row(DishGives, "dish-gives", ONE, Of::All, YesNo, Whole),
    row(
        RunOut,
        "run-out",
        ONE,
        Of::All,
        Size(LengthRange::RunOut),
        Whole,
    ),
    row(
        OutOfRound,
        "out-of-round",
        ONE,
        Of::All,
        Size(LengthRange::OutOfRound),
        Whole,
    ),
    row(
        EndPlay,
        "end-play",
        ONE,
        Of::All,
        Size(LengthRange::EndPlay),
        Whole,
    ),
    row(Binds, "binds", ONE, Of::All, YesNo, Whole),
    row(
        Shake,
        "shake",
        ONE,
        Of::All,
        Size(LengthRange::Shake),
        Whole,
    ),
];
