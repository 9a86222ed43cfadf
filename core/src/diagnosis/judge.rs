//! The one evaluator: readings of one wheel against the table of limits.

use super::finding::{Finding, Missing};
use super::limit::{Limit, Test};
use super::rows::Rows;
use super::seen::Taken;
use super::sign::Signs;
use super::standing::Standing;
use crate::daybook::EntryId;
use crate::quantity::Length;
use crate::survey::Question;
use crate::wheel::Wheel;

/// What the readings of one wheel come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// What was found, worst first.
    pub findings: Vec<Finding>,
    /// What must be recorded before the wheel is judged.
    pub missing: Vec<Missing>,
    /// Readings of places the wheel has not, or of questions not asked of it: listed, not judged.
    pub elsewhere: Vec<EntryId>,
    /// Whether people are to be carried.
    pub people: bool,
    /// What was seen that is no finding and tells of causes.
    pub signs: Signs,
}

impl Judgement {
    /// The harshest standing any finding proposes, whatever is still missing.
    pub fn so_far(&self) -> Option<Standing> {
        self.findings
            .iter()
            .filter_map(|finding| finding.grade.proposes())
            .max()
    }

    /// Whether the rim is bound by the sum of its joints and the stand-off of its shoulders.
    pub fn bound(&self) -> bool {
        let mut findings = self.findings.iter();
        findings.any(|finding| finding.limit.test == Test::FelloeBound)
    }

    /// The standing proposed: *not judged* while anything is missing and nothing found is worse. Where people are to be
    /// carried, what would be for light work only is to be kept empty.
    pub fn proposed(&self) -> Standing {
        let silent = if self.missing.is_empty() {
            Standing::NoFaultFound
        } else {
            Standing::NotJudged
        };
        match self.so_far().map_or(silent, |found| found.max(silent)) {
            Standing::LightWorkOnly if self.people => Standing::KeepEmpty,
            proposed => proposed,
        }
    }
}

/// What a wheel is judged beside: the other wheel of its axle in the same examination, and the stage
/// at which its own readings were taken.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Beside {
    /// The readings of the other wheel's dish; none where there is no such wheel or reading.
    pub dish: Vec<Taken>,
    /// The dish the other wheel was built with, where that has been said.
    pub built: Option<Length>,
    /// Joints or stand-off of this wheel were measured with its tyre off, so that they do not make
    /// the sum that is taken with the tyre on.
    pub tyre_off: bool,
    /// People are to be carried.
    pub people: bool,
}

/// Judges one wheel by its readings. The order of the readings makes no difference.
pub fn judge(wheel: &Wheel, readings: &[Taken], limits: &[Limit], beside: &Beside) -> Judgement {
    let here = |taken: &&Taken| {
        let slot = taken.reading.slot;
        wheel.has(slot.place) && slot.question.asked_of(wheel)
    };
    let (mine, others): (Vec<&Taken>, Vec<&Taken>) = readings.iter().partition(here);
    let rows = Rows::new(wheel, &mine, limits, beside);
    let mut findings: Vec<Finding> = Question::all()
        .flat_map(|question| rows.findings(question))
        .collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.grade));
    let mut elsewhere: Vec<EntryId> = others.into_iter().map(|taken| taken.entry).collect();
    elsewhere.sort_unstable();
    Judgement {
        findings,
        missing: rows.missing(),
        people: beside.people,
        elsewhere,
        signs: rows.signs(),
    }
}

#[cfg(test)]
mod tests;
