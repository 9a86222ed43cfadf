//! How hot the tyre must be to drop on with room to spare, and the length of the stick that tells it by hand.

use std::f64::consts::PI;

use super::tyre::HotTyre;
use crate::quantity::circumference::{Circumference, Diameter, Draw};
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::temperature::{TemperatureRange, celsius, in_celsius};
use crate::quantity::{End, Length, LengthRange, Strain, Temperature};
use crate::tyring::draw::drawing;
use crate::tyring::refusal::Refusal;

/// The coefficients of the handbooks, in millionths for each kelvin: wrought iron, W. H. Dooley, *Applied Science for Metal
/// Workers*, § 109 (6.48 millionths for each °F), and mild steel AISI 1010, annealed, 0 to 100 °C (amesweb.info).
pub const HANDBOOK: [f64; 2] = [6.48 * 1.8, 12.2];

/// The wheel that the tyre must go over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Over {
    round: Circumference,
    wheel_oval: Length,
    tyre_oval: Length,
    clearance: Length,
}

/// How hot the tyre must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DropOn {
    /// How much it must grow: a part of one.
    pub growth: Strain,
    /// The temperature for that.
    pub at: Temperature,
    /// The temperature if its iron grows least of what the sources say; `None` if then no heat is enough.
    pub if_it_grows_least: Option<Temperature>,
    /// The temperature if it grows most.
    pub if_it_grows_most: Temperature,
    /// What each coefficient of [`HANDBOOK`] would ask for, taken as the same at every heat: far too much, since iron grows
    /// more for each degree the hotter it is.
    pub by_handbook: [Temperature; 2],
    /// Beyond this nothing more is gained.
    pub most_useful: Temperature,
}

impl Over {
    /// A wheel of this round over its sole, so much wider one way across than the other; a tyre so much; and the clearance
    /// wanted between the two, across.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] where one of them cannot be so.
    pub fn of(
        round: Circumference,
        wheel_oval: Length,
        tyre_oval: Length,
        clearance: Length,
    ) -> Result<Over, Refusal> {
        Ok(Over {
            round: Circumference(LengthRange::Round.check(round.0)?),
            wheel_oval: LengthRange::OutOfRound.check(wheel_oval)?,
            tyre_oval: LengthRange::OutOfRound.check(tyre_oval)?,
            clearance: LengthRange::Clearance.check(clearance)?,
        })
    }

    /// The draw of this tyre on it.
    #[must_use]
    pub fn draw(&self, tyre: &HotTyre) -> Draw {
        self.round - tyre.inside()
    }

    /// The length of the hot-gauge stick: the widest across the sole, the clearance, and what the tyre is oval. When it
    /// goes through the hot tyre held across its widest, the tyre clears the wheel all round.
    #[must_use]
    pub fn stick(&self) -> Diameter {
        let widest = self.round.across().0 + self.wheel_oval / 2.0;
        Diameter(widest + self.clearance + self.tyre_oval)
    }

    /// How much this tyre must grow to touch the sole nowhere with this clearance: a part of one.
    fn growth(&self, tyre: &HotTyre, clearance: Length) -> Result<Strain, Refusal> {
        let draw = drawing(self.draw(tyre))?;
        let across = clearance + (self.wheel_oval + self.tyre_oval) / 2.0;
        let (longer, round) = (
            to_paper_mm(draw.0 + across * PI),
            to_paper_mm(tyre.inside().0),
        );
        Ok(Strain::of(longer / round))
    }

    /// How hot this tyre must be to drop over it with the clearance wanted.
    ///
    /// # Errors
    ///
    /// [`Refusal::TyreLarger`] where nothing draws, [`Refusal::NoFurther`] where no heat worth a fire is enough.
    pub fn drop_on(&self, tyre: &HotTyre) -> Result<DropOn, Refusal> {
        let growth = self.growth(tyre, self.clearance)?;
        let asked = |end| tyre.iron.temperature_for(growth, end);
        let middle = asked(End::Middle).map_err(|it| Refusal::NoFurther {
            needed: it.given,
            most: it.most,
        })?;
        let most = Strain::of(tyre.iron.most_grown(End::Middle));
        Ok(DropOn {
            growth,
            at: middle,
            if_it_grows_least: asked(End::Low).ok(),
            if_it_grows_most: asked(End::High).unwrap_or(middle),
            by_handbook: HANDBOOK.map(|each| celsius(20.0 + growth.of_one() / each * 1e6)),
            most_useful: tyre
                .iron
                .temperature_for(most, End::Middle)
                .unwrap_or(middle),
        })
    }

    /// The temperature at which this tyre, cooling, first touches the sole, at this end of what the sources say of its
    /// growth; `None` where no heat makes it large enough.
    ///
    /// # Errors
    ///
    /// [`Refusal::TyreLarger`] where nothing draws.
    pub fn touches(&self, tyre: &HotTyre, end: End) -> Result<Option<Temperature>, Refusal> {
        let growth = self.growth(tyre, millimetres(0.0))?;
        Ok(tyre.iron.temperature_for(growth, end).ok())
    }

    /// The clearance across that this tyre has at this temperature, where it is narrowest; below nought it does not go on.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] for a temperature that iron is not heated to.
    pub fn clearance_at(
        &self,
        tyre: &HotTyre,
        at: Temperature,
        end: End,
    ) -> Result<Length, Refusal> {
        let grown = tyre
            .iron
            .elongation(TemperatureRange::Iron.check(at)?, end)?;
        let hot = tyre.inside().0 * (1.0 + grown.of_one());
        let ovals = (self.wheel_oval + self.tyre_oval) / 2.0;
        Ok((hot - self.round.0) / PI - ovals)
    }
}

/// Whether more heat than this gives nothing more in size.
#[must_use]
pub fn gains_nothing(tyre: &HotTyre, at: Temperature) -> bool {
    let (most, c) = (tyre.iron.most_grown(End::Middle), in_celsius(at));
    tyre.iron.grown(c, End::Middle) >= most
}

#[cfg(test)]
mod tests;
