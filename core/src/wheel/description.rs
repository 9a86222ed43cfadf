//! One wheel as it is built: its felloes and spokes, and what has been said of rim, tyre, arm,
//! keeper and sizes. What has not been said yet is `None`.

use super::axle::{Arm, Keeper};
use super::felloes::Felloes;
use super::part::Place;
use super::sizes::Sizes;

/// How the rim is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rim {
    /// Felloes sawn to the round.
    Sawn,
    /// One or two lengths steamed and bent.
    Bent,
}

impl Rim {
    /// Both rims.
    pub const ALL: [Rim; 2] = [Rim::Sawn, Rim::Bent];

    /// The word that stands for this rim on paper.
    pub fn code(self) -> &'static str {
        match self {
            Rim::Sawn => "sawn",
            Rim::Bent => "bent",
        }
    }

    /// The rim a code stands for.
    pub fn from_code(code: &str) -> Option<Rim> {
        Rim::ALL.into_iter().find(|rim| rim.code() == code)
    }
}

/// What the wheel runs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tyre {
    /// One iron ring shrunk on.
    Hoop,
    /// Iron lengths nailed over the joints.
    Strakes,
    /// Rubber in a channel.
    Rubber,
    /// Nothing: the wood runs on the ground, or the tyre is off.
    Bare,
}

impl Tyre {
    /// Every tyre, in the order they are offered.
    pub const ALL: [Tyre; 4] = [Tyre::Hoop, Tyre::Strakes, Tyre::Rubber, Tyre::Bare];

    /// The word that stands for this tyre on paper.
    pub fn code(self) -> &'static str {
        match self {
            Tyre::Hoop => "hoop",
            Tyre::Strakes => "strakes",
            Tyre::Rubber => "rubber",
            Tyre::Bare => "bare",
        }
    }

    /// The tyre a code stands for.
    pub fn from_code(code: &str) -> Option<Tyre> {
        Tyre::ALL.into_iter().find(|tyre| tyre.code() == code)
    }
}

/// One wheel as it is built.
#[derive(Clone, Debug, PartialEq)]
pub struct Wheel {
    /// Its felloes and the spokes each carries.
    pub felloes: Felloes,
    /// How the rim is made, once said.
    pub rim: Option<Rim>,
    /// What it runs on, once said.
    pub tyre: Option<Tyre>,
    /// The arm it turns on, once said.
    pub arm: Option<Arm>,
    /// What keeps it on, once said.
    pub keeper: Option<Keeper>,
    /// Its sizes, as far as they have been said.
    pub sizes: Sizes,
}

impl Wheel {
    /// A wheel of which only felloes and spokes have been said.
    pub fn of(felloes: Felloes) -> Wheel {
        Wheel {
            felloes,
            rim: None,
            tyre: None,
            arm: None,
            keeper: None,
            sizes: Sizes::default(),
        }
    }

    /// Whether the wheel has this place; a reading on a part the wheel has not is listed as such.
    pub fn has(&self, place: Place) -> bool {
        match place {
            Place::Whole | Place::Nave => true,
            Place::Spoke(n) | Place::Between(n) => n <= self.felloes.spokes(),
            Place::Joint(n) | Place::Felloe(n) => n <= self.felloes.felloes(),
        }
    }

    /// The spoke after this one, clockwise from the face; the last is followed by the first.
    pub fn next_spoke(&self, spoke: u16) -> u16 {
        if spoke >= self.felloes.spokes() {
            1
        } else {
            spoke + 1
        }
    }

    /// Whether two spokes stand side by side.
    pub fn neighbours(&self, one: u16, other: u16) -> bool {
        one != other && (self.next_spoke(one) == other || self.next_spoke(other) == one)
    }

    /// How far round from the mark a place lies, clockwise from the face, in turns (0 to 1): spokes
    /// stand evenly, the mark half a space before the first. `None` for the whole wheel and the nave.
    pub fn turn(&self, place: Place) -> Option<f64> {
        let spokes = f64::from(self.felloes.spokes());
        match place {
            Place::Whole | Place::Nave => None,
            Place::Spoke(n) => Some((f64::from(n) - 0.5) / spokes),
            Place::Between(n) => Some(f64::from(n) / spokes),
            Place::Joint(n) => Some(f64::from(self.felloes.spokes_before_joint(n)) / spokes),
            Place::Felloe(n) => {
                let sum = self.felloes.spokes_before_joint(n)
                    + self.felloes.spokes_before_joint(n.saturating_add(1));
                Some(f64::from(sum) / 2.0 / spokes)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Rim, Tyre, Wheel};
    use crate::wheel::felloes::Felloes;
    use crate::wheel::part::Place;

    fn twelve() -> Wheel {
        Wheel::of(Felloes::even(12, 6).unwrap())
    }

    #[test]
    fn codes_lead_back() {
        for rim in Rim::ALL {
            assert_eq!(Rim::from_code(rim.code()), Some(rim));
        }
        for tyre in Tyre::ALL {
            assert_eq!(Tyre::from_code(tyre.code()), Some(tyre));
        }
    }

    #[test]
    fn the_last_spoke_stands_beside_the_first() {
        assert!(twelve().neighbours(12, 1));
        assert!(twelve().neighbours(3, 4));
        assert!(!twelve().neighbours(3, 5));
        assert!(!twelve().neighbours(3, 3));
    }

    #[test]
    fn a_wheel_has_its_own_places_only() {
        assert!(twelve().has(Place::Spoke(12)));
        assert!(!twelve().has(Place::Spoke(13)));
        assert!(twelve().has(Place::Joint(6)));
        assert!(!twelve().has(Place::Felloe(7)));
    }

    #[test]
    fn places_lie_in_order_round_from_the_mark() {
        let wheel = twelve();
        assert_eq!(wheel.turn(Place::Joint(1)), Some(0.0));
        assert_eq!(wheel.turn(Place::Spoke(1)), Some(0.5 / 12.0));
        assert_eq!(wheel.turn(Place::Between(1)), Some(1.0 / 12.0));
        assert_eq!(wheel.turn(Place::Felloe(1)), Some(1.0 / 12.0));
        assert_eq!(wheel.turn(Place::Joint(2)), Some(2.0 / 12.0));
        assert_eq!(wheel.turn(Place::Nave), None);
    }
}
