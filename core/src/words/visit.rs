//! An examination in a line: where, what for, how far taken apart, under which conditions.

use super::list;
use crate::daybook::Visit;
use crate::survey::{Stage, Use};

/// What a vehicle is to be used for, as a label.
#[must_use]
pub fn used_for(it: Use) -> &'static str {
    match it {
        Use::Display => "display",
        Use::LedEmpty => "led empty",
        Use::Goods => "goods",
        Use::People => "people carried",
        Use::Road => "road use",
    }
}

/// How far a wheel is taken apart, as a label.
#[must_use]
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::OnTheArm => "on the arm",
        Stage::OffTheArm => "off the arm",
        Stage::TyreOff => "tyre off",
        Stage::AfterTyring => "after tyring",
    }
}

/// An examination: `examination at Upper Meadow; for goods and road use; off the arm`. What was not
/// said is left out, and so is a wheel on its arm, which is what is not said.
#[must_use]
pub fn visit(said: &Visit) -> String {
    let mut words = "examination".to_owned();
    if !said.place.is_empty() {
        words.push_str(" at ");
        words.push_str(&said.place);
    }
    let uses: Vec<String> = said
        .used_for
        .iter()
        .map(|it| used_for(*it).to_owned())
        .collect();
    if !uses.is_empty() {
        words.push_str("; for ");
        words.push_str(&list(&uses));
    }
    if said.stage != Stage::default() {
        words.push_str("; ");
        words.push_str(stage(said.stage));
    }
    if !said.conditions.is_empty() {
        words.push_str("; ");
        words.push_str(&said.conditions);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::{stage, used_for, visit};
    use crate::daybook::Visit;
    use crate::survey::{Stage, Use};

    #[test]
    fn everything_has_a_name() {
        insta::assert_snapshot!(Use::ALL.map(used_for).join(" / "), @"display / led empty / goods / people carried / road use");
        insta::assert_snapshot!(Stage::ALL.map(stage).join(" / "), @"on the arm / off the arm / tyre off / after tyring");
    }

    #[test]
    fn only_what_was_said_is_told() {
        let full = Visit {
            place: "Upper Meadow".to_owned(),
            used_for: vec![Use::Goods, Use::Road],
            stage: Stage::TyreOff,
            conditions: "poor light, straw in the way".to_owned(),
        };
        let people = Visit {
            used_for: vec![Use::People],
            ..Visit::default()
        };
        let rows = [Visit::default(), people, full].map(|said| visit(&said));
        insta::assert_snapshot!(rows.join("\n"), @r"
        examination
        examination; for people carried
        examination at Upper Meadow; for goods and road use; tyre off; poor light, straw in the way
        ");
    }
}
