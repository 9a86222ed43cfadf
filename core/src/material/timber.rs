//! The timbers of wheels: how they shrink and what they bear. Strains are parts of one, stresses in MPa, for small
//! clear pieces at 12 % of moisture; along is with the grain, radial and tangential are across it.

mod rows;
mod movement;
mod strength;

pub use movement::Movement;
pub use rows::Row;
pub use strength::{drier_is_stronger, hankinson, sin_squared};

use super::source::Source;
use crate::quantity::Band;

/// A kind of timber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Species {
    /// American white ash, *Fraxinus americana*.
    WhiteAsh,
    /// European ash, *Fraxinus excelsior*.
    EuropeanAsh,
    /// American elm, *Ulmus americana*.
    AmericanElm,
    /// Rock elm, *Ulmus thomasii*.
    RockElm,
    /// English elm, *Ulmus procera*.
    EnglishElm,
    /// Wych elm, *Ulmus glabra*.
    WychElm,
    /// American white oak, *Quercus alba*.
    WhiteOak,
    /// Northern red oak, *Quercus rubra*.
    RedOak,
    /// English oak, *Quercus robur*.
    EnglishOak,
    /// American beech, *Fagus grandifolia*.
    AmericanBeech,
    /// European beech, *Fagus sylvatica*.
    EuropeanBeech,
    /// The true hickories, *Carya*.
    Hickory,
}

/// How hard European elm is on its side grain, of which nothing printed was found: whoever has the wood in hand says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Grain {
    /// As American elm.
    Soft,
    /// Between American elm and rock elm.
    Medium,
    /// As rock elm.
    Hard,
}

/// A kind of timber, and what was said of its side grain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Timber {
    /// The kind.
    pub species: Species,
    /// How hard its side grain is, where someone said so; it counts for European elms alone.
    pub grain: Option<Grain>,
}

/// How far single pieces stray from the mean of their kind, as the share that is one standard deviation (*Wood
/// Handbook*, Table 5-6, from memory): bending strength, modulus, crushing along the grain, and across it.
const STRAYS: [f64; 4] = [0.16, 0.22, 0.18, 0.28];

impl Species {
    /// Every species, in the order they are offered.
    pub const ALL: [Species; 12] = [
        Species::WhiteAsh,
        Species::EuropeanAsh,
        Species::AmericanElm,
        Species::RockElm,
        Species::EnglishElm,
        Species::WychElm,
        Species::WhiteOak,
        Species::RedOak,
        Species::EnglishOak,
        Species::AmericanBeech,
        Species::EuropeanBeech,
        Species::Hickory,
    ];

    /// The word that stands for this timber on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        self.row().code
    }

    /// The timber a code stands for.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Species> {
        Species::ALL.into_iter().find(|it| it.code() == code)
    }

    /// What was read of it.
    #[must_use]
    pub fn row(self) -> &'static Row {
        rows::of(self)
    }

    /// Whether the hardness of its side grain has to be said by whoever has the wood in hand.
    #[must_use]
    pub fn asks_for_grain(self) -> bool {
        matches!(self, Species::EnglishElm | Species::WychElm)
    }
}

impl Grain {
    /// All three.
    pub const ALL: [Grain; 3] = [Grain::Soft, Grain::Medium, Grain::Hard];

    /// The word that stands for it on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Grain::Soft => "soft",
            Grain::Medium => "medium",
            Grain::Hard => "hard",
        }
    }

    /// What a word stands for.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Grain> {
        Grain::ALL.into_iter().find(|it| it.code() == code)
    }

    /// What it bears on the side grain in MPa: American elm and rock elm are those of the *Wood Handbook*.
    fn bears(self) -> f64 {
        match self {
            Grain::Soft => 4.8,
            Grain::Medium => 6.0,
            Grain::Hard => 8.5,
        }
    }
}

impl From<Species> for Timber {
    fn from(species: Species) -> Timber {
        Timber {
            species,
            grain: None,
        }
    }
}

impl Timber {
    /// Strength in bending.
    #[must_use]
    pub fn bending(self) -> Band<f64> {
        self.species.row().bending.widened(STRAYS[0])
    }

    /// Stiffness along the grain.
    #[must_use]
    pub fn modulus(self) -> Band<f64> {
        self.species.row().modulus.widened(STRAYS[1])
    }

    /// What crushes it along the grain.
    #[must_use]
    pub fn crushing(self) -> Band<f64> {
        self.species.row().crushing.widened(STRAYS[2])
    }

    /// What its side grain bears before it is pressed in for good.
    #[must_use]
    pub fn side_grain(self) -> Band<f64> {
        let said = self.grain.filter(|_| self.species.asks_for_grain());
        match said {
            // One standard deviation is that of pieces of all hardness; of those that were picked by hand, half of it.
            Some(grain) => {
                let middle = grain.bears();
                Band::new(middle, middle, middle).widened(STRAYS[3] / 2.0)
            }
            None => self.species.row().side_grain.widened(STRAYS[3]),
        }
    }

    /// How much softer it is across the grain than along it: tangential the low end, radial the high one.
    #[must_use]
    pub fn across(self) -> Band<f64> {
        self.species.row().across
    }

    /// Every source that its numbers were read in, each once.
    #[must_use]
    pub fn sources(self) -> &'static [Source] {
        self.species.row().sources
    }
}

#[cfg(test)]
mod tests;
