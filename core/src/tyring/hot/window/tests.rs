//! The working time: its low end, its verdict, and what is refused.

use proptest::prelude::*;
use uom::si::time::minute;
use uom::si::velocity::meter_per_second;

use super::*;
use crate::material::iron::Iron;
use crate::quantity::circumference::{Circumference, Diameter};
use crate::quantity::length::millimetres;

fn wheel() -> Circumference {
    Diameter(millimetres(1350.0)).round()
}

fn over() -> Over {
    let none = millimetres(0.0);
    Over::of(wheel(), none, none, millimetres(3.0)).unwrap()
}

fn tyre(iron: Iron, draw: f64) -> HotTyre {
    let inside = Circumference(wheel().0 - millimetres(draw));
    HotTyre::of(iron, inside, millimetres(60.0), millimetres(16.0)).unwrap()
}

fn seconds(v: f64) -> Time {
    Time::new::<second>(v)
}

fn carry(takes: f64) -> Carry {
    Carry::of(celsius(20.0), None, seconds(takes)).unwrap()
}

fn of(draw: f64, takes: f64, from: f64) -> Window {
    window(
        &tyre(Iron::Steel, draw),
        &over(),
        &carry(takes),
        celsius(from),
    )
    .unwrap()
}

#[test]
fn the_low_end_less_the_carry_is_what_there_is() {
    let window = of(16.0, 20.0, 600.0);
    let Band { low, middle, high } = window.until_it_touches;
    assert!(low < middle && middle < high);
    assert_eq!(window.left, low - seconds(20.0));
    assert_eq!(window.verdict, Verdict::Enough);
    let leaves = in_celsius(window.leave_the_fire_at.unwrap());
    let drop = over().drop_on(&tyre(Iron::Steel, 16.0)).unwrap();
    assert!(leaves > in_celsius(drop.if_it_grows_least.unwrap()) + 20.0);
}

#[test]
fn a_minute_is_the_edge() {
    let low = of(16.0, 0.0, 600.0).until_it_touches.low;
    let verdict = |left: f64| of(16.0, (low - seconds(left)).get::<second>(), 600.0).verdict;
    assert_eq!(verdict(60.01), Verdict::Enough);
    assert_eq!(verdict(59.99), Verdict::DoNotTry);
}

#[test]
fn under_a_minute_it_is_not_to_be_tried() {
    assert_eq!(of(32.0, 60.0, 650.0).verdict, Verdict::DoNotTry);
    // Colder than it must be to go over at all.
    let cold = of(32.0, 0.0, 400.0);
    assert_eq!((cold.left, cold.verdict), (seconds(0.0), Verdict::DoNotTry));
    // More draw than any heat gives.
    let never = of(60.0, 0.0, 750.0);
    assert_eq!((never.touches_at, never.verdict), (None, Verdict::DoNotTry));
    assert_eq!(never.leave_the_fire_at, None);
}

#[test]
fn a_carry_that_cannot_be_is_refused() {
    use crate::quantity::Refusal as Given;
    let of = |air, wind: f64, takes: f64| {
        Carry::of(
            celsius(air),
            Some(Velocity::new::<meter_per_second>(wind)),
            seconds(takes),
        )
    };
    assert!(of(20.0, 5.0, 30.0).is_ok());
    let below = Refusal::Given(Given::BelowAbsoluteZero {
        given: celsius(-300.0),
    });
    assert_eq!(of(-300.0, 5.0, 30.0), Err(below));
    for (wind, takes) in [(-1.0, 30.0), (21.0, 30.0), (f64::NAN, 30.0)] {
        assert!(matches!(of(20.0, wind, takes), Err(Refusal::Wind { .. })));
    }
    for takes in [-1.0, 601.0, f64::NAN] {
        assert!(matches!(of(20.0, 5.0, takes), Err(Refusal::Carry { .. })));
    }
    let unit = Carry::of(celsius(20.0), None, Time::new::<minute>(0.5));
    assert_eq!(unit, Ok(carry(30.0)));
}

#[test]
fn a_curve_begins_at_the_fire_and_only_falls() {
    let tyre = tyre(Iron::Steel, 16.0);
    let points = curve(
        &tyre,
        &carry(0.0),
        (celsius(700.0), celsius(100.0)),
        End::Middle,
        25,
    )
    .unwrap();
    assert_eq!(points.len(), 25);
    assert_eq!(points[0].0, seconds(0.0));
    assert!(
        points
            .windows(2)
            .all(|two| two[0].0 < two[1].0 && two[0].1 > two[1].1)
    );
    assert!(
        curve(
            &tyre,
            &carry(0.0),
            (celsius(1300.0), celsius(0.0)),
            End::Low,
            0
        )
        .is_err()
    );
    for points in [0, 1, 255] {
        let way = (celsius(700.0), celsius(100.0));
        assert!(
            curve(&tyre, &carry(0.0), way, End::Low, points)
                .unwrap()
                .len()
                >= 2
        );
    }
}

proptest! {
    #[test]
    fn any_input_is_a_number_or_refused(
        draw in -20.0..110.0, takes in -10.0..700.0, from in -300.0..1300.0, air in -60.0..80.0,
        wind in -5.0..30.0
    ) {
        let wind = Some(Velocity::new::<meter_per_second>(wind));
        let Ok(carry) = Carry::of(celsius(air), wind, seconds(takes)) else { return Ok(()) };
        for iron in Iron::ALL {
            let Ok(it) = window(&tyre(iron, draw), &over(), &carry, celsius(from)) else { continue };
            let Band { low, middle, high } = it.until_it_touches;
            for time in [low, middle, high, it.left] {
                prop_assert!(time.is_finite() && time >= seconds(0.0));
            }
            prop_assert!(low <= middle && middle <= high, "{:?}", it);
            prop_assert_eq!(it.verdict == Verdict::DoNotTry, it.left < seconds(LEAST));
        }
    }

    #[test]
    fn more_draw_never_leaves_more_time(draw in 1.0..40.0, more in 0.0..10.0, from in 300.0..900.0) {
        prop_assert!(of(draw + more, 0.0, from).left <= of(draw, 0.0, from).left);
    }
}
