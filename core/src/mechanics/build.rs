//! The wheel that a tyre is fitted to: its sizes, its timbers, its iron, and how its feet stand.

use super::refusal::FitRefusal;
use crate::material::{Iron, Species, Timber};
use crate::quantity::circumference::Diameter;
use crate::quantity::length::millimetres;
use crate::quantity::{Length, LengthRange};
use crate::wheel::{Rim, Size, Wheel};

/// How the feet of the spokes stand in the nave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Feet {
    /// Tight in their mortises.
    Sound,
    /// They give by hand.
    Slack,
}

/// A wheel without its tyre, and the tyre that is to go on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Build {
    /// Across the wheel, over the sole.
    pub across: Diameter,
    /// Dish before the tyre goes on; negative when back-dished.
    pub dish: Length,
    /// Across the tread of the tyre.
    pub tyre_width: Length,
    /// Through the iron of the tyre.
    pub tyre_thickness: Length,
    /// Through the felloe, from sole to belly.
    pub felloe_depth: Length,
    /// Across the felloe, from face to back.
    pub felloe_width: Length,
    /// Through the spoke, from face to back, half-way out.
    pub spoke_depth: Length,
    /// Across the spoke, in the plane of the wheel, half-way out.
    pub spoke_width: Length,
    /// Across the nave where the spokes enter it.
    pub nave: Diameter,
    /// How many spokes.
    pub spokes: u16,
    /// How many felloes, and so how many joints.
    pub felloes: u16,
    /// How the rim is made.
    pub rim: Rim,
    /// How the feet stand.
    pub feet: Feet,
    /// The iron of the tyre.
    pub iron: Iron,
    /// The timber of the nave.
    pub nave_timber: Timber,
    /// The timber of the spokes.
    pub spoke_timber: Timber,
    /// The timber of the felloes.
    pub felloe_timber: Timber,
}

impl Build {
    /// The wheel as it is described, once its height, dish, tyre, felloe depth and spoke depth are said. What no
    /// question asks is taken in proportion (common practice, no source): felloes as wide as the tyre, spokes 7/10
    /// as wide as deep, a nave of 2/9 of the height; sound feet, iron that nobody has told apart, elm nave, oak spokes, ash felloes.
    #[must_use]
    pub fn of(wheel: &Wheel) -> Option<Build> {
        let size = |size| wheel.sizes.get(size);
        let (height, tyre_width) = (size(Size::Height)?, size(Size::TyreWidth)?);
        let spoke_depth = size(Size::SpokeDepth)?;
        Some(Build {
            across: Diameter(height),
            dish: size(Size::Dish)?,
            tyre_width,
            tyre_thickness: size(Size::TyreThickness)?,
            felloe_depth: size(Size::FelloeDepth)?,
            felloe_width: tyre_width,
            spoke_depth,
            spoke_width: spoke_depth * 0.7,
            nave: Diameter(height * (2.0 / 9.0)),
            spokes: wheel.felloes.spokes(),
            felloes: wheel.felloes.felloes(),
            rim: wheel.rim?,
            feet: Feet::Sound,
            iron: Iron::NotKnown,
            nave_timber: Species::EnglishElm.into(),
            spoke_timber: Species::EnglishOak.into(),
            felloe_timber: Species::EuropeanAsh.into(),
        })
    }

    /// How long the spokes are between nave and felloe.
    #[must_use]
    pub fn spoke_length(&self) -> Length {
        (self.across.0 - self.nave.0) / 2.0 - self.felloe_depth
    }

    /// Gives the wheel back when a tyre can be reckoned on it.
    ///
    /// # Errors
    ///
    /// A size out of its range, too few or too many spokes or felloes, no room for spokes, or more dish than spoke.
    pub fn check(&self) -> Result<&Build, FitRefusal> {
        for (range, length) in [
            (LengthRange::WheelDiameter, self.across.0),
            (LengthRange::Dish, self.dish),
            (LengthRange::TyreWidth, self.tyre_width),
            (LengthRange::TyreThickness, self.tyre_thickness),
            (LengthRange::FelloeDepth, self.felloe_depth),
            (LengthRange::FelloeWidth, self.felloe_width),
            (LengthRange::SpokeDepth, self.spoke_depth),
            (LengthRange::SpokeWidth, self.spoke_width),
            (LengthRange::NaveDiameter, self.nave.0),
        ] {
            range.check(length)?;
        }
        if !(3..=64).contains(&self.spokes) {
            return Err(FitRefusal::Spokes(self.spokes));
        }
        if !(1..=32).contains(&self.felloes) {
            return Err(FitRefusal::Felloes(self.felloes));
        }
        self.check_spokes()
    }

    fn check_spokes(&self) -> Result<&Build, FitRefusal> {
        let spokes = self.spoke_length();
        if spokes < millimetres(20.0) {
            Err(FitRefusal::NoRoom(spokes))
        } else if self.dish.abs() > spokes * 0.7 {
            let dish = self.dish;
            Err(FitRefusal::DishBeyondSpokes { dish, spokes })
        } else {
            Ok(self)
        }
    }
}
