//! Heat and wood, by either way to say how wet it is.

use proptest::prelude::*;

use super::*;
use crate::material::iron::Iron;
use crate::quantity::circumference::Circumference;
use crate::quantity::length::millimetres;
use crate::quantity::temperature::celsius;

fn tyre(iron: Iron) -> HotTyre {
    let inside = Circumference(millimetres(4209.15));
    HotTyre::of(iron, inside, millimetres(60.0), millimetres(16.0)).unwrap()
}

fn dry(percent: u8) -> FuelMoisture {
    FuelMoisture::OfDry(Percent::whole(percent))
}

fn all(percent: u8) -> FuelMoisture {
    FuelMoisture::OfAll(Percent::whole(percent))
}

#[test]
fn the_two_ways_to_say_how_wet_wood_is_meet() {
    assert!((all(20).of_all() - dry(25).of_all()).abs() < 1e-12);
    let kilograms = |moisture| {
        let wood = wood(&tyre(Iron::Steel), celsius(700.0), moisture).unwrap();
        wood.middle.get::<kilogram>()
    };
    assert!((kilograms(all(20)) - kilograms(dry(25))).abs() < 1e-9);
    assert!(kilograms(all(20)) > kilograms(dry(20)));
}

#[test]
fn wood_that_hardly_burns_is_refused() {
    let of = |moisture| wood(&tyre(Iron::Steel), celsius(700.0), moisture);
    assert_eq!(of(all(61)), Err(Refusal::TooWet { given: all(61) }));
    assert!(of(all(60)).is_ok() && of(dry(100)).is_ok());
    assert!(of(all(100)).is_err());
    assert!(wood(&tyre(Iron::Steel), celsius(1300.0), all(20)).is_err());
}

proptest! {
    #[test]
    fn hotter_takes_more_wood_and_all_is_finite(c in 20.0..1200.0, more in 0.0..100.0, wet in 0_u8..=60) {
        for iron in Iron::ALL {
            let of = |c: f64| wood(&tyre(iron), celsius(c.min(1200.0)), all(wet)).unwrap();
            let (one, two) = (of(c), of(c + more));
            prop_assert!(two.middle >= one.middle && two.high.is_finite());
            prop_assert!(one.low <= one.middle && one.middle <= one.high);
        }
    }
}
