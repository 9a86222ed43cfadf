//! A tyre that grips while it cools.

use super::*;
use crate::mechanics::cooling::cooled;
use crate::quantity::temperature::in_celsius;

fn cold(build: &Build, fitting: &Fitting) -> (Cooled, Fit) {
    let corner = Corner::default();
    (
        cooled(build, fitting, &corner).unwrap(),
        fit(build, fitting, &corner).unwrap(),
    )
}

/// It grips at nothing while it is larger than the wheel: 20 mm of draw on 4.22 m are 0.0047, which steel is longer by at
/// 369 °C (EN 1993-1-2, 3.4.1.1 turned round).
#[test]
fn it_first_touches_where_it_is_as_large_as_the_wheel() {
    let (it, _) = cold(&cart(), &fitting(20.0, 0.0));
    let hottest = it.grip.iter().find(|(_, grip)| grip.value > 0.0).unwrap().0;
    assert!((360.0..370.0).contains(&in_celsius(hottest)), "{hottest:?}");
    assert_eq!(in_celsius(it.grip[0].0), 750.0);
    assert!((in_celsius(it.grip[STEPS - 1].0) - 20.0).abs() < 1e-9);
}

/// Where a wheel gives way, hot softness takes nothing from the grip: within a hundredth it ends as if it had been drawn cold.
#[test]
fn on_a_wheel_that_gives_it_ends_as_if_it_had_been_cold() {
    for (draw, joints) in [(32.0, 14.0), (20.0, 6.0), (12.0, 0.0)] {
        let (hot, cold) = cold(&cart(), &fitting(draw, joints));
        assert!(
            (kn(hot.cold()) / kn(cold.grip) - 1.0).abs() < 0.01,
            "{draw}"
        );
    }
}

/// On a wheel that does not give, what is held back hot is stretched for good, and the iron still ends at what it yields at.
#[test]
fn on_a_stiff_wheel_hot_iron_stretches_and_holds_what_it_can() {
    let stiff = Build {
        felloe_depth: millimetres(250.0),
        felloe_width: millimetres(400.0),
        rim: Rim::Bent,
        felloe_timber: Species::Hickory.into(),
        nave: Diameter(millimetres(200.0)),
        ..cart()
    };
    let (hot, cold) = cold(&stiff, &fitting(32.0, 0.0));
    assert!(
        (kn(hot.cold()) / (275.0 * 0.96) - 1.0).abs() < 0.01,
        "{}",
        kn(hot.cold())
    );
    assert!(hot.stretched >= cold.stretched && mm(hot.stretched) < 32.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn it_grips_harder_as_it_cools_and_never_harder_than_cold_iron(build in made(), fitting in fittings(), corner in corner()) {
        let both = (cooled(&build, &fitting, &corner), fit(&build, &fitting, &corner));
        if let (Ok(hot), Ok(cold)) = both {
            let grips = hot.grip.map(|(_, grip)| grip.value);
            prop_assert!(grips.iter().all(|grip| grip.is_finite()));
            prop_assert!(grips[STEPS - 1] <= cold.grip.value * 1.001 + 1.0, "{} {}", grips[STEPS - 1], cold.grip.value);
            prop_assert!(hot.stretched.value >= 0.0 && hot.stretched <= fitting.draw.0);
            let out_of_the_fire = grips[0];
            prop_assert!(out_of_the_fire <= grips[STEPS - 1] + 1.0);
        }
    }
}
