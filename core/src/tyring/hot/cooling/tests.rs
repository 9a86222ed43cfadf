//! Cooling: backwards, in parts, against a march in steps of time.

use proptest::prelude::*;

use super::*;
use crate::material::iron::Iron;
use crate::quantity::circumference::Circumference;
use crate::quantity::length::millimetres;

/// A free ring of 60 by 16 mm in still air of 20 °C.
fn ring() -> Cooling {
    let inside = Circumference(millimetres(4209.15));
    Cooling {
        tyre: HotTyre::of(Iron::Steel, inside, millimetres(60.0), millimetres(16.0)).unwrap(),
        heat: End::Middle,
        emissivity: 0.8,
        air: 20.0,
        wind: 0.0,
        covered: false,
    }
}

#[test]
fn a_covered_face_keeps_it_hot() {
    assert!((ring().bare() - 158.333_333).abs() < 1e-6);
    let covered = Cooling {
        covered: true,
        ..ring()
    };
    assert!((covered.bare() - 95.833_333).abs() < 1e-6);
    assert!(covered.takes(750.0, 500.0) > 1.5 * ring().takes(750.0, 500.0));
}

#[test]
fn time_runs_backwards_too() {
    let ring = ring();
    for (to, seconds) in [(550.0, 30.0), (300.0, 200.0), (700.0, 86.0)] {
        let from = ring.before(to, seconds);
        assert!((ring.takes(from, to) - seconds).abs() < 0.5, "{to} {from}");
    }
    assert_eq!(ring.before(300.0, 1e5), 1200.0);
    assert!((ring.before(300.0, 0.0) - 300.0).abs() < 0.02);
}

#[test]
fn the_air_itself_is_never_reached() {
    let ring = ring();
    assert_eq!(ring.takes(750.0, 20.0), ring.takes(750.0, -40.0));
    assert!(ring.takes(750.0, -40.0).is_finite());
    assert_eq!(ring.takes(22.0, 10.0), 0.0);
}

/// What left the face in each second adds up to what the iron gave: marched in steps of time by Heun's rule, apart from
/// the sum over temperature that is tested here.
#[test]
fn what_leaves_is_what_the_iron_gives() {
    let ring = ring();
    let falls =
        |c: f64| ring.leaves(c) * ring.bare() / (DENSITY * ring.tyre.iron.taken_up(c, ring.heat));
    let (mut c, mut left, mut seconds, step) = (700.0, 0.0, 0.0, 0.05);
    while c > 400.0 {
        let next = c - step * falls(c);
        let then = c - step * (falls(c) + falls(next)) / 2.0;
        left += step * (ring.leaves(c) + ring.leaves(then)) / 2.0 * ring.bare();
        seconds += step;
        c = then;
    }
    let gave = DENSITY * sum::over(c, 700.0, &|c| ring.tyre.iron.taken_up(c, ring.heat));
    assert!((left / gave - 1.0).abs() < 1e-4, "{left} {gave}");
    assert!((seconds / ring.takes(700.0, c) - 1.0).abs() < 1e-4);
}

proptest! {
    #[test]
    fn a_way_is_the_sum_of_its_parts(from in 300.0..1200.0, part in 0.0..1.0, air in -40.0..60.0) {
        let ring = Cooling { air, ..ring() };
        let (to, between) = (100.0, 100.0 + part * (from - 100.0));
        let parts = ring.takes(from, between) + ring.takes(between, to);
        prop_assert!((parts / ring.takes(from, to) - 1.0).abs() < 1e-4);
    }

    #[test]
    fn it_is_sooner_cold_in_wind_radiating_well_and_thin(
        from in 200.0..1200.0, wind in 0.0..20.0, emissivity in 0.1..1.0, thickness in 2.0..40.0
    ) {
        let inside = Circumference(millimetres(4209.15));
        let of = |wind, emissivity, thickness: f64| {
            let tyre = HotTyre::of(Iron::Steel, inside, millimetres(60.0), millimetres(thickness)).unwrap();
            Cooling { wind, emissivity, tyre, ..ring() }.takes(from, 100.0)
        };
        let takes = of(wind, emissivity, thickness);
        prop_assert!(takes.is_finite() && takes > 0.0);
        prop_assert!(of(wind + 1.0, emissivity, thickness) < takes);
        prop_assert!(of(wind, emissivity - 0.05, thickness) > takes);
        prop_assert!(of(wind, emissivity, thickness - 1.0) < takes);
    }
}
