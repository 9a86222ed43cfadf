//! What can be done about a finding, and what must be put right before it. Common practice, no
//! source.

use super::cause::Cause;
use super::finding::Finding;
use super::judge::Judgement;
use super::limit::Test;
use super::sign::{Told, told};
use crate::survey::{Need, Question};

/// One cure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cure {
    /// Leave it, and look again by a date.
    LeaveAndLook,
    /// Bring the tongues below the sole.
    TonguesBelow,
    /// Re-wedge the tongues.
    Rewedge,
    /// Re-seat or shim the feet.
    ReseatFeet,
    /// Ease a joint.
    EaseJoint,
    /// A new dowel.
    NewDowel,
    /// A new felloe, or half the rim.
    NewFelloe,
    /// Bolt or plate a split felloe.
    PlateFelloe,
    /// A new spoke.
    NewSpoke,
    /// Drive up, shrink or renew the bonds.
    RenewBonds,
    /// Wedge and centre the box.
    WedgeBox,
    /// A new box.
    NewBox,
    /// Leather washers and grease.
    Washers,
    /// A new keeper.
    NewKeeper,
    /// Straighten or renew the arm.
    RenewArm,
    /// Contract the tyre: upset it, or cut and weld it.
    ContractTyre,
    /// A new tyre.
    NewTyre,
    /// Re-nail a strake, or a new one.
    RenewStrake,
    /// Set the dish right.
    SetDish,
    /// A new nave.
    NewNave,
    /// Keep it as an object; no hot work.
    KeepAsObject,
}

impl Cure {
    /// Every cure, in the order in which they are done.
    pub const ALL: [Cure; 21] = [
        Cure::LeaveAndLook,
        Cure::TonguesBelow,
        Cure::Rewedge,
        Cure::ReseatFeet,
        Cure::EaseJoint,
        Cure::NewDowel,
        Cure::NewFelloe,
        Cure::PlateFelloe,
        Cure::NewSpoke,
        Cure::RenewBonds,
        Cure::WedgeBox,
        Cure::NewBox,
        Cure::Washers,
        Cure::NewKeeper,
        Cure::RenewArm,
        Cure::ContractTyre,
        Cure::NewTyre,
        Cure::RenewStrake,
        Cure::SetDish,
        Cure::NewNave,
        Cure::KeepAsObject,
    ];

    /// Whether it draws the wheel together by a hot tyre.
    pub fn draws(self) -> bool {
        matches!(self, Cure::ContractTyre | Cure::NewTyre)
    }
}

/// What stands in the way of a cure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum InTheWay {
    /// Feet are loose: the draw would lean the spokes instead of seating them.
    LooseFeet,
    /// Not every foot was looked at.
    FeetNotLooked,
    /// Tongues stand proud: the draw would push the dish out.
    ProudTongues,
    /// The dish is not known.
    DishUnknown,
    /// The wheel is dished the other way than it was built.
    DishReversed,
    /// The rim is felloe-bound: its joints are shut and the draw closes nothing.
    FelloeBound,
}

/// The cures of a finding on the wheel so judged, in the order in which they are weighed: the least
/// first. A cure of a cause that the readings speak against is none.
pub fn cures(finding: &Finding, judgement: &Judgement) -> Vec<Cure> {
    let mends = |cure: &Cure| {
        let cause = cause_of(*cure, finding.question);
        cause.is_none_or(|cause| told(cause, finding, judgement) != Told::Against)
    };
    weighed(finding).iter().copied().filter(mends).collect()
}

/// The one cause that a cure is for, where it is for one only.
fn cause_of(cure: Cure, question: Question) -> Option<Cause> {
    match cure {
        Cure::EaseJoint => Some(Cause::FelloeBound),
        Cure::TonguesBelow => Some(Cause::ProudTongues),
        Cure::ReseatFeet => Some(Cause::LooseFeet),
        // A cracked tyre is renewed however thick it is.
        Cure::NewTyre if question != Question::TyreCracked => Some(Cause::TyreStretched),
        _ => None,
    }
}

/// Every cure of a finding, whatever the readings say of its cause, the least first.
pub fn weighed(finding: &Finding) -> &'static [Cure] {
    use Cure::*;
    match finding.question {
        Question::KeeperPresent
        | Question::KeeperRight
        | Question::KeeperSecured
        | Question::KeeperWorn => &[NewKeeper],
        Question::TyreRing | Question::TyreGap | Question::TyreShifts => {
            &[TonguesBelow, ReseatFeet, EaseJoint, ContractTyre, NewTyre]
        }
        Question::TyreOffCentre => &[ContractTyre, NewTyre],
        Question::TyreCracked => &[NewTyre],
        Question::TyreLeft => &[LeaveAndLook, NewTyre],
        Question::Strake | Question::StrakeCracked => &[RenewStrake],
        Question::JointGap => &[LeaveAndLook, TonguesBelow, ContractTyre, NewFelloe],
        Question::JointBelly | Question::Moisture => &[LeaveAndLook],
        Question::FelloeStep => &[NewDowel, NewFelloe],
        Question::CrackFelloe => &[LeaveAndLook, PlateFelloe, NewFelloe],
        Question::RotFelloe => &[LeaveAndLook, NewFelloe, KeepAsObject],
        Question::SpokeFoot => &[EaseJoint, ReseatFeet, NewSpoke, NewNave],
        Question::SpokeRimEnd => &[Rewedge, EaseJoint, NewSpoke],
        Question::SpokeBroken => &[NewSpoke],
        Question::StandOff if finding.limit.test == Test::FelloeBound => &[EaseJoint],
        // Joints that are open enough let a draw bring the shoulders home.
        Question::StandOff => &[EaseJoint, ContractTyre],
        Question::TongueProud => &[TonguesBelow],
        Question::CrackSpoke | Question::RotSpoke => &[LeaveAndLook, NewSpoke],
        Question::Bonds => &[RenewBonds],
        Question::CrackNave => &[LeaveAndLook, RenewBonds, NewNave, KeepAsObject],
        Question::RotNave => &[LeaveAndLook, NewNave, KeepAsObject],
        Question::BoxMoves => &[WedgeBox, NewBox],
        Question::Dish | Question::DishGives => &[TonguesBelow, ReseatFeet, SetDish],
        Question::RunOut => &[WedgeBox, ReseatFeet, NewFelloe],
        Question::OutOfRound => &[WedgeBox, NewSpoke, NewFelloe],
        Question::EndPlay => &[Washers, NewKeeper, RenewArm],
        Question::Binds => &[Washers, RenewArm],
        Question::Shake => &[Washers, WedgeBox, NewBox, RenewArm],
        // The first look.
        _ => &[],
    }
}

/// What stands in the way of this cure on the wheel so judged: no draw is advised while feet are
/// loose or not looked at, tongues proud, the dish unknown or the rim bound.
pub fn in_the_way(cure: Cure, judgement: &Judgement) -> Vec<InTheWay> {
    if cure.draws() {
        before_a_draw(judgement)
    } else {
        Vec::new()
    }
}

/// What stands in the way of every cure that draws the wheel so judged together; see [`in_the_way`].
pub fn before_a_draw(judgement: &Judgement) -> Vec<InTheWay> {
    let found = |question| {
        let mut findings = judgement.findings.iter();
        findings.any(|finding| finding.question == question)
    };
    let missing = |need| judgement.missing.iter().any(|missing| missing.need == need);
    let mut findings = judgement.findings.iter();
    let reversed = findings.any(|finding| finding.limit.test == Test::DishReversed);
    let ways = [
        (InTheWay::LooseFeet, found(Question::SpokeFoot)),
        (InTheWay::FeetNotLooked, missing(Need::SpokeFeet)),
        (InTheWay::ProudTongues, found(Question::TongueProud)),
        (InTheWay::DishUnknown, missing(Need::Dish)),
        (InTheWay::DishReversed, reversed),
        (InTheWay::FelloeBound, judgement.bound()),
    ];
    let stands = ways.into_iter().filter(|(_, stands)| *stands);
    stands.map(|(way, _)| way).collect()
}
