//! What may have brought a finding about. A list of likelihoods, common practice, no source, to be
//! told apart before any cure is chosen.

use super::finding::Finding;
use super::judge::Judgement;
use super::limit::Test;
use super::sign::{Told, told};
use crate::survey::Question;

/// One likely cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Cause {
    /// The rim has dried and shrunk.
    DryRim,
    /// The wheel was made of wood that was not dry.
    Unseasoned,
    /// The nave has shrunk.
    NaveShrunk,
    /// The joints shut before the shoulders are home.
    FelloeBound,
    /// Tongues stand proud and carry the tyre.
    ProudTongues,
    /// The tyre is worn thin and has stretched.
    TyreStretched,
    /// The tyre was put back in another place than it came from.
    OtherBed,
    /// The tyre was drawn too hard.
    OverDrawn,
    /// Wood crushed where it bears.
    CrushedWood,
    /// Rot.
    Rot,
    /// Worm.
    Worm,
    /// It stood wet.
    StoodWet,
    /// Grease has soaked into the joint.
    Grease,
    /// It was run with a loose tyre.
    RunLoose,
    /// Spokes give at the feet.
    LooseFeet,
    /// The wedges in the tongues are loose or gone.
    WedgesGone,
    /// A dowel is broken or worn.
    DowelBroken,
    /// A blow, or too great a load.
    Blow,
    /// Nails or bolts are loose or gone.
    NailsGone,
    /// The iron is worn by road, block or shoe.
    WornIron,
    /// A weld or a hole gave.
    WeldGave,
    /// The rim is out of true.
    RimUntrue,
    /// Spokes of unlike length or lean.
    UnevenSpokes,
    /// The box is set crooked.
    BoxCrooked,
    /// The box is loose in the nave.
    BoxLoose,
    /// Arm or box is worn.
    ArmWorn,
    /// Washers or collar are worn.
    WashersWorn,
    /// It runs dry or dirty.
    DryBearing,
    /// The keeper is too tight.
    KeeperTight,
    /// The arm is bent.
    ArmBent,
    /// The keeper was never tied or pinned.
    NotTied,
    /// Something else was put in the place of the right part.
    WrongPart,
}

impl Cause {
    /// Every cause.
    pub const ALL: [Cause; 32] = [
        Cause::DryRim,
        Cause::Unseasoned,
        Cause::NaveShrunk,
        Cause::FelloeBound,
        Cause::ProudTongues,
        Cause::TyreStretched,
        Cause::OtherBed,
        Cause::OverDrawn,
        Cause::CrushedWood,
        Cause::Rot,
        Cause::Worm,
        Cause::StoodWet,
        Cause::Grease,
        Cause::RunLoose,
        Cause::LooseFeet,
        Cause::WedgesGone,
        Cause::DowelBroken,
        Cause::Blow,
        Cause::NailsGone,
        Cause::WornIron,
        Cause::WeldGave,
        Cause::RimUntrue,
        Cause::UnevenSpokes,
        Cause::BoxCrooked,
        Cause::BoxLoose,
        Cause::ArmWorn,
        Cause::WashersWorn,
        Cause::DryBearing,
        Cause::KeeperTight,
        Cause::ArmBent,
        Cause::NotTied,
        Cause::WrongPart,
    ];
}

/// The likely causes of a finding on the wheel so judged, with what the readings say of each: first
/// those they speak for, last those they speak against, and else the likeliest first. What the first
/// look finds is to be looked at closely before causes are named.
pub fn causes(finding: &Finding, judgement: &Judgement) -> Vec<(Cause, Told)> {
    let likely = likely(finding).iter();
    let mut causes: Vec<(Cause, Told)> = likely
        .map(|cause| (*cause, told(*cause, finding, judgement)))
        .collect();
    causes.sort_by_key(|(_, told)| *told);
    causes
}

/// Every likely cause of a finding, whatever the readings say of it, the likeliest first.
pub fn likely(finding: &Finding) -> &'static [Cause] {
    use Cause::*;
    match (finding.question, &finding.limit.test) {
        (Question::StandOff, Test::FelloeBound) => &[FelloeBound],
        (Question::Dish, Test::DishLost(_)) => &[DryRim, LooseFeet],
        (Question::Dish, Test::DishGrown) => &[OverDrawn, ProudTongues, LooseFeet],
        (question, _) => of(question),
    }
}

fn of(question: Question) -> &'static [Cause] {
    use Cause::*;
    match question {
        Question::KeeperPresent | Question::KeeperSecured => &[NotTied, WashersWorn],
        Question::KeeperRight => &[WrongPart],
        Question::KeeperWorn => &[WashersWorn, DryBearing],
        Question::TyreRing | Question::TyreGap | Question::TyreShifts => &[
            DryRim,
            FelloeBound,
            ProudTongues,
            TyreStretched,
            CrushedWood,
            OtherBed,
        ],
        Question::TyreOffCentre => &[DryRim, TyreStretched, Blow],
        Question::TyreCracked => &[WeldGave, WornIron, Blow],
        Question::TyreLeft => &[WornIron],
        Question::Strake => &[NailsGone, DryRim, Rot],
        Question::StrakeCracked => &[WornIron, Blow],
        Question::JointGap => &[DryRim, TyreStretched, Unseasoned, ProudTongues],
        Question::JointBelly => &[DryRim, Unseasoned],
        Question::FelloeStep => &[DowelBroken, Rot, Blow],
        Question::CrackFelloe => &[OverDrawn, Unseasoned, Blow],
        Question::RotFelloe => &[StoodWet, Worm],
        Question::Moisture => &[StoodWet, DryRim],
        Question::SpokeFoot => &[FelloeBound, NaveShrunk, RunLoose, Grease, Rot],
        Question::SpokeRimEnd => &[WedgesGone, FelloeBound, CrushedWood, Rot],
        Question::SpokeBroken => &[Blow, RunLoose, Rot],
        Question::StandOff => &[FelloeBound, DryRim, NaveShrunk],
        Question::TongueProud => &[DryRim, CrushedWood],
        Question::CrackSpoke => &[Blow, OverDrawn, Unseasoned],
        Question::RotSpoke | Question::RotNave => &[StoodWet, Grease, Worm],
        Question::Bonds => &[NaveShrunk, Rot],
        Question::CrackNave => &[NaveShrunk, Unseasoned, Blow],
        Question::BoxMoves => &[NaveShrunk, Grease, Rot],
        Question::Dish | Question::DishGives => &[LooseFeet, DryRim, Blow],
        // Never a bent arm: it turns nothing.
        Question::RunOut => &[RimUntrue, BoxCrooked, BoxLoose, UnevenSpokes],
        Question::OutOfRound => &[RimUntrue, UnevenSpokes, BoxCrooked],
        Question::EndPlay => &[WashersWorn, ArmWorn],
        Question::Binds => &[DryBearing, KeeperTight, ArmBent],
        Question::Shake => &[ArmWorn, BoxLoose],
        // The first look.
        _ => &[],
    }
}
