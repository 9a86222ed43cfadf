//! The questions of the look-over: what each asks, at which places, and with which keys it is
//! answered. Their rows stand in the sheet.

use super::group::Group;
use super::sheet::{Of, ROWS, Row};
use super::stage::Stage;
use crate::quantity::LengthRange;
use crate::wheel::{Keeper, Place, Tyre, Wheel};

/// A question put to one place of one wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Question {
    /// First look: what keeps the wheel on is there and right.
    FirstKeeper,
    /// First look: the tyre is on and central.
    FirstTyre,
    /// First look: every spoke is whole.
    FirstSpokes,
    /// First look: the dish is the right way, looked at from behind.
    FirstDish,
    /// First look: there is no joint one can see into.
    FirstJoints,
    /// First look: the nave is whole at the bonds.
    FirstNave,
    /// First look: no rot or worm where it has stood.
    FirstRot,
    /// What keeps the wheel on its arm is there.
    KeeperPresent,
    /// It is the right part, not a nail or a bolt in its stead.
    KeeperRight,
    /// It is secured against working out.
    KeeperSecured,
    /// Share of the linch pin that is worn away where it is thinnest.
    KeeperWorn,
    /// How the tyre answers a hammer.
    TyreRing,
    /// Gap between tyre and felloe, wheel lifted, feeler on sound wood.
    TyreGap,
    /// The tyre shifts on the rim when pushed by hand.
    TyreShifts,
    /// The tyre is off-centre on the sole by over a quarter of its width.
    TyreOffCentre,
    /// The tyre is cracked through.
    TyreCracked,
    /// Thickness of iron left, in the hollow of the running face.
    TyreLeft,
    /// The strake over a joint holds.
    Strake,
    /// The strake over a joint is cracked.
    StrakeCracked,
    /// Gap of a felloe joint at the sole, where it meets the tyre.
    JointGap,
    /// Gap of a felloe joint at the belly, on the inside of the rim.
    JointBelly,
    /// Step between the two felloes at a joint.
    FelloeStep,
    /// Crack or shake in a felloe.
    CrackFelloe,
    /// Depth of rot in a felloe.
    RotFelloe,
    /// Moisture of a felloe, as a share of its dry weight.
    Moisture,
    /// Play of a spoke's foot in the nave.
    SpokeFoot,
    /// Play of a spoke's tongue in the felloe.
    SpokeRimEnd,
    /// The spoke is broken.
    SpokeBroken,
    /// Gap between a spoke's shoulder and the belly of the felloe.
    StandOff,
    /// A spoke's tongue stands proud of the sole.
    TongueProud,
    /// Crack or shake in a spoke.
    CrackSpoke,
    /// Depth of rot in a spoke.
    RotSpoke,
    /// The bonds on the nave hold.
    Bonds,
    /// Crack or shake in the nave.
    CrackNave,
    /// Depth of rot in the nave.
    RotNave,
    /// The box moves in the nave.
    BoxMoves,
    /// Distance from the plane of the spokes in the nave out to the plane of the rim's face;
    /// negative when back-dished.
    Dish,
    /// The rim gives in and out by hand.
    DishGives,
    /// How far the rim wanders in and out in one turn.
    RunOut,
    /// How far the rim rises and falls in one turn.
    OutOfRound,
    /// How far the wheel slides along its arm.
    EndPlay,
    /// Lifted, the wheel will not turn by one finger.
    Binds,
    /// How far the rim moves between two hands, top and bottom, from stop to stop.
    Shake,
}

/// The set of places a question is put to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Places {
    /// The wheel as a whole, once.
    Whole,
    /// The nave, once.
    Nave,
    /// Every spoke.
    Spokes,
    /// Every felloe joint.
    Joints,
    /// Every felloe.
    Felloes,
    /// Four or more places round the tyre, over a spoke or between two.
    RoundTheTyre,
}

/// The keys a question is answered with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Pad {
    /// Leaves of a feeler gauge.
    Gauge(LengthRange),
    /// A length that is typed.
    Size(LengthRange),
    /// Tight, just moves, loose; a loose one may be measured.
    Verdict(LengthRange),
    /// Iron fastened to the wood: tight or loose; *not there* is missing.
    Fastening,
    /// Rings, dull, dead.
    Ring,
    /// A crack, or nothing found.
    Crack,
    /// A share that is typed.
    Share,
    /// Yes, no.
    YesNo,
}

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

    /// The group it belongs to.
    pub fn group(self) -> Group {
        self.row().map_or(Group::Whole, |row| row.group)
    }

    /// Where it is answered by yes or no, whether *yes* is the sound answer: it asks for what should
    /// be there. Otherwise it asks for a fault.
    pub fn sound_is_yes(self) -> bool {
        matches!(self.group(), Group::FirstLook | Group::Keeper)
    }

    /// Whether it is asked of this wheel at all. What has not been said of a wheel yet may be so.
    pub fn asked_of(self, wheel: &Wheel) -> bool {
        let tyre = |of: &[Tyre]| wheel.tyre.is_none_or(|tyre| of.contains(&tyre));
        match self.row().map_or(Of::All, |row| row.of) {
            Of::All => true,
            Of::Tyred => wheel.tyre != Some(Tyre::Bare),
            Of::Round => tyre(&[Tyre::Hoop, Tyre::Rubber]),
            Of::Hoop => tyre(&[Tyre::Hoop]),
            Of::Strakes => wheel.tyre == Some(Tyre::Strakes),
            Of::Pin => wheel.keeper.is_none_or(|keeper| keeper == Keeper::LinchPin),
        }
    }

    /// Whether it can be asked at this stage of the work: of keeper and arm only on the arm, of the
    /// tyre only while it is on, and the first look only before the wheel is taken off.
    pub fn asked_when(self, stage: Stage) -> bool {
        let off = matches!(stage, Stage::OffTheArm | Stage::TyreOff);
        match self.group() {
            Group::FirstLook => stage == Stage::OnTheArm,
            Group::Keeper => !off,
            Group::Tyre => stage != Stage::TyreOff,
            _ => !(off && matches!(self, Question::EndPlay | Question::Binds | Question::Shake)),
        }
    }

    /// Whether it can be put to a place of this sort.
    pub fn fits(self, place: Place) -> bool {
        match self.places() {
            Places::Whole => place == Place::Whole,
            Places::Nave => place == Place::Nave,
            Places::Spokes => matches!(place, Place::Spoke(_)),
            Places::Joints => matches!(place, Place::Joint(_)),
            Places::Felloes => matches!(place, Place::Felloe(_)),
            Places::RoundTheTyre => matches!(place, Place::Spoke(_) | Place::Between(_)),
        }
    }

    /// The places of this wheel it is put to, in order. Round the tyre these are four places spread
    /// as evenly as the spokes allow; more may be taken.
    pub fn places_on(self, wheel: &Wheel) -> Vec<Place> {
        let (spokes, felloes) = (wheel.felloes.spokes(), wheel.felloes.felloes());
        match self.places() {
            Places::Whole => vec![Place::Whole],
            Places::Nave => vec![Place::Nave],
            Places::Spokes => (1..=spokes).map(Place::Spoke).collect(),
            Places::Joints => (1..=felloes).map(Place::Joint).collect(),
            Places::Felloes => (1..=felloes).map(Place::Felloe).collect(),
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
    use super::{Pad, Question};
    use crate::survey::{Group, Stage};
    use crate::wheel::{Felloes, Keeper, Place, Tyre, Wheel};
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

    /// The order of the rows, of the enum and of the groups is one.
    #[test]
    fn questions_are_asked_group_by_group_in_their_own_order() {
        let all: Vec<_> = Question::all().collect();
        assert_eq!(all.len(), 43);
        assert!(all.is_sorted() && all.iter().map(|question| question.group()).is_sorted());
        for group in Group::ALL {
            assert!(all.iter().any(|question| question.group() == group));
        }
    }

    fn asked(tyre: Option<Tyre>, keeper: Option<Keeper>) -> Vec<Question> {
        let wheel = Wheel {
            tyre,
            keeper,
            ..Wheel::of(Felloes::even(12, 6).unwrap())
        };
        Question::all()
            .filter(|question| !question.asked_of(&wheel))
            .collect()
    }

    #[test]
    fn a_wheel_is_not_asked_for_what_it_has_not() {
        use Question::*;
        let hoop = [TyreRing, TyreGap, TyreShifts, TyreLeft];
        let round = [
            TyreRing,
            TyreGap,
            TyreShifts,
            TyreOffCentre,
            TyreCracked,
            TyreLeft,
        ];
        let strakes = [Strake, StrakeCracked];
        assert_eq!(asked(None, None), strakes);
        assert_eq!(asked(Some(Tyre::Hoop), None), strakes);
        assert_eq!(
            asked(Some(Tyre::Rubber), None),
            [&hoop[..], &strakes].concat()
        );
        assert_eq!(asked(Some(Tyre::Strakes), None), round);
        let bare = [&[FirstTyre][..], &round, &strakes].concat();
        assert_eq!(asked(Some(Tyre::Bare), None), bare);
        assert_eq!(asked(None, Some(Keeper::LinchPin)), strakes);
        for keeper in [Keeper::Nut, Keeper::Collinge, Keeper::Mail] {
            assert_eq!(
                asked(None, Some(keeper)),
                [&[KeeperWorn][..], &strakes].concat()
            );
        }
    }

    #[test]
    fn what_cannot_be_taken_at_a_stage_is_not_asked_there() {
        use Question::*;
        let at = |stage| -> Vec<Question> {
            let not = |question: &Question| !question.asked_when(stage);
            Question::all().filter(not).collect()
        };
        let of = |group| Question::all().filter(move |question| question.group() == group);
        let first: Vec<_> = of(Group::FirstLook).collect();
        let off: Vec<_> = first.iter().copied().chain(of(Group::Keeper)).collect();
        assert_eq!(at(Stage::OnTheArm), []);
        assert_eq!(at(Stage::AfterTyring), first);
        let arm = [EndPlay, Binds, Shake];
        assert_eq!(at(Stage::OffTheArm), [&off[..], &arm].concat());
        let tyre: Vec<_> = of(Group::Tyre).collect();
        assert_eq!(at(Stage::TyreOff), [&off[..], &tyre, &arm].concat());
    }

    #[test]
    fn yes_is_the_sound_answer_where_what_should_be_there_is_asked_for() {
        let yes = Question::all().filter(|it| it.pad() == Pad::YesNo && it.sound_is_yes());
        assert_eq!(yes.last(), Some(Question::KeeperSecured));
        assert!(!Question::TyreShifts.sound_is_yes());
    }
}
