//! What comes of looking, in a line: decisions, the shop's limits, work done, reports handed over.

use super::limit::test;
use super::list;
use super::place::{part, wheel_at};
use super::question::short;
use super::style::Style;
use super::term;
use super::when::on;
use crate::daybook::{Day, Decision, LimitSaid, Report, Work, WorkDone};
use crate::diagnosis::{Limit, house_limits};
use crate::wheel::Wheel;

/// A decision: `near wheel: light work only, decided; keep empty was proposed; because “…”; …`.
#[must_use]
pub fn decision(said: &Decision) -> String {
    let mut words = format!(
        "{}: {}, decided",
        wheel_at(said.position),
        term::standing(said.standing)
    );
    if said.proposed != said.standing {
        words.push_str("; ");
        words.push_str(term::standing(said.proposed));
        words.push_str(" was proposed");
    }
    if !said.reason.is_empty() {
        words.push_str(&format!("; because “{}”", said.reason));
    }
    if let Some(day) = &said.look_again {
        words.push_str("; ");
        words.push_str(&look_again(day, ""));
    }
    if !said.signed.is_empty() {
        words.push_str("; signed ");
        words.push_str(&said.signed);
    }
    words
}

/// The day by which to look again: `look again by 1 May 2027`; of one that is past, that it is.
/// `today` is a day in the form `2026-11-25`.
#[must_use]
pub fn look_again(day: &Day, today: &str) -> String {
    let words = format!("look again by {}", on(day));
    if day.as_str() < today {
        format!("{words}: that day is past")
    } else {
        words
    }
}

/// That several decisions on one wheel differ.
#[must_use]
pub fn decisions_differ() -> &'static str {
    "In dispute: these decisions differ, and until that is settled the harshest side counts. Deciding anew replaces them all."
}

/// What the shop sets for a row: `the shop's limit for tyre gap, keep empty: 2 mm or more anywhere`.
#[must_use]
pub fn limit(said: &LimitSaid, style: Style) -> String {
    let name = row_words(&said.row, style);
    let Some(row) = row(&said.row) else {
        return format!("{name}: kept, not used");
    };
    match row.edited(said.threshold) {
        Ok(Some(limit)) => format!("{name}: {}", test(limit.question, &limit.test, style)),
        Ok(None) => format!(
            "{name}: not used; it was {}",
            test(row.question, &row.test, style)
        ),
        Err(_) => format!("{name}: a value that cannot be; the row stays as it comes"),
    }
}

/// The row of this name, as it comes.
fn row(code: &str) -> Option<Limit> {
    house_limits().into_iter().find(|row| row.code() == code)
}

/// A row by its name: `the shop's limit for tyre gap, keep empty`.
#[must_use]
pub fn row_words(code: &str, style: Style) -> String {
    match row(code) {
        Some(row) => format!(
            "the shop's limit for {}, {}",
            short(row.question, style),
            term::grade(row.grade)
        ),
        None => format!("a limit this version has not ({code})"),
    }
}

/// Work on a part: `near wheel, spoke 3: new spoke and greased; “oak”; by B. Field`.
#[must_use]
pub fn work_done(said: &WorkDone, wheel: Option<&Wheel>, style: Style) -> String {
    let did: Vec<String> = said.did.iter().map(|it| work(*it, style)).collect();
    let mut words = format!("{}: {}", part(said.part, wheel, style), list(&did));
    if did.is_empty() {
        words.push_str("work");
    }
    if !said.text.is_empty() {
        words.push_str(&format!("; “{}”", said.text));
    }
    if !said.by_whom.is_empty() {
        words.push_str("; by ");
        words.push_str(&said.by_whom);
    }
    words
}

/// The whole wheel as the part that work was done on: its tyre has no number of its own.
#[must_use]
pub fn whole_or_tyre(style: Style) -> String {
    style.fill("whole wheel, or its {tyre}")
}

/// A sort of work, as a label.
#[must_use]
pub fn work(work: Work, style: Style) -> String {
    let terms = style.terms;
    let (first, term, last) = match work {
        Work::Cut => ("cut out", "", ""),
        Work::Fitted => ("fitted", "", ""),
        Work::ReWedged => ("", terms.tongue, " wedged anew"),
        Work::ReSeated => ("", terms.foot, " seated anew"),
        Work::Welded => ("welded", "", ""),
        Work::Contracted => ("", terms.tyre, " contracted"),
        Work::NewFelloe => ("new ", terms.felloe, ""),
        Work::NewSpoke => ("new spoke", "", ""),
        Work::NewDowel => ("new dowel", "", ""),
        Work::BondDriven => ("", terms.bond, " driven up"),
        Work::ReBoxed => ("boxed anew", "", ""),
        Work::Greased => ("greased", "", ""),
        Work::NewKeeper => ("new keeper", "", ""),
        Work::Straightened => ("arm straightened", "", ""),
        Work::ReNailed => ("nailed anew", "", ""),
        Work::Other => ("other work", "", ""),
    };
    [first, term, last].concat()
}

/// A report that was handed over.
#[must_use]
pub fn report(said: &Report) -> String {
    if said.to.is_empty() {
        "a report handed over".to_owned()
    } else {
        format!("a report handed to {}", said.to)
    }
}

#[cfg(test)]
mod tests {
    use super::{decision, decisions_differ, limit, look_again, report, work, work_done};
    use crate::daybook::{Day, Decision, LimitSaid, Report, Threshold, Work, WorkDone};
    use crate::quantity::length::millimetres;
    use crate::survey::Standing;
    use crate::wheel::{Part, Place, Position};
    use crate::words::sample::{inches, style, wheel};

    #[test]
    fn the_tyre_goes_by_the_whole_wheel() {
        use crate::words::sample::american;
        assert_eq!(super::whole_or_tyre(american()), "whole wheel, or its tire");
    }

    #[test]
    fn a_decision_tells_what_was_proposed_and_why_it_differs() {
        let plain = Decision {
            position: Position::NearFore,
            standing: Standing::KeepEmpty,
            proposed: Standing::KeepEmpty,
            reason: String::new(),
            look_again: None,
            signed: "Ada Field".to_owned(),
        };
        let kinder = Decision {
            standing: Standing::LightWorkOnly,
            reason: "the gap is under a nail".to_owned(),
            look_again: Day::read("2027-05-01"),
            ..plain.clone()
        };
        insta::assert_snapshot!([plain, kinder].map(|said| decision(&said)).join("\n"), @r"
        near fore wheel: keep empty, decided; signed Ada Field
        near fore wheel: light work only, decided; keep empty was proposed; because “the gap is under a nail”; look again by 1 May 2027; signed Ada Field
        ");
    }

    #[test]
    fn decisions_that_differ_are_a_dispute() {
        insta::assert_snapshot!(decisions_differ(), @"In dispute: these decisions differ, and until that is settled the harshest side counts. Deciding anew replaces them all.");
    }

    #[test]
    fn a_day_to_look_again_is_past_the_day_after() {
        let day = Day::read("2027-05-01").unwrap();
        let said = ["2027-04-30", "2027-05-01", "2027-05-02"].map(|today| look_again(&day, today));
        insta::assert_snapshot!(said.join("\n"), @r"
        look again by 1 May 2027
        look again by 1 May 2027
        look again by 1 May 2027: that day is past
        ");
    }

    #[test]
    fn a_limit_tells_its_row_and_what_it_is_now() {
        let said = |row: &str, threshold| LimitSaid {
            row: row.to_owned(),
            threshold,
        };
        let mm = |v| Some(Threshold::Length(millimetres(v)));
        let rows = [
            said("tyre-gap/keep-empty/anywhere", mm(2.0)),
            said("tyre-gap/light-work-only/at-places", mm(0.3048)),
            said(
                "spoke-broken/not-on-this-wheel/answered",
                Some(Threshold::Count(3)),
            ),
            said("tyre-gap/keep-empty/anywhere", None),
            said("tyre-gap/keep-empty/anywhere", mm(2000.0)),
            said("tyre-gap/keep-empty/by-moonlight", mm(2.0)),
        ];
        let lines = rows.iter().map(|row| limit(row, style()));
        insta::assert_snapshot!(lines.collect::<Vec<_>>().join("\n"), @r"
        the shop's limit for tyre gap, keep empty: 2 mm or more anywhere
        the shop's limit for tyre gap, light work only: ≈ 0.3 mm or more at two or more places that are also a quarter of those looked at
        the shop's limit for spoke broken, not on this wheel: three or more broken spokes
        the shop's limit for tyre gap, keep empty: not used; it was 3 mm or more anywhere
        the shop's limit for tyre gap, keep empty: a value that cannot be; the row stays as it comes
        a limit this version has not (tyre-gap/keep-empty/by-moonlight): kept, not used
        ");
        insta::assert_snapshot!(limit(&rows[1], inches()), @"the shop's limit for tyre gap, light work only: 12 thou or more at two or more places that are also a quarter of those looked at");
    }

    #[test]
    fn work_tells_what_was_done_and_by_whom() {
        let all = Work::ALL.iter().map(|it| work(*it, style()));
        insta::assert_snapshot!(all.collect::<Vec<_>>().join(" / "), @"cut out / fitted / tongue wedged anew / foot seated anew / welded / tyre contracted / new felloe / new spoke / new dowel / bond driven up / boxed anew / greased / new keeper / arm straightened / nailed anew / other work");
        let plain = WorkDone {
            part: Part::At(Position::Near, Place::Spoke(3)),
            did: vec![Work::NewSpoke, Work::ReWedged],
            text: String::new(),
            by_whom: String::new(),
        };
        let full = WorkDone {
            did: vec![Work::Other],
            text: "scraped".to_owned(),
            by_whom: "B. Field".to_owned(),
            ..plain.clone()
        };
        let silent = WorkDone {
            did: Vec::new(),
            ..full.clone()
        };
        let rows = [plain, full, silent].map(|said| work_done(&said, Some(&wheel()), style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        near wheel, spoke 3: new spoke and tongue wedged anew
        near wheel, spoke 3: other work; “scraped”; by B. Field
        near wheel, spoke 3: work; “scraped”; by B. Field
        ");
    }

    #[test]
    fn a_report_tells_whom_it_was_handed_to() {
        let to = |to: &str| Report {
            text: "All of it.".to_owned(),
            to: to.to_owned(),
            core: "0.1.0".to_owned(),
        };
        insta::assert_snapshot!([to(""), to("Ben Lea")].map(|said| report(&said)).join("\n"), @r"
        a report handed over
        a report handed to Ben Lea
        ");
    }
}
