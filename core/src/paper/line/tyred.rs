//! Rounds and what is chosen for a tyring, on paper.

use serde::{Serialize, Serializer};
use serde_json::Number;

use super::LineRefusal;
use super::fields::Fields;
use super::says::{length, length_of, paper_mm};
use crate::daybook::tyring::{MonthSaid, Ran, RoundTaken, TakenWith, TyringSaid, Warm};
use crate::material::timber::Grain;
use crate::material::{Iron, Species};
use crate::mechanics::Stand;
use crate::paper::json::Json;
use crate::quantity::{Length, Measured};
use crate::tyring::round::{Line, Run, TapeClass};
use crate::wheel::Position;

/// The words of the timbers, as [`TyringSaid::timbers`] has them.
const TIMBERS: [&str; 3] = ["nave", "spokes", "felloes"];
/// The words of their side grain, in the same order.
const GRAINS: [&str; 3] = ["nave_grain", "spokes_grain", "felloes_grain"];

/// What one field holds.
#[derive(Serialize)]
#[serde(untagged)]
enum Value<'a> {
    Mm(Number),
    Whole(i32),
    Word(&'a str),
    Flag(bool),
    Runs(Vec<(u16, Number)>),
    Months(&'a [MonthSaid]),
}

/// What such a line says: the fields that are said, in order.
pub(super) struct PaperTyred<'a>(Vec<(&'static str, Value<'a>)>);

impl Serialize for PaperTyred<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, value)| (name, value)))
    }
}

impl<'a> PaperTyred<'a> {
    pub(super) fn round(said: &'a RoundTaken) -> PaperTyred<'a> {
        let mut fields = Vec::new();
        let mut say = |name, value| fields.push((name, value));
        match &said.with {
            TakenWith::Traveller(number, own) => {
                say("with", Value::Word("traveller"));
                say("number", Value::Whole((*number).into()));
                say("turn_mm", Value::Mm(paper_mm(own.value())));
                say("turn_doubt_mm", Value::Mm(paper_mm(own.doubt())));
            }
            TakenWith::Tape(number, class) => {
                say("with", Value::Word("tape"));
                say("number", Value::Whole((*number).into()));
                say("class", Value::Word(class.code()));
            }
        }
        say("line", Value::Word(said.line.code()));
        let runs = said.runs.iter().map(|run| (run.turns, paper_mm(run.past)));
        say("runs", Value::Runs(runs.collect()));
        if let Some(warm) = said.warm {
            say("warm_c", Value::Whole(warm.at.into()));
            say("warm_within_k", Value::Whole(warm.within.into()));
        }
        if said.hot_weld {
            say("hot_weld", Value::Flag(true));
        }
        say("written", Value::Word(&said.written));
        PaperTyred(fields)
    }

    pub(super) fn tyring(said: &'a TyringSaid) -> PaperTyred<'a> {
        let mut fields = Vec::new();
        let mut say = |name, value: Option<Value<'a>>| {
            fields.extend(value.map(|value| (name, value)));
        };
        for (name, length) in LENGTHS.into_iter().zip(lengths(said)) {
            say(name, length.map(|length| Value::Mm(paper_mm(length))));
        }
        say("carry_s", said.carry.map(|it| Value::Whole(it.into())));
        say("lay_s", said.lay.map(|it| Value::Whole(it.into())));
        say("wind_m_s", said.wind.map(|it| Value::Whole(it.into())));
        say("air_c", said.air.map(|it| Value::Whole(it.into())));
        say("iron", said.iron.map(|it| Value::Word(it.code())));
        for (name, timber) in TIMBERS.into_iter().zip(said.timbers) {
            say(name, timber.map(|it| Value::Word(it.code())));
        }
        for (name, grain) in GRAINS.into_iter().zip(said.grains) {
            say(name, grain.map(|it| Value::Word(it.code())));
        }
        say("stand", said.stand.map(|it| Value::Word(it.code())));
        let months = said.months.as_ref();
        say("months", months.map(|it| Value::Months(it.as_slice())));
        PaperTyred(fields)
    }
}

/// The lengths of a tyring, each under its word.
const LENGTHS: [&str; 6] = [
    "draw_mm",
    "cramped_mm",
    "cut_mm",
    "charred_mm",
    "oval_mm",
    "clearance_mm",
];

fn lengths(said: &TyringSaid) -> [Option<Length>; 6] {
    [
        said.draw,
        said.cramped,
        said.cut,
        said.charred,
        said.oval,
        said.clearance,
    ]
}

/// Reads a round; `Ok(None)` where this version does not know one of its words.
///
/// # Errors
/// A field that is missing or not of its form.
pub(super) fn round(
    (position, ran): (Position, Ran),
    fields: &mut Fields,
) -> Result<Option<RoundTaken>, LineRefusal> {
    let word = fields.text("with")?;
    let number = whole("number", fields.whole("number")?)?;
    let with = match word.as_str() {
        "traveller" => Some(TakenWith::Traveller(number, own_round(fields)?)),
        "tape" => {
            TapeClass::from_code(&fields.text("class")?).map(|class| TakenWith::Tape(number, class))
        }
        _ => None,
    };
    let line = Line::from_code(&fields.text("line")?);
    let runs = runs(fields)?;
    let warm = warm(fields)?;
    let hot_weld = fields.flag("hot_weld")?;
    let written = fields.maybe_text("written")?.unwrap_or_default();
    Ok(with.zip(line).map(|(with, line)| RoundTaken {
        position,
        ran,
        with,
        line,
        runs,
        warm,
        hot_weld,
        written,
    }))
}

fn own_round(fields: &mut Fields) -> Result<Measured, LineRefusal> {
    let own = length("turn_mm", fields)?;
    let doubt = length("turn_doubt_mm", fields)?;
    Measured::new(own, doubt).map_err(|_| LineRefusal::Wrong {
        field: "turn_doubt_mm",
        given: paper_mm(doubt).to_string(),
        allowed: "a length from 0",
    })
}

fn runs(fields: &mut Fields) -> Result<Vec<Run>, LineRefusal> {
    let given = fields.list("runs")?;
    let read: Option<Vec<Run>> = given.iter().map(run).collect();
    read.filter(|runs| !runs.is_empty())
        .ok_or_else(|| LineRefusal::Wrong {
            field: "runs",
            given: Json::List(given).to_string(),
            allowed: "one or more pairs of whole turns from 0 to 65535 and millimetres from -20000 to 20000",
        })
}

fn run(pair: &Json) -> Option<Run> {
    let [turns, past] = pair_of(pair)?;
    Some(Run {
        turns: u16::try_from(turns.whole()?).ok()?,
        past: length_of("runs", past.number()?).ok()?,
    })
}

fn pair_of(pair: &Json) -> Option<&[Json; 2]> {
    match pair {
        Json::List(pair) => pair.as_slice().try_into().ok(),
        _ => None,
    }
}

fn warm(fields: &mut Fields) -> Result<Option<Warm>, LineRefusal> {
    let at = degrees("warm_c", fields)?;
    let within = maybe_whole("warm_within_k", fields)?;
    Ok(at.map(|at| Warm {
        at,
        within: within.unwrap_or(0),
    }))
}

/// Reads what is chosen; `Ok(None)` where this version does not know one of its words.
///
/// # Errors
/// A field that is not of its form.
pub(super) fn tyring(
    position: Position,
    fields: &mut Fields,
) -> Result<Option<TyringSaid>, LineRefusal> {
    let mut lengths = [None; LENGTHS.len()];
    for (length, name) in lengths.iter_mut().zip(LENGTHS) {
        let mm = fields.maybe_number(name)?;
        *length = mm.map(|mm| length_of(name, mm)).transpose()?;
    }
    let [draw, cramped, cut, charred, oval, clearance] = lengths;
    let carry = maybe_whole("carry_s", fields)?;
    let lay = maybe_whole("lay_s", fields)?;
    let wind = maybe_whole("wind_m_s", fields)?;
    let air = degrees("air_c", fields)?;
    let mut known = true;
    let iron = coded(fields.maybe_text("iron")?, Iron::from_code, &mut known);
    let mut timbers = [None; TIMBERS.len()];
    for (timber, name) in timbers.iter_mut().zip(TIMBERS) {
        *timber = coded(fields.maybe_text(name)?, Species::from_code, &mut known);
    }
    let mut grains = [None; GRAINS.len()];
    for (grain, name) in grains.iter_mut().zip(GRAINS) {
        *grain = coded(fields.maybe_text(name)?, Grain::from_code, &mut known);
    }
    let stand = coded(fields.maybe_text("stand")?, Stand::from_code, &mut known);
    let months = months(fields)?;
    Ok(known.then_some(TyringSaid {
        position,
        draw,
        cramped,
        cut,
        charred,
        oval,
        clearance,
        carry,
        lay,
        wind,
        air,
        iron,
        timbers,
        grains,
        stand,
        months,
    }))
}

/// What a word that may be missing stands for; one that is not known is noted.
fn coded<T>(word: Option<String>, from: fn(&str) -> Option<T>, known: &mut bool) -> Option<T> {
    let read = from(word.as_deref()?);
    *known &= read.is_some();
    read
}

fn months(fields: &mut Fields) -> Result<Option<[MonthSaid; 12]>, LineRefusal> {
    if !fields.has("months") {
        return Ok(None);
    }
    let given = fields.list("months")?;
    let read: Option<Vec<MonthSaid>> = given.iter().map(month).collect();
    let twelve = read.and_then(|months| months.try_into().ok());
    twelve.map(Some).ok_or_else(|| LineRefusal::Wrong {
        field: "months",
        given: Json::List(given).to_string(),
        allowed: "twelve pairs of percent from 0 to 100 and degrees Celsius from -90 to 1500, whole numbers",
    })
}

fn month(pair: &Json) -> Option<MonthSaid> {
    let [humidity, air] = pair_of(pair)?;
    let humidity = humidity.whole().filter(|it| *it <= 100)?;
    Some((u8::try_from(humidity).ok()?, in_range(air.number()?)?))
}

/// Whole degrees that iron or air can have.
fn in_range(degrees: f64) -> Option<i16> {
    let fits = degrees.fract() == 0.0 && (-90.0..=1500.0).contains(&degrees);
    fits.then_some(degrees as i16)
}

fn degrees(field: &'static str, fields: &mut Fields) -> Result<Option<i16>, LineRefusal> {
    let given = fields.maybe_number(field)?;
    let read = given.map(|given| {
        in_range(given).ok_or_else(|| LineRefusal::Wrong {
            field,
            given: crate::quantity::decimal(given, 6),
            allowed: "whole degrees Celsius from -90 to 1500",
        })
    });
    read.transpose()
}

fn maybe_whole(field: &'static str, fields: &mut Fields) -> Result<Option<u16>, LineRefusal> {
    if !fields.has(field) {
        return Ok(None);
    }
    whole(field, fields.whole(field)?).map(Some)
}

fn whole(field: &'static str, given: u64) -> Result<u16, LineRefusal> {
    let fits = u16::try_from(given).ok();
    fits.ok_or_else(|| LineRefusal::Wrong {
        field,
        given: given.to_string(),
        allowed: "a whole number from 0 to 65535",
    })
}
