//! Dropping on: heat enough, too much asked by one coefficient, and none enough.

use proptest::prelude::*;

use super::*;
use crate::material::iron::Iron;

fn mm(v: f64) -> Length {
    millimetres(v)
}

fn tyre(iron: Iron, inside: f64) -> HotTyre {
    HotTyre::of(iron, Circumference(mm(inside)), mm(60.0), mm(16.0)).unwrap()
}

/// A wheel of 1350 mm across.
fn over(clearance: f64) -> Over {
    let none = mm(0.0);
    Over::of(Diameter(mm(1350.0)).round(), none, none, mm(clearance)).unwrap()
}

fn drawn(by: f64) -> HotTyre {
    tyre(Iron::Steel, 1350.0 * PI - by)
}

fn at(by: f64, clearance: f64) -> f64 {
    in_celsius(over(clearance).drop_on(&drawn(by)).unwrap().at)
}

#[test]
fn a_small_draw_needs_no_red_heat() {
    assert!(at(10.0, 3.0) < 400.0);
    assert!((600.0..750.0).contains(&at(32.0, 3.0)));
}

#[test]
fn one_coefficient_asks_for_far_too_much() {
    let drop = over(3.0).drop_on(&drawn(32.0)).unwrap();
    let [wrought, steel] = drop.by_handbook.map(in_celsius);
    let at = in_celsius(drop.at);
    assert!(
        wrought - at > 150.0 && steel - at > 100.0,
        "{at} {wrought} {steel}"
    );
}

#[test]
fn no_heat_is_enough_for_too_much_draw() {
    let Err(Refusal::NoFurther { needed, most }) = over(10.0).drop_on(&drawn(32.0)) else {
        panic!("no steel grows so much")
    };
    assert!(needed > most);
    assert!(matches!(
        over(3.0).drop_on(&drawn(-1.0)),
        Err(Refusal::TyreLarger { .. })
    ));
    assert_eq!(over(10.0).touches(&drawn(90.0), End::Low), Ok(None));
}

#[test]
fn nothing_is_gained_in_steel_over_750() {
    let tyre = drawn(32.0);
    assert!(!gains_nothing(&tyre, celsius(745.0)) && gains_nothing(&tyre, celsius(750.0)));
    let useful = in_celsius(over(3.0).drop_on(&tyre).unwrap().most_useful);
    assert!((749.0..=750.0).contains(&useful));
    let clearance = |c| {
        over(0.0)
            .clearance_at(&tyre, celsius(c), End::Middle)
            .unwrap()
    };
    assert_eq!(clearance(750.0), clearance(850.0));
}

#[test]
fn the_stick_clears_the_widest_of_the_wheel_by_the_narrowest_of_the_tyre() {
    let over = Over::of(Diameter(mm(1350.0)).round(), mm(4.0), mm(3.0), mm(4.0)).unwrap();
    assert!((to_paper_mm(over.stick().0) - 1359.0).abs() < 1e-6);
    let tyre = drawn(20.0);
    let drop = over.drop_on(&tyre).unwrap();
    let clear = over.clearance_at(&tyre, drop.at, End::Middle).unwrap();
    assert!((to_paper_mm(clear) - 4.0).abs() < 1e-6);
    // As hot as that, the tyre is across its widest just as long as the stick.
    let hot = tyre.across().0 * (1.0 + drop.growth.of_one()) + mm(1.5);
    assert!((to_paper_mm(hot - over.stick().0)).abs() < 1e-6);
}

#[test]
fn what_cannot_be_is_refused() {
    let round = Circumference(mm(4241.0));
    for (round, oval, clearance) in [
        (Circumference(mm(0.0)), 0.0, 3.0),
        (round, -1.0, 3.0),
        (round, f64::NAN, 3.0),
        (round, 0.0, -1.0),
        (round, 0.0, 51.0),
    ] {
        assert!(Over::of(round, mm(oval), mm(0.0), mm(clearance)).is_err());
    }
    for (width, thickness) in [(0.0, 16.0), (60.0, 0.0), (60.0, f64::NAN), (-60.0, 16.0)] {
        assert!(HotTyre::of(Iron::Steel, round, mm(width), mm(thickness)).is_err());
    }
}

fn any_iron() -> impl Strategy<Value = Iron> {
    proptest::sample::select(&Iron::ALL[..])
}

proptest! {
    #[test]
    fn inches_and_millimetres_ask_for_the_same_heat(by in 1.0..30.0, oval in 0.0..5.0) {
        let inch = |v: f64| crate::quantity::length::inches(v / 25.4);
        let of = |length: &dyn Fn(f64) -> Length| {
            let wheel = Circumference(length(4241.0));
            let inside = Circumference(length(4241.0 - by));
            let tyre = HotTyre::of(Iron::Steel, inside, length(60.0), length(16.0)).unwrap();
            let over = Over::of(wheel, length(oval), length(oval), length(2.0)).unwrap();
            (over.stick().0, over.drop_on(&tyre).map(|it| in_celsius(it.at)))
        };
        let ((metric, at), (imperial, also)) = (of(&mm), of(&inch));
        prop_assert!(to_paper_mm(metric - imperial).abs() < 1e-6);
        let apart = at.and_then(|at| also.map(|also| (at - also).abs()));
        prop_assert!(apart.is_err() || apart.unwrap() < 1e-4);
    }

    #[test]
    fn more_draw_never_asks_for_less_heat(
        iron in any_iron(), by in 0.1..40.0, more in 0.0..20.0, clearance in 0.0..10.0
    ) {
        let of = |by| over(clearance).drop_on(&tyre(iron, 1350.0 * PI - by));
        match (of(by), of(by + more)) {
            (Ok(less), Ok(more)) => {
                prop_assert!(more.at >= less.at && more.if_it_grows_most >= less.if_it_grows_most);
                if let (Some(less), Some(more)) = (less.if_it_grows_least, more.if_it_grows_least) {
                    prop_assert!(more >= less);
                }
            }
            (less, more) => prop_assert!(more.is_err(), "{:?}", less),
        }
    }

    #[test]
    fn any_input_is_a_number_or_refused(
        iron in any_iron(), wheel in 300.0..9500.0, less in -100.0..200.0, oval in 0.0..300.0,
        clearance in 0.0..50.0
    ) {
        let inside = Circumference(mm(wheel - less));
        let Ok(tyre) = HotTyre::of(iron, inside, mm(60.0), mm(16.0)) else { return Ok(()) };
        let over = Over::of(Circumference(mm(wheel)), mm(oval), mm(oval), mm(clearance)).unwrap();
        prop_assert!(over.stick().0.is_finite());
        let Ok(drop) = over.drop_on(&tyre) else { return Ok(()) };
        let all = [drop.at, drop.if_it_grows_most, drop.most_useful, drop.by_handbook[0]];
        prop_assert!(all.iter().all(|at| at.is_finite()));
        prop_assert!(drop.if_it_grows_most <= drop.at);
        prop_assert!(drop.if_it_grows_least.is_none_or(|least| least >= drop.at));
        // What is asked for gives what was wanted.
        let clear = over.clearance_at(&tyre, drop.at, End::Middle).unwrap();
        prop_assert!((to_paper_mm(clear) - clearance).abs() < 1e-4);
    }

    #[test]
    fn hotter_is_never_smaller(iron in any_iron(), c in -40.0..1200.0, more in 0.0..300.0) {
        let tyre = tyre(iron, 4209.0);
        let of = |c: f64| over(0.0).clearance_at(&tyre, celsius(c.min(1200.0)), End::Middle).unwrap();
        prop_assert!(of(c + more) >= of(c));
    }
}
