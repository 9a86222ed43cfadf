//! What each standing means, in a sentence; *no fault found* names what was examined.

use super::need::need;
use super::style::Style;
use super::term;
use crate::diagnosis::{Missing, Standing, needs};
use crate::survey::Need;
use crate::wheel::{Size, Wheel};

/// What an examination has covered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Examined<'a> {
    /// The day, as it is shown.
    pub day: &'a str,
    /// What was looked at, in the order of the list.
    pub needs: Vec<Need>,
    /// Whether the dish as built is known, so that the dish could be held against it.
    pub dish_compared: bool,
    /// Whether it was said what the vehicle is to be used for.
    pub use_said: bool,
}

impl<'a> Examined<'a> {
    /// What is asked of this wheel and not missing; `use_said` is whether any use was stated.
    #[must_use]
    pub fn of(day: &'a str, wheel: &Wheel, missing: &[Missing], use_said: bool) -> Examined<'a> {
        let left = |need: &Need| missing.iter().any(|missing| missing.need == *need);
        Examined {
            day,
            needs: needs(wheel).filter(|need| !left(need)).collect(),
            dish_compared: wheel.sizes.get(Size::Dish).is_some(),
            use_said,
        }
    }
}

/// What a standing says of one wheel.
#[must_use]
pub fn standing(standing: Standing, examined: &Examined, style: Style) -> String {
    match standing {
        Standing::NoFaultFound => no_fault(examined, style),
        Standing::LightWorkOnly => "Empty, or up to a quarter of its load, at a walk, on level hard ground; no people, no drag shoe. Set a date to look again.".to_owned(),
        Standing::NotJudged => "Too little has been recorded to judge this wheel. Until it has, nothing is said for it: do not take it as sound.".to_owned(),
        Standing::KeepEmpty => "Not to be loaded or used. It may be walked to the shed.".to_owned(),
        Standing::NotOnThisWheel => "Do not move it on this wheel: chock it, take the weight off, and carry it or use a trailer.".to_owned(),
    }
}

fn no_fault(examined: &Examined, style: Style) -> String {
    let day = examined.day;
    let each: Vec<String> = examined
        .needs
        .iter()
        .map(|what| match what {
            Need::Dish if !examined.dish_compared => format!(
                "{} (held against nothing: the dish as built has not been said)",
                need(*what, style)
            ),
            _ => need(*what, style),
        })
        .collect();
    if each.is_empty() {
        return format!(
            "Nothing was examined on {day}: no fault was found, and none is ruled out."
        );
    }
    let (against, but) = if examined.use_said {
        (" against the stated use", "")
    } else {
        (
            "",
            " What it is to be used for has not been said, so it is found fit for none.",
        )
    };
    format!(
        "No fault was found{against}, in what was examined on {day}: {}. Nothing else was examined.{but}",
        each.join("; ")
    )
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

/// What is said beside *not judged*: what was found before the look-over is done, `None` where nothing was; `looked` is
/// whether anything was answered at all.
#[must_use]
pub fn so_far(found: Option<Standing>, looked: bool) -> String {
    match found {
        Some(found) => format!("So far: {}.", term::standing(found)),
        None if looked => "So far nothing bad was found.".to_owned(),
        None => "Nothing was looked at yet.".to_owned(),
    }
}

/// What is said where people are to be carried of a wheel that would be for light work only; `None`
/// where it is not.
#[must_use]
pub fn people_bite(so_far: Option<Standing>) -> Option<&'static str> {
    (so_far == Some(Standing::LightWorkOnly)).then_some(
        "People are to be carried, and light work only is never enough for them: keep it empty until it is put right.",
    )
}

/// What still holds of an earlier examination, and its day.
#[must_use]
pub fn held(before: Standing, day: &str) -> String {
    format!(
        "At the examination of {day} it came to “{}”. That holds until this wheel is judged or decided anew.",
        term::standing(before)
    )
}

/// What signing for *no fault found* means where faults were found.
#[must_use]
pub fn passed() -> &'static str {
    "Faults were found. Whoever signs this passes them, for the reason written down, and answers for it."
}

#[cfg(test)]
mod tests {
    use super::{Examined, held, passed, people, people_bite, so_far, standing, vehicle};
    use crate::diagnosis::{Missing, Standing};
    use crate::quantity::length::millimetres;
    use crate::survey::Need;
    use crate::wheel::{Size, Sizes, Tyre, Wheel};
    use crate::words::sample::{style, wheel};

    #[test]
    fn what_was_found_so_far_is_said_beside_not_judged() {
        let bad = Some(Standing::LightWorkOnly);
        let rows = [(bad, true), (None, true), (None, false)].map(|(bad, it)| so_far(bad, it));
        insta::assert_snapshot!(rows.join("\n"), @r"
        So far: light work only.
        So far nothing bad was found.
        Nothing was looked at yet.
        ");
    }

    #[test]
    fn what_holds_and_what_is_passed_is_said() {
        insta::assert_snapshot!(held(Standing::KeepEmpty, "5 November 2026"), @"At the examination of 5 November 2026 it came to “keep empty”. That holds until this wheel is judged or decided anew.");
        insta::assert_snapshot!(passed(), @"Faults were found. Whoever signs this passes them, for the reason written down, and answers for it.");
    }

    #[test]
    fn light_work_is_said_not_to_be_enough_for_people() {
        let bites = Standing::ALL
            .into_iter()
            .filter_map(|it| people_bite(Some(it)));
        insta::assert_snapshot!(bites.collect::<Vec<_>>().join("\n"), @"People are to be carried, and light work only is never enough for them: keep it empty until it is put right.");
    }

    #[test]
    fn a_sound_wheel_is_fit_for_no_use_that_was_not_said() {
        let strakes = Wheel {
            tyre: Some(Tyre::Strakes),
            ..wheel()
        };
        let all = Need::ALL.map(|need| Missing {
            need,
            places: vec![],
        });
        let examined = Examined::of("5 November 2026", &strakes, &all[1..], false);
        insta::assert_snapshot!(standing(Standing::NoFaultFound, &examined, style()), @"No fault was found, in what was examined on 5 November 2026: what keeps the wheel on (there, the right part, secured). Nothing else was examined. What it is to be used for has not been said, so it is found fit for none.");
    }

    #[test]
    fn every_standing_says_what_it_means() {
        let sizes = Sizes::default().with(Size::Dish, Some(millimetres(36.0)));
        let sized = Wheel { sizes, ..wheel() };
        let examined = Examined::of("5 November 2026", &sized, &[], true);
        let rows = [
            Standing::NoFaultFound,
            Standing::LightWorkOnly,
            Standing::NotJudged,
            Standing::KeepEmpty,
            Standing::NotOnThisWheel,
        ]
        .map(|it| standing(it, &examined, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        No fault was found against the stated use, in what was examined on 5 November 2026: what keeps the wheel on (there, the right part, secured); the ring of the tyre at four places; the gap of every joint; the foot of every spoke; the rim end of every spoke; whether any spoke is broken; the gap under the tyre at four places; the dish; end play along the arm and shake at the rim; rot (pricked for at the tongues, the spokes' feet and the ground point); the nave and its bonds. Nothing else was examined.
        Empty, or up to a quarter of its load, at a walk, on level hard ground; no people, no drag shoe. Set a date to look again.
        Too little has been recorded to judge this wheel. Until it has, nothing is said for it: do not take it as sound.
        Not to be loaded or used. It may be walked to the shed.
        Do not move it on this wheel: chock it, take the weight off, and carry it or use a trailer.
        ");
        insta::assert_snapshot!(vehicle(), @"The vehicle takes the harshest standing of its wheels. Axle bed, shafts, brake and harness were not examined.");
        insta::assert_snapshot!(people(), @"For carrying people, light work only is never enough.");
    }

    #[test]
    fn only_what_was_examined_is_named() {
        let straked = Wheel {
            tyre: Some(Tyre::Strakes),
            ..wheel()
        };
        let all = Need::ALL.map(|need| Missing {
            need,
            places: Vec::new(),
        });
        let examined = Examined::of("5 November 2026", &straked, &all[2..], false);
        assert_eq!(examined.needs, [Need::Keeper]);
        assert!(Examined::of("", &straked, &all, true).needs.is_empty());
        assert!(
            !Examined::of("", &straked, &[], true)
                .needs
                .contains(&Need::TyreGap)
        );
        let said = |left| {
            let examined = Examined::of("5 November 2026", &wheel(), left, true);
            standing(Standing::NoFaultFound, &examined, style())
        };
        insta::assert_snapshot!(said(&all[1..]), @"No fault was found against the stated use, in what was examined on 5 November 2026: what keeps the wheel on (there, the right part, secured). Nothing else was examined.");
        insta::assert_snapshot!(said(&all[..8]), @"No fault was found against the stated use, in what was examined on 5 November 2026: the dish (held against nothing: the dish as built has not been said); end play along the arm and shake at the rim; rot (pricked for at the tongues, the spokes' feet and the ground point); the nave and its bonds. Nothing else was examined.");
        insta::assert_snapshot!(said(&all), @"Nothing was examined on 5 November 2026: no fault was found, and none is ruled out.");
    }
}
