//! What a line says, kind by kind. Lengths stand on paper in millimetres, rounded to six decimals.

use serde::{Serialize, Serializer};
use serde_json::Number;

use super::LineRefusal;
use super::fields::{Fields, digest};
use super::marked::{PaperMark, marks};
use super::outcome::{self, PaperOutcome};
use crate::daybook::{Digest, Kind, Picture, SameAs, Says, Visit, WheelSaid};
use crate::paper::json::on_paper;
use crate::quantity::length::{from_paper_mm, to_paper_mm};
use crate::quantity::{Length, Measured, Percent, decimal};
use crate::survey::{Answer, Crack, Play, Reading, Ring, SafeToLift, Slot, Stage, Use};
use crate::wheel::{
    Arm, Felloes, Keeper, Part, Position, Rim, Size, Sizes, Tyre, Vehicle, VehicleKind, Wheel,
};

/// What a line says, as it is written.
#[derive(Serialize)]
#[serde(untagged)]
pub(super) enum PaperSays<'a> {
    Vehicle {
        kind: &'static str,
        name: &'a str,
    },
    Wheel {
        felloes: &'a [u16],
        #[serde(skip_serializing_if = "Option::is_none")]
        rim: Option<&'static str>,
        #[serde(skip_serializing_if = "Option::is_none")]
        tyre: Option<&'static str>,
        #[serde(skip_serializing_if = "Option::is_none")]
        arm: Option<&'static str>,
        #[serde(skip_serializing_if = "Option::is_none")]
        keeper: Option<&'static str>,
        #[serde(skip_serializing_if = "Option::is_none")]
        sizes_mm: Option<PaperSizes>,
    },
    Visit {
        place: &'a str,
        #[serde(skip_serializing_if = "Vec::is_empty")]
        used_for: Vec<&'static str>,
        #[serde(skip_serializing_if = "Option::is_none")]
        stage: Option<&'static str>,
        #[serde(skip_serializing_if = "str::is_empty")]
        conditions: &'a str,
        #[serde(skip_serializing_if = "Option::is_none")]
        safe_to_lift: Option<&'static str>,
    },
    Reading {
        answer: &'static str,
        #[serde(skip_serializing_if = "Option::is_none")]
        mm: Option<Number>,
        #[serde(skip_serializing_if = "Option::is_none")]
        doubt_mm: Option<Number>,
        #[serde(skip_serializing_if = "Option::is_none")]
        percent: Option<Number>,
        written: &'a str,
    },
    Remark {
        text: &'a str,
    },
    Picture {
        sha256: String,
        width: u32,
        height: u32,
        bytes: u32,
    },
    Marks {
        marks: Vec<PaperMark<'a>>,
    },
    /// Its slot says all.
    Bare {},
    Outcome(PaperOutcome<'a>),
}

/// The sizes that have been said, each under its own word.
pub(super) struct PaperSizes(Sizes);

impl Serialize for PaperSizes {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let said = self.0.said();
        serializer.collect_map(said.map(|(size, length)| (size.code(), paper_mm(length))))
    }
}

impl<'a> PaperSays<'a> {
    /// What is written; `None` for a strike and for something unread.
    pub(super) fn of(says: &'a Says) -> Option<PaperSays<'a>> {
        Some(match says {
            Says::Vehicle(vehicle) => PaperSays::Vehicle {
                kind: vehicle.kind.code(),
                name: &vehicle.name,
            },
            Says::Wheel(said) => wheel_on_paper(&said.wheel),
            Says::Visit(visit) => visit_on_paper(visit),
            Says::Reading(reading) => reading_on_paper(reading),
            Says::Remark(_, text) => PaperSays::Remark { text },
            Says::Picture(picture) => PaperSays::Picture {
                sha256: picture.digest.hex(),
                width: picture.width,
                height: picture.height,
                bytes: picture.bytes,
            },
            Says::Marks(said) => PaperSays::Marks {
                marks: said.all.iter().map(PaperMark::of).collect(),
            },
            Says::Erasure(_) | Says::SameAs(_) => PaperSays::Bare {},
            says => PaperSays::Outcome(PaperOutcome::of(says)?),
        })
    }
}

fn wheel_on_paper(wheel: &Wheel) -> PaperSays<'_> {
    PaperSays::Wheel {
        felloes: wheel.felloes.carried(),
        rim: wheel.rim.map(Rim::code),
        tyre: wheel.tyre.map(Tyre::code),
        arm: wheel.arm.map(Arm::code),
        keeper: wheel.keeper.map(Keeper::code),
        sizes_mm: (wheel.sizes != Sizes::default()).then_some(PaperSizes(wheel.sizes)),
    }
}

/// A visit of an earlier version had a place only, and one that has no more is still written so.
fn visit_on_paper(visit: &Visit) -> PaperSays<'_> {
    let used_for = in_order(|used_for| visit.used_for.contains(&used_for));
    PaperSays::Visit {
        place: &visit.place,
        used_for: used_for.into_iter().map(Use::code).collect(),
        stage: (visit.stage != Stage::default()).then(|| visit.stage.code()),
        conditions: &visit.conditions,
        safe_to_lift: visit.safe_to_lift.map(SafeToLift::code),
    }
}

/// The uses that hold, so that one set of them is written in one way.
fn in_order(holds: impl Fn(Use) -> bool) -> Vec<Use> {
    Use::ALL.into_iter().filter(|it| holds(*it)).collect()
}

/// A length as it is written, in millimetres.
pub(super) fn paper_mm(length: Length) -> Number {
    on_paper(to_paper_mm(length))
}

fn reading_on_paper(reading: &Reading) -> PaperSays<'_> {
    let (answer, mm, doubt_mm) = match reading.answer {
        Answer::Length(measured) => ("length", Some(measured.value()), Some(measured.doubt())),
        Answer::Over(least) => ("over", Some(least), None),
        Answer::Play(play) => (play.code(), None, None),
        Answer::Ring(ring) => (ring.code(), None, None),
        Answer::Crack(crack) => (crack.code(), None, None),
        Answer::Share(_) => ("share", None, None),
        Answer::Yes => ("yes", None, None),
        Answer::No => ("no", None, None),
        Answer::CannotSee => ("cannot-see", None, None),
        Answer::NotThere => ("not-there", None, None),
        Answer::NothingFound => ("nothing-found", None, None),
    };
    let percent = match reading.answer {
        Answer::Share(share) => Some(on_paper(share.to_paper())),
        _ => None,
    };
    PaperSays::Reading {
        answer,
        mm: mm.map(paper_mm),
        doubt_mm: doubt_mm.map(paper_mm),
        percent,
        written: &reading.written,
    }
}

/// Reads what a line of this kind and slot says.
///
/// # Errors
/// A field that is missing or not of its form.
pub(super) fn read(kind: &Kind, slot: &str, fields: &mut Fields) -> Result<Says, LineRefusal> {
    Ok(match kind {
        Kind::Vehicle if slot == "vehicle" => vehicle(fields)?.map_or(Says::Unread, Says::Vehicle),
        Kind::Wheel => match Position::from_code(slot) {
            Some(position) => wheel(fields)?.map_or(Says::Unread, |wheel| {
                Says::Wheel(WheelSaid { position, wheel })
            }),
            None => Says::Unread,
        },
        Kind::Visit if slot == "visit" => visit(fields)?.map_or(Says::Unread, Says::Visit),
        Kind::Reading => match Slot::from_code(slot) {
            Some(slot) => reading(slot, fields)?.map_or(Says::Unread, Says::Reading),
            None => Says::Unread,
        },
        Kind::Remark => match Part::from_code(slot) {
            Some(part) => Says::Remark(part, fields.text("text")?),
            None => Says::Unread,
        },
        Kind::Picture => match Part::from_code(slot) {
            Some(part) => Says::Picture(picture(part, fields)?),
            None => Says::Unread,
        },
        Kind::Erasure => Says::Erasure(digest("slot", slot)?),
        Kind::Marks => match Digest::from_hex(slot) {
            Some(picture) => marks(picture, fields)?.map_or(Says::Unread, Says::Marks),
            None => Says::Unread,
        },
        Kind::SameAs => SameAs::from_slot(slot).map_or(Says::Unread, Says::SameAs),
        _ => outcome::read(kind, slot, fields)?.unwrap_or(Says::Unread),
    })
}

fn vehicle(fields: &mut Fields) -> Result<Option<Vehicle>, LineRefusal> {
    let kind = VehicleKind::from_code(&fields.text("kind")?);
    let name = fields.maybe_text("name")?.unwrap_or_default();
    Ok(kind.map(|kind| Vehicle { kind, name }))
}

fn visit(fields: &mut Fields) -> Result<Option<Visit>, LineRefusal> {
    let place = fields.maybe_text("place")?.unwrap_or_default();
    let used_for = fields.texts("used_for")?.unwrap_or_default();
    let (stage, stage_known) = coded(fields.maybe_text("stage")?, Stage::from_code);
    let conditions = fields.maybe_text("conditions")?.unwrap_or_default();
    let lift = fields.maybe_text("safe_to_lift")?;
    let (safe_to_lift, lift_known) = coded(lift, SafeToLift::from_code);
    let known =
        stage_known && lift_known && used_for.iter().all(|code| Use::from_code(code).is_some());
    Ok(known.then(|| Visit {
        place,
        used_for: in_order(|it| used_for.iter().any(|code| it.code() == code)),
        stage: stage.unwrap_or_default(),
        safe_to_lift,
        conditions,
    }))
}

/// Numbers as JSON lists them.
fn listed(numbers: &[u64]) -> String {
    let numbers: Vec<String> = numbers.iter().map(u64::to_string).collect();
    format!("[{}]", numbers.join(", "))
}

fn wheel(fields: &mut Fields) -> Result<Option<Wheel>, LineRefusal> {
    let given = fields.wholes("felloes")?;
    let carried = given
        .iter()
        .map(|spokes| u16::try_from(*spokes).unwrap_or(u16::MAX))
        .collect();
    let felloes = Felloes::new(carried).map_err(|_| LineRefusal::Wrong {
        field: "felloes",
        given: listed(&given),
        allowed: "1 to 32 felloes that carry 3 to 64 spokes, each at least one",
    })?;
    let (rim, rim_known) = coded(fields.maybe_text("rim")?, Rim::from_code);
    let (tyre, tyre_known) = coded(fields.maybe_text("tyre")?, Tyre::from_code);
    let (arm, arm_known) = coded(fields.maybe_text("arm")?, Arm::from_code);
    let (keeper, keeper_known) = coded(fields.maybe_text("keeper")?, Keeper::from_code);
    let sizes = sizes(fields)?;
    let known = rim_known && tyre_known && arm_known && keeper_known;
    Ok(known.then_some(Wheel {
        felloes,
        rim,
        tyre,
        arm,
        keeper,
        sizes,
    }))
}

/// The sizes; a size of a newer version is left in its object and so counted as not read.
fn sizes(fields: &mut Fields) -> Result<Sizes, LineRefusal> {
    let Some(mut inner) = fields.object("sizes_mm")? else {
        return Ok(Sizes::default());
    };
    let mut sizes = Sizes::default();
    for size in Size::ALL {
        let mm = inner.maybe_number(size.code())?;
        let length = mm.map(|mm| length_of(size.code(), mm)).transpose()?;
        sizes = sizes.with(size, length);
    }
    fields.count(inner.left());
    Ok(sizes)
}

/// A word and whether it is known; a missing word is known to be missing.
fn coded<T>(word: Option<String>, from_code: fn(&str) -> Option<T>) -> (Option<T>, bool) {
    let read = word.as_deref().and_then(from_code);
    let known = word.is_none() || read.is_some();
    (read, known)
}

fn reading(slot: Slot, fields: &mut Fields) -> Result<Option<Reading>, LineRefusal> {
    let written = fields.maybe_text("written")?.unwrap_or_default();
    let answer = match fields.text("answer")?.as_str() {
        "length" => Answer::Length(measured(fields)?),
        "over" => Answer::Over(length("mm", fields)?),
        "yes" => Answer::Yes,
        "no" => Answer::No,
        "cannot-see" => Answer::CannotSee,
        "not-there" => Answer::NotThere,
        "nothing-found" => Answer::NothingFound,
        "share" => Answer::Share(share(fields)?),
        code => match verdict(code) {
            Some(answer) => answer,
            None => return Ok(None),
        },
    };
    Ok(Some(Reading {
        slot,
        answer,
        written,
    }))
}

/// The one answer of play, ring or crack that a word stands for; no word is one of two of them.
fn verdict(code: &str) -> Option<Answer> {
    let play = Play::from_code(code).map(Answer::Play);
    let ring = || Ring::from_code(code).map(Answer::Ring);
    let crack = || Crack::from_code(code).map(Answer::Crack);
    play.or_else(ring).or_else(crack)
}

fn share(fields: &mut Fields) -> Result<Percent, LineRefusal> {
    let percent = fields.number("percent")?;
    Percent::from_paper(percent).map_err(|_| LineRefusal::Wrong {
        field: "percent",
        given: decimal(percent, 6),
        allowed: "0 to 100",
    })
}

fn measured(fields: &mut Fields) -> Result<Measured, LineRefusal> {
    let value = length("mm", fields)?;
    let doubt = length("doubt_mm", fields)?;
    Measured::new(value, doubt).map_err(|_| LineRefusal::Wrong {
        field: "doubt_mm",
        given: decimal(to_paper_mm(doubt), 6),
        allowed: "a length from 0",
    })
}

/// The greatest length a line may give either way, in mm: no cart is twenty metres of anything.
const GREATEST_MM: f64 = 20_000.0;

pub(super) fn length(field: &'static str, fields: &mut Fields) -> Result<Length, LineRefusal> {
    length_of(field, fields.number(field)?)
}

pub(super) fn length_of(field: &'static str, mm: f64) -> Result<Length, LineRefusal> {
    let wrong = || LineRefusal::Wrong {
        field,
        given: decimal(mm, 6),
        allowed: "-20000 to 20000 millimetres",
    };
    if mm.abs() > GREATEST_MM {
        return Err(wrong());
    }
    from_paper_mm(mm).map_err(|_| wrong())
}

fn picture(part: Part, fields: &mut Fields) -> Result<Picture, LineRefusal> {
    let sha256 = fields.text("sha256")?;
    Ok(Picture {
        part,
        digest: digest("sha256", &sha256)?,
        width: size("width", fields)?,
        height: size("height", fields)?,
        bytes: size("bytes", fields)?,
    })
}

pub(super) fn size(field: &'static str, fields: &mut Fields) -> Result<u32, LineRefusal> {
    let given = fields.whole(field)?;
    u32::try_from(given).map_err(|_| LineRefusal::Wrong {
        field,
        given: given.to_string(),
        allowed: "0 to 4294967295",
    })
}
