//! A tyre through the year.

use super::*;
use crate::material::moisture::MoistureRefusal;
use crate::quantity::temperature::celsius;
use crate::quantity::{Percent, Temperature};

fn air(humidity: u8, degrees: f64) -> (Percent, Temperature) {
    (Percent::whole(humidity), celsius(degrees))
}

#[test]
fn every_place_has_a_year() {
    for stand in Stand::ALL {
        let year = stand.year();
        assert!(
            year.0
                .iter()
                .all(|month| (4.0..20.0).contains(&month.percent())),
            "{stand:?}"
        );
        let [driest, wettest] = year.driest_and_wettest();
        assert!(
            year.0
                .iter()
                .all(|month| year.0[driest] <= *month && *month <= year.0[wettest])
        );
        let still = year.swinging(0.0);
        assert!(
            still
                .0
                .iter()
                .all(|month| (month.percent() - year.mean()).abs() < 1e-9)
        );
    }
    // DIN 1052-1 (1988): roofed and open 15 ± 3 %, closed and unheated 12 ± 3 %, heated 9 ± 3 %.
    let ends = |stand: Stand| {
        stand
            .year()
            .driest_and_wettest()
            .map(|month| stand.year().0[month].percent())
    };
    assert_eq!(ends(Stand::OpenShed), [12.0, 18.0]);
    assert_eq!(ends(Stand::ClosedBarn), [9.0, 15.0]);
    assert_eq!(ends(Stand::HeatedHall), [6.0, 12.0]);
}

#[test]
fn a_year_of_air_is_a_year_of_wood() {
    let mut months = [air(80, 10.0); 12];
    months[6] = air(50, 20.0);
    let year = Year::of_air(&months).unwrap();
    assert!((year.0[6].percent() - 9.27).abs() < 0.01);
    assert_eq!(year.driest_and_wettest(), [6, 0]);
    // A hard winter is reckoned as frost; nonsense is refused.
    months[0] = air(80, -25.0);
    assert!(Year::of_air(&months).is_ok());
    for (humidity, celsius) in [
        (96, 10.0),
        (100, 10.0),
        (50, 94.0),
        (50, -300.0),
        (50, f64::NAN),
    ] {
        months[0] = air(humidity, celsius);
        assert!(Year::of_air(&months).is_err(), "{humidity} % {celsius}");
    }
    months[0] = air(50, -300.0);
    assert!(
        matches!(Year::of_air(&months), Err(MoistureRefusal::OutOfRange(t)) if (t + 300.0).abs() < 1e-9)
    );
}

/// In the driest month the tyre grips less than in the wettest, and spokes go first: the rim still grips when they stand
/// off already.
#[test]
fn summer_slackens_and_winter_tightens() {
    for stand in [Stand::OpenShed, Stand::SouthEngland, Stand::Portland] {
        let it = season(&cart(), &fitting(20.0, 6.0), &stand.year()).unwrap();
        let [dry, wet] = it.driest_and_wettest.map(|month| it.months[month]);
        assert!(dry.grip.middle < wet.grip.middle && dry.spoke.middle < wet.spoke.middle);
        assert!(
            kn(dry.grip.middle) > 0.0 && kn(dry.spoke.middle) == 0.0 && mm(dry.off.middle) > 0.0
        );
    }
}

/// One wet month crushes wood and stretches iron, and the months after it grip less than if it had not been.
#[test]
fn what_the_wettest_month_has_crushed_stays_crushed() {
    let through = |fitting: &Fitting, first: f64| {
        let mut year = [percent(14.0); 12];
        year[0] = percent(first);
        season(&cart(), fitting, &Year(year)).unwrap()
    };
    let well = fitting(20.0, 6.0);
    let (still, after) = (through(&well, 14.0), through(&well, 24.0));
    assert_eq!(after.driest_and_wettest[1], 0);
    let july = |it: &Season| kn(it.months[6].grip.middle);
    assert!(
        july(&after) < july(&still) - 10.0,
        "{} {}",
        july(&after),
        july(&still)
    );
    // As fitted, where nothing moves.
    let fresh = fit(&cart(), &well, &Corner::default()).unwrap();
    assert!((july(&still) - kn(fresh.grip)).abs() < 1e-6);
    // A rim that carries all by itself is crushed at its joints.
    let alone = Fitting {
        stand_off: millimetres(20.0),
        ..well
    };
    let (one, other) = (through(&alone, 14.0), through(&alone, 24.0));
    assert!(
        july(&other) < july(&one) - 10.0,
        "{} {}",
        july(&other),
        july(&one)
    );
    // Its spokes, which the wet month pressed in, stand off.
    assert!(mm(after.months[6].off.middle) > 0.0 && mm(still.months[6].off.middle) == 0.0);
}

#[test]
fn the_range_of_draw_is_where_it_says() {
    let (build, year) = (cart(), Stand::ClosedBarn.year());
    let at = |draw: f64| season(&build, &fitting(draw, 6.0), &year).unwrap();
    let range = at(12.0).range;
    let [least, most] = range.likely().unwrap().map(|draw| mm(draw.0));
    let dry = |it: &Season| it.months[it.driest_and_wettest[0]];
    assert!(least > 6.0 && most > least + 1.0, "{least} {most}");
    assert_eq!(kn(dry(&at(least - 0.1)).grip.middle), 0.0);
    assert!(kn(dry(&at(least + 0.1)).grip.middle) > 0.0);
    // The range does not depend on the draw it is asked with.
    assert_eq!(at(20.0).range.likely(), range.likely());
    if let Some([sure_least, sure_most]) = range.sure() {
        assert!(mm(sure_least.0) >= least && mm(sure_most.0) <= most);
    }
}

/// A wheel fitted nearly bone dry and stood in the damp has no range: it is told what would make one, and that holds.
#[test]
fn where_there_is_no_range_it_is_said_what_would_make_one() {
    let dry = Fitting {
        moisture: percent(8.0),
        ..fitting(12.0, 0.0)
    };
    let year = Stand::OpenShed.year();
    let it = season(&cart(), &dry, &year).unwrap();
    assert_eq!(it.range.likely(), None);
    assert!(it.helps.is_some());
    let mild = Fitting {
        moisture: percent(9.0),
        ..fitting(12.0, 6.0)
    };
    let hall = season(&cart(), &mild, &Stand::Phoenix.year()).unwrap();
    assert_eq!(hall.range.likely().is_none(), hall.helps.is_some());
}

/// With a swing that is small enough there is a range, if that is what is said to help.
#[test]
fn what_is_said_to_help_helps() {
    let mut helped = 0;
    for (moisture, joints) in [
        (8.0, 0.0),
        (10.0, 6.0),
        (12.0, 14.0),
        (16.0, 0.0),
        (20.0, 0.0),
    ] {
        for stand in Stand::ALL {
            let fitting = Fitting {
                moisture: percent(moisture),
                ..fitting(20.0, joints)
            };
            let it = season(&cart(), &fitting, &stand.year()).unwrap();
            let [dry, wet] = it
                .driest_and_wettest
                .map(|month| stand.year().0[month].percent());
            let again = match it.helps {
                Some(Helps::Steadier(swing)) => season(
                    &cart(),
                    &fitting,
                    &stand.year().swinging(swing / (wet - dry)),
                ),
                Some(Helps::Thinner(tyre_thickness)) => season(
                    &Build {
                        tyre_thickness,
                        ..cart()
                    },
                    &fitting,
                    &stand.year(),
                ),
                _ => continue,
            };
            helped += 1;
            assert!(
                again.unwrap().range.likely().is_some(),
                "{stand:?} {moisture}"
            );
        }
    }
    assert!(helped > 0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn a_year_is_reckoned_or_refused(build in prop_oneof![made(), at_the_ends()], fitting in fittings(),
            stand in proptest::sample::select(Stand::ALL.as_slice())) {
        if let Ok(it) = season(&build, &fitting, &stand.year()) {
            for month in it.months {
                for band in [month.grip, month.spoke] {
                    prop_assert!(band.low.value >= 0.0 && band.low <= band.middle && band.middle <= band.high);
                    prop_assert!(band.high.is_finite());
                }
                for band in [month.off, month.slack] {
                    prop_assert!(band.low.value >= 0.0 && band.low <= band.middle && band.high.is_finite());
                }
            }
            prop_assert_eq!(it.helps.is_none(), it.range.likely().is_some());
        }
    }
}

#[test]
fn a_year_refuses_what_a_fit_refuses() {
    let year = Stand::ClosedBarn.year();
    for mm in [-1.0, 0.0, 500.0, f64::NAN] {
        let fitting = fitting(mm, 0.0);
        let refused = fit(&cart(), &fitting, &Corner::default()).unwrap_err();
        // As text, since what is no number is not like itself.
        let of_the_year = season(&cart(), &fitting, &year).unwrap_err();
        assert_eq!(format!("{of_the_year:?}"), format!("{refused:?}"));
    }
}
