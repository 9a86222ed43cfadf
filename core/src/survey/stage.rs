//! How far the wheel has been taken apart when it is examined.

/// The stage of an examination, in the order of the work.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// The wheel is on its arm, standing or lifted. What is not said is this.
    #[default]
    OnTheArm,
    /// The wheel is off its arm, the tyre on.
    OffTheArm,
    /// The tyre is off.
    TyreOff,
    /// The tyre is on again: the proof, with which the next history begins.
    AfterTyring,
}

impl Stage {
    /// Every stage, in the order of the work.
    pub const ALL: [Stage; 4] = [
        Stage::OnTheArm,
        Stage::OffTheArm,
        Stage::TyreOff,
        Stage::AfterTyring,
    ];

    /// The word that stands for this stage on paper.
    pub fn code(self) -> &'static str {
        match self {
            Stage::OnTheArm => "on-the-arm",
            Stage::OffTheArm => "off-the-arm",
            Stage::TyreOff => "tyre-off",
            Stage::AfterTyring => "after-tyring",
        }
    }

    /// The stage a code stands for.
    pub fn from_code(code: &str) -> Option<Stage> {
        Stage::ALL.into_iter().find(|stage| stage.code() == code)
    }
}

#[cfg(test)]
mod tests {
    use super::Stage;

    #[test]
    fn a_code_leads_back_to_its_stage() {
        for stage in Stage::ALL {
            assert_eq!(Stage::from_code(stage.code()), Some(stage));
        }
        assert_eq!(Stage::from_code("in-the-fire"), None);
    }
}
