//! Printed facts beside the house limits that touch them: which is which, and where they differ.
//!
//! No printed limit in figures was found for the gap of a joint, a loose tyre, end play, wobble, the wear of a box or
//! the least thickness of a tyre. The house limits are common practice, no source; these tests fail when they change, so
//! that what is said here is looked at again.

use cartside_core::diagnosis::{Grade, Origin, house_limits};
use cartside_core::quantity::range::LengthRange;
use cartside_core::survey::{Answer, Question, Ring};
use cartside_core::wheel::{Place, Size, Sizes, Wheel};

use crate::judged::{findings, length, share, wheel};

fn worst(wheel: &Wheel, readings: &[(Question, Place, Answer)]) -> Option<Grade> {
    findings(wheel, readings)
        .first()
        .map(|finding| finding.grade)
}

/// Whoever finds a printed limit writes it into the table with its source, and then this fails.
#[test]
fn no_row_claims_a_printed_source() {
    assert!(house_limits().iter().all(|row| row.origin == Origin::House));
}

fn joint(text: &str) -> Option<Grade> {
    let gap = length(text, LengthRange::JointGap);
    worst(&wheel(), &[(Question::JointGap, Place::Joint(2), gap)])
}

/// Printed: of a new farm wagon's rim all joints close but one, which stands open about ⅛ in until the tyre closes it
/// (M. T. Richardson, *Practical Carriage Building*, vol. 1, 1891, "Wheel making"). House: 2 mm at all joints together is
/// light work only. They differ: the house's is for a wheel with its tyre on, the printed one for a rim without.
#[test]
fn a_joint_left_open_for_the_tyre_is_no_joint_to_drive_on() {
    assert_eq!(joint("1/8 in"), Some(Grade::LightWorkOnly));
}

/// Printed: a joint that can be seen open calls for the tyre to be contracted at once, or the wheel is spoilt (*The Book
/// of the Horse*, p. 548). House: under 2 mm it is a note, which proposes no standing. They differ: the house is the
/// kinder.
#[test]
fn an_open_joint_is_a_note_to_the_house_and_a_call_for_the_smith_in_print() {
    assert_eq!(joint("1 mm"), Some(Grade::Note));
    assert_eq!(joint("2 mm"), Some(Grade::LightWorkOnly));
}

/// Printed: a tongue stops 1/16 in short of the sole, so that the tyre bears on the felloe (Richardson, as above, "Wagon
/// wheels"); ends left proud are the surest way to too much dish. House: a proud tongue is a note, and how far short of
/// the sole one stops is not asked.
#[test]
fn a_proud_tongue_is_a_note() {
    let proud = [(Question::TongueProud, Place::Spoke(3), Answer::Yes)];
    assert_eq!(worst(&wheel(), &proud), Some(Grade::Note));
    let short = [(Question::TongueProud, Place::Spoke(3), Answer::No)];
    assert_eq!(worst(&wheel(), &short), None);
}

/// Printed: a coach's tyre is made no thinner than ⅝ in for town and ¾ in for travelling (*The Traveller's Oracle*, 1827,
/// "The Wheels"); how thin it may wear is not printed. House: a note under 8 mm, keep empty under 5 mm; and by what it
/// was as new. A new tyre of either sort is no finding; half of ⅝ in is light work only.
#[test]
fn a_new_coach_tyre_is_thick_enough_for_the_house() {
    let left = |new: &str, left: &str| {
        let range = LengthRange::TyreThickness;
        let Answer::Length(as_new) = length(new, range) else {
            panic!("a length");
        };
        let sizes = Sizes::default().with(Size::TyreThickness, Some(as_new.value()));
        let wheel = Wheel { sizes, ..wheel() };
        worst(
            &wheel,
            &[(Question::TyreLeft, Place::Between(1), length(left, range))],
        )
    };
    assert_eq!(left("5/8 in", "5/8 in"), None);
    assert_eq!(left("3/4 in", "3/4 in"), None);
    assert_eq!(left("5/8 in", "5/16 in"), Some(Grade::LightWorkOnly));
    assert_eq!(left("5/8 in", "3/16 in"), Some(Grade::KeepEmpty));
}

/// Printed: a tyre that rings is tight, one that answers dull is loose and is to be set again (H. Andler, "Buying a used
/// horse-drawn vehicle", *Rural Heritage*, 1997). House: dull at a place is a note, dead all round is keep empty. They
/// differ: one dull place is to the house no more than a note.
#[test]
fn a_tyre_that_thuds() {
    let all_round = |sound| {
        let ring = |n| (Question::TyreRing, Place::Between(n), Answer::Ring(sound));
        [1, 4, 7, 10].map(ring)
    };
    assert_eq!(worst(&wheel(), &all_round(Ring::Rings)), None);
    assert_eq!(worst(&wheel(), &all_round(Ring::Dull)), Some(Grade::Note));
    assert_eq!(
        worst(&wheel(), &all_round(Ring::Dead)),
        Some(Grade::KeepEmpty)
    );
}

/// Printed: wood stored outdoors under cover comes to 12 to 14 % in the wet west of Oregon, 8 to 10 % in the dry east
/// (Oregon State University Extension, EM 8612). House: a note at 10 % or less and at 18 % or more. They differ: what is
/// usual in a dry country is noted by the house, which is of a damp one.
#[test]
fn moisture_of_wood_under_cover() {
    let at = |moist| {
        worst(
            &wheel(),
            &[(Question::Moisture, Place::Felloe(1), share(moist))],
        )
    };
    for damp in ["12", "13", "14"] {
        assert_eq!(at(damp), None, "{damp}");
    }
    for dry in ["8", "9", "10"] {
        assert_eq!(at(dry), Some(Grade::Note), "{dry}");
    }
}
