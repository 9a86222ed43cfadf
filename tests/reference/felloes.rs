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
