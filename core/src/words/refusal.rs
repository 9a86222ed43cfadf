//! Why a decision does not stand and why a limit cannot be set: what was given, what is allowed, and
//! that nothing was lost.

use super::question::short;
use super::style::Style;
use super::term::{grade, standing};
use crate::daybook::Threshold;
use crate::diagnosis::{DecisionRefusal, EditRefusal, Limit, TypedRefusal};
use crate::quantity::decimal;

/// Why a decision does not stand.
#[must_use]
pub fn decision(refusal: DecisionRefusal) -> String {
    match refusal {
        DecisionRefusal::People(given) => format!(
            "“{}” is never enough where people are to be carried: decide on keep empty or worse, or have it put right and look again. Nothing was changed.",
            standing(given)
        ),
        DecisionRefusal::NoReason {
            standing: given,
            proposed,
        } => format!(
            "“{}” is kinder than “{}”, which is proposed: write down why. Nothing was changed.",
            standing(given),
            standing(proposed)
        ),
        DecisionRefusal::Outgrown { then, now } => format!(
            "It was decided when “{}” was proposed; now “{}” is, and that counts until it is decided anew. The decision is kept in the book.",
            standing(then),
            standing(now)
        ),
        DecisionRefusal::NotSigned => {
            "A decision needs the name of the one who signs it. Nothing was changed.".to_owned()
        }
        DecisionRefusal::AgainBefore => {
            "The day to look again lies before the day of the examination: it must be that day or a later one. Nothing was changed.".to_owned()
        }
    }
}

/// Why this row cannot be set so.
#[must_use]
pub fn edit(refusal: EditRefusal, row: &Limit, style: Style) -> String {
    let name = format!("“{}, {}”", short(row.question, style), grade(row.grade));
    match refusal {
        EditRefusal::Fixed => {
            format!("The limit for {name} has no value that could be set. It stays as it is.")
        }
        EditRefusal::OtherSort(given) => format!(
            "The limit for {name} is of another sort than {}. It stays as it is.",
            value(given, style)
        ),
        EditRefusal::Beyond { given, most } => format!(
            "The limit for {name} cannot be {}: it must be more than nought and at most {}. It stays as it is.",
            value(given, style),
            value(most, style)
        ),
    }
}

/// Why what was typed for this row is not taken.
#[must_use]
pub fn typed(refusal: TypedRefusal, row: &Limit, style: Style) -> String {
    match refusal {
        TypedRefusal::Spelled(refusal) => refusal.to_string(),
        TypedRefusal::Row(refusal) => edit(refusal, row, style),
    }
}

/// A value of a limit: `2 mm`.
#[must_use]
pub fn value(threshold: Threshold, style: Style) -> String {
    match threshold {
        Threshold::Length(least) => style.gap(least),
        Threshold::Percent(share) => format!("{} %", decimal(share.to_paper(), 2)),
        Threshold::Count(1) => "1 place".to_owned(),
        Threshold::Count(count) => format!("{count} places"),
    }
}

#[cfg(test)]
mod tests {
    use super::{decision, edit};
    use crate::daybook::Threshold;
    use crate::diagnosis::{DecisionRefusal, EditRefusal, house_limits};
    use crate::quantity::Percent;
    use crate::quantity::length::millimetres;
    use crate::survey::Standing;
    use crate::words::sample::style;

    #[test]
    fn every_refusal_of_a_decision_has_its_sentence() {
        let rows = [
            DecisionRefusal::People(Standing::LightWorkOnly),
            DecisionRefusal::People(Standing::NotJudged),
            DecisionRefusal::NoReason {
                standing: Standing::LightWorkOnly,
                proposed: Standing::KeepEmpty,
            },
            DecisionRefusal::Outgrown {
                then: Standing::LightWorkOnly,
                now: Standing::KeepEmpty,
            },
            DecisionRefusal::NotSigned,
            DecisionRefusal::AgainBefore,
        ]
        .map(decision);
        insta::assert_snapshot!(rows.join("\n"), @r"
        “light work only” is never enough where people are to be carried: decide on keep empty or worse, or have it put right and look again. Nothing was changed.
        “not judged” is never enough where people are to be carried: decide on keep empty or worse, or have it put right and look again. Nothing was changed.
        “light work only” is kinder than “keep empty”, which is proposed: write down why. Nothing was changed.
        It was decided when “light work only” was proposed; now “keep empty” is, and that counts until it is decided anew. The decision is kept in the book.
        A decision needs the name of the one who signs it. Nothing was changed.
        The day to look again lies before the day of the examination: it must be that day or a later one. Nothing was changed.
        ");
    }

    #[test]
    fn every_refusal_of_an_edit_has_its_sentence() {
        let limits = house_limits();
        let of = |code| limits.iter().find(|row| row.code() == code).unwrap();
        let fixed = of("keeper-present/not-on-this-wheel/answered");
        let gap = of("tyre-gap/light-work-only/at-places");
        let (mm, count) = (|v| Threshold::Length(millimetres(v)), Threshold::Count);
        let rows = [
            edit(EditRefusal::Fixed, fixed, style()),
            edit(EditRefusal::OtherSort(count(1)), gap, style()),
            edit(
                EditRefusal::OtherSort(Threshold::Percent(Percent::from_paper(12.5).unwrap())),
                gap,
                style(),
            ),
            edit(
                EditRefusal::Beyond {
                    given: mm(60.0),
                    most: mm(50.0),
                },
                gap,
                style(),
            ),
            edit(
                EditRefusal::Beyond {
                    given: count(65),
                    most: count(64),
                },
                gap,
                style(),
            ),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        The limit for “keeper there, not on this wheel” has no value that could be set. It stays as it is.
        The limit for “tyre gap, light work only” is of another sort than 1 place. It stays as it is.
        The limit for “tyre gap, light work only” is of another sort than 12.5 %. It stays as it is.
        The limit for “tyre gap, light work only” cannot be 60 mm: it must be more than nought and at most 50 mm. It stays as it is.
        The limit for “tyre gap, light work only” cannot be 65 places: it must be more than nought and at most 64 places. It stays as it is.
        ");
    }
}
