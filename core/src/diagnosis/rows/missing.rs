//! What the rows of one wheel leave open before it is judged.

use super::{Rows, each_once};
use crate::diagnosis::finding::Missing;
use crate::diagnosis::needs::{needs, questions};
use crate::survey::Need;
use crate::wheel::Place;

impl Rows<'_> {
    /// What was not looked at everywhere, in the order of the needs.
    pub(in crate::diagnosis) fn missing(&self) -> Vec<Missing> {
        needs(self.wheel)
            .filter_map(|need| self.missing_of(need))
            .collect()
    }

    fn missing_of(&self, need: Need) -> Option<Missing> {
        let rows = questions(need);
        let left = rows.iter().flat_map(|row| self.not_looked(*row)).collect();
        let left = each_once(left);
        (!left.is_empty()).then(|| Missing {
            need,
            places: left
                .into_iter()
                .filter(|place| *place != Place::Whole)
                .collect(),
        })
    }
}
