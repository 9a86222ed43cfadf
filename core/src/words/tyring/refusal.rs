//! Why something of the tyring sheet cannot be said: what was given, what is allowed, and what to do instead.

use super::super::style::Style;
use super::number;
use crate::quantity::{Length, decimal};
use crate::tyring::Refusal;
use crate::tyring::round::Line;

/// Why it cannot be said. Where something typed is refused, nothing that was written down is changed by it, and it says so;
/// where the wheel stands in the way nothing was tried.
#[must_use]
pub fn refusal(refusal: &Refusal, style: Style) -> String {
    let size = |length: Length| style.size(length);
    let said = match refusal {
        Refusal::Given(refusal) => return refusal.to_string(),
        Refusal::NoRuns => "No run was given: run the traveller, or lay the tape, once at the least.".to_owned(),
        Refusal::TooManyRuns { given, allowed } => {
            format!("{given} runs were given, and {allowed} are counted at most: leave out the first.")
        }
        Refusal::PastATurn { past, turn } => format!(
            "{} is left over after the whole turns, and a turn is only {}: count one turn more, or read it again.",
            size(*past),
            size(*turn)
        ),
        Refusal::Miscounted { apart, turn } => format!(
            "Two runs lie {} apart, and a turn is {}: a turn was miscounted. Run it again.",
            size(*apart),
            size(*turn)
        ),
        Refusal::OtherLine { wheel, tyre } => format!(
            "The wheel was run {} and the {{tyre}} {}: on a coned {{sole}} these differ by more than a draw. Run both on the same mark.",
            line(*wheel),
            line(*tyre)
        ),
        Refusal::TyreLarger { by } => {
            format!("The {{tyre}} is no smaller round than the wheel but {} larger: it draws nothing.", size(*by))
        }
        Refusal::TyreSmaller { by } => format!(
            "The {{tyre}} is already {} smaller than is wanted: it must be stretched or have iron let in, not cut.",
            size(*by)
        ),
        Refusal::CrampedWider { as_they_stand, cramped } => format!(
            "The joints are given as {} cramped and {} as they stand, and a cramp only closes them: read both again.",
            size(*cramped),
            size(*as_they_stand)
        ),
        Refusal::NoStandOffs => "No stand-off was measured: put a feeler between shoulder and {felloe} at each spoke.".to_owned(),
        Refusal::JointsWider { draw, joints } => format!(
            "The joints are {} wide together and the {{draw}} is {}: under it they cannot all close. Ease the rim together first, or take more {{draw}}.",
            size(*joints),
            size(*draw)
        ),
        Refusal::Wind { given, most } => format!(
            "The wind was given as {} m/s, and it may be from 0 to {} m/s.",
            number(*given),
            number(*most)
        ),
        Refusal::Carry { given, most } => format!(
            "The carry was given as {} s, and it may be from 0 to {} s.",
            number(*given),
            number(*most)
        ),
        Refusal::TooWet { given } => format!(
            "The firewood was given as {} % water in all its weight, and over 60 % it hardly burns.",
            decimal(given.of_all() * 100.0, 0)
        ),
        Refusal::NoFurther { needed, most } => format!(
            "The {{tyre}} would have to grow by {} in 1000, and heat makes it grow by {} at most: take less {{draw}}, or less clearance.",
            decimal(needed.of_one() * 1000.0, 1),
            decimal(most.of_one() * 1000.0, 1)
        ),
        Refusal::FewJobs { given, fewest } => format!(
            "{given} jobs with the round before, the piece cut and the round after are written down, and {fewest} are needed to learn from."
        ),
        Refusal::NotLooked => "Look at every {foot} and every {tongue} first: with a loose {foot} or a proud {tongue} a wheel takes any {draw} as dish.".to_owned(),
        Refusal::LooseFeet => "A {foot} is loose in the {nave}: no {draw} can be advised, for the wheel would take it as dish. Make the {feet} fast first.".to_owned(),
        Refusal::ProudTongues => "A {tongue} stands proud of the {sole}: no {draw} can be advised, for the {tyre} would ride on it and dish the wheel. Cut it back first.".to_owned(),
        Refusal::DishUnknown => "The dish is not known: no {draw} can be advised, for a dished wheel bears less. Measure it first.".to_owned(),
        Refusal::DishedBackwards => "The wheel is dished the other way than it was built: do not draw before the cause is found.".to_owned(),
    };
    let of_the_wheel = matches!(
        refusal,
        Refusal::NotLooked
            | Refusal::LooseFeet
            | Refusal::ProudTongues
            | Refusal::DishUnknown
            | Refusal::DishedBackwards
            | Refusal::FewJobs { .. }
            | Refusal::NoStandOffs
    );
    let kept = if of_the_wheel {
        ""
    } else {
        " Nothing was changed."
    };
    style.fill(&(said + kept))
}

/// Where a line runs, as it follows a verb.
fn line(line: Line) -> &'static str {
    match line {
        Line::Face => "along the face",
        Line::Middle => "along the middle",
        Line::Back => "along the back",
    }
}

#[cfg(test)]
mod tests {
    use super::refusal;
    use crate::quantity::length::millimetres;
    use crate::quantity::{LengthRange, Percent, Strain};
    use crate::tyring::Refusal;
    use crate::tyring::hot::fire::FuelMoisture;
    use crate::tyring::round::Line;
    use crate::words::sample::{american, style};

    fn every() -> Vec<Refusal> {
        let mm = millimetres;
        vec![
            Refusal::Given(LengthRange::TravellerRound.check(mm(0.0)).unwrap_err()),
            Refusal::NoRuns,
            Refusal::TooManyRuns {
                given: 21,
                allowed: 20,
            },
            Refusal::PastATurn {
                past: mm(640.0),
                turn: mm(628.0),
            },
            Refusal::Miscounted {
                apart: mm(627.0),
                turn: mm(628.0),
            },
            Refusal::OtherLine {
                wheel: Line::Face,
                tyre: Line::Back,
            },
            Refusal::OtherLine {
                wheel: Line::Middle,
                tyre: Line::Face,
            },
            Refusal::TyreLarger { by: mm(3.0) },
            Refusal::TyreSmaller { by: mm(3.0) },
            Refusal::CrampedWider {
                as_they_stand: mm(2.0),
                cramped: mm(4.0),
            },
            Refusal::NoStandOffs,
            Refusal::JointsWider {
                draw: mm(12.7),
                joints: mm(14.0),
            },
            Refusal::Wind {
                given: -1.0,
                most: 20.0,
            },
            Refusal::Wind {
                given: f64::NAN,
                most: 20.0,
            },
            Refusal::Carry {
                given: 900.0,
                most: 600.0,
            },
            Refusal::TooWet {
                given: FuelMoisture::OfAll(Percent::whole(70)),
            },
            Refusal::NoFurther {
                needed: Strain::of(0.0149),
                most: Strain::of(0.011),
            },
            Refusal::FewJobs {
                given: 2,
                fewest: 3,
            },
            Refusal::NotLooked,
            Refusal::LooseFeet,
            Refusal::ProudTongues,
            Refusal::DishUnknown,
            Refusal::DishedBackwards,
        ]
    }

    #[test]
    fn every_refusal_has_its_sentence() {
        let said: Vec<_> = every().iter().map(|it| refusal(it, style())).collect();
        insta::assert_snapshot!(said.join("\n"), @r"
        The traveller's own round was given as 0 mm (0 in), and it may be from 100 mm (≈ 3 15/16 in) to 3000 mm (≈ 118 1/8 in); nothing was changed.
        No run was given: run the traveller, or lay the tape, once at the least. Nothing was changed.
        21 runs were given, and 20 are counted at most: leave out the first. Nothing was changed.
        640 mm is left over after the whole turns, and a turn is only 628 mm: count one turn more, or read it again. Nothing was changed.
        Two runs lie 627 mm apart, and a turn is 628 mm: a turn was miscounted. Run it again. Nothing was changed.
        The wheel was run along the face and the tyre along the back: on a coned sole these differ by more than a draw. Run both on the same mark. Nothing was changed.
        The wheel was run along the middle and the tyre along the face: on a coned sole these differ by more than a draw. Run both on the same mark. Nothing was changed.
        The tyre is no smaller round than the wheel but 3 mm larger: it draws nothing. Nothing was changed.
        The tyre is already 3 mm smaller than is wanted: it must be stretched or have iron let in, not cut. Nothing was changed.
        The joints are given as 4 mm cramped and 2 mm as they stand, and a cramp only closes them: read both again. Nothing was changed.
        No stand-off was measured: put a feeler between shoulder and felloe at each spoke.
        The joints are 14 mm wide together and the draw is 12.7 mm: under it they cannot all close. Ease the rim together first, or take more draw. Nothing was changed.
        The wind was given as −1 m/s, and it may be from 0 to 20 m/s. Nothing was changed.
        The wind was given as no number m/s, and it may be from 0 to 20 m/s. Nothing was changed.
        The carry was given as 900 s, and it may be from 0 to 600 s. Nothing was changed.
        The firewood was given as 70 % water in all its weight, and over 60 % it hardly burns. Nothing was changed.
        The tyre would have to grow by 14.9 in 1000, and heat makes it grow by 11 at most: take less draw, or less clearance. Nothing was changed.
        2 jobs with the round before, the piece cut and the round after are written down, and 3 are needed to learn from.
        Look at every foot and every tongue first: with a loose foot or a proud tongue a wheel takes any draw as dish.
        A foot is loose in the nave: no draw can be advised, for the wheel would take it as dish. Make the feet fast first.
        A tongue stands proud of the sole: no draw can be advised, for the tyre would ride on it and dish the wheel. Cut it back first.
        The dish is not known: no draw can be advised, for a dished wheel bears less. Measure it first.
        The wheel is dished the other way than it was built: do not draw before the cause is found.
        ");
    }

    #[test]
    fn american_words_are_american() {
        let of = |it: Refusal| refusal(&it, american());
        insta::assert_snapshot!(of(Refusal::ProudTongues), @"A tenon stands proud of the tread: no draft can be advised, for the tire would ride on it and dish the wheel. Cut it back first.");
        insta::assert_snapshot!(of(Refusal::TyreLarger { by: millimetres(3.175) }), @"The tire is no smaller round than the wheel but 1/8 in larger: it draws nothing. Nothing was changed.");
    }
}
