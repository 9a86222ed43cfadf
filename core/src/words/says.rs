//! One line for any entry, as it stands in the list of the day book.

use super::answer::told;
use super::capital;
use super::place::{part, wheel_at};
use super::question::short;
use super::style::Style;
use super::term;
use crate::daybook::{Entry, Kind, Says, Visit, WheelSaid};
use crate::survey::{Reading, Slot};
use crate::wheel::{Part, Position, Vehicle, Wheel};

/// What an entry says: `near wheel, spoke 3: foot loose`. The wheel it is about, if it is known,
/// lets the place after the last spoke be named in full.
#[must_use]
pub fn says(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    match &entry.says {
        Says::Vehicle(said) => vehicle(said, style),
        Says::Wheel(said) => wheel_said(said, style),
        Says::Visit(said) => visit(said),
        Says::Reading(said) => reading(said, wheel, style),
        Says::Remark(at, text) => format!("{}: “{text}”", part(*at, wheel, style)),
        Says::Picture(picture) => format!("{}: picture", part(picture.part, wheel, style)),
        Says::Erasure(_) => "a picture is erased".to_owned(),
        Says::Struck => format!("struck out: {}", subject(entry, wheel, style)),
        Says::Unread => "written by a newer Cartside: kept, not read".to_owned(),
    }
}

fn vehicle(said: &Vehicle, style: Style) -> String {
    let kind = term::vehicle_kind(said.kind, style);
    if said.name.is_empty() {
        kind.to_owned()
    } else {
        format!("{kind}: {}", said.name)
    }
}

fn wheel_said(said: &WheelSaid, style: Style) -> String {
    let wheel = &said.wheel;
    let built = [
        wheel.rim.map(|rim| term::rim(rim, style)),
        wheel.tyre.map(|tyre| term::tyre(tyre, style)),
        wheel.arm.map(|arm| term::arm(arm).to_owned()),
        wheel
            .keeper
            .map(|keeper| term::keeper(keeper, style).to_owned()),
    ];
    let mut words = format!(
        "{}: {} spokes, {}",
        wheel_at(said.position),
        wheel.felloes.spokes(),
        counted(wheel.felloes.felloes(), style.terms.felloe)
    );
    for said in built.into_iter().flatten() {
        words.push_str("; ");
        words.push_str(&said);
    }
    words
}

fn counted(count: u16, noun: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {noun}{plural}")
}

fn visit(said: &Visit) -> String {
    if said.place.is_empty() {
        "examination".to_owned()
    } else {
        format!("examination at {}", said.place)
    }
}

fn reading(said: &Reading, wheel: Option<&Wheel>, style: Style) -> String {
    let at = part(said.slot.part(), wheel, style);
    format!("{at}: {}", told(said.slot.question, &said.answer, style))
}

/// What an entry is about, by its kind and slot alone.
#[must_use]
pub fn subject(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    let slot = entry.slot.as_str();
    let at = || Part::from_code(slot).map(|at| part(at, wheel, style));
    let known = match entry.kind {
        Kind::Vehicle => Some("the vehicle".to_owned()),
        Kind::Visit => Some("the examination".to_owned()),
        Kind::Wheel => Position::from_code(slot).map(wheel_at),
        Kind::Reading => Slot::from_code(slot).map(|slot| asked(slot, wheel, style)),
        Kind::Remark => at().map(|at| format!("remark, {at}")),
        Kind::Picture => at().map(|at| format!("picture, {at}")),
        Kind::Erasure => Some("erasure of a picture".to_owned()),
        Kind::Unknown(_) => None,
    };
    known.unwrap_or_else(|| "something a newer Cartside wrote".to_owned())
}

fn asked(slot: Slot, wheel: Option<&Wheel>, style: Style) -> String {
    let at = part(slot.part(), wheel, style);
    format!("{at}, {}", short(slot.question, style))
}

/// The same line as a heading, with a capital.
#[must_use]
pub fn heading(entry: &Entry, wheel: Option<&Wheel>, style: Style) -> String {
    capital(&says(entry, wheel, style))
}
