//! An examination in a line: where, what for, how far taken apart, under which conditions.

use super::list;
use super::style::Style;
use crate::daybook::Visit;
use crate::survey::{SafeToLift, Stage, Use};

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

/// That nothing is said yet of what the vehicle is to be used for.
#[must_use]
pub fn use_not_said() -> &'static str {
    "What it is to be used for is not said yet, and a standing is one against the stated use."
}

/// Why a question is not asked at this stage.
#[must_use]
pub fn not_asked(at: Stage, style: Style) -> String {
    style.fill(match at {
        Stage::OnTheArm => "This cannot be answered while the wheel is on its arm.",
        Stage::OffTheArm => {
            "This cannot be answered while the wheel is off its arm. What was answered before is kept."
        }
        Stage::TyreOff => {
            "This cannot be answered while the {tyre} is off. What was answered before is kept."
        }
        Stage::AfterTyring => {
            "The first look is one before any work, and is not asked after {tyring}."
        }
    })
}

/// What choosing this stage means for what is written, where it means something.
#[must_use]
pub fn stage_means(at: Stage, style: Style) -> Option<String> {
    let words = match at {
        Stage::OnTheArm => return None,
        Stage::OffTheArm => "What keeps the wheel on and its arm are not asked while it is off.",
        Stage::TyreOff => "The {tyre} is not asked about while it is off.",
        Stage::AfterTyring => {
            "The proof: it is saved as an examination of its own, so that what was read before the work stays beside it."
        }
    };
    Some(style.fill(words))
}

/// Whether it is safe to lift, as it is asked.
#[must_use]
pub fn asks_lift() -> &'static str {
    "Is it safe to lift: hard level ground, room for a stand, nothing that would give way?"
}

/// Whether it is safe to lift, as a label.
#[must_use]
pub fn safe_to_lift(it: SafeToLift) -> &'static str {
    match it {
        SafeToLift::Yes => "safe to lift",
        SafeToLift::No => "not safe to lift",
        SafeToLift::CannotSee => "safe to lift: can't see",
    }
}

/// What it means for what follows that it is not known to be safe to lift; `None` where it is, or where
/// nothing is said.
#[must_use]
pub fn stays_down(it: Option<SafeToLift>) -> Option<&'static str> {
    not_lifted(it).map(|_| {
        "Leave the wheels down: nothing is asked for which a wheel on its arm is lifted, until this is answered with yes."
    })
}

/// Why a question for which a wheel is lifted is not asked; `None` where nothing is in its way.
#[must_use]
pub fn not_lifted(it: Option<SafeToLift>) -> Option<&'static str> {
    match it {
        None | Some(SafeToLift::Yes) => None,
        Some(SafeToLift::No) => Some(
            "The wheel is lifted for this, and the first look said that it is not safe to lift. Make it safe and say so, or look off the arm.",
        ),
        Some(SafeToLift::CannotSee) => Some(
            "The wheel is lifted for this, and the first look could not see whether it is safe to lift. Find out and say so, or look off the arm.",
        ),
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
    if let Some(it) = said.safe_to_lift {
        words.push_str("; ");
        words.push_str(safe_to_lift(it));
    }
    if !said.conditions.is_empty() {
        words.push_str("; ");
        words.push_str(&said.conditions);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::{
        asks_lift, not_asked, not_lifted, safe_to_lift, stage, stage_means, stays_down,
        use_not_said, used_for, visit,
    };
    use crate::daybook::Visit;
    use crate::survey::{SafeToLift, Stage, Use};
    use crate::words::sample::{american, style};

    #[test]
    fn a_stage_says_what_it_leaves_out() {
        insta::assert_snapshot!(use_not_said(), @"What it is to be used for is not said yet, and a standing is one against the stated use.");
        insta::assert_snapshot!(Stage::ALL.map(|it| not_asked(it, style())).join("\n"), @r"
        This cannot be answered while the wheel is on its arm.
        This cannot be answered while the wheel is off its arm. What was answered before is kept.
        This cannot be answered while the tyre is off. What was answered before is kept.
        The first look is one before any work, and is not asked after tyring.
        ");
        let means = Stage::ALL
            .into_iter()
            .filter_map(|it| stage_means(it, american()));
        insta::assert_snapshot!(means.collect::<Vec<_>>().join("\n"), @r"
        What keeps the wheel on and its arm are not asked while it is off.
        The tire is not asked about while it is off.
        The proof: it is saved as an examination of its own, so that what was read before the work stays beside it.
        ");
    }

    #[test]
    fn whether_it_is_safe_to_lift_is_asked_and_bars_what_is_lifted_for() {
        insta::assert_snapshot!(asks_lift(), @"Is it safe to lift: hard level ground, room for a stand, nothing that would give way?");
        insta::assert_snapshot!(SafeToLift::ALL.map(safe_to_lift).join(" / "), @"safe to lift / not safe to lift / safe to lift: can't see");
        assert_eq!([None, Some(SafeToLift::Yes)].map(not_lifted), [None, None]);
        assert_eq!([None, Some(SafeToLift::Yes)].map(stays_down), [None, None]);
        insta::assert_snapshot!(stays_down(Some(SafeToLift::No)).unwrap(), @"Leave the wheels down: nothing is asked for which a wheel on its arm is lifted, until this is answered with yes.");
        let barred = [SafeToLift::No, SafeToLift::CannotSee].map(|it| not_lifted(Some(it)));
        insta::assert_snapshot!(barred.map(Option::unwrap).join("\n"), @r"
        The wheel is lifted for this, and the first look said that it is not safe to lift. Make it safe and say so, or look off the arm.
        The wheel is lifted for this, and the first look could not see whether it is safe to lift. Find out and say so, or look off the arm.
        ");
    }

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
            safe_to_lift: Some(SafeToLift::No),
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
        examination at Upper Meadow; for goods and road use; tyre off; not safe to lift; poor light, straw in the way
        ");
    }
}
