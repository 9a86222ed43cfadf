//! A reading's earlier values, and what has changed since, in words.

use super::answer::{answered, share};
use super::capital;
use super::says::says;
use super::style::Style;
use super::tyring::measure::{self, at_least};
use super::tyring::{about, said};
use super::when::day;
use crate::daybook::{Entry, Says};
use crate::diagnosis::{Change, Difference, Point, RoundSince, Rounds};
use crate::quantity::Percent;
use crate::survey::{Answer, Question};

/// What stands above the readings that changed in this way.
#[must_use]
pub fn change(change: Change) -> &'static str {
    match change {
        Change::Worse => "worse",
        Change::Differs => "different: which is worse cannot be told",
        Change::New => "looked at for the first time",
        Change::NotLookedAt => "not looked at this time",
        Change::Better => "better",
        Change::Same => "as before, within what two readings may differ by",
    }
}

/// What was found then and what is found now: `½ mm on 3 May 2025; now 1½ mm`.
#[must_use]
pub fn then_and_now(difference: &Difference<'_>, style: Style) -> String {
    let question = difference.slot.question;
    let mut said = match &difference.then {
        Some((visit, then)) => {
            format!("{} on {}", answers(question, then, style), day(&visit.at))
        }
        None => "not looked at before".to_owned(),
    };
    let now = match difference.now.as_slice() {
        [] => "not looked at".to_owned(),
        now => answers(question, now, style),
    };
    said.push_str("; now ");
    said.push_str(&now);
    if difference.worked {
        said.push_str("; work was done in between");
    }
    if difference.gone {
        said.push_str("; then on a part this wheel, as it is described now, does not have or counts otherwise");
    }
    said
}

/// The rounds beside those of last time, then the tyrings in between.
#[must_use]
pub fn rounds(rounds: &Rounds<'_>, style: Style) -> Vec<String> {
    let mut said = Vec::new();
    for it in &rounds.since {
        said.push(capital(&round_since(it, style)));
    }
    for entry in &rounds.tyred {
        said.push(capital(&tyred_between(entry, style)));
    }
    said
}

/// A round of now beside that of an earlier examination: `round of the sole: 4241 mm round, to 2 mm either way; 7 mm longer
/// than on 3 May 2025, to 3 mm either way`.
#[must_use]
fn round_since(it: &RoundSince<'_>, style: Style) -> String {
    let (than, doubt) = match it.longer {
        None => ("run on another line than".to_owned(), String::new()),
        Some((longer, doubt)) => {
            let than = if longer.abs() <= doubt {
                "as".to_owned()
            } else if longer < doubt {
                format!("{} shorter than", about(-longer, style))
            } else {
                format!("{} longer than", about(longer, style))
            };
            (than, format!(", to {} either way", at_least(doubt, style)))
        }
    };
    format!(
        "{}: {}; {than} on {}{doubt}",
        said::ran(it.ran, style),
        measure::round(&it.now, style),
        day(&it.then.at)
    )
}

/// What says that a wheel was tyred in between, with its day.
#[must_use]
fn tyred_between(entry: &Entry, style: Style) -> String {
    let said = match &entry.says {
        Says::Tyring(chosen) => said::chosen(chosen, style),
        _ => says(entry, None, style),
    };
    format!(
        "{} in between, {}: {said}",
        style.terms.tyring,
        day(&entry.at)
    )
}

/// One earlier value: `3 May 2025: 1½ mm; moisture 9 to 11 %`.
#[must_use]
pub fn point(question: Question, point: &Point<'_>, style: Style) -> String {
    let mut said = format!(
        "{}: {}",
        day(&point.visit.at),
        answers(question, &point.answers, style)
    );
    if question != Question::Moisture {
        let moist = point
            .moisture
            .map_or_else(|| "moisture not measured".to_owned(), moisture);
        said.push_str("; ");
        said.push_str(&moist);
    }
    if !point.work.is_empty() {
        said.push_str("; work was done before this");
    }
    if point.other_numbers {
        said.push_str("; the wheel was described with other parts then");
    }
    said
}

/// The moisture of a day: `moisture 9 to 11 %`.
#[must_use]
pub fn moisture((low, high): (Percent, Percent)) -> String {
    let high = share(high);
    match share(low) {
        low if low == high => format!("moisture {high}"),
        low => format!(
            "moisture {} to {high}",
            low.strip_suffix(" %").unwrap_or(&low)
        ),
    }
}

/// Several answers are a dispute.
fn answers(question: Question, answers: &[Answer], style: Style) -> String {
    let each: Vec<String> = answers
        .iter()
        .map(|answer| answered(question, answer, style))
        .collect();
    match each.as_slice() {
        [_, _, ..] => format!("in dispute ({})", each.join(" or ")),
        _ => each.concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::{change, moisture, point, rounds, then_and_now};
    use crate::daybook::tyring::Ran;
    use crate::daybook::{Kind, Says, TyringSaid, Visit, Work, WorkDone};
    use crate::diagnosis::{Change, Difference, Point, RoundSince, Rounds};
    use crate::quantity::length::millimetres;
    use crate::quantity::{Measured, Percent};
    use crate::survey::{Answer, Question, Slot};
    use crate::tyring::round::{Care, Gauge, Line, Round, Run};
    use crate::wheel::{Part, Place, Position};
    use crate::words::sample::{american, entry, mm, style};

    const JOINT: Slot = Slot {
        position: Position::Near,
        place: Place::Joint(2),
        question: Question::JointGap,
    };

    #[test]
    fn every_change_is_said() {
        insta::assert_snapshot!(Change::ALL.map(change).join("\n"), @r"
        worse
        different: which is worse cannot be told
        looked at for the first time
        not looked at this time
        better
        as before, within what two readings may differ by
        ");
    }

    #[test]
    fn then_stands_beside_now() {
        let visit = entry(1, Kind::Visit, "visit", Says::Visit(Visit::default()));
        let said = |then: &[Answer], now: &[Answer], worked, gone| {
            let then = (!then.is_empty()).then(|| (&visit, then.to_vec()));
            let now = now.to_vec();
            let (slot, change, grade) = (JOINT, Change::Worse, None);
            let difference = Difference {
                slot,
                then,
                now,
                change,
                grade,
                worked,
                gone,
            };
            then_and_now(&difference, style())
        };
        let rows = [
            said(&[mm(0.5)], &[mm(1.5)], false, false),
            said(&[mm(0.5), mm(2.0)], &[Answer::CannotSee], false, false),
            said(&[], &[mm(1.5)], false, false),
            said(&[mm(3.0)], &[mm(0.0)], true, false),
            said(&[mm(3.0)], &[], false, true),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        ½ mm ± ¼ mm on 5 November 2026; now 1½ mm ± ¼ mm
        in dispute (½ mm ± ¼ mm or 2 mm ± ¼ mm) on 5 November 2026; now can't see
        not looked at before; now 1½ mm ± ¼ mm
        3 mm ± ¼ mm on 5 November 2026; now 0 mm ± ¼ mm; work was done in between
        3 mm ± ¼ mm on 5 November 2026; now not looked at; then on a part this wheel, as it is described now, does not have or counts otherwise
        ");
    }

    #[test]
    fn an_earlier_value_is_said_with_its_day_and_moisture() {
        let visit = entry(1, Kind::Visit, "visit", Says::Visit(Visit::default()));
        let moist = |low, high| Some((Percent::whole(low), Percent::whole(high)));
        let said = |question, answer, moisture, work, other_numbers, style| {
            let answers = vec![answer];
            let work = if work { vec![&visit] } else { Vec::new() };
            let it = Point {
                visit: &visit,
                answers,
                moisture,
                work,
                other_numbers,
            };
            point(question, &it, style)
        };
        let share = Answer::Share(Percent::whole(14));
        let rows = [
            said(
                Question::JointGap,
                mm(1.5),
                moist(9, 11),
                false,
                false,
                style(),
            ),
            said(
                Question::JointGap,
                mm(1.5),
                moist(12, 12),
                true,
                true,
                style(),
            ),
            said(Question::Dish, mm(25.4), None, false, false, american()),
            said(
                Question::Moisture,
                share,
                moist(14, 14),
                false,
                false,
                style(),
            ),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        5 November 2026: 1½ mm ± ¼ mm; moisture 9 to 11 %
        5 November 2026: 1½ mm ± ¼ mm; moisture 12 %; work was done before this; the wheel was described with other parts then
        5 November 2026: 1 in ± 0 in; moisture not measured
        5 November 2026: 14 %
        ");
        assert_eq!(
            moisture((Percent::whole(9), Percent::whole(9))),
            "moisture 9 %"
        );
    }

    #[test]
    fn rounds_stand_beside_those_of_last_time_and_a_tyring_in_between_is_named() {
        let visit = entry(1, Kind::Visit, "visit", Says::Visit(Visit::default()));
        let own = Measured::new(millimetres(628.0), millimetres(0.5)).unwrap();
        let (turns, past) = (6, millimetres(471.0));
        let gauge = Gauge::traveller(1, own).unwrap();
        let now = Round::taken(gauge, &[Run { turns, past }], Line::Middle, Care::default());
        let now = now.unwrap();
        let said = |ran, longer: Option<f64>, style| {
            let longer = longer.map(|it| (millimetres(it), millimetres(3.0)));
            let then = &visit;
            let since = vec![RoundSince {
                ran,
                then,
                now,
                longer,
            }];
            let tyred = Vec::new();
            rounds(&Rounds { since, tyred }, style).concat()
        };
        let between = |entry, style| {
            let (since, tyred) = (Vec::new(), vec![entry]);
            rounds(&Rounds { since, tyred }, style).concat()
        };
        let chosen = TyringSaid {
            draw: Some(millimetres(9.0)),
            ..TyringSaid::of(Position::Near)
        };
        let slot = TyringSaid::slot(Position::Near);
        let chosen = entry(2, Kind::Tyring, &slot, Says::Tyring(chosen));
        let part = Part::At(Position::Near, Place::Whole);
        let did = vec![Work::Contracted];
        let (text, by_whom) = ("by {tyre} Hill".to_owned(), String::new());
        let done = WorkDone {
            part,
            did,
            text,
            by_whom,
        };
        let done = entry(3, Kind::Work, &part.code(), Says::Work(done));
        let rows = [
            said(Ran::Sole, Some(-7.0), style()),
            said(Ran::Tyre, Some(7.0), american()),
            said(Ran::Sole, Some(-3.0), style()),
            said(Ran::Tyre, None, style()),
            between(&chosen, style()),
            between(&done, american()),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        Round of the sole: 4239 mm round, to 4 mm either way; 7 mm shorter than on 5 November 2026, to 3.5 mm either way
        Round of the tire, inside: 166 7/8 in round, to 3/16 in either way; 1/4 in longer than on 5 November 2026, to 1/8 in either way
        Round of the sole: 4239 mm round, to 4 mm either way; as on 5 November 2026, to 3.5 mm either way
        Round of the tyre, inside: 4239 mm round, to 4 mm either way; run on another line than on 5 November 2026
        Tyring in between, 5 November 2026: draw of 9 mm
        Setting tires in between, 5 November 2026: near wheel: tire contracted; “by {tyre} Hill”
        ");
    }
}
