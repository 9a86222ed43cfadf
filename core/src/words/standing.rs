//! What each standing means, in a sentence; *no fault found* names what was examined.

use super::list;
use super::need::need;
use super::style::Style;
use crate::diagnosis::{Missing, Standing, needs};
use crate::survey::Need;
use crate::wheel::Wheel;

/// What an examination has covered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Examined<'a> {
    /// The day, as it is shown.
    pub day: &'a str,
    /// What was looked at, in the order of the list.
    pub needs: Vec<Need>,
}

impl<'a> Examined<'a> {
    /// What is asked of this wheel and not missing.
    #[must_use]
    pub fn of(day: &'a str, wheel: &Wheel, missing: &[Missing]) -> Examined<'a> {
        let left = |need: &Need| missing.iter().any(|missing| missing.need == *need);
        Examined {
            day,
            needs: needs(wheel).filter(|need| !left(need)).collect(),
        }
    }
}

/// What a standing says of one wheel.
#[must_use]
pub fn standing(standing: Standing, examined: &Examined, style: Style) -> String {
    match standing {
        Standing::NoFaultFound => format!(
            "No fault was found against the stated use, in what was examined on {}: {}. Nothing else was examined.",
            examined.day,
            phrases(&examined.needs, style)
        ),
        Standing::LightWorkOnly => "Empty, or up to a quarter of its load, at a walk, on level hard ground; no people, no drag shoe. Set a date to look again.".to_owned(),
        Standing::NotJudged => "Too little has been recorded to judge this wheel. Until it has, nothing is said for it: do not take it as sound.".to_owned(),
        Standing::KeepEmpty => "Not to be loaded or used. It may be walked to the shed.".to_owned(),
        Standing::NotOnThisWheel => "Do not move it on this wheel: chock it, take the weight off, and carry it or use a trailer.".to_owned(),
    }
}

fn phrases(needs: &[Need], style: Style) -> String {
    let each: Vec<String> = needs.iter().map(|what| need(*what, style)).collect();
    if each.is_empty() {
        "nothing".to_owned()
    } else {
        list(&each)
    }
}

/// What the standing of a whole vehicle rests on.
#[must_use]
pub fn vehicle() -> &'static str {
    "The vehicle takes the harshest standing of its wheels. Axle bed, shafts, brake and harness were not examined."
}

/// What must be said wherever people are to be carried.
#[must_use]
pub fn people() -> &'static str {
    "For carrying people, light work only is never enough."
}
