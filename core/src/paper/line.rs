//! One line of the book: a JSON object, written once. The digest of its bytes is the entry's name,
//! so a line is stored and carried as it stands and never written again.

mod fields;
mod marked;
mod outcome;
mod refusal;
mod says;
mod tyred;
#[cfg(test)]
mod tests;

use serde::Serialize;

pub use crate::daybook::entry::MOST_REPLACED;
pub use refusal::LineRefusal;

use super::json::{Fault, Json};
use crate::daybook::entry::GREATEST_N;
use crate::daybook::report::LONGEST_REPORT;
use crate::daybook::{Digest, Entry, EntryId, Hand, Kind, Says, Stamp, Unwritten};
use fields::Fields;

/// The form of line that this version writes.
pub const LINE_FORM: u64 = 1;
/// The most bytes a line may have.
pub const LONGEST_LINE: usize = 64 * 1024;
/// How deep brackets may be nested in a line.
pub const DEEPEST: usize = 16;

/// A line as it is written; the fields stand in this order.
#[derive(Serialize)]
struct PaperLine<'a> {
    cartside: u64,
    kind: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    vehicle: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    visit: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    of: Option<String>,
    slot: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    says: Option<says::PaperSays<'a>>,
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    struck: bool,
    by: &'a str,
    device: &'a str,
    at: &'a str,
    n: u64,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    replaces: Vec<String>,
}

/// Writes the line of an entry.
///
/// # Errors
/// What could not be read back: a line over the limits, or something unread; and a report that is too
/// long to be kept.
pub fn write(entry: &Unwritten, hand: &Hand) -> Result<String, LineRefusal> {
    if let Says::Report(report) = &entry.says
        && report.text.len() > LONGEST_REPORT
    {
        return Err(LineRefusal::ReportTooLong(report.text.len()));
    }
    let paper = PaperLine {
        cartside: LINE_FORM,
        kind: entry.kind.code(),
        vehicle: entry.vehicle.map(|id| id.hex()),
        visit: entry.visit.map(|id| id.hex()),
        of: entry.described_by.map(|id| id.hex()),
        slot: &entry.slot,
        says: says::PaperSays::of(&entry.says),
        struck: entry.says == Says::Struck,
        by: &hand.by,
        device: &hand.device,
        at: hand.at.as_str(),
        n: hand.n,
        replaces: entry.replaces.iter().map(Digest::hex).collect(),
    };
    // Nothing here can fail to be written; the sentences of the library's errors would weigh on the download.
    let line = serde_json::to_string(&paper).map_err(|_| LineRefusal::Unreadable)?;
    match read(&line)?.says {
        Says::Unread => Err(LineRefusal::Unreadable),
        _ => Ok(line),
    }
}

/// Reads one line, without its line end.
///
/// # Errors
/// A line that is not one JSON object within the limits, or whose fields are not of their form. A
/// kind, a slot, an answer or a field that this version does not know is no error: the entry is
/// kept unread.
pub fn read(line: &str) -> Result<Entry, LineRefusal> {
    if line.len() > LONGEST_LINE {
        return Err(LineRefusal::TooLong(line.len()));
    }
    if line.contains(['\n', '\r']) {
        return Err(LineRefusal::LineBreak);
    }
    let deep = depth(line);
    if deep > DEEPEST {
        return Err(LineRefusal::TooDeep(deep));
    }
    let read = Json::read(line).map_err(|fault| match fault {
        Fault::Twice(field) => LineRefusal::Twice(field),
        fault => LineRefusal::NotJson(fault.to_string()),
    })?;
    let Json::Object(object) = read else {
        return Err(LineRefusal::NotAnObject);
    };
    entry(Digest::of(line.as_bytes()), Fields::new(object))
}

/// How deep brackets are nested, those within strings left out.
fn depth(line: &str) -> usize {
    let (mut deep, mut deepest, mut quoted, mut escaped) = (0_usize, 0, false, false);
    for byte in line.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            b'{' | b'[' if !quoted => {
                deep += 1;
                deepest = deepest.max(deep);
            }
            b'}' | b']' if !quoted => deep = deep.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

fn entry(id: EntryId, mut fields: Fields) -> Result<Entry, LineRefusal> {
    let form = fields.whole("cartside")?;
    let kind = Kind::from_code(&fields.text("kind")?);
    let vehicle = fields.id("vehicle")?;
    let visit = fields.id("visit")?;
    let described_by = fields.id("of")?;
    let slot = fields.text("slot")?;
    let struck = fields.flag("struck")?;
    let said = fields.object("says")?;
    let by = fields.text("by")?;
    let device = fields.text("device")?;
    let at = fields.text("at")?;
    let at = Stamp::read(&at).ok_or(LineRefusal::Wrong {
        field: "at",
        given: at,
        allowed: "a time like 2026-11-25T10:03:00+00:00",
    })?;
    let n = fields.whole("n")?;
    let replaces = fields.ids("replaces")?;
    if form == 0 {
        return Err(LineRefusal::Wrong {
            field: "cartside",
            given: form.to_string(),
            allowed: "1 or more",
        });
    }
    if n == 0 || n > GREATEST_N {
        return Err(LineRefusal::Wrong {
            field: "n",
            given: n.to_string(),
            allowed: "1 to 1000000000000",
        });
    }
    let mut unread = fields.left();
    let says = match (struck, said) {
        (true, None) => Says::Struck,
        (true, Some(_)) => return Err(LineRefusal::SaysAndStrikes),
        _ if form > LINE_FORM => Says::Unread,
        // These are the whole house's; one of a vehicle's own is a newer version's.
        _ if matches!(kind, Kind::Limit | Kind::SameAs) && vehicle.is_some() => Says::Unread,
        (false, Some(mut said)) => {
            let says = says::read(&kind, &slot, &mut said)?;
            unread += said.left();
            says
        }
        (false, None) if matches!(kind, Kind::Unknown(_)) => Says::Unread,
        (false, None) => return Err(LineRefusal::Missing("says")),
    };
    belongs(&kind, &says, vehicle, visit)?;
    let unread_fields = u16::try_from(unread).unwrap_or(u16::MAX);
    Ok(Entry {
        id,
        kind,
        vehicle,
        visit,
        described_by,
        slot,
        says,
        by,
        device,
        at,
        n,
        replaces,
        unread_fields,
    })
}

/// Everything but the beginning of a vehicle and what is the house's belongs to a vehicle, and what comes
/// of an examination to that one.
fn belongs(
    kind: &Kind,
    says: &Says,
    vehicle: Option<EntryId>,
    visit: Option<EntryId>,
) -> Result<(), LineRefusal> {
    match kind {
        Kind::Vehicle | Kind::Limit | Kind::SameAs | Kind::Unknown(_) => Ok(()),
        _ if vehicle.is_none() => Err(LineRefusal::Missing("vehicle")),
        Kind::Reading | Kind::Round | Kind::Tyring if visit.is_none() => {
            Err(LineRefusal::Missing("visit"))
        }
        _ => match says {
            Says::Decision(_) | Says::Report(_) if visit.is_none() => {
                Err(LineRefusal::Missing("visit"))
            }
            _ => Ok(()),
        },
    }
}
