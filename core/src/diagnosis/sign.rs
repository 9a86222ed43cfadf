//! What the readings of one wheel say of a likely cause: for it, against it, or nothing.

use super::cause::Cause;
use super::finding::{Finding, Measure};
use super::judge::Judgement;
use super::limit::Test;
use crate::survey::Question;

/// Whether the readings speak for a cause. Only what follows plainly from them is weighed; common
/// practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Told {
    /// What was recorded supports it.
    For,
    /// Nothing recorded tells either way.
    Silent,
    /// What was recorded contradicts it.
    Against,
}

/// What speaks against causes without being a finding.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Signs {
    /// The rows in which every place was looked at and nothing was found.
    pub sound: Vec<Question>,
    /// A joint stands open at the sole, with the tyre on.
    pub joint_open: bool,
    /// The tyre was measured, and nine tenths or more of its thickness as new are left everywhere.
    pub iron_as_new: bool,
    /// The moisture of the rim was measured, and is 14 % or more everywhere.
    pub wood_moist: bool,
    /// All joints are shut, and over one of them the tyre stands off by more than drying makes of a shut rim.
    pub more_than_drying: bool,
}

/// What the readings of the wheel so judged say of this cause of this finding.
pub fn told(cause: Cause, finding: &Finding, judgement: &Judgement) -> Told {
    if contradicted(cause, finding, judgement) {
        Told::Against
    } else if supported(cause, finding, judgement) {
        Told::For
    } else {
        Told::Silent
    }
}

fn contradicted(cause: Cause, finding: &Finding, judgement: &Judgement) -> bool {
    let signs = &judgement.signs;
    let sound = |question| signs.sound.contains(&question);
    match cause {
        // The sum of joints and stand-off says more than one open joint.
        Cause::FelloeBound => !judgement.bound() && (signs.joint_open || sound(Question::StandOff)),
        Cause::ProudTongues => sound(Question::TongueProud),
        Cause::LooseFeet => sound(Question::SpokeFoot),
        Cause::NaveShrunk => sound(Question::SpokeFoot) || sound(Question::Bonds),
        Cause::BoxLoose => sound(Question::BoxMoves),
        Cause::TyreStretched | Cause::WornIron => signs.iron_as_new,
        Cause::DryRim => {
            let slack = [Question::TyreRing, Question::TyreGap, Question::TyreShifts];
            signs.wood_moist || signs.more_than_drying && slack.contains(&finding.question)
        }
        Cause::OverDrawn => signs.joint_open,
        Cause::Rot => {
            let rows = rot(finding.question);
            !rows.is_empty() && rows.iter().all(|row| sound(*row))
        }
        _ => false,
    }
}

fn supported(cause: Cause, finding: &Finding, judgement: &Judgement) -> bool {
    let others = || {
        let all = judgement.findings.iter();
        all.filter(|other| other.question != finding.question)
    };
    let found = |rows: &[Question]| others().any(|other| rows.contains(&other.question));
    match cause {
        Cause::FelloeBound => judgement.bound(),
        Cause::ProudTongues => found(&[Question::TongueProud]),
        Cause::LooseFeet => found(&[Question::SpokeFoot]),
        Cause::NaveShrunk => found(&[Question::Bonds]),
        Cause::BoxLoose => found(&[Question::BoxMoves]),
        Cause::TyreStretched | Cause::WornIron => found(&[Question::TyreLeft]),
        Cause::DryRim => found(&[Question::JointBelly]) || judgement.findings.iter().any(dry),
        Cause::OverDrawn => others().any(|other| other.limit.test == Test::DishGrown),
        Cause::RunLoose => found(&[Question::TyreGap, Question::TyreRing, Question::TyreShifts]),
        Cause::Rot => others().any(|other| {
            let here = |place| finding.places.contains(place);
            rot(finding.question).contains(&other.question)
                && (other.question == Question::RotNave || other.places.iter().any(here))
        }),
        _ => false,
    }
}

/// Where rot would bring such a finding about.
fn rot(question: Question) -> &'static [Question] {
    match question {
        Question::SpokeFoot => &[Question::RotSpoke, Question::RotNave],
        Question::SpokeRimEnd => &[Question::RotSpoke, Question::RotFelloe],
        Question::SpokeBroken => &[Question::RotSpoke],
        Question::FelloeStep | Question::Strake => &[Question::RotFelloe],
        Question::Bonds | Question::BoxMoves => &[Question::RotNave],
        _ => &[],
    }
}

/// Whether it finds the rim too dry rather than too wet.
fn dry(finding: &Finding) -> bool {
    match (&finding.limit.test, finding.measure) {
        (Test::ShareOutside(low, _), Measure::Share(share)) => share <= *low,
        _ => false,
    }
}
