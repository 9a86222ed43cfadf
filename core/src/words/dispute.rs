//! A dispute: what each side says, who says it and when, what counts meanwhile and how it ends.

use super::says::{says, subject};
use super::style::Style;
use super::when::{by, moment};
use super::{capital, limit::number};
use crate::daybook::{Entry, EntryId, Kind, Thread};
use crate::wheel::Wheel;

/// One side of a dispute.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideWords {
    /// The entry that says it.
    pub entry: EntryId,
    /// What it says.
    pub says: String,
    /// Who says it.
    pub by: String,
    /// When, as its device claimed.
    pub when: String,
    /// The device it was written on.
    pub device: String,
}

/// A dispute in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DisputeWords {
    /// What it is about.
    pub heading: String,
    /// What has happened.
    pub explanation: String,
    /// What each side says, earliest first.
    pub sides: Vec<SideWords>,
    /// What counts until it is settled.
    pub meanwhile: String,
    /// An earlier settlement that a late correction has opened again.
    pub settled_before: Option<String>,
    /// How it is settled.
    pub remedy: String,
}

/// Puts a thread's dispute into words; `None` for a thread without one.
#[must_use]
pub fn dispute(thread: &Thread, wheel: Option<&Wheel>, style: Style) -> Option<DisputeWords> {
    let first = thread.heads().first().filter(|_| thread.disputed())?;
    Some(DisputeWords {
        heading: capital(&subject(first, wheel, style)),
        explanation: format!(
            "{} entries stand for the same thing and differ; none of them replaces another.",
            capital(&number(thread.heads().len()))
        ),
        sides: thread.heads().iter().map(|head| side(head, wheel, style)).collect(),
        meanwhile: meanwhile(thread, &first.kind),
        settled_before: thread.last_settlement().map(|entry| settled(entry, wheel, style)),
        remedy: "Say which is right, or say it anew: one more entry then replaces them all. Every side stays in the book.".to_owned(),
    })
}

fn meanwhile(thread: &Thread, kind: &Kind) -> String {
    let rule = match kind {
        Kind::Reading => "the worst of them judges",
        Kind::Wheel => {
            "the one with the most spokes and felloes is used, so that no reading falls out of sight"
        }
        Kind::Vehicle => "the one written first heads the page",
        Kind::Decision => "the harshest of them counts",
        Kind::Limit => "the most cautious of them counts",
        Kind::Round | Kind::Tyring => "the one written first is reckoned with",
        Kind::Marks => "the marks of all of them are drawn",
        Kind::SameAs => "the two are taken as one",
        _ => "all of them stand",
    };
    let strike = if thread.heads().iter().any(|head| head.strikes()) {
        " Nothing is taken as struck out yet."
    } else {
        ""
    };
    format!("Until it is settled every side is shown, and {rule}.{strike}")
}

/// What one entry says, by whom and when.
#[must_use]
pub fn side(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> SideWords {
    SideWords {
        entry: entry.id,
        says: says(entry, wheel, style),
        by: by(entry),
        when: moment(&entry.at),
        device: entry.device.clone(),
    }
}

fn settled(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    format!(
        "It was settled once, as “{}” ({}, {}); an entry that came later has opened it again.",
        says(entry, wheel, style),
        by(entry),
        moment(&entry.at)
    )
}

#[cfg(test)]
mod tests {
    use super::{DisputeWords, dispute};
    use crate::daybook::{
        Book, Decision, Entry, Kind, LimitSaid, Says, Threshold, Visit, WheelSaid,
    };
    use crate::quantity::length::millimetres;
    use crate::survey::{Question, Standing};
    use crate::wheel::{Place, Position, Vehicle, VehicleKind, Wheel};
    use crate::words::sample::{entry, id, mm, reading, style, wheel};

    fn disputes(entries: Vec<Entry>) -> Vec<DisputeWords> {
        let book: Book = entries.into_iter().collect();
        let view = book.view();
        view.threads()
            .filter_map(|thread| dispute(thread, Some(&wheel()), style()))
            .collect()
    }

    fn told(words: &DisputeWords) -> String {
        let sides = words.sides.iter().map(|side| {
            format!(
                "- {} ({}, {}, {})",
                side.says, side.by, side.when, side.device
            )
        });
        let mut rows = vec![words.heading.clone(), words.explanation.clone()];
        rows.extend(sides);
        rows.push(words.meanwhile.clone());
        rows.push(words.remedy.clone());
        rows.join("\n")
    }

    fn replacing(entry: Entry, replaces: &[u64]) -> Entry {
        Entry {
            replaces: replaces.iter().map(|n| id(*n)).collect(),
            ..entry
        }
    }

    fn gap(n: u64, value: f64, replaces: &[u64]) -> Entry {
        let gap = reading(n, Question::TyreGap, Place::Between(12), mm(value));
        replacing(gap, replaces)
    }

    #[test]
    fn both_sides_of_a_reading_are_told() {
        let other = Entry {
            by: String::new(),
            device: "tablet".to_owned(),
            ..gap(3, 1.0, &[1])
        };
        let words = disputes(vec![gap(1, 0.25, &[]), gap(2, 0.5, &[1]), other]);
        assert_eq!(words.len(), 1);
        assert_eq!(words[0].settled_before, None);
        insta::assert_snapshot!(told(&words[0]), @r"
        Near wheel, between 12 and 1, tyre gap
        Two entries stand for the same thing and differ; none of them replaces another.
        - near wheel, between 12 and 1: tyre gap ½ mm ± ¼ mm (Ada Field, 5 November 2026, 09:03 (+01:00), phone)
        - near wheel, between 12 and 1: tyre gap 1 mm ± ¼ mm (no name given, 5 November 2026, 09:03 (+01:00), tablet)
        Until it is settled every side is shown, and the worst of them judges.
        Say which is right, or say it anew: one more entry then replaces them all. Every side stays in the book.
        ");
    }

    #[test]
    fn an_earlier_settlement_is_shown_when_a_dispute_is_open_again() {
        let words = disputes(vec![
            gap(1, 0.25, &[]),
            gap(2, 0.5, &[1]),
            gap(3, 1.0, &[1]),
            gap(4, 0.75, &[2, 3]),
            gap(5, 2.0, &[3]),
        ]);
        assert_eq!(words.len(), 1);
        insta::assert_snapshot!(words[0].settled_before.clone().unwrap_or_default(), @"It was settled once, as “near wheel, between 12 and 1: tyre gap ¾ mm ± ¼ mm” (Ada Field, 5 November 2026, 09:03 (+01:00)); an entry that came later has opened it again.");
    }

    #[test]
    fn what_counts_meanwhile_is_told_for_each_kind() {
        let vehicle = |n, kind| {
            let name = String::new();
            let says = Says::Vehicle(Vehicle { kind, name });
            entry(n, Kind::Vehicle, "vehicle", says)
        };
        let built = |n, tyre| {
            let wheel = Wheel { tyre, ..wheel() };
            let position = Position::Near;
            entry(
                n,
                Kind::Wheel,
                "near",
                Says::Wheel(WheelSaid { position, wheel }),
            )
        };
        let visit = |n, place: &str, replaces: &[u64]| {
            let place = place.to_owned();
            let said = Visit {
                place,
                ..Visit::default()
            };
            replacing(entry(n, Kind::Visit, "visit", Says::Visit(said)), replaces)
        };
        let decided = |n, standing| {
            let said = Decision {
                position: Position::Near,
                standing,
                proposed: Standing::KeepEmpty,
                reason: "the gap is under a nail".to_owned(),
                look_again: None,
                signed: "Ada Field".to_owned(),
            };
            let slot = Decision::slot(Position::Near);
            entry(n, Kind::Decision, &slot, Says::Decision(said))
        };
        let limit = |n, mm: Option<f64>| {
            let row = "tyre-gap/keep-empty/anywhere".to_owned();
            let threshold = mm.map(|mm| Threshold::Length(millimetres(mm)));
            let says = Says::Limit(LimitSaid {
                row: row.clone(),
                threshold,
            });
            Entry {
                vehicle: None,
                ..entry(n, Kind::Limit, &row, says)
            }
        };
        let strike = Entry {
            says: Says::Struck,
            ..gap(11, 0.0, &[10])
        };
        let words = disputes(vec![
            vehicle(0, VehicleKind::Cart),
            vehicle(1, VehicleKind::Trap),
            built(2, None),
            built(3, wheel().tyre),
            visit(4, "", &[]),
            visit(5, "barn", &[4]),
            visit(6, "yard", &[4]),
            gap(10, 1.0, &[]),
            strike,
            gap(12, 2.0, &[10]),
            decided(13, Standing::KeepEmpty),
            decided(14, Standing::LightWorkOnly),
            limit(15, Some(2.0)),
            limit(16, None),
        ]);
        let rows: Vec<_> = words
            .iter()
            .map(|words| format!("{}: {}", words.heading, words.meanwhile))
            .collect();
        insta::assert_snapshot!(rows.join("\n"), @r"
        The shop's limit for tyre gap, keep empty: Until it is settled every side is shown, and the most cautious of them counts.
        The vehicle: Until it is settled every side is shown, and the one written first heads the page.
        Near wheel: Until it is settled every side is shown, and the one with the most spokes and felloes is used, so that no reading falls out of sight.
        The examination: Until it is settled every side is shown, and all of them stand.
        Near wheel, between 12 and 1, tyre gap: Until it is settled every side is shown, and the worst of them judges. Nothing is taken as struck out yet.
        Decision, near wheel: Until it is settled every side is shown, and the harshest of them counts.
        ");
    }

    #[test]
    fn a_thread_that_agrees_is_no_dispute() {
        assert_eq!(disputes(vec![gap(1, 0.25, &[]), gap(2, 0.5, &[1])]), []);
    }
}
