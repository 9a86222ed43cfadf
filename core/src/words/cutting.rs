//! The lengths of the tyring sheet in words: rounds, the draw, what to take out of the tyre, what the joints take.

use super::style::Style;
use crate::quantity::circumference::{Circumference, Draw};
use crate::quantity::length::{inches, millimetres};
use crate::quantity::{Length, Measured};
use crate::tyring::advice::Row;
use crate::tyring::cut::{TakeOut, Way, WeldLoss};
use crate::tyring::doubt::Doubt;
use crate::tyring::draw::{DrawTaken, Nip, Seating};
use crate::tyring::round::Round;

/// A round with its doubt: `4241 mm, within 2 mm`.
#[must_use]
pub fn round(taken: &Round, style: Style) -> String {
    format!(
        "{}, {}",
        near(taken.round.0, style),
        within(taken.doubt(), style)
    )
}

/// The draw as the tyre stands.
#[must_use]
pub fn draw(taken: &DrawTaken, style: Style) -> String {
    let Draw(draw) = taken.draw;
    let doubt = within(taken.doubt, style);
    let said = if draw > millimetres(0.0) {
        format!(
            "The {{tyre}} is {} smaller round than the wheel, {doubt}.",
            near(draw, style)
        )
    } else {
        format!(
            "The {{tyre}} is {} larger round than the wheel, {doubt}: as it is it draws nothing.",
            near(-draw, style)
        )
    };
    style.fill(&said)
}

fn within(doubt: Doubt, style: Style) -> String {
    format!(
        "within {} to either side",
        near(doubt.to_either_side(), style)
    )
}

/// A length that is reckoned, in halves of a millimetre or as the reader likes inches.
fn near(length: Length, style: Style) -> String {
    super::grip::rough(length, style)
}

/// What must come off the tyre, and how.
#[must_use]
pub fn take_out(take: &TakeOut, now: Circumference, style: Style) -> Vec<String> {
    let mut said = vec![format!(
        "The {{tyre}}, cold: now {}, wanted {}. {} must come off.",
        near(now.0, style),
        near(take.wanted.0, style),
        near(take.off, style)
    )];
    match take.way {
        Way::Upset => said.push(
            "Upset it: a weld alone might take more than that. Measure again when it is cold.".to_owned(),
        ),
        Way::Cut { piece, left } => said.push(format!(
            "First cut: {} out of it, then weld, and measure when it is cold. For the second time up to {} may be left to take off.",
            near(piece, style),
            near(left, style)
        )),
    }
    said.push(format!(
        "While the weld is hot the {{tyre}} reads long: about {} (P. N. Hasluck, Cassell's Cyclopaedia of Mechanics).",
        near(inches(0.125), style)
    ));
    said.iter().map(|it| style.fill(it)).collect()
}

/// What a weld is counted to take of the round.
#[must_use]
pub fn weld(loss: &WeldLoss, style: Style) -> String {
    let between = format!("{} to {}", near(loss.least, style), near(loss.most, style));
    match loss.jobs {
        Some(jobs) => format!(
            "A weld of this shop takes {between} of the round, by {jobs} jobs written down."
        ),
        None => format!(
            "A weld is counted to take {between} of the round, from the least to the most that is printed; your own jobs tell better."
        ),
    }
}

/// What the joints take of a draw.
#[must_use]
pub fn nip(nip: &Nip, style: Style) -> String {
    let (least, most) = nip.between;
    let mut said = format!(
        "The joints take {} of it to shut. {} are left to grip ({} to {} by the doubt of the feeler).",
        near(nip.to_close, style),
        near(nip.left.0, style),
        near(least.0.max(millimetres(0.0)), style),
        near(most.0, style)
    );
    if let Some(against) = nip.against_the_spokes {
        said.push_str(&format!(
            " {} of that shut only against the spokes: a cramp did not bring them together.",
            near(against, style)
        ));
    }
    said
}

/// Whether the felloes come home on the shoulders.
#[must_use]
pub fn seating(seating: Seating, style: Style) -> String {
    let said = match seating {
        Seating::Free { spare } => format!(
            "The {{felloe}}s come home: {} of joint are left when they have.",
            near(spare, style)
        ),
        Seating::Near { ease } => format!(
            "Whether the {{felloe}}s come home is within the doubt of the feeler: ease a joint by {} to be sure.",
            near(ease, style)
        ),
        Seating::Bound { ease } => format!(
            "{{Felloe}}-bound: the joints shut before the shoulders come home, and the spokes stay loose however tight the {{tyre}}. Ease the joints by at least {} together.",
            near(ease, style)
        ),
    };
    let felloe = super::capital(style.terms.felloe);
    style.fill(&said.replace("{Felloe}", &felloe))
}

/// One row of what the trade has printed.
#[must_use]
pub fn printed(row: &Row, style: Style) -> String {
    let most = near(row.most().0, style);
    let draw = match row.least() {
        Some(least) if least == row.most() => most,
        Some(least) => format!("{} to {most}", near(least.0, style)),
        None => format!("up to {most}"),
    };
    format!("{}: {draw}. {}.", super::capital(row.wheel), row.source)
}

/// A gap that is counted with its doubt.
#[must_use]
pub fn joints(sum: Measured, style: Style) -> String {
    format!(
        "{} ± {}",
        near(sum.value(), style),
        near(sum.doubt(), style)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Measured;
    use crate::tyring::advice::ROWS;
    use crate::tyring::cut::to_take_out;
    use crate::tyring::draw::{Joints, seating as seats};
    use crate::tyring::round::{Care, Gauge, Line, Run};
    use crate::words::sample::{american, inches, style};

    fn taken(past: f64) -> Round {
        let gauge = Gauge::traveller(1, measured(628.0, 0.5)).unwrap();
        let run = |past| Run {
            turns: 6,
            past: millimetres(past),
        };
        Round::taken(
            gauge,
            &[run(past), run(past + 1.0)],
            Line::Middle,
            Care::default(),
        )
        .unwrap()
    }

    fn measured(value: f64, doubt: f64) -> Measured {
        Measured::new(millimetres(value), millimetres(doubt)).unwrap()
    }

    #[test]
    fn rounds_and_draw_are_told_with_their_doubt() {
        let (wheel, tyre) = (taken(471.0), taken(459.0));
        let of = |one: &Round, other: &Round| draw(&DrawTaken::of(one, other).unwrap(), style());
        let said = [round(&wheel, style()), of(&wheel, &tyre), of(&tyre, &wheel)];
        insta::assert_snapshot!(said.join("\n"), @r"
        4239.5 mm, within 4 mm to either side
        The tyre is 12 mm smaller round than the wheel, within 2 mm to either side.
        The tyre is 12 mm larger round than the wheel, within 2 mm to either side: as it is it draws nothing.
        ");
    }

    #[test]
    fn what_comes_off_is_told_cut_by_cut() {
        let (wheel, tyre) = (taken(471.0).round, taken(481.0).round);
        let loss = WeldLoss::printed();
        let said = |tyre, draw, style| {
            let take = to_take_out(wheel, tyre, Draw(millimetres(draw)), &loss).unwrap();
            take_out(&take, tyre, style).join("\n")
        };
        insta::assert_snapshot!(said(tyre, 14.0, style()), @r"
        The tyre, cold: now 4249.5 mm, wanted 4225.5 mm. 24 mm must come off.
        First cut: 8 mm out of it, then weld, and measure when it is cold. For the second time up to 9.5 mm may be left to take off.
        While the weld is hot the tyre reads long: about 3 mm (P. N. Hasluck, Cassell's Cyclopaedia of Mechanics).
        ");
        insta::assert_snapshot!(said(tyre, 1.0, american()), @r"
        The tire, cold: now 167 5/16 in, wanted 166 7/8 in. 7/16 in must come off.
        Upset it: a weld alone might take more than that. Measure again when it is cold.
        While the weld is hot the tire reads long: about 1/8 in (P. N. Hasluck, Cassell's Cyclopaedia of Mechanics).
        ");
        insta::assert_snapshot!(weld(&loss, inches()), @"A weld is counted to take 1/4 in to 5/8 in of the round, from the least to the most that is printed; your own jobs tell better.");
    }

    #[test]
    fn what_the_joints_take_is_told_before_the_grip() {
        let joints = Joints::of(measured(6.0, 1.5), Some(measured(2.0, 0.5))).unwrap();
        insta::assert_snapshot!(nip(&joints.nip(Draw(millimetres(14.0))).unwrap(), style()), @"The joints take 6 mm of it to shut. 8 mm are left to grip (6.5 mm to 9.5 mm by the doubt of the feeler). 2 mm of that shut only against the spokes: a cramp did not bring them together.");
        let stand_off = [measured(2.0, 0.25), measured(2.0, 0.25)];
        let told = |open: f64| {
            seating(
                seats(&Joints::of(measured(open, 0.25), None).unwrap(), &stand_off).unwrap(),
                style(),
            )
        };
        insta::assert_snapshot!([told(0.0), told(12.6), told(40.0)].join("\n"), @r"
        Felloe-bound: the joints shut before the shoulders come home, and the spokes stay loose however tight the tyre. Ease the joints by at least 12.5 mm together.
        Whether the felloes come home is within the doubt of the feeler: ease a joint by 2 mm to be sure.
        The felloes come home: 27.5 mm of joint are left when they have.
        ");
    }

    #[test]
    fn each_printed_row_names_its_source() {
        for row in &ROWS {
            let said = printed(row, style());
            assert!(said.contains(row.source) && said.contains("mm"), "{said}");
        }
    }
}
