//! What comes of looking, on paper: decisions, the shop's limits, work done, reports handed over, and what a tyre is
//! shrunk on by.

use serde::Serialize;
use serde_json::Number;

use super::LineRefusal;
use super::fields::Fields;
use super::says::{length, paper_mm, size};
use super::tyred::{self, PaperTyred};
use crate::daybook::threshold::is_row;
use crate::daybook::{
    Day, Decision, Kind, LimitSaid, Report, RoundTaken, Says, Threshold, TyringSaid, Work,
    WorkDone, report,
};
use crate::paper::json::on_paper;
use crate::quantity::{Percent, decimal};
use crate::survey::Standing;
use crate::wheel::{Part, Position};

/// What a line of these kinds says, as it is written.
#[derive(Serialize)]
#[serde(untagged)]
pub(super) enum PaperOutcome<'a> {
    Decision {
        standing: &'static str,
        proposed: &'static str,
        #[serde(skip_serializing_if = "str::is_empty")]
        reason: &'a str,
        #[serde(skip_serializing_if = "Option::is_none")]
        look_again: Option<&'a str>,
        signed: &'a str,
    },
    Mm {
        mm: Number,
    },
    Percent {
        percent: Number,
    },
    Count {
        count: u32,
    },
    Off {
        off: bool,
    },
    Work {
        did: Vec<&'static str>,
        #[serde(skip_serializing_if = "str::is_empty")]
        text: &'a str,
        #[serde(skip_serializing_if = "str::is_empty")]
        by_whom: &'a str,
    },
    Report {
        text: &'a str,
        to: &'a str,
        core: &'a str,
    },
    Tyred(PaperTyred<'a>),
}

impl<'a> PaperOutcome<'a> {
    /// What is written; `None` for what is of none of these kinds.
    pub(super) fn of(says: &'a Says) -> Option<PaperOutcome<'a>> {
        Some(match says {
            Says::Decision(said) => PaperOutcome::Decision {
                standing: said.standing.code(),
                proposed: said.proposed.code(),
                reason: &said.reason,
                look_again: said.look_again.as_ref().map(Day::as_str),
                signed: &said.signed,
            },
            Says::Limit(said) => match said.threshold {
                Some(Threshold::Length(least)) => PaperOutcome::Mm {
                    mm: paper_mm(least),
                },
                Some(Threshold::Percent(share)) => PaperOutcome::Percent {
                    percent: on_paper(share.to_paper()),
                },
                Some(Threshold::Count(count)) => PaperOutcome::Count { count },
                None => PaperOutcome::Off { off: true },
            },
            Says::Work(said) => PaperOutcome::Work {
                did: said.did.iter().map(|work| work.code()).collect(),
                text: &said.text,
                by_whom: &said.by_whom,
            },
            Says::Report(said) => PaperOutcome::Report {
                text: &said.text,
                to: &said.to,
                core: &said.core,
            },
            Says::Round(said) => PaperOutcome::Tyred(PaperTyred::round(said)),
            Says::Tyring(said) => PaperOutcome::Tyred(PaperTyred::tyring(said)),
            _ => return None,
        })
    }
}

/// Reads what a line of one of these kinds and this slot says; `Ok(None)` for what this version does
/// not know.
///
/// # Errors
/// A field that is missing or not of its form.
pub(super) fn read(
    kind: &Kind,
    slot: &str,
    fields: &mut Fields,
) -> Result<Option<Says>, LineRefusal> {
    Ok(match kind {
        Kind::Decision => match Decision::position(slot) {
            Some(position) => decision(position, fields)?.map(Says::Decision),
            None => None,
        },
        Kind::Limit if is_row(slot) => Some(Says::Limit(LimitSaid {
            row: slot.to_owned(),
            threshold: threshold(fields)?,
        })),
        Kind::Work => match Part::from_code(slot) {
            Some(part) => work(part, fields)?.map(Says::Work),
            None => None,
        },
        Kind::Report if slot == report::SLOT => Some(Says::Report(Report {
            text: fields.text("text")?,
            to: fields.text("to")?,
            core: fields.text("core")?,
        })),
        Kind::Round => match RoundTaken::of_slot(slot) {
            Some(of) => tyred::round(of, fields)?.map(Says::Round),
            None => None,
        },
        Kind::Tyring => match TyringSaid::position(slot) {
            Some(position) => tyred::tyring(position, fields)?.map(Says::Tyring),
            None => None,
        },
        _ => None,
    })
}

fn decision(position: Position, fields: &mut Fields) -> Result<Option<Decision>, LineRefusal> {
    let standing = Standing::from_code(&fields.text("standing")?);
    let proposed = Standing::from_code(&fields.text("proposed")?);
    let reason = fields.maybe_text("reason")?.unwrap_or_default();
    let look_again = fields.maybe_text("look_again")?.map(day).transpose()?;
    let signed = fields.text("signed")?;
    Ok(standing.zip(proposed).map(|(standing, proposed)| Decision {
        position,
        standing,
        proposed,
        reason,
        look_again,
        signed,
    }))
}

fn day(given: String) -> Result<Day, LineRefusal> {
    Day::read(&given).ok_or(LineRefusal::Wrong {
        field: "look_again",
        given,
        allowed: "a day like 2026-11-25",
    })
}

/// The ways in which a limit is set; a line takes one of them.
const WAYS: [&str; 4] = ["mm", "percent", "count", "off"];

fn threshold(fields: &mut Fields) -> Result<Option<Threshold>, LineRefusal> {
    let given: Vec<&str> = WAYS.into_iter().filter(|way| fields.has(way)).collect();
    Ok(match given.as_slice() {
        [] => return Err(LineRefusal::Missing("mm, percent, count or off")),
        ["mm"] => Some(Threshold::Length(length("mm", fields)?)),
        ["percent"] => Some(Threshold::Percent(percent(fields)?)),
        ["count"] => Some(Threshold::Count(size("count", fields)?)),
        ["off"] if fields.flag("off")? => None,
        ["off"] => return Err(wrong("off", "false", "true")),
        _ => {
            let given = given.join(", ");
            return Err(wrong("says", &given, "one of mm, percent, count and off"));
        }
    })
}

fn percent(fields: &mut Fields) -> Result<Percent, LineRefusal> {
    let given = fields.number("percent")?;
    Percent::from_paper(given).map_err(|_| wrong("percent", &decimal(given, 6), "0 to 100"))
}

fn wrong(field: &'static str, given: &str, allowed: &'static str) -> LineRefusal {
    LineRefusal::Wrong {
        field,
        given: given.to_owned(),
        allowed,
    }
}

fn work(part: Part, fields: &mut Fields) -> Result<Option<WorkDone>, LineRefusal> {
    let did = fields.texts("did")?.ok_or(LineRefusal::Missing("did"))?;
    let did: Option<Vec<Work>> = did.iter().map(|code| Work::from_code(code)).collect();
    let text = fields.maybe_text("text")?.unwrap_or_default();
    let by_whom = fields.maybe_text("by_whom")?.unwrap_or_default();
    Ok(did.map(|did| WorkDone {
        part,
        did,
        text,
        by_whom,
    }))
}
