//! What the wheel turns on and what keeps it there.

/// The arm that the nave's box turns on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arm {
    /// Wood, plated with iron or in a skein.
    Wood,
    /// Forged iron or steel.
    Iron,
}

impl Arm {
    /// Both arms.
    pub const ALL: [Arm; 2] = [Arm::Wood, Arm::Iron];

    /// The word that stands for this arm on paper.
    pub fn code(self) -> &'static str {
        match self {
            Arm::Wood => "wood",
            Arm::Iron => "iron",
        }
    }

    /// The arm a code stands for.
    pub fn from_code(code: &str) -> Option<Arm> {
        Arm::ALL.into_iter().find(|arm| arm.code() == code)
    }
}

/// What keeps the wheel on its arm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Keeper {
    /// A pin through the end of the arm.
    LinchPin,
    /// A nut on the arm, held by a cotter or by its left or right thread.
    Nut,
    /// Collinge's axle: two nuts of opposite thread, a cotter and an oil cap.
    Collinge,
    /// The mail axle: a plate behind the nave held by three bolts through it.
    Mail,
}

impl Keeper {
    /// Every keeper, in the order they are offered.
    pub const ALL: [Keeper; 4] = [
        Keeper::LinchPin,
        Keeper::Nut,
        Keeper::Collinge,
        Keeper::Mail,
    ];

    /// The word that stands for this keeper on paper.
    pub fn code(self) -> &'static str {
        match self {
            Keeper::LinchPin => "linch-pin",
            Keeper::Nut => "nut",
            Keeper::Collinge => "collinge",
            Keeper::Mail => "mail",
        }
    }

    /// The keeper a code stands for.
    pub fn from_code(code: &str) -> Option<Keeper> {
        Keeper::ALL.into_iter().find(|keeper| keeper.code() == code)
    }
}

#[cfg(test)]
mod tests {
    use super::{Arm, Keeper};

    #[test]
    fn codes_lead_back() {
        for arm in Arm::ALL {
            assert_eq!(Arm::from_code(arm.code()), Some(arm));
        }
        for keeper in Keeper::ALL {
            assert_eq!(Keeper::from_code(keeper.code()), Some(keeper));
        }
        assert_eq!(Keeper::from_code("nail"), None);
    }
}
