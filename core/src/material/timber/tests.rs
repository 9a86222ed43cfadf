//! What every timber keeps to, whatever its numbers.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;
use crate::material::moisture::MoistureContent;
use crate::quantity::End;

const LEVELS: [End; 3] = End::ALL;

fn percent(v: f64) -> MoistureContent {
    MoistureContent::from_percent(v).unwrap()
}

#[test]
fn every_timber_has_a_row_of_its_own() {
    let codes: BTreeSet<_> = Species::ALL.map(Species::code).into();
    assert_eq!(codes.len(), Species::ALL.len());
    for species in Species::ALL {
        assert_eq!(Species::from_code(species.code()), Some(species));
    }
    assert_eq!(Species::Hickory.code(), "hickory");
    assert_eq!(Species::EnglishElm.code(), "english-elm");
    assert_eq!(Species::from_code("teak"), None);
}

#[test]
fn every_spread_is_in_order_and_has_a_source() {
    for species in Species::ALL {
        let (row, timber) = (species.row(), Timber::from(species));
        let spreads = [
            row.radial,
            row.tangential,
            row.along,
            timber.bending(),
            timber.modulus(),
            timber.crushing(),
            timber.side_grain(),
            timber.across(),
        ];
        for Band { low, middle, high } in spreads {
            assert!(0.0 < low && low <= middle && middle <= high, "{species:?}");
        }
        assert!(row.along.high < row.radial.low && row.radial.low < row.tangential.low);
        assert!(!timber.sources().is_empty());
    }
}

#[test]
fn whoever_has_the_elm_in_hand_says_how_hard_it_is() {
    let elm = |grain| {
        Timber {
            species: Species::WychElm,
            grain,
        }
        .side_grain()
    };
    let [soft, medium, hard] = Grain::ALL.map(|grain| elm(Some(grain)).middle);
    assert!(soft < medium && medium < hard);
    let (said, unsaid) = (elm(Some(Grain::Medium)), elm(None));
    assert!(said.high - said.low < unsaid.high - unsaid.low);
    // Of other kinds it is printed, and nothing is said.
    let ash = |grain| {
        Timber {
            species: Species::WhiteAsh,
            grain,
        }
        .side_grain()
    };
    assert_eq!(ash(Some(Grain::Hard)), ash(None));
}

#[test]
fn wet_wood_is_weaker_down_to_a_floor() {
    assert!((drier_is_stronger(percent(12.0)) - 1.0).abs() < 1e-12);
    let exact = |m: f64| (0.63 * (12.0 - m) / 13.0).exp();
    for m in [4.0, 8.0, 16.0, 20.0, 25.0] {
        assert!(
            (drier_is_stronger(percent(m)) / exact(m) - 1.0).abs() < 0.007,
            "{m}"
        );
    }
    assert_eq!(
        drier_is_stronger(percent(25.0)),
        drier_is_stronger(percent(60.0))
    );
}

fn species() -> impl Strategy<Value = Species> {
    proptest::sample::select(Species::ALL.as_slice())
}

proptest! {
    #[test]
    fn wetter_wood_is_never_smaller(kind in species(), level in proptest::sample::select(LEVELS.as_slice()),
            a in 0.0..60.0_f64, b in 0.0..60.0_f64) {
        let (dry, wet) = (percent(a.min(b)), percent(a.max(b)));
        for movement in [kind.radial(level), kind.tangential(level), kind.along(level), kind.across(level)] {
            let (swells, shrinks) = (movement.between(dry, wet), movement.between(wet, dry));
            prop_assert!(swells.of_one() >= 0.0 && shrinks.of_one() <= 0.0);
            prop_assert!(swells.of_one() < 0.2);
        }
    }

    #[test]
    fn no_size_jumps_where_the_equations_meet(kind in species(), edge in proptest::sample::select(vec![6.0, 14.0, 30.0]), far in 0.0..60.0_f64) {
        let of = |m: f64| kind.tangential(End::Middle).between(percent(far), percent(m)).of_one();
        prop_assert!((of(edge - 1e-6) - of(edge + 1e-6)).abs() < 1e-7);
    }

    #[test]
    fn above_saturation_nothing_moves(kind in species(), a in 30.0..60.0_f64, b in 30.0..60.0_f64) {
        prop_assert_eq!(kind.tangential(End::High).between(percent(a), percent(b)).of_one(), 0.0);
    }

    #[test]
    fn a_steeper_grain_never_bears_more(along in 10.0..100.0_f64, part in 0.01..1.0_f64, a in 0.0..1.0_f64, b in 0.0..1.0_f64) {
        let of = |sin2| hankinson(along, along * part, sin2);
        prop_assert!(of(a.max(b)) <= of(a.min(b)) + 1e-9);
        prop_assert!(of(a) <= along + 1e-9 && of(a) >= along * part - 1e-9);
    }
}
