//! Rounds: what is taken, what is refused, and whose error falls out.

use proptest::prelude::*;

use super::*;
use crate::quantity::temperature::{celsius, kelvins};
use crate::tyring::draw::DrawTaken;

fn mm(v: f64) -> Length {
    millimetres(v)
}

fn about(v: f64, doubt: f64) -> Measured {
    Measured::new(mm(v), mm(doubt)).unwrap()
}

fn run(turns: u16, past: f64) -> Run {
    Run {
        turns,
        past: mm(past),
    }
}

/// A traveller of 628.32 mm, known to ±0.05 mm by ten turns along a line known to ±0.5.
fn traveller() -> Gauge {
    Gauge::rolled(1, 10, about(6283.2, 0.5)).unwrap()
}

fn taken(gauge: Gauge, runs: &[Run]) -> Round {
    Round::taken(gauge, runs, Line::Middle, Care::default()).unwrap()
}

fn refused(gauge: Gauge, runs: &[Run]) -> Refusal {
    Round::taken(gauge, runs, Line::Middle, Care::default()).unwrap_err()
}

#[test]
fn turns_and_what_is_left_over_make_a_round() {
    let round = taken(traveller(), &[run(6, 471.23)]);
    assert!((to_paper_mm(round.round.0) - 4241.15).abs() < 1e-6);
    let tape = Gauge::tape(1, TapeClass::II);
    assert_eq!(to_paper_mm(taken(tape, &[run(0, 4241.0)]).round.0), 4241.0);
}

#[test]
fn a_second_run_makes_it_surer_and_never_surer_than_the_care_allows() {
    let standard = |runs: &[Run]| to_paper_mm(taken(traveller(), runs).doubt().standard());
    let (one, two) = (
        standard(&[run(6, 470.0)]),
        standard(&[run(6, 470.0), run(6, 470.0)]),
    );
    assert!(two < one && two > one / 2.0, "{one} {two}");
    let scattered = standard(&[run(6, 465.0), run(6, 475.0)]);
    assert!(scattered > one, "{scattered}");
}

#[test]
fn a_traveller_s_own_error_falls_out_of_the_draw_when_it_ran_both_alike() {
    let wrong = Gauge::traveller(7, about(628.32, 2.0)).unwrap();
    let draw = |other: Gauge, tyre: Run| {
        let (wheel, tyre) = (taken(wrong, &[run(6, 471.0)]), taken(other, &[tyre]));
        to_paper_mm(DrawTaken::of(&wheel, &tyre).unwrap().doubt.standard())
    };
    let another = Gauge::traveller(8, about(628.32, 2.0)).unwrap();
    assert!(draw(wrong, run(6, 440.0)) < 1.5);
    assert!(draw(another, run(6, 440.0)) > 9.0);
    // A turn less on the tyre leaves one turn's error in the draw.
    let unequal = draw(wrong, run(5, 628.0));
    assert!((1.5..2.0).contains(&unequal), "{unequal}");
}

#[test]
fn a_warm_tyre_reads_long() {
    let warm = taken(traveller(), &[run(6, 440.0)]);
    let cold = warm
        .brought_to_20(Warmth {
            iron: Iron::Steel,
            at: celsius(50.0),
            within: kelvins(5.0),
        })
        .unwrap();
    let shorter = to_paper_mm(warm.round.0 - cold.round.0);
    assert!((1.5..1.6).contains(&shorter), "{shorter}");
    assert!(cold.doubt().standard() > warm.doubt().standard());
}

#[test]
fn a_tape_over_the_outside_gives_the_inside() {
    let outside = taken(Gauge::tape(1, TapeClass::II), &[run(0, 4309.68)]);
    let inside = outside.inside(about(16.0, 0.25)).unwrap();
    assert!((to_paper_mm(inside.round.0) - 4209.149).abs() < 1e-3);
    assert!(inside.doubt().standard() > outside.doubt().standard());
}

/// Directive 2014/32/EU, annex X, chapter I: a tape of class II is good to 0.3 mm and 0.2 for each metre begun, 1.3 mm over
/// 4.24 m; of class III to 2.6, of class I to 0.6.
#[test]
fn a_tape_is_as_good_as_its_class_and_cancels_against_itself() {
    let none = Care {
        reading: mm(0.0),
        mark: mm(0.0),
        slip: 0.0,
    };
    let of = |class, past| {
        let runs = [run(0, past)];
        Round::taken(Gauge::tape(3, class), &runs, Line::Face, none).unwrap()
    };
    for (class, within) in [
        (TapeClass::I, 0.6),
        (TapeClass::II, 1.3),
        (TapeClass::III, 2.6),
    ] {
        let standard = to_paper_mm(of(class, 4241.0).doubt().standard());
        assert!((standard * 3_f64.sqrt() - within).abs() < 1e-5, "{class:?}");
        let draw = DrawTaken::of(&of(class, 4241.0), &of(class, 4220.0)).unwrap();
        assert_eq!(to_paper_mm(draw.doubt.standard()), 0.0);
    }
}

#[test]
fn inches_and_millimetres_take_the_same_round() {
    let inch = 25.4;
    let by = |length: fn(f64) -> Length, unit: f64| {
        let own = Measured::new(length(628.32 / unit), length(0.05 / unit)).unwrap();
        let runs = [Run {
            turns: 6,
            past: length(471.0 / unit),
        }];
        taken(Gauge::traveller(1, own).unwrap(), &runs)
    };
    let (metric, imperial) = (
        by(millimetres, 1.0),
        by(crate::quantity::length::inches, inch),
    );
    assert_eq!(to_paper_mm(metric.round.0), to_paper_mm(imperial.round.0));
    let doubt = |round: Round| to_paper_mm(round.doubt().to_either_side());
    assert_eq!(doubt(metric), doubt(imperial));
}

#[test]
fn what_cannot_be_is_refused() {
    use Refusal::{Given, Miscounted, NoRuns, PastATurn, TooManyRuns};
    let none = Gauge::traveller(1, about(0.0, 0.0));
    assert!(matches!(none, Err(Given(_))));
    for turns in [0, 1] {
        assert!(
            Gauge::rolled(1, turns, about(6283.2, 0.5)).is_err(),
            "{turns}"
        );
    }
    assert!(Gauge::traveller(1, about(628.0, 150.0)).is_err());
    assert_eq!(refused(traveller(), &[]), NoRuns);
    assert!(matches!(
        refused(traveller(), &[run(6, 1.0); 21]),
        TooManyRuns { .. }
    ));
    assert!(matches!(
        refused(traveller(), &[run(6, 629.0)]),
        PastATurn { .. }
    ));
    assert!(matches!(refused(traveller(), &[run(0, 0.0)]), Given(_)));
    assert!(matches!(refused(traveller(), &[run(6, -1.0)]), Given(_)));
    assert!(matches!(
        refused(traveller(), &[run(6, f64::NAN)]),
        Given(_)
    ));
    assert!(matches!(refused(traveller(), &[run(60, 1.0)]), Given(_)));
    let miscounted = [run(6, 471.0), run(7, 470.0)];
    assert!(matches!(
        refused(traveller(), &miscounted),
        Miscounted { .. }
    ));
    let wild = Care {
        reading: mm(-1.0),
        ..Care::default()
    };
    assert!(Round::taken(traveller(), &[run(6, 1.0)], Line::Face, wild).is_err());
    let hot = Warmth {
        iron: Iron::Steel,
        at: celsius(400.0),
        within: kelvins(5.0),
    };
    assert!(
        taken(traveller(), &[run(6, 1.0)])
            .brought_to_20(hot)
            .is_err()
    );
}

#[test]
fn a_round_that_crosses_a_turn_is_no_miscount() {
    let round = taken(traveller(), &[run(6, 628.0), run(7, 0.4)]);
    assert!((to_paper_mm(round.round.0) - 4398.28).abs() < 0.1);
}

proptest! {
    #[test]
    fn any_input_is_a_number_or_refused(
        own in -10.0..4000.0, own_doubt in 0.0..100.0, turns in 0_u16..100, past in -10.0..12_000.0,
        more in -50.0..50.0, reading in -1.0..400.0, slip in -1.0..1.0, at in -400.0..400.0,
        within in -1e3..1e3
    ) {
        let Ok(gauge) = Gauge::traveller(1, about(own, own_doubt)) else { return Ok(()) };
        let care = Care { reading: mm(reading), slip, ..Care::default() };
        let runs = [run(turns, past), run(turns, past + more)];
        let Ok(round) = Round::taken(gauge, &runs, Line::Back, care) else { return Ok(()) };
        let warmth = Warmth { iron: Iron::NotKnown, at: celsius(at), within: kelvins(within) };
        for round in [Ok(round), round.brought_to_20(warmth)].into_iter().flatten() {
            prop_assert!(round.round.0.is_finite() && round.doubt().to_either_side().is_finite());
            prop_assert!(round.doubt().standard() > mm(0.0));
        }
    }

    #[test]
    fn more_left_over_is_never_a_smaller_round(past in 0.0..600.0, more in 0.0..28.0, turns in 1_u16..12) {
        let of = |past| taken(traveller(), &[run(turns, past)]).round;
        prop_assert!(of(past + more) >= of(past));
    }
}
