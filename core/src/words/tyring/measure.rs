//! What was measured: a round, the draw, the joints, and a felloe-bound wheel.

use super::about;
use crate::quantity::Length;
use crate::quantity::format::LengthStyle;
use crate::quantity::length::{inches, millimetres};
use crate::tyring::cut::hot_weld_reads_long;
use crate::tyring::draw::{DrawTaken, Nip, Seating};
use crate::tyring::round::Round;
use crate::words::capital;
use crate::words::style::Style;

/// A round: `4241 mm round, to 2 mm either way`.
#[must_use]
pub fn round(round: &Round, style: Style) -> String {
    let doubt = round.doubt().to_either_side();
    format!(
        "{} round, to {} either way",
        about(round.round.0, style),
        at_least(doubt, style)
    )
}

/// The draw that was measured.
#[must_use]
pub fn draw(taken: &DrawTaken, style: Style) -> String {
    let doubt = at_least(taken.doubt.to_either_side(), style);
    if taken.draw.0 > millimetres(0.0) {
        style.fill(&format!(
            "{} of {{draw}}, to {doubt} either way",
            about(taken.draw.0, style)
        ))
    } else {
        style.fill(&format!(
            "the {{tyre}} is {} larger round than the wheel, to {doubt} either way",
            about(-taken.draw.0, style)
        ))
    }
}

/// That sole and tyre were run with different travellers or tapes.
#[must_use]
pub fn not_the_same(style: Style) -> String {
    capital(&style.fill("{sole} and {tyre} were not run with the same traveller or tape: what is wrong with either stays in the {draw}, and its doubt is the greater."))
}

/// What the joints take of the draw, and what is left.
#[must_use]
pub fn nip(nip: &Nip, style: Style) -> String {
    let spokes = nip.against_the_spokes.filter(|it| *it > millimetres(0.0));
    let spokes = spokes.map_or(String::new(), |it| {
        format!(", {} of it only against the spokes", about(it, style))
    });
    let (least, most) = nip.between;
    format!(
        "{} of joints must close{spokes}; {} is left to nip with once they are shut, {} to {}.",
        about(nip.to_close, style),
        about(nip.left.0, style),
        about(least.0, style),
        about(most.0, style)
    )
}

/// Whether the felloes come home.
#[must_use]
pub fn seating(seating: Seating, style: Style) -> String {
    let said = match seating {
        Seating::Free { spare } => format!(
            "The {{felloe}}s come home on the shoulders with {} of joint to spare.",
            about(spare, style)
        ),
        Seating::Near { ease } => format!(
            "It may be {{felloe}}-bound: to be sure that the {{felloe}}s come home, ease a joint by {}.",
            at_least(ease, style)
        ),
        Seating::Bound { ease } => format!(
            "{{felloe}}-bound: the joints shut before the {{felloe}}s are home. Ease a joint by {} at least, or no {{draw}} will make the spokes fast.",
            at_least(ease, style)
        ),
    };
    capital(&style.fill(&said))
}

/// A length that must not be less: up to the next half millimetre, or by a thirty-second of an inch.
pub(in crate::words) fn at_least(length: Length, style: Style) -> String {
    about(length + half_a_step(style), style)
}

fn half_a_step(style: Style) -> Length {
    match style.length {
        LengthStyle::Millimetres => millimetres(0.25),
        LengthStyle::Inches(_) => inches(1.0 / 32.0),
    }
}

/// The caution beside a round that is read after a weld.
#[must_use]
pub fn hot_weld(style: Style) -> String {
    style.fill(&format!(
        "Read the {{tyre}} cold: while its weld is hot it reads about {} long (P. N. Hasluck).",
        about(hot_weld_reads_long(), style)
    ))
}

/// The proof, by a round over the tyre as it lies, cold: how far the rim has closed, and how far the tyre has stretched
/// for good; `under` is that round brought to the tyre's inside.
#[must_use]
pub fn lying(under: &Round, sole: &Round, tyre: &Round, style: Style) -> String {
    let closed = sole.round.0 - under.round.0;
    let stretched = under.round.0 - tyre.round.0;
    let signed = |length: Length, less: &str, more: &str| {
        if length < millimetres(0.0) {
            format!("{} {less}", about(-length, style))
        } else {
            format!("{} {more}", about(length, style))
        }
    };
    style.fill(&format!(
        "Inside the {{tyre}} as it lies, cold: {}; {} than the sole was, {} than before it was heated.",
        round(under, style),
        signed(closed, "longer", "shorter"),
        signed(stretched, "shorter", "longer")
    ))
}

/// What this weld took, with the piece that was cut out.
#[must_use]
pub fn weld_took(took: Length, style: Style) -> String {
    if took < millimetres(0.0) {
        format!(
            "This weld gave {} back: look at the rounds again.",
            about(-took, style)
        )
    } else {
        format!(
            "This weld took {} beside the piece that was cut out.",
            about(took, style)
        )
    }
}

/// That the tyre has the draw that is wanted, as near as it is known.
#[must_use]
pub fn as_wanted(style: Style) -> String {
    style.fill("Within the doubt of the rounds the {tyre} has the {draw} that is wanted: nothing more is to come off.")
}

/// How the draw is reckoned, with its inputs.
#[must_use]
pub fn why(sole: &Round, tyre: &Round, taken: &DrawTaken, style: Style) -> String {
    style.fill(&format!(
        "{{draw}} = round of the sole − round of the {{tyre}} = {} − {} = {}. Doubt by JCGM 100:2008 (k = 2; Welch–Satterthwaite where runs are few): 1 mm either way in reading and 1 mm in chalk marks, or the scatter of several runs where that is more, and a slip of 0.02 % (common practice, no source). What is wrong with a traveller that ran both falls out.",
        about(sole.round.0, style),
        about(tyre.round.0, style),
        signed(taken.draw.0, style)
    ))
}

fn signed(length: Length, style: Style) -> String {
    if length < millimetres(0.0) {
        format!("−{}", about(-length, style))
    } else {
        about(length, style)
    }
}

/// What charring takes of the wheel's round.
#[must_use]
pub fn charred(lost: Length, style: Style) -> String {
    style.fill(&format!(
        "Charred wood is no wood: {} of the {{draw}} goes with it (2π times its depth).",
        about(lost, style)
    ))
}

#[cfg(test)]
mod tests {
    use super::{as_wanted, charred, draw, hot_weld, lying, nip, round, seating, weld_took, why};
    use crate::quantity::Measured;
    use crate::quantity::circumference::Draw;
    use crate::quantity::length::millimetres;
    use crate::tyring::draw::{DrawTaken, Joints, Seating};
    use crate::tyring::round::{Care, Gauge, Line, Round, Run};
    use crate::words::sample::{american, style};

    fn about(v: f64, doubt: f64) -> Measured {
        Measured::new(millimetres(v), millimetres(doubt)).unwrap()
    }

    fn taken(past: f64) -> Round {
        let gauge = Gauge::traveller(1, about(628.32, 0.05)).unwrap();
        let past = millimetres(past);
        let run = Run { turns: 6, past };
        Round::taken(gauge, &[run], Line::Face, Care::default()).unwrap()
    }

    #[test]
    fn rounds_and_draws_are_said_with_their_doubt() {
        let (wheel, tyre, slack) = (taken(471.2), taken(439.2), taken(474.4));
        let of = |tyre| DrawTaken::of(&wheel, tyre).unwrap();
        let said = [
            round(&wheel, style()),
            draw(&of(&tyre), style()),
            draw(&of(&slack), style()),
            draw(&of(&tyre), american()),
        ];
        insta::assert_snapshot!(said.join("\n"), @r"
        4241 mm round, to 2 mm either way
        32 mm of draw, to 3 mm either way
        the tyre is 3 mm larger round than the wheel, to 3 mm either way
        1 1/4 in of draft, to 1/8 in either way
        ");
    }

    #[test]
    fn joints_and_a_bound_wheel_are_said_in_lengths() {
        let joints = |cramped: Option<f64>| {
            let cramped = cramped.map(|mm| about(mm, 0.5));
            let joints = Joints::of(about(14.0, 0.5), cramped).unwrap();
            nip(&joints.nip(Draw(millimetres(32.0))).unwrap(), style())
        };
        let (spare, ease) = (millimetres(3.43), millimetres(3.57));
        let said = [
            joints(None),
            joints(Some(3.0)),
            joints(Some(0.0)),
            seating(Seating::Free { spare }, style()),
            seating(Seating::Near { ease }, style()),
            seating(Seating::Bound { ease }, style()),
            hot_weld(american()),
        ];
        insta::assert_snapshot!(said.join("\n"), @r"
        14 mm of joints must close; 18 mm is left to nip with once they are shut, 17.5 mm to 18.5 mm.
        14 mm of joints must close, 3 mm of it only against the spokes; 18 mm is left to nip with once they are shut, 17.5 mm to 18.5 mm.
        14 mm of joints must close; 18 mm is left to nip with once they are shut, 17.5 mm to 18.5 mm.
        The felloes come home on the shoulders with 3.5 mm of joint to spare.
        It may be felloe-bound: to be sure that the felloes come home, ease a joint by 4 mm.
        Felloe-bound: the joints shut before the felloes are home. Ease a joint by 4 mm at least, or no draw will make the spokes fast.
        Read the tire cold: while its weld is hot it reads about 1/8 in long (P. N. Hasluck).
        ");
    }

    #[test]
    fn the_proof_and_what_was_lost_are_said() {
        let (sole, tyre, under) = (taken(471.0), taken(459.0), taken(462.0));
        let rows = [
            lying(&under, &sole, &tyre, style()),
            lying(&sole, &under, &sole, american()),
            weld_took(millimetres(9.25), style()),
            weld_took(millimetres(-2.0), style()),
            charred(millimetres(3.1), american()),
            why(&sole, &tyre, &DrawTaken::of(&sole, &tyre).unwrap(), style()),
            why(&tyre, &sole, &DrawTaken::of(&tyre, &sole).unwrap(), style()),
            as_wanted(american()),
        ];
        insta::assert_snapshot!(rows.join("\n"), @r"
        Inside the tyre as it lies, cold: 4232 mm round, to 2 mm either way; 9 mm shorter than the sole was, 3 mm longer than before it was heated.
        Inside the tire as it lies, cold: 166 15/16 in round, to 1/8 in either way; 3/8 in longer than the sole was, 0 in longer than before it was heated.
        This weld took 9.5 mm beside the piece that was cut out.
        This weld gave 2 mm back: look at the rounds again.
        Charred wood is no wood: 1/8 in of the draft goes with it (2π times its depth).
        draw = round of the sole − round of the tyre = 4241 mm − 4229 mm = 12 mm. Doubt by JCGM 100:2008 (k = 2; Welch–Satterthwaite where runs are few): 1 mm either way in reading and 1 mm in chalk marks, or the scatter of several runs where that is more, and a slip of 0.02 % (common practice, no source). What is wrong with a traveller that ran both falls out.
        draw = round of the sole − round of the tyre = 4229 mm − 4241 mm = −12 mm. Doubt by JCGM 100:2008 (k = 2; Welch–Satterthwaite where runs are few): 1 mm either way in reading and 1 mm in chalk marks, or the scatter of several runs where that is more, and a slip of 0.02 % (common practice, no source). What is wrong with a traveller that ran both falls out.
        Within the doubt of the rounds the tire has the draft that is wanted: nothing more is to come off.
        ");
    }
}
