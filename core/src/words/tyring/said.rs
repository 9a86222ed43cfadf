//! A round as it was taken and what was chosen for a tyring, each in a line of the day book.

use super::number;
use crate::daybook::tyring::{Ran, RoundTaken, TakenWith, TyringSaid};
use crate::material::Iron;
use crate::quantity::Length;
use crate::tyring::round::{Line, Run};
use crate::wheel::Position;
use crate::words::place::wheel_at;
use crate::words::style::Style;
use crate::words::{timber, year};

/// What was run along: `round of the sole`.
#[must_use]
pub fn ran(ran: Ran, style: Style) -> String {
    style.fill(match ran {
        Ran::Sole => "round of the sole",
        Ran::Tyre => "round of the {tyre}, inside",
        Ran::Welded => "round of the {tyre} as welded, inside",
        Ran::Lying => "round over the {tyre} as it lies",
    })
}

/// Which line was run.
#[must_use]
pub fn line(line: Line) -> &'static str {
    match line {
        Line::Face => "at the face",
        Line::Middle => "in the middle of the sole",
        Line::Back => "at the back",
    }
}

/// The iron of a tyre.
#[must_use]
pub fn iron(iron: Iron) -> &'static str {
    match iron {
        Iron::NotKnown => "iron nobody knows",
        Iron::Steel => "mild steel",
        Iron::Wrought => "wrought iron",
    }
}

/// A round with its wheel: `near wheel, round of the sole: 6 turns + 471 mm, traveller 1 of 627 mm`.
#[must_use]
pub fn round(said: &RoundTaken, style: Style) -> String {
    format!(
        "{}: {}",
        round_of(said.position, said.ran, style),
        how(said, style)
    )
}

/// How a round was taken: `6 turns + 471 mm, traveller 1 of 627 mm`.
#[must_use]
pub fn how(said: &RoundTaken, style: Style) -> String {
    let runs: Vec<String> = said.runs.iter().map(|it| run(*it, style)).collect();
    let mut words = vec![runs.join("; ")];
    words.push(match &said.with {
        TakenWith::Traveller(number, own) => {
            format!("traveller {number} of {}", style.size(own.value()))
        }
        TakenWith::Tape(_, class) => format!("tape of class {}", class.code()),
    });
    if said.line != Line::Middle {
        words.push(line(said.line).to_owned());
    }
    if let Some(warm) = said.warm {
        let degrees = number(warm.at.into());
        words.push(format!("at {degrees} °C, to {} either way", warm.within));
    }
    if said.hot_weld {
        words.push("the weld still hot".to_owned());
    }
    words.join(", ")
}

/// The wheel and what was run along.
#[must_use]
pub fn round_of(at: Position, what: Ran, style: Style) -> String {
    format!("{}, {}", wheel_at(at), ran(what, style))
}

fn run(run: Run, style: Style) -> String {
    let past = style.size(run.past);
    match run.turns {
        0 => past,
        turns => format!("{turns} turns + {past}"),
    }
}

/// The wheel whose tyring it is.
#[must_use]
pub fn tyring_of(at: Position) -> String {
    format!("{}, for its tyring", wheel_at(at))
}

/// What was chosen: `near wheel, for its tyring: draw of 9 mm, wrought iron`.
#[must_use]
pub fn tyring(said: &TyringSaid, style: Style) -> String {
    format!("{}: {}", tyring_of(said.position), chosen(said, style))
}

/// What was chosen, without its wheel.
#[must_use]
pub fn chosen(said: &TyringSaid, style: Style) -> String {
    let mut words = Vec::new();
    let lengths: [(&str, Option<Length>); 6] = [
        ("{draw} of", said.draw),
        ("joints cramped to", said.cramped),
        ("cut out:", said.cut),
        ("sole charred", said.charred),
        ("{tyre} oval by", said.oval),
        ("room as it drops", said.clearance),
    ];
    for (name, length) in lengths {
        words.extend(length.map(|it| style.fill(&format!("{name} {}", style.size(it)))));
    }
    words.extend(said.carry.map(|it| format!("carry of {it} s")));
    words.extend(said.lay.map(|it| format!("lay {it} s after the fire")));
    words.extend(said.wind.map(|it| format!("wind of {it} m/s")));
    words.extend(
        said.air
            .map(|it| format!("air at {} °C", number(it.into()))),
    );
    words.extend(said.iron.map(|it| iron(it).to_owned()));
    let grains = said.timbers.into_iter().zip(said.grains);
    for (name, (species, grain)) in ["{nave}", "spokes", "{felloe}s"].into_iter().zip(grains) {
        words.extend(species.map(|it| style.fill(&format!("{name} of {}", timber::species(it)))));
        words.extend(grain.map(|it| format!("its side grain {}", it.code())));
    }
    words.extend(
        said.stand
            .map(|it| format!("stands in {}", year::stand(it))),
    );
    words.extend(said.months.map(|_| "the air of twelve months".to_owned()));
    if words.is_empty() {
        words.push("nothing chosen".to_owned());
    }
    words.join(", ")
}

#[cfg(test)]
mod tests {
    use super::{line, round, tyring};
    use crate::daybook::tyring::{Ran, RoundTaken, TakenWith, TyringSaid, Warm};
    use crate::material::timber::Grain;
    use crate::material::{Iron, Species};
    use crate::mechanics::Stand;
    use crate::quantity::Measured;
    use crate::quantity::length::millimetres;
    use crate::tyring::round::{Line, Run, TapeClass};
    use crate::wheel::Position;
    use crate::words::sample::{american, style};

    fn taken(ran: Ran) -> RoundTaken {
        let own = Measured::new(millimetres(627.0), millimetres(0.5)).unwrap();
        let run = |past| Run {
            turns: 6,
            past: millimetres(past),
        };
        RoundTaken {
            position: Position::Near,
            ran,
            with: TakenWith::Traveller(1, own),
            line: Line::Middle,
            runs: vec![run(471.0), run(472.0)],
            warm: None,
            hot_weld: false,
            written: "6 + 471; 6 + 472".to_owned(),
        }
    }

    #[test]
    fn a_round_is_told_as_it_was_run() {
        let warm = RoundTaken {
            with: TakenWith::Tape(2, TapeClass::II),
            line: Line::Face,
            runs: vec![Run {
                turns: 0,
                past: millimetres(4241.0),
            }],
            warm: Some(Warm { at: -5, within: 10 }),
            hot_weld: true,
            ..taken(Ran::Welded)
        };
        let mut rows: Vec<String> = Ran::ALL.map(|it| round(&taken(it), style())).into();
        rows.push(round(&warm, style()));
        rows.push(round(&warm, american()));
        rows.push(line(Line::Back).to_owned());
        insta::assert_snapshot!(rows.join("\n"), @r"
        near wheel, round of the sole: 6 turns + 471 mm; 6 turns + 472 mm, traveller 1 of 627 mm
        near wheel, round of the tyre, inside: 6 turns + 471 mm; 6 turns + 472 mm, traveller 1 of 627 mm
        near wheel, round of the tyre as welded, inside: 6 turns + 471 mm; 6 turns + 472 mm, traveller 1 of 627 mm
        near wheel, round over the tyre as it lies: 6 turns + 471 mm; 6 turns + 472 mm, traveller 1 of 627 mm
        near wheel, round of the tyre as welded, inside: 4241 mm, tape of class II, at the face, at −5 °C, to 10 either way, the weld still hot
        near wheel, round of the tire as welded, inside: ≈ 166 15/16 in, tape of class II, at the face, at −5 °C, to 10 either way, the weld still hot
        at the back
        ");
    }

    #[test]
    fn what_is_chosen_is_told_as_far_as_it_is_said() {
        let nothing = TyringSaid::of(Position::Off);
        let all = TyringSaid {
            draw: Some(millimetres(9.0)),
            cramped: Some(millimetres(1.0)),
            cut: Some(millimetres(12.0)),
            charred: Some(millimetres(0.5)),
            oval: Some(millimetres(3.0)),
            clearance: Some(millimetres(4.0)),
            carry: Some(30),
            lay: Some(41),
            wind: Some(5),
            air: Some(-2),
            iron: Some(Iron::Wrought),
            timbers: [Some(Species::EnglishElm), None, Some(Species::EuropeanAsh)],
            grains: [Some(Grain::Hard), None, None],
            stand: Some(Stand::OpenShed),
            months: Some([(80, 5); 12]),
            ..nothing.clone()
        };
        let rows = [tyring(&nothing, style()), tyring(&all, style())];
        insta::assert_snapshot!(rows.join("\n"), @r"
        off wheel, for its tyring: nothing chosen
        off wheel, for its tyring: draw of 9 mm, joints cramped to 1 mm, cut out: 12 mm, sole charred 0.5 mm, tyre oval by 3 mm, room as it drops 4 mm, carry of 30 s, lay 41 s after the fire, wind of 5 m/s, air at −2 °C, wrought iron, nave of English elm, its side grain hard, felloes of European ash, stands in an open shed with a roof, the air of twelve months
        ");
    }
}
