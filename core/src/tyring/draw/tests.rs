//! The draw, the joints in it, and the felloe-bound wheel.

use proptest::prelude::*;

use super::*;
use crate::quantity::length::{inches, to_paper_mm};
use crate::tyring::round::{Care, Gauge, Line, Run};

fn about(v: f64, doubt: f64) -> Measured {
    Measured::new(millimetres(v), millimetres(doubt)).unwrap()
}

fn draw(v: f64) -> Draw {
    Draw(millimetres(v))
}

fn joints(v: f64) -> Joints {
    Joints::of(about(v, 0.5), None).unwrap()
}

fn round(past: f64, line: Line) -> Round {
    let gauge = Gauge::traveller(1, about(628.0, 0.05)).unwrap();
    let run = Run {
        turns: 6,
        past: millimetres(past),
    };
    Round::taken(gauge, &[run], line, Care::default()).unwrap()
}

#[test]
fn the_draw_is_wheel_less_tyre_on_one_line() {
    let taken = DrawTaken::of(&round(471.0, Line::Face), &round(439.0, Line::Face)).unwrap();
    assert_eq!(to_paper_mm(taken.draw.0), 32.0);
    assert_eq!(taken.drawing(), Ok(taken.draw));
    let other = DrawTaken::of(&round(471.0, Line::Face), &round(439.0, Line::Back));
    assert!(matches!(other, Err(Refusal::OtherLine { .. })));
}

#[test]
fn a_tyre_larger_than_the_wheel_draws_nothing() {
    let slack = DrawTaken::of(&round(439.0, Line::Face), &round(442.0, Line::Face)).unwrap();
    assert_eq!(to_paper_mm(slack.draw.0), -3.0);
    let Err(Refusal::TyreLarger { by }) = slack.drawing() else {
        panic!("the tyre is larger")
    };
    assert_eq!(to_paper_mm(by), 3.0);
    assert!(drawing(draw(0.0)).is_err() && drawing(draw(101.0)).is_err());
    assert!(drawing(draw(f64::NAN)).is_err() && drawing(draw(f64::INFINITY)).is_err());
}

#[test]
fn joints_take_their_part_before_anything_grips() {
    let nip = joints(14.0).nip(draw(32.0)).unwrap();
    assert_eq!(to_paper_mm(nip.left.0), 18.0);
    let (least, most) = nip.between;
    assert_eq!((to_paper_mm(least.0), to_paper_mm(most.0)), (17.5, 18.5));
    assert!(matches!(
        joints(14.0).nip(draw(14.0)),
        Err(Refusal::JointsWider { .. })
    ));
    let cramped = Joints::of(about(14.0, 0.5), Some(about(3.0, 0.5))).unwrap();
    let nip = cramped.nip(draw(32.0)).unwrap();
    assert_eq!(nip.against_the_spokes, Some(millimetres(3.0)));
    assert_eq!(to_paper_mm(nip.left.0), 18.0);
}

#[test]
fn joints_that_cannot_be_are_refused() {
    let wider = Joints::of(about(2.0, 0.5), Some(about(4.0, 0.5)));
    assert!(matches!(wider, Err(Refusal::CrampedWider { .. })));
    assert!(Joints::of(about(-1.0, 0.0), None).is_err());
    assert!(Joints::of(about(1e9, 0.0), None).is_err());
    let many = [about(f64::MAX, 0.0); 3];
    assert!(Joints::of(together(&many).unwrap(), None).is_err());
    let six = together(&[about(1.5, 0.25); 6]).unwrap();
    assert_eq!(to_paper_mm(six.value()), 9.0);
    assert_eq!(to_paper_mm(six.doubt()), 1.5);
}

/// A stand-off of 2 mm all round asks the rim to get 12.6 mm shorter: joints of 9 mm shut first, of 16 mm do not.
#[test]
fn a_felloe_bound_wheel_is_told_by_its_sum() {
    let spokes = [about(2.0, 0.1); 12];
    let Seating::Bound { ease } = seating(&joints(9.0), &spokes).unwrap() else {
        panic!("bound")
    };
    assert!((to_paper_mm(ease) - (4.0 * std::f64::consts::PI - 9.0)).abs() < 1e-6);
    let of = |open| seating(&joints(open), &spokes).unwrap();
    assert!(matches!(of(16.0), Seating::Free { .. }));
    assert!(matches!(of(12.5), Seating::Near { .. }));
    assert_eq!(seating(&joints(9.0), &[]), Err(Refusal::NoStandOffs));
    let home = seating(&joints(0.0), &[about(0.0, 0.25); 12]).unwrap();
    assert!(matches!(home, Seating::Free { .. }), "{home:?}");
}

/// P. N. Hasluck's heaviest draw, 1¼ in, is within what is taken.
#[test]
fn the_heaviest_printed_draw_is_taken() {
    assert!(drawing(Draw(inches(1.25))).is_ok());
}

proptest! {
    #[test]
    fn any_input_is_a_number_or_refused(
        of in -200.0..200.0, open in -10.0..20_000.0, within in 0.0..100.0, off in -5.0..1e4
    ) {
        let Ok(joints) = Joints::of(about(open, within), Some(about(open / 2.0, within))) else {
            return Ok(());
        };
        if let Ok(nip) = joints.nip(draw(of)) {
            prop_assert!(nip.left.0.is_finite() && nip.left.0 > millimetres(0.0));
        }
        let Ok(seating) = seating(&joints, &[about(off, within)]) else { return Ok(()) };
        let (Seating::Free { spare: it } | Seating::Near { ease: it } | Seating::Bound { ease: it }) = seating;
        prop_assert!(it.is_finite());
    }

    #[test]
    fn wider_joints_never_leave_more_nip(of in 1.0..100.0, open in 0.0..50.0, more in 0.0..50.0) {
        let left = |open| joints(open).nip(draw(of)).map_or(0.0, |nip| to_paper_mm(nip.left.0));
        prop_assert!(left(open + more) <= left(open));
    }
}
