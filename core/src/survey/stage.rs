//! How far the wheel is taken down while it is looked at, which decides what can be asked.

/// A stage of the work on one wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// On its arm, standing or lifted.
    OnTheArm,
    /// Off its arm, the tyre on.
    OffTheArm,
    /// The tyre off, in the shop.
    TyreOff,
    /// Tyred again and back on its arm: the proof.
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

    /// The word that stands for this stage in the state of a page.
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
    }
}
