//! The questions of the look-over: what each asks, at which places, and with which keys it is
//! answered. One row a question.

use crate::quantity::LengthRange;
use crate::wheel::{Place, Tyre, Wheel};

/// A question put to one place of one wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Question {
    /// What keeps the wheel on its arm is there.
    KeeperPresent,
    /// It is the right part, not a nail or a bolt in its stead.
    KeeperRight,
    /// It is secured against working out.
    KeeperSecured,
    /// Gap between tyre and felloe, wheel lifted, feeler on sound wood.
    TyreGap,
    /// The tyre shifts on the rim when pushed by hand.
    TyreShifts,
    /// Gap of a felloe joint at the sole, where it meets the tyre.
    JointGap,
    /// Step between the two felloes at a joint.
    FelloeStep,
    /// Play of a spoke's foot in the nave.
    SpokeFoot,
    /// Play of a spoke's tongue in the felloe.
    SpokeRimEnd,
    /// The spoke is broken.
    SpokeBroken,
}

/// The set of places a question is put to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Places {
    /// The wheel as a whole, once.
    Whole,
    /// Every spoke.
    Spokes,
    /// Every felloe joint.
    Joints,
    /// Four or more places round the tyre, over a spoke or between two.
    RoundTheTyre,
}

/// The keys a question is answered with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Pad {
    /// Leaves of a feeler gauge.
    Gauge(LengthRange),
    /// Tight, just moves, loose; a loose one may be measured.
    Verdict(LengthRange),
    /// Yes, no.
    YesNo,
}

struct Row {
    question: Question,
    code: &'static str,
    places: Places,
    pad: Pad,
}

const ROWS: [Row; 10] = [
    Row {
        question: Question::KeeperPresent,
        code: "keeper-present",
        places: Places::Whole,
        pad: Pad::YesNo,
    },
    Row {
        question: Question::KeeperRight,
        code: "keeper-right",
        places: Places::Whole,
        pad: Pad::YesNo,
    },
    Row {
        question: Question::KeeperSecured,
        code: "keeper-secured",
        places: Places::Whole,
        pad: Pad::YesNo,
    },
    Row {
        question: Question::TyreGap,
        code: "tyre-gap",
        places: Places::RoundTheTyre,
        pad: Pad::Gauge(LengthRange::FeelerGap),
    },
    Row {
        question: Question::TyreShifts,
        code: "tyre-shifts",
        places: Places::Whole,
        pad: Pad::YesNo,
    },
    Row {
        question: Question::JointGap,
        code: "joint-gap",
        places: Places::Joints,
        pad: Pad::Gauge(LengthRange::JointGap),
    },
    Row {
        question: Question::FelloeStep,
        code: "felloe-step",
        places: Places::Joints,
        pad: Pad::Gauge(LengthRange::JointGap),
    },
    Row {
        question: Question::SpokeFoot,
        code: "spoke-foot",
        places: Places::Spokes,
        pad: Pad::Verdict(LengthRange::SpokePlay),
    },
    Row {
        question: Question::SpokeRimEnd,
        code: "spoke-rim-end",
        places: Places::Spokes,
        pad: Pad::Verdict(LengthRange::SpokePlay),
    },
    Row {
        question: Question::SpokeBroken,
        code: "spoke-broken",
        places: Places::Spokes,
        pad: Pad::YesNo,
    },
];

impl Question {
    /// Every question, in the order they are asked.
    pub fn all() -> impl Iterator<Item = Question> {
        ROWS.iter().map(|row| row.question)
    }

    fn row(self) -> Option<&'static Row> {
        ROWS.iter().find(|row| row.question == self)
    }

    /// The word that stands for this question in a slot.
    pub fn code(self) -> &'static str {
        self.row().map_or("", |row| row.code)
    }

    /// The question a code stands for.
    pub fn from_code(code: &str) -> Option<Question> {
        ROWS.iter()
            .find(|row| row.code == code)
            .map(|row| row.question)
    }

    /// The places it is put to.
    pub fn places(self) -> Places {
        self.row().map_or(Places::Whole, |row| row.places)
    }

    /// The keys it is answered with.
    pub fn pad(self) -> Pad {
        self.row().map_or(Pad::YesNo, |row| row.pad)
    }

    /// Whether it is asked of this wheel at all: a gap under the tyre and a shift of it belong to
    /// hoops only.
    pub fn asked_of(self, wheel: &Wheel) -> bool {
        match self {
            Question::TyreGap | Question::TyreShifts => {
                matches!(wheel.tyre, None | Some(Tyre::Hoop))
            }
            _ => true,
        }
    }

    /// Whether it can be put to a place of this sort.
    pub fn fits(self, place: Place) -> bool {
        match self.places() {
            Places::Whole => place == Place::Whole,
            Places::Spokes => matches!(place, Place::Spoke(_)),
            Places::Joints => matches!(place, Place::Joint(_)),
            Places::RoundTheTyre => matches!(place, Place::Spoke(_) | Place::Between(_)),
        }
    }

    /// The places of this wheel it is put to, in order. Round the tyre these are four places spread
    /// as evenly as the spokes allow; more may be taken.
    pub fn places_on(self, wheel: &Wheel) -> Vec<Place> {
        let spokes = wheel.felloes.spokes();
        match self.places() {
            Places::Whole => vec![Place::Whole],
            Places::Spokes => (1..=spokes).map(Place::Spoke).collect(),
            Places::Joints => (1..=wheel.felloes.felloes()).map(Place::Joint).collect(),
            Places::RoundTheTyre => {
                let mut places: Vec<Place> = (0..4)
                    .map(|quarter| Place::Between(1 + quarter * spokes / 4))
                    .collect();
                places.dedup();
                places
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Question;
    use crate::wheel::{Felloes, Place, Tyre, Wheel};
    use std::collections::BTreeSet;

    #[test]
    fn every_question_has_one_row_and_a_code_of_its_own() {
        let codes: BTreeSet<_> = Question::all().map(Question::code).collect();
        assert_eq!(codes.len(), Question::all().count());
        for question in Question::all() {
            assert_eq!(Question::from_code(question.code()), Some(question));
        }
    }

    #[test]
    fn it_is_put_to_places_it_fits_and_the_wheel_has() {
        for (spokes, felloes) in [(3, 1), (10, 5), (12, 6), (14, 7), (16, 8), (64, 2)] {
            let wheel = Wheel::of(Felloes::even(spokes, felloes).unwrap());
            for question in Question::all() {
                for place in question.places_on(&wheel) {
                    assert!(
                        question.fits(place) && wheel.has(place),
                        "{question:?} {place:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn four_places_round_the_tyre_are_a_quarter_apart() {
        let wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        let places = Question::TyreGap.places_on(&wheel);
        assert_eq!(
            places,
            [
                Place::Between(1),
                Place::Between(4),
                Place::Between(7),
                Place::Between(10)
            ]
        );
    }

    #[test]
    fn a_straked_wheel_is_not_asked_for_the_gap_under_a_hoop() {
        let mut wheel = Wheel::of(Felloes::even(12, 6).unwrap());
        assert!(Question::TyreGap.asked_of(&wheel));
        wheel.tyre = Some(Tyre::Strakes);
        assert!(!Question::TyreGap.asked_of(&wheel));
    }
}
