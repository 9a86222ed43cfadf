//! Whether the vehicle can be lifted without danger: looked for once, before any wheel is raised.

use super::question::Question;
use super::stage::Stage;

/// Whether it is safe to lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SafeToLift {
    /// It is.
    Yes,
    /// It is not.
    No,
    /// It cannot be seen, so nothing is lifted.
    CannotSee,
}

impl SafeToLift {
    /// Every answer.
    pub const ALL: [SafeToLift; 3] = [SafeToLift::Yes, SafeToLift::No, SafeToLift::CannotSee];

    /// The word that stands for this answer on paper.
    pub fn code(self) -> &'static str {
        match self {
            SafeToLift::Yes => "yes",
            SafeToLift::No => "no",
            SafeToLift::CannotSee => "cannot-see",
        }
    }

    /// The answer a code stands for.
    pub fn from_code(code: &str) -> Option<SafeToLift> {
        SafeToLift::ALL.into_iter().find(|it| it.code() == code)
    }
}

/// Whether the wheel is lifted to answer this: on its arm it is, for whatever is felt by moving or
/// turning it; off its arm nothing is lifted.
pub fn is_lifted_for(question: Question, stage: Stage) -> bool {
    let on_the_arm = matches!(stage, Stage::OnTheArm | Stage::AfterTyring);
    on_the_arm
        && matches!(
            question,
            Question::TyreGap
                | Question::TyreShifts
                | Question::Strake
                | Question::SpokeFoot
                | Question::SpokeRimEnd
                | Question::BoxMoves
                | Question::Dish
                | Question::DishGives
                | Question::RunOut
                | Question::OutOfRound
                | Question::EndPlay
                | Question::Binds
                | Question::Shake
        )
}

#[cfg(test)]
mod tests {
    use super::{SafeToLift, is_lifted_for};
    use crate::survey::{Group, Question, Stage};

    #[test]
    fn a_code_leads_back_to_its_answer() {
        for it in SafeToLift::ALL {
            assert_eq!(SafeToLift::from_code(it.code()), Some(it));
        }
        assert_eq!(SafeToLift::from_code("perhaps"), None);
    }

    #[test]
    fn nothing_is_lifted_for_a_look_or_off_the_arm() {
        let lifted = |stage| Question::all().filter(move |it| is_lifted_for(*it, stage));
        assert_eq!(lifted(Stage::OnTheArm).count(), 13);
        assert!(lifted(Stage::OnTheArm).eq(lifted(Stage::AfterTyring)));
        assert!(lifted(Stage::OnTheArm).all(|it| it.group() != Group::FirstLook));
        assert_eq!(
            lifted(Stage::OffTheArm)
                .chain(lifted(Stage::TyreOff))
                .count(),
            0
        );
    }
}
