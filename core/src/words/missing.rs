//! What is still to be recorded before a wheel is judged.

use super::need::need;
use super::place::places;
use super::style::Style;
use crate::diagnosis::Missing;
use crate::wheel::Wheel;

/// One thing that is missing, as a sentence.
#[must_use]
pub fn missing(missing: &Missing, wheel: &Wheel, style: Style) -> String {
    let what = need(missing.need, style);
    if missing.places.is_empty() {
        format!("Still to be recorded: {what}.")
    } else {
        format!(
            "Still to be recorded: {what}. Left: {}.",
            places(&missing.places, wheel, style)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::missing;
    use crate::diagnosis::{Beside, Missing, house_limits, judge};
    use crate::survey::Need;
    use crate::wheel::Place;
    use crate::words::sample::{style, wheel};

    #[test]
    fn every_need_can_be_missing() {
        let mut left = judge(&wheel(), &[], &house_limits(), &Beside::default()).missing;
        left.push(Missing {
            need: Need::Strakes,
            places: vec![Place::Joint(2)],
        });
        assert_eq!(left.len(), Need::ALL.len());
        let rows: Vec<_> = left
            .iter()
            .map(|left| missing(left, &wheel(), style()))
            .collect();
        insta::assert_snapshot!(rows.join("\n"), @r"
        Still to be recorded: what keeps the wheel on (there, the right part, secured).
        Still to be recorded: the ring of the tyre at four places. Left: between 1 and 2, between 4 and 5, between 7 and 8, between 10 and 11.
        Still to be recorded: the gap of every joint. Left: joints 1 to 6.
        Still to be recorded: the foot of every spoke. Left: spokes 1 to 12.
        Still to be recorded: the rim end of every spoke. Left: spokes 1 to 12.
        Still to be recorded: whether any spoke is broken. Left: spokes 1 to 12.
        Still to be recorded: the gap under the tyre at four places. Left: between 1 and 2, between 4 and 5, between 7 and 8, between 10 and 11.
        Still to be recorded: the dish.
        Still to be recorded: end play along the arm and shake at the rim.
        Still to be recorded: rot (pricked for at the tongues, the spokes' feet and the ground point). Left: nave; spokes 1 to 12; felloes 1 to 6.
        Still to be recorded: the nave and its bonds. Left: nave.
        Still to be recorded: every strake. Left: joint 2.
        ");
    }

    #[test]
    fn places_left_are_drawn_together() {
        let left = Missing {
            need: Need::SpokeFeet,
            places: (1..=9).chain([11]).map(Place::Spoke).collect(),
        };
        insta::assert_snapshot!(missing(&left, &wheel(), style()), @"Still to be recorded: the foot of every spoke. Left: spokes 1 to 9 and 11.");
    }
}
