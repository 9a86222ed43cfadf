//! What to take out, what a weld takes, and the bar for a new tyre.

use super::about;
use crate::daybook::Day;
use crate::quantity::Length;
use crate::tyring::bar::{Printed, Rule};
use crate::tyring::cut::{Job, TakeOut, Way, WeldLoss};
use crate::wheel::Position;
use crate::words::place::wheel_at;
use crate::words::style::Style;
use crate::words::when::on;

/// What must come off, and how.
#[must_use]
pub fn take_out(out: &TakeOut, style: Style) -> String {
    let (wanted, off) = (about(out.wanted.0, style), about(out.off, style));
    let how = match out.way {
        Way::Upset => "That is no more than a weld may take: upset it, and do not cut.".to_owned(),
        Way::Cut { piece, left } => format!(
            "Cut out {} first and weld; up to {} is then left for a second time, by upsetting.",
            about(piece, style),
            about(left, style)
        ),
    };
    style.fill(&format!(
        "The {{tyre}} should be {wanted} round, cold; {off} must come off. {how}"
    ))
}

/// What a weld takes, and whence that is known.
#[must_use]
pub fn weld_loss(loss: &WeldLoss, style: Style) -> String {
    let whence = match loss.jobs {
        Some(jobs) => format!("learnt from {jobs} jobs of this shop"),
        None => "as far apart as what is printed".to_owned(),
    };
    format!(
        "A weld takes {}: {whence}.",
        between(loss.least, loss.most, style)
    )
}

/// One job that the loss was learnt from: `9 mm: Hay cart, near wheel, 3 May 2025`; or that was left out, and why.
#[must_use]
pub fn job(job: &Job, vehicle: &str, at: Position, day: &str, style: Style) -> String {
    let day = Day::read(day).map_or_else(String::new, |day| on(&day));
    let out = if job.is_believed() {
        ""
    } else {
        "; left out, for no weld takes that: look at its three numbers"
    };
    let lost = about(job.lost(), style);
    format!("{lost}: {vehicle}, {}, {day}{out}", wheel_at(at))
}

/// The bar for a new tyre, before what its weld takes.
#[must_use]
pub fn new_bar(bar: Length, style: Style) -> String {
    style.fill(&format!(
        "A new {{tyre}} for this {{draw}} wants a bar of {}, by π times diameter and thickness, and what its weld takes on top.",
        about(bar, style)
    ))
}

/// One rule of the smiths with what it gives.
#[must_use]
pub fn bar_rule(printed: &Printed, (least, most): (Length, Length), style: Style) -> String {
    let rule = match printed.rule {
        Rule::Thicknesses(..) => "the round and so many thicknesses",
        Rule::Inches(..) => "the round and so many inches",
        Rule::ThreeAndASeventh => "3 1/7 times diameter and thickness",
        Rule::OldRing => {
            "three diameters, ½ in for each foot of them, three thicknesses and a third"
        }
    };
    format!(
        "{}, {rule}: {}",
        between(least, most, style),
        printed.source
    )
}

/// From least to most, or one length where they are the same.
fn between(least: Length, most: Length, style: Style) -> String {
    let (least, most) = (about(least, style), about(most, style));
    if least == most {
        least
    } else {
        format!("{least} to {most}")
    }
}

#[cfg(test)]
mod tests {
    use super::{bar_rule, job, new_bar, take_out, weld_loss};
    use crate::quantity::circumference::{Circumference, Draw};
    use crate::quantity::length::millimetres;
    use crate::tyring::bar::PRINTED;
    use crate::tyring::cut::{Job, WeldLoss, to_take_out};
    use crate::wheel::Position;
    use crate::words::sample::{inches, style};

    #[test]
    fn the_cut_is_said_in_the_order_of_the_work() {
        let round = |mm| Circumference(millimetres(mm));
        let of = |tyre, jobs| {
            let loss = WeldLoss {
                jobs,
                ..WeldLoss::printed()
            };
            let out = to_take_out(round(4241.0), round(tyre), Draw(millimetres(32.0)), &loss);
            format!(
                "{} {}",
                weld_loss(&loss, style()),
                take_out(&out.unwrap(), style())
            )
        };
        insta::assert_snapshot!([of(4244.0, None), of(4220.0, Some(5))].join("\n"), @r"
        A weld takes 6.5 mm to 16 mm: as far apart as what is printed. The tyre should be 4209 mm round, cold; 35 mm must come off. Cut out 19 mm first and weld; up to 9.5 mm is then left for a second time, by upsetting.
        A weld takes 6.5 mm to 16 mm: learnt from 5 jobs of this shop. The tyre should be 4209 mm round, cold; 11 mm must come off. That is no more than a weld may take: upset it, and do not cut.
        ");
    }

    #[test]
    fn each_rule_of_the_smiths_stands_by_itself() {
        let (inside, thickness) = (Circumference(millimetres(4309.0)), millimetres(12.7));
        let said =
            PRINTED.map(|it| bar_rule(&it, it.rule.bar(inside, thickness).unwrap(), inches()));
        insta::assert_snapshot!(said.join("\n"), @r"
        171 5/16 in, 3 1/7 times diameter and thickness: T. F. Googerty, Hand Forging and Wrought-Iron, p. 69, which adds ⅜ in for the weld of a small ring
        171 1/8 in, the round and so many thicknesses: Wagon and carriage tires, an American smith's manual (freeblacksmith.com), and more for upsetting
        171 3/8 in to 171 1/2 in, the round and so many thicknesses: a carriage maker of today, the weld and its upsetting in it; no source in print
        170 7/16 in, three diameters, ½ in for each foot of them, three thicknesses and a third: an old smith's rule for large rings, the weld in it; no source in print
        172 5/8 in, the round and so many inches: J. G. Holmström, Modern Blacksmithing, 1901, a heavy tyre, rough
        171 5/8 in, the round and so many inches: J. G. Holmström, Modern Blacksmithing, 1901, a thin tyre, rough
        170 5/8 in to 171 5/8 in, the round and so many inches: Wagon and carriage tires, an American smith's manual (freeblacksmith.com), rough
        170 5/8 in, the round and so many inches: P. N. Hasluck (ed.), Cassell's Cyclopaedia of Mechanics, Tyring Cart Wheels, rough; the figure is hard to read
        ");
    }

    #[test]
    fn a_job_is_named_by_vehicle_wheel_and_day() {
        let of = |after| {
            let round = |mm| Circumference(millimetres(mm));
            let one = Job {
                before: round(4240.0),
                cut: millimetres(20.0),
                after: round(after),
            };
            job(&one, "Hay cart", Position::Near, "2025-05-03", style())
        };
        insta::assert_snapshot!(of(4210.75), @"9.5 mm: Hay cart, near wheel, 3 May 2025");
        insta::assert_snapshot!(of(4120.0), @"100 mm: Hay cart, near wheel, 3 May 2025; left out, for no weld takes that: look at its three numbers");
    }

    #[test]
    fn a_new_bar_is_said() {
        insta::assert_snapshot!(new_bar(millimetres(4263.4), style()), @"A new tyre for this draw wants a bar of 4263.5 mm, by π times diameter and thickness, and what its weld takes on top.");
    }
}
