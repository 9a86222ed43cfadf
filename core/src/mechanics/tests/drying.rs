//! What drying may be blamed for, and what it may not.

use super::*;

fn dried(build: &Build, slack: Slack, from: f64, to: f64) -> Band<Length> {
    explains(
        build,
        slack,
        Damp::even(percent(from)),
        Damp::even(percent(to)),
    )
}

/// Drying does not loosen a tyre on a rim whose joints are shut, beyond what its felloes lose along their grain: about
/// 1 mm in 4 m for 6 % of moisture. What it does lose across the grain shows elsewhere.
#[test]
fn on_a_shut_rim_drying_does_not_explain_a_slack_tyre() {
    for rim in [Rim::Sawn, Rim::Bent] {
        let build = Build { rim, ..cart() };
        let of = |slack| dried(&build, slack, 16.0, 10.0);
        let shut = of(Slack::TyreShut);
        // 0.1 to 0.2 % from green to dry (*Wood Handbook*, p. 4-5) is 6/30 of it here.
        let round = mm(build.across.round().0);
        assert!(
            (mm(shut.low) / (round * 0.0002) - 1.0).abs() < 0.02,
            "{shut:?}"
        );
        assert!(
            (mm(shut.high) / (round * 0.0004) - 1.0).abs() < 0.02,
            "{shut:?}"
        );
        assert!((0.8..1.6).contains(&(mm(shut.middle) * 4000.0 / round)));
        assert!(of(Slack::TyreOpen).low > shut.high * 8.0);
        assert!(of(Slack::StandOff).low > millimetres(1.5));
        assert!(of(Slack::Belly).low > of(Slack::Joint).high * 2.0);
    }
}

/// With its joints open the rim comes in with its spokes: round by 2 π times all that half the wheel loses across it.
#[test]
fn on_an_open_rim_the_tyre_slackens_by_all_the_wheel_loses() {
    let build = cart();
    let (from, to) = (percent(14.0), percent(8.0));
    let (elm, oak, ash) = (Species::AmericanElm, Species::WhiteOak, Species::WhiteAsh);
    // Table 13-5 of the *Wood Handbook*, each half-way between radial and tangential; 6 % of each.
    let nave = 150.0 * 6.0 * (0.001_44 + 0.003_38) / 2.0;
    let felloe = 90.0 * 6.0 * (0.001_69 + 0.002_74) / 2.0;
    let spoke = 435.0 * -oak.along(End::Middle).between(from, to).of_one();
    let open = dried(&build, Slack::TyreOpen, 14.0, 8.0).middle;
    let by_hand = std::f64::consts::TAU * (nave + felloe + spoke);
    assert!((mm(open) - by_hand).abs() < 1e-6, "{} {by_hand}", mm(open));
    assert!(elm.along(End::Middle) == ash.along(End::Middle));
    // The nave alone is left as it was where it has not dried yet.
    let slow = Damp {
        nave: from,
        rim: to,
    };
    let open = explains(&build, Slack::TyreOpen, Damp::even(from), slow).middle;
    assert!((mm(open) - std::f64::consts::TAU * (felloe + spoke)).abs() < 1e-6);
}

/// A felloe of six, sawn from straight wood, drawn as a sheet of which every height has shrunk and no length: the joint
/// opens at the belly by what its two faces have turned, and its middle has fallen by what the arc has flattened.
#[test]
fn a_felloe_that_loses_depth_opens_at_the_belly_and_falls_away_in_the_middle() {
    let build = cart();
    let dry = |slack| mm(dried(&build, slack, 14.0, 8.0).middle);
    let lost = 6.0 * (0.001_69 + 0.002_74) / 2.0;
    let half = std::f64::consts::PI / 6.0;
    let face = |height: f64| {
        let (top, bottom) = (675.0, 585.0);
        let at = |r: f64| (r * half.sin(), r * half.cos() * height);
        let (outer, inner) = (at(top), at(bottom));
        ((outer.0 - inner.0) / (outer.1 - inner.1)).atan()
    };
    let turned = face(1.0 - lost) - half;
    let opens = 2.0 * 90.0 * turned;
    assert!(
        (dry(Slack::Belly) - dry(Slack::Joint) - opens).abs() < 0.02 * opens,
        "{opens}"
    );
    let falls = 675.0 * (1.0 - half.cos()) * lost;
    assert!((dry(Slack::UnderFelloe) - falls).abs() < 1e-9);
    let bent = Build {
        rim: Rim::Bent,
        ..build
    };
    assert_eq!(mm(dried(&bent, Slack::UnderFelloe, 14.0, 8.0).high), 0.0);
}

proptest! {
    #[test]
    fn wood_that_swells_explains_no_slack(build in made(), from in 0.0..60.0_f64, more in 0.0..60.0_f64,
            slack in proptest::sample::select(Slack::ALL.as_slice())) {
        let band = dried(&build, slack, from, (from + more).min(60.0));
        prop_assert_eq!(mm(band.low), 0.0);
        prop_assert_eq!(mm(band.high), 0.0);
    }

    #[test]
    fn drier_wood_explains_no_less(build in made(), from in 0.0..60.0_f64, a in 0.0..1.0_f64, b in 0.0..1.0_f64,
            slack in proptest::sample::select(Slack::ALL.as_slice())) {
        let [less, more] = [a.min(b), a.max(b)].map(|part| dried(&build, slack, from, from * (1.0 - part)));
        prop_assert!(less.middle <= more.middle + millimetres(1e-9), "{less:?} {more:?}");
        prop_assert!(more.low <= more.middle && more.middle <= more.high && more.high.is_finite());
    }

    /// For whatever timber, rim and moisture: never more than 0.4 % of the round from green to bone dry, which is the
    /// most that any of the timbers is said to lose along its grain.
    #[test]
    fn a_shut_rim_never_excuses_a_tyre(build in made(), from in 0.0..60.0_f64, to in 0.0..60.0_f64) {
        let shut = dried(&build, Slack::TyreShut, from, to).high;
        let dried = (from.min(30.0) - to.min(30.0)).max(0.0);
        prop_assert!(mm(shut) <= mm(build.across.round().0) * 0.004 * dried / 30.0 * 1.01 + 1e-9);
    }
}
