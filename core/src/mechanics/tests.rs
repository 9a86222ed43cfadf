//! What a fit keeps to, whatever the wheel.

use proptest::prelude::*;
use uom::si::force::kilonewton;
use uom::si::length::millimeter;

use super::sample::{cart, fitting};
use super::sheet::Leading;
use super::*;
use crate::material::{Grain, Iron, MoistureContent, Species, Timber};
use crate::quantity::circumference::{Diameter, Draw};
use crate::quantity::length::millimetres;
use crate::quantity::spelling::{self, BareUnit};
use crate::quantity::{Band, End, Length, LengthRange};
use crate::wheel::Rim;

fn percent(v: f64) -> MoistureContent {
    MoistureContent::from_percent(v).unwrap()
}

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn kn(force: uom::si::f64::Force) -> f64 {
    force.get::<kilonewton>()
}

const LEVELS: [End; 3] = End::ALL;

/// Any wheel that may be typed, most of them no wheel at all.
fn typed() -> impl Strategy<Value = Build> {
    let sizes = proptest::collection::vec(-50.0..3500.0_f64, 9);
    let wild = prop_oneof![
        8 => sizes,
        1 => Just(vec![0.0; 9]),
        1 => Just(vec![f64::NAN; 9]),
        1 => Just(vec![f64::INFINITY; 9]),
        1 => Just(vec![1e300; 9]),
    ];
    (wild, 0..70_u16, 0..40_u16, made()).prop_map(|(v, spokes, felloes, build)| Build {
        across: Diameter(millimetres(v[0])),
        dish: millimetres(v[1]),
        tyre_width: millimetres(v[2]),
        tyre_thickness: millimetres(v[3]),
        felloe_depth: millimetres(v[4]),
        felloe_width: millimetres(v[5]),
        spoke_depth: millimetres(v[6]),
        spoke_width: millimetres(v[7]),
        nave: Diameter(millimetres(v[8])),
        spokes,
        felloes,
        ..build
    })
}

/// Sizes from end to end of their ranges, with as much room for spokes as is left.
fn at_the_ends() -> impl Strategy<Value = Build> {
    let of = |range: LengthRange| range.min()..=range.max();
    let any = move |range: LengthRange| {
        let (low, high) = (mm(*of(range).start()), mm(*of(range).end()));
        prop_oneof![Just(low), Just(high), low..high]
    };
    let tyre = (any(LengthRange::TyreWidth), any(LengthRange::TyreThickness));
    let felloe = (any(LengthRange::FelloeDepth), any(LengthRange::FelloeWidth));
    let spoke = (any(LengthRange::SpokeDepth), any(LengthRange::SpokeWidth));
    let wheel = (
        any(LengthRange::WheelDiameter),
        any(LengthRange::NaveDiameter),
        any(LengthRange::Dish),
    );
    (tyre, felloe, spoke, wheel, 3..=64_u16, 1..=32_u16, made()).prop_map(
        |(tyre, felloe, spoke, wheel, spokes, felloes, build)| Build {
            across: Diameter(millimetres(wheel.0)),
            nave: Diameter(millimetres(wheel.1)),
            dish: millimetres(wheel.2),
            tyre_width: millimetres(tyre.0),
            tyre_thickness: millimetres(tyre.1),
            felloe_depth: millimetres(felloe.0),
            felloe_width: millimetres(felloe.1),
            spoke_depth: millimetres(spoke.0),
            spoke_width: millimetres(spoke.1),
            spokes,
            felloes,
            ..build
        },
    )
}

fn timber() -> impl Strategy<Value = Timber> {
    let grain = proptest::option::of(proptest::sample::select(Grain::ALL.as_slice()));
    (proptest::sample::select(Species::ALL.as_slice()), grain)
        .prop_map(|(species, grain)| Timber { species, grain })
}

/// A wheel that could stand in a yard.
fn made() -> impl Strategy<Value = Build> {
    let sizes = (
        600.0..1700.0_f64,
        -20.0..70.0_f64,
        30.0..110.0_f64,
        6.0..25.0_f64,
    );
    let wood = (
        40.0..110.0_f64,
        30.0..110.0_f64,
        30.0..90.0_f64,
        20.0..60.0_f64,
        0.12..0.25_f64,
    );
    let kinds = (
        8..=16_u16,
        2..=8_u16,
        proptest::sample::select(vec![Rim::Sawn, Rim::Bent]),
        proptest::sample::select(vec![Feet::Sound, Feet::Slack]),
        proptest::sample::select(vec![Iron::Steel, Iron::Wrought]),
        [timber(), timber(), timber()],
    );
    (sizes, wood, kinds).prop_map(|(size, wood, kind)| Build {
        across: Diameter(millimetres(size.0)),
        dish: millimetres(size.1),
        tyre_width: millimetres(size.2),
        tyre_thickness: millimetres(size.3),
        felloe_depth: millimetres(wood.0),
        felloe_width: millimetres(wood.1),
        spoke_depth: millimetres(wood.2),
        spoke_width: millimetres(wood.3),
        nave: Diameter(millimetres(size.0 * wood.4)),
        spokes: kind.0,
        felloes: kind.1,
        rim: kind.2,
        feet: kind.3,
        iron: kind.4,
        nave_timber: kind.5[0],
        spoke_timber: kind.5[1],
        felloe_timber: kind.5[2],
    })
}

fn fittings() -> impl Strategy<Value = Fitting> {
    (0.5..35.0_f64, 0.0..0.99_f64, 0.0..3.0_f64, 4.0..25.0_f64).prop_map(
        |(draw, part, off, moisture)| Fitting {
            stand_off: millimetres(off),
            moisture: percent(moisture),
            ..fitting(draw, draw * part)
        },
    )
}

fn corner() -> impl Strategy<Value = Corner> {
    proptest::collection::vec(
        proptest::sample::select(LEVELS.as_slice()),
        Assumption::ALL.len(),
    )
    .prop_map(|levels| {
        let pairs = Assumption::ALL.into_iter().zip(levels);
        pairs.fold(Corner::default(), |corner, (assumption, level)| {
            corner.with(assumption, level)
        })
    })
}

fn is_finite(fit: &Fit) -> bool {
    let forces = [fit.grip, fit.rim, fit.spoke].map(|it| it.value);
    let lengths = [
        fit.moved,
        fit.slack,
        fit.off,
        fit.dish,
        fit.stretched,
        fit.sunk,
    ]
    .map(|it| it.value);
    let ratios = Gives::ALL.map(|part| fit.pressed.ratio(part));
    forces
        .iter()
        .chain(&lengths)
        .chain(&ratios)
        .all(|v| v.is_finite())
        && forces.iter().all(|v| *v >= 0.0)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn whatever_is_typed_is_reckoned_or_refused(build in prop_oneof![typed(), at_the_ends()], draw in -10.0..120.0_f64,
            joints in -1.0..600.0_f64, off in -1.0..60.0_f64, moisture in 0.0..60.0_f64, corner in corner()) {
        let fitting = Fitting { stand_off: millimetres(off), moisture: percent(moisture), ..fitting(draw, joints) };
        if let Ok(it) = fit(&build, &fitting, &corner) {
            prop_assert!(is_finite(&it), "{it:?}");
            let sheet = sheet(&build, &fitting).unwrap();
            prop_assert!(sheet.grip.low <= sheet.grip.middle && sheet.grip.middle <= sheet.grip.high);
            prop_assert!(after(&build, &fitting).unwrap().reserve.is_finite());
        }
    }

    #[test]
    fn more_draw_never_grips_less(build in made(), fitting in fittings(), more in 0.0..20.0_f64, corner in corner()) {
        let with = |draw| fit(&build, &Fitting { draw, ..fitting }, &corner);
        let (one, other) = (with(fitting.draw), with(Draw(fitting.draw.0 + millimetres(more))));
        if let (Ok(one), Ok(other)) = (one, other) {
            prop_assert!(other.grip >= one.grip * (1.0 - 1e-9));
            prop_assert!(other.spoke >= one.spoke * (1.0 - 1e-9) && other.rim >= one.rim * (1.0 - 1e-9));
        }
    }

    #[test]
    fn wider_joints_never_grip_more(build in made(), fitting in fittings(), part in 0.0..1.0_f64, corner in corner()) {
        let with = |joints| fit(&build, &Fitting { joints, ..fitting }, &corner);
        if let (Ok(wide), Ok(narrow)) = (with(fitting.joints), with(fitting.joints * part)) {
            prop_assert!(wide.grip <= narrow.grip * (1.0 + 1e-9));
        }
    }

    #[test]
    fn firmer_wood_and_iron_never_grip_less(build in made(), fitting in fittings(), corner in corner(),
            which in proptest::sample::select(Assumption::ALL.as_slice())) {
        let grips = LEVELS.map(|level| fit(&build, &fitting, &corner.with(which, level)).map(|it| it.grip.value));
        if let [Ok(low), Ok(middle), Ok(high)] = grips {
            // More of the gaps shutting is the one that takes grip away.
            let grips = if which == Assumption::Joints { [high, middle, low] } else { [low, middle, high] };
            prop_assert!(grips.is_sorted_by(|one, other| *one <= other * (1.0 + 1e-9)), "{grips:?}");
        }
    }

    #[test]
    fn inches_and_millimetres_are_one_wheel(build in made(), fitting in fittings()) {
        // Each size to the nearest 32nd of an inch, typed once so and once in millimetres to the sixth decimal.
        let typed = |length: Length, in_inches: bool| {
            let thirty_seconds = (mm(length).abs() / 25.4 * 32.0).round();
            let text = match in_inches {
                true => format!("{} {}/32 in", thirty_seconds as u32 / 32, thirty_seconds as u32 % 32),
                false => format!("{:.6} mm", thirty_seconds * 25.4 / 32.0),
            };
            spelling::parse(&text, LengthRange::General, BareUnit::Millimetre).unwrap()
        };
        let grip = |in_inches| {
            let build = Build {
                across: Diameter(typed(build.across.0, in_inches)),
                felloe_depth: typed(build.felloe_depth, in_inches),
                tyre_thickness: typed(build.tyre_thickness, in_inches),
                dish: typed(build.dish, in_inches),
                ..build
            };
            let draw = Draw(typed(fitting.draw.0, in_inches));
            fit(&build, &Fitting { draw, ..fitting }, &Corner::default()).map(|fit| fit.grip.value)
        };
        match (grip(true), grip(false)) {
            (Ok(one), Ok(other)) => prop_assert!((one - other).abs() <= 1e-4 * one + 1.0, "{one} N, {other} N"),
            (one, other) => prop_assert_eq!(one, other),
        }
    }

    #[test]
    fn a_dished_wheel_goes_further_out_with_slack_feet(build in made(), fitting in fittings()) {
        let with = |feet| fit(&Build { feet, ..build }, &fitting, &Corner::default());
        if let (Ok(sound), Ok(slack)) = (with(Feet::Sound), with(Feet::Slack)) {
            prop_assert!(sound.dish.abs() <= slack.dish.abs() + millimetres(1e-9));
            prop_assert!(sound.dish.value * build.dish.value >= 0.0);
        }
    }
}

#[test]
fn a_wheel_is_reckoned_once_its_sizes_are_said() {
    use crate::wheel::{Felloes, Size, Wheel};
    let said = [
        (Size::Height, 1350.0),
        (Size::Dish, 38.0),
        (Size::TyreWidth, 60.0),
        (Size::TyreThickness, 16.0),
        (Size::FelloeDepth, 90.0),
        (Size::SpokeDepth, 65.0),
    ];
    let mut wheel = Wheel {
        rim: Some(Rim::Sawn),
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    };
    for (size, v) in said {
        assert!(Build::of(&wheel).is_none(), "{size:?}");
        wheel.sizes = wheel.sizes.with(size, Some(millimetres(v)));
    }
    let build = Build::of(&wheel).unwrap();
    assert!(build.check().is_ok());
    assert!(
        (mm(build.nave.0) - 300.0).abs() < 1e-9 && (mm(build.spoke_length()) - 435.0).abs() < 1e-9
    );
    assert!((mm(build.spoke_width) - 45.5).abs() < 1e-9 && build.felloe_width == build.tyre_width);
    let unsaid = Wheel { rim: None, ..wheel };
    assert!(Build::of(&unsaid).is_none());
}

fn refused(build: Build, fitting: Fitting) -> FitRefusal {
    sheet(&build, &fitting).unwrap_err()
}

#[test]
fn what_cannot_be_reckoned_is_refused() {
    let (good, well) = (cart(), fitting(20.0, 6.0));
    assert_eq!(
        refused(Build { spokes: 0, ..good }, well),
        FitRefusal::Spokes(0)
    );
    assert_eq!(
        refused(Build { spokes: 65, ..good }, well),
        FitRefusal::Spokes(65)
    );
    assert_eq!(
        refused(Build { felloes: 0, ..good }, well),
        FitRefusal::Felloes(0)
    );
    assert_eq!(
        refused(good, fitting(0.0, 0.0)),
        FitRefusal::TyreNotSmaller(Draw(millimetres(0.0)))
    );
    assert_eq!(
        refused(good, fitting(-3.0, 0.0)),
        FitRefusal::TyreNotSmaller(Draw(millimetres(-3.0)))
    );
    assert!(matches!(
        refused(good, fitting(f64::NAN, 0.0)),
        FitRefusal::TyreNotSmaller(_)
    ));
    assert!(matches!(
        refused(good, fitting(200.0, 0.0)),
        FitRefusal::DrawTooGreat { .. }
    ));
    assert!(matches!(
        refused(good, fitting(20.0, 28.0)),
        FitRefusal::JointsWiderThanDraw { .. }
    ));
    let nave = Diameter(millimetres(899.0));
    assert!(matches!(
        refused(
            Build {
                nave,
                across: Diameter(millimetres(800.0)),
                ..good
            },
            well
        ),
        FitRefusal::NoRoom(_)
    ));
    let dish = millimetres(299.0);
    let across = Diameter(millimetres(700.0));
    assert!(matches!(
        refused(
            Build {
                dish,
                across,
                ..good
            },
            well
        ),
        FitRefusal::DishBeyondSpokes { .. }
    ));
    let tyre_thickness = millimetres(0.0);
    assert!(matches!(
        refused(
            Build {
                tyre_thickness,
                ..good
            },
            well
        ),
        FitRefusal::Size(_)
    ));
    assert!(season(&Build { spokes: 0, ..good }, &well, &Stand::OpenShed.year()).is_err());
}

/// A hundred millimetres more draw than a stiff wheel can take only stretches the tyre: it ends at what the iron yields
/// at, and the rest of the draw is stretched for good.
#[test]
fn a_tyre_that_yields_holds_what_iron_holds() {
    let stiff = Build {
        felloe_depth: millimetres(200.0),
        felloe_width: millimetres(200.0),
        rim: Rim::Bent,
        felloe_timber: Species::Hickory.into(),
        ..cart()
    };
    let it = fit(&stiff, &fitting(40.0, 0.0), &Corner::default()).unwrap();
    assert!((kn(it.grip) - 275.0 * 0.96).abs() < 1e-6);
    assert!((it.pressed.ratio(Gives::Tyre) - 1.0).abs() < 1e-12);
    assert!(mm(it.stretched) > 20.0 && mm(it.stretched) < 40.0);
}

/// Shoulders that stand off more than the sole comes in never bear, and the rim carries all.
#[test]
fn joints_and_stand_off_close_first() {
    let off = |stand_off| Fitting {
        stand_off: millimetres(stand_off),
        ..fitting(20.0, 6.0)
    };
    let it = fit(&cart(), &off(10.0), &Corner::default()).unwrap();
    assert_eq!(kn(it.spoke), 0.0);
    assert_eq!(mm(it.dish), 0.0);
    assert!(mm(it.off) > 0.0 && (it.grip - it.rim).value.abs() < 1e-6);
    let tight = fit(&cart(), &off(0.0), &Corner::default()).unwrap();
    assert!(kn(tight.spoke) > 1.0 && mm(tight.off) == 0.0 && mm(tight.sunk) > 0.0);
    // The sole comes in by the joints at least.
    assert!(mm(tight.moved) > 6.0 / std::f64::consts::TAU);
}

/// A spoke held at its foot gives 3 E I / L³ sideways, 460.5 N/mm here, and one that keeps its length would swing the rim
/// out by √(d² + 2 r u − u²) − d: with 435 mm and 38 mm of dish, 10.06 mm for the first millimetre that it is moved in.
#[test]
fn the_rim_goes_out_as_leaning_spokes_carry_it() {
    let upright: f64 =
        3.0 * 12_270.0 * (45.0 * 65.0 * 65.0 * 65.0 / 12.0) / (435.0 * 435.0 * 435.0);
    assert!((upright - 460.5).abs() < 0.1);
    let slope = 38.0 / f64::sqrt(435.0 * 435.0 - 38.0 * 38.0);
    for draw in [3.0, 12.0] {
        let it = fit(&cart(), &fitting(draw, 0.0), &Corner::default()).unwrap();
        let goes = slope * (kn(it.spoke) * 1e3 / upright - mm(it.moved));
        assert!(
            (mm(it.dish) - goes).abs() < 1e-6 && goes > 0.5,
            "{} {goes}",
            mm(it.dish)
        );
        let back = Build {
            dish: millimetres(-38.0),
            ..cart()
        };
        let back = fit(&back, &fitting(draw, 0.0), &Corner::default()).unwrap();
        assert!((mm(back.dish) + goes).abs() < 1e-6);
    }
    let moisture = percent(12.0);
    let wheel = super::stiffness::Stiffness::of(&cart(), &Corner::default(), moisture, moisture);
    assert!((wheel.swings(1.0) - 10.0591).abs() < 1e-4);
    // With feet that hold nothing it goes no further than that, however hard it is pushed.
    assert!((wheel.goes_out(1.0, 1e9) - 10.0591).abs() < 1e-4);
}

#[test]
fn a_wheel_held_by_nothing_sideways_snaps() {
    let snaps = |build| {
        fit(&build, &fitting(12.0, 0.0), &Corner::default())
            .unwrap()
            .folds_at
    };
    assert_eq!(snaps(cart()), None);
    let flat = Build {
        dish: millimetres(0.0),
        feet: Feet::Slack,
        ..cart()
    };
    assert_eq!(snaps(flat), None);
    let thin = Build {
        spoke_depth: millimetres(12.0),
        spoke_width: millimetres(60.0),
        dish: millimetres(120.0),
        feet: Feet::Slack,
        ..cart()
    };
    assert!(kn(snaps(thin).unwrap()) > 0.1);
}

#[test]
fn sixteen_corners_are_all_different() {
    let leading = Leading::of(&|corner| {
        Assumption::ALL
            .map(|it| f64::from(corner.of(it) as u8))
            .iter()
            .sum()
    });
    let mut seen = Vec::new();
    leading.each_corner(&mut |corner| seen.push(*corner));
    assert_eq!(seen.len(), 16);
    for (at, corner) in seen.iter().enumerate() {
        assert!(!seen[..at].contains(corner));
    }
}

/// The four that are kept move the grip at least as much as any that is left out, the widest first.
#[test]
fn the_widest_assumption_leads() {
    let (build, fitting) = (cart(), fitting(20.0, 6.0));
    let found = sheet(&build, &fitting).unwrap().leading;
    let grip = |which, level| {
        kn(fit(&build, &fitting, &Corner::default().with(which, level))
            .unwrap()
            .grip)
    };
    let swing = |which| (grip(which, End::High) - grip(which, End::Low)).abs();
    let swings = found.0.map(swing);
    assert!(swings.is_sorted_by(|one, other| one >= other));
    for other in Assumption::ALL {
        assert!(
            found.0.contains(&other) || swing(other) <= swings[3],
            "{other:?}"
        );
    }
    assert_eq!(found.widest(), found.0[0]);
}

/// What the wood holds creeps away, what the iron holds stays: the reserve is the sum of both.
#[test]
fn the_reserve_is_what_empties_the_tyre() {
    let (build, well) = (cart(), fitting(8.0, 0.0));
    let it = after(&build, &well).unwrap();
    assert!(it.left.low < it.left.middle && it.left.middle < it.left.high && it.left.high < 1.0);
    assert!(mm(it.in_iron) > 0.0 && it.in_iron < it.reserve);
    let pull = fit(&build, &well, &Corner::default()).unwrap().grip;
    // A thin ring of 960 mm² holds F C / (E A).
    let thin_ring = pull.value * std::f64::consts::PI * 1366.0 / (210_000.0 * 960.0);
    assert!((mm(it.in_iron) / thin_ring - 1.0).abs() < 0.005);
    // Less draw by the reserve, and the tyre just lies on where no wood has crushed.
    let gentle = fitting(3.0, 0.0);
    let reserve = mm(after(&build, &gentle).unwrap().reserve);
    assert!((reserve - 3.0).abs() < 0.01, "{reserve}");
}

#[test]
fn the_doubt_of_the_draw_stands_apart() {
    let it = sheet(&cart(), &fitting(20.0, 6.0)).unwrap();
    let [low, high] = it.measured;
    assert!(low < it.middle.grip && it.middle.grip < high);
    let sure = Fitting {
        doubt: millimetres(0.0),
        ..fitting(20.0, 6.0)
    };
    let sure = sheet(&cart(), &sure).unwrap();
    assert_eq!(sure.measured, [it.middle.grip; 2]);
    assert_eq!(sure.grip, it.grip);
}

mod cooling;
mod drying;
mod season;
