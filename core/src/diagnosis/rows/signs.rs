//! What the rows of one wheel tell of causes without being a finding.

use super::Rows;
use crate::diagnosis::reach::reaches;
use crate::diagnosis::seen::Seen;
use crate::diagnosis::sign::Signs;
use crate::material::MoistureContent;
use crate::mechanics::over_a_joint;
use crate::quantity::circumference::Diameter;
use crate::quantity::length::millimetres;
use crate::quantity::{Length, Percent};
use crate::survey::{Play, Question, Ring};
use crate::wheel::{Place, Size};

/// The share of its thickness as new from which a tyre counts as not worn. Common practice, no source.
const AS_NEW: f64 = 0.9;

/// The moisture, in per cent of the dry weight, from which a rim has not dried. Common practice, no
/// source.
const MOIST: u8 = 14;

impl Rows<'_> {
    /// What tells of causes without being a finding.
    pub(in crate::diagnosis) fn signs(&self) -> Signs {
        let least = |question| self.row(question).filter_map(|(_, seen)| seen.least());
        let mut joints = self.row(Question::JointGap);
        let open = joints.any(|(_, seen)| seen.greatest() > Some(millimetres(0.0)));
        let new = self.wheel.sizes.get(Size::TyreThickness);
        let left = least(Question::TyreLeft).reduce(Length::min);
        let driest = self.row(Question::Moisture);
        let driest = driest.flat_map(|(_, seen)| &seen.shares).min();
        Signs {
            sound: Question::all().filter(|row| self.sound(*row)).collect(),
            joint_open: open && !self.beside.tyre_off,
            iron_as_new: new
                .zip(left)
                .is_some_and(|(new, left)| reaches(left, new * AS_NEW)),
            more_than_drying: self.more_than_drying(driest.copied()),
            wood_moist: driest.is_some_and(|driest| *driest >= Percent::whole(MOIST)),
        }
    }

    /// Whether drying cannot have loosened the tyre: all joints are shut, and over one of them there is more than it
    /// makes of a shut rim. In the middle of a felloe it makes more, so only the joints tell.
    fn more_than_drying(&self, driest: Option<Percent>) -> bool {
        let to = driest.and_then(|it| MoistureContent::from_share(it).ok());
        let most = self
            .wheel
            .sizes
            .get(Size::Height)
            .map(|across| over_a_joint(Diameter(across), to));
        let mut over_joints = self
            .row(Question::TyreGap)
            .filter(|(place, _)| self.over_a_joint(*place));
        self.sound(Question::JointGap)
            && most.is_some()
            && over_joints.any(|(_, seen)| seen.least() > most)
    }

    /// Whether a place round the tyre lies over a joint.
    fn over_a_joint(&self, place: Place) -> bool {
        let Place::Between(spoke) = place else {
            return false;
        };
        let felloes = &self.wheel.felloes;
        // After the last spoke comes the mark, joint 1.
        let passed = spoke % felloes.spokes();
        (1..=felloes.felloes()).any(|joint| felloes.spokes_before_joint(joint) == passed)
    }

    /// Whether every place of a row was looked at and nothing at all was found.
    fn sound(&self, question: Question) -> bool {
        let nothing = |seen: &Seen| {
            let gap = seen
                .greatest()
                .is_some_and(|length| length > millimetres(0.0));
            let felt = seen.play.is_some_and(|play| play != Play::Tight);
            let heard = seen.ring.is_some_and(|ring| ring != Ring::Rings);
            let told = gap || felt || heard || seen.bad || seen.gone;
            seen.looked && !told && seen.crack.is_none() && seen.shares.is_empty()
        };
        // With the tyre off joints and shoulders stand as nothing holds them.
        let off =
            self.beside.tyre_off && matches!(question, Question::JointGap | Question::StandOff);
        let mut row = self.row(question).map(|(_, seen)| seen).peekable();
        !off && row.peek().is_some() && row.all(nothing) && self.not_looked(question).is_empty()
    }
}
