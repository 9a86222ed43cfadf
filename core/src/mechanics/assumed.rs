//! What is assumed of a wheel because nobody can measure it at the cart, and which end of it is taken.

use crate::quantity::End;

/// Something that nobody measures at the cart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Assumption {
    /// How hard and stiff the nave is on its side grain.
    NaveGrain,
    /// How much of a spoke's section bears at its two shoulders.
    Seats,
    /// How stiff the felloes are along the rim.
    RimStiffness,
    /// What the ends of the felloes bear before they crush.
    RimStrength,
    /// What crushed wood takes on for each further millimetre.
    Crushed,
    /// How much of the measured joint gaps shuts.
    Joints,
    /// When the iron of the tyre begins to stretch for good.
    Iron,
    /// How firmly the feet of the spokes stand in the nave.
    Feet,
    /// How much the timber moves with its moisture.
    Shrinkage,
    /// How far thick timber follows the air through the year.
    Following,
}

impl Assumption {
    /// Every assumption.
    pub const ALL: [Assumption; 10] = [
        Assumption::NaveGrain,
        Assumption::Seats,
        Assumption::RimStiffness,
        Assumption::RimStrength,
        Assumption::Crushed,
        Assumption::Joints,
        Assumption::Iron,
        Assumption::Feet,
        Assumption::Shrinkage,
        Assumption::Following,
    ];
}

/// Which end of each assumption is taken; the middle of all to begin with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Corner([End; Assumption::ALL.len()]);

impl Default for Corner {
    fn default() -> Corner {
        Corner([End::Middle; Assumption::ALL.len()])
    }
}

impl Corner {
    /// Which end of this assumption is taken.
    #[must_use]
    pub fn of(&self, assumption: Assumption) -> End {
        self.0
            .get(assumption as usize)
            .copied()
            .unwrap_or(End::Middle)
    }

    /// The same corner with this end of one assumption.
    #[must_use]
    pub fn with(mut self, assumption: Assumption, level: End) -> Corner {
        if let Some(place) = self.0.get_mut(assumption as usize) {
            *place = level;
        }
        self
    }
}
