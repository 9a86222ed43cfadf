//! How many felloes go with how many spokes.

use cartside_core::quantity::length::to_paper_mm;
use cartside_core::quantity::range::LengthRange;
use cartside_core::quantity::spelling::{BareUnit, parse};
use cartside_core::survey::Question;
use cartside_core::wheel::{Felloes, Place, Wheel};

/// Two spokes to a felloe, 12 to 6, 14 to 7 and 16 to 8: F. A. Griffiths, *The Artillerist's
/// Manual*, "Carriages"; A. B. Dyer, *Handbook for Light Artillery*, ch. IV. A joint then stands
/// half-way between two spokes, so that no felloe ends at a tongue.
#[test]
fn two_spokes_to_a_felloe() {
    for (spokes, felloes) in [(12, 6), (14, 7), (16, 8)] {
        let wheel = Wheel::of(Felloes::even(spokes, felloes).unwrap());
        assert_eq!(wheel.felloes.carried(), vec![2; usize::from(felloes)]);
        for joint in 1..=felloes {
            let joint_at = wheel.turn(Place::Joint(joint)).unwrap();
            let next = wheel.turn(Place::Spoke(2 * joint - 1)).unwrap();
            let half_a_space = 0.5 / f64::from(spokes);
            assert!(
                (next - joint_at - half_a_space).abs() < 1e-12,
                "joint {joint}"
            );
        }
    }
}

/// The Archibald wheel: 57¾ in across, tyre 2¾ by ½ in, 16 spokes, 8 felloes (Dyer, *Handbook for
/// Light Artillery*, ch. IV).
#[test]
fn the_archibald_wheel_can_be_described_and_asked_about() {
    let wheel = Wheel::of(Felloes::even(16, 8).unwrap());
    let asked = |question: Question| question.places_on(&wheel).len();
    assert_eq!(asked(Question::SpokeFoot), 16);
    assert_eq!(asked(Question::JointGap), 8);
    for (text, range, mm) in [
        ("57 3/4 in", LengthRange::WheelDiameter, 1466.85),
        ("2 3/4 in", LengthRange::TyreWidth, 69.85),
        ("1/2 in", LengthRange::TyreThickness, 12.7),
    ] {
        let length = parse(text, range, BareUnit::Millimetre).unwrap();
        assert_eq!(to_paper_mm(length), mm);
    }
}

/// Fourteen spokes in a fore and sixteen in a hind wheel of heavy American work, two fewer in light (*Hints to
/// Horse-keepers*, "Carriages: construction"), and a bent rim of two half circles (the standard artillery wheel of the
/// United States Army, 1917, of which the rim was of eight sawn felloes or two bent).
#[test]
fn the_wheels_of_heavy_and_light_work_can_be_described() {
    for spokes in [16, 14, 12] {
        let sawn = Felloes::even(spokes, spokes / 2).unwrap();
        assert_eq!((sawn.spokes(), sawn.felloes()), (spokes, spokes / 2));
        let bent = Felloes::even(spokes, 2).unwrap();
        assert_eq!(Question::JointGap.places_on(&Wheel::of(bent)).len(), 2);
    }
}

/// The heights of wheels as printed, from least to most: English carriages of 1881 (J. W. Burgess, *A Practical Treatise
/// on Coach-Building*): two-wheelers 3 ft to 4 ft 6 in, four-wheelers 2 ft to 3 ft 8 in before and 3 ft to 4 ft 8 in
/// behind; British ordnance about 1810 (*British Encyclopedia*, "Wheel"): 3 ft to 5 ft 8 in.
#[test]
fn every_printed_height_can_be_said() {
    for (text, mm) in [
        ("2 ft", 609.6),
        ("3 ft", 914.4),
        ("3 ft 8 in", 1117.6),
        ("4 ft 6 in", 1371.6),
        ("4 ft 8 in", 1422.4),
        ("5 ft 8 in", 1727.2),
    ] {
        let height = parse(text, LengthRange::WheelDiameter, BareUnit::Millimetre).unwrap();
        assert_eq!(to_paper_mm(height), mm, "{text}");
    }
}

/// Strakes are nailed each over one joint, from the middle of one felloe to the middle of the next, six to a wheel of six
/// felloes: common practice, no source.
#[test]
fn a_strake_lies_over_each_joint() {
    use cartside_core::wheel::Tyre;
    let wheel = Wheel {
        tyre: Some(Tyre::Strakes),
        ..Wheel::of(Felloes::even(12, 6).unwrap())
    };
    assert!(Question::Strake.asked_of(&wheel));
    assert_eq!(
        Question::Strake.places_on(&wheel),
        Question::JointGap.places_on(&wheel)
    );
}
