//! A tyring as it is reckoned: draw, heat and proof, from the rounds that were taken, what was chosen and the wheel's sizes.

use super::entry::{Entry, EntryId};
use super::tyring::{Ran, TyringSaid};
use super::vehicle_view::VehicleView;
use crate::material::Iron;
use crate::quantity::circumference::{Circumference, Draw};
use crate::quantity::length::millimetres;
use crate::quantity::speed::metres_per_second;
use crate::quantity::temperature::celsius;
use crate::quantity::{Length, Measured, time};
use crate::survey::{Answer, Question};
use crate::tyring::draw::{DrawTaken, drawing};
use crate::tyring::hot::window::Carry;
use crate::tyring::hot::{Heat, HotTyre, Over};
use crate::tyring::round::{Care, Round};
use crate::tyring::{Refusal, cut};
use crate::wheel::{Position, Size, Wheel};

/// What comes of the sheet: a value, or a refusal, or `None` where something is not said yet.
pub type Reckoned<T> = Result<T, Option<Refusal>>;

/// How well the thickness of a tyre is known, in mm either way (common practice, no source).
const IRON_WITHIN: f64 = 0.5;

/// A tyring as it is reckoned.
#[derive(Clone, Debug, PartialEq)]
pub struct Tyred {
    /// The rounds in the order of [`Ran::ALL`], each that was taken and can be so.
    pub rounds: [Option<Round>; 4],
    /// What was chosen.
    pub said: TyringSaid,
    /// Width and thickness of the tyre.
    pub iron: [Option<Length>; 2],
    /// How far the wheel is out of round.
    pub oval: Length,
}

impl Tyred {
    /// What one examination has of the tyring of this wheel; `None` if nothing.
    pub fn of(vehicle: &VehicleView<'_, '_>, visit: EntryId, position: Position) -> Option<Tyred> {
        entries(vehicle, visit, position).last()?;
        let said = vehicle.tyring(visit, position).cloned();
        let said = said.unwrap_or_else(|| TyringSaid::of(position));
        let iron = said.iron.unwrap_or(Iron::NotKnown);
        let mut rounds = [None; 4];
        for (round, ran) in rounds.iter_mut().zip(Ran::ALL) {
            if let Some(taken) = vehicle.round(visit, position, ran) {
                *round = taken.reckoned(iron, Care::default()).ok();
            }
        }
        let mut oval = millimetres(0.0);
        for (_, reading) in vehicle.readings(visit) {
            if let Answer::Length(out) = reading.answer
                && (reading.slot.position, reading.slot.question)
                    == (position, Question::OutOfRound)
            {
                oval = oval.max(out.value());
            }
        }
        Some(Tyred {
            rounds,
            said,
            iron: iron_of(vehicle.wheel(position)?.0),
            oval,
        })
    }

    /// One of the rounds.
    pub fn round(&self, ran: Ran) -> Option<Round> {
        self.rounds.get(ran as usize).copied().flatten()
    }

    /// The tyre's round on the inside as it is now: as welded, or else as it came.
    pub fn tyre(&self) -> Option<Round> {
        self.round(Ran::Welded).or(self.round(Ran::Tyre))
    }

    /// The draw as the tyre stands.
    ///
    /// # Errors
    /// Why there is none.
    pub fn taken(&self) -> Reckoned<DrawTaken> {
        let (sole, tyre) = (self.round(Ran::Sole).ok_or(None)?, self.tyre().ok_or(None)?);
        DrawTaken::of(&sole, &tyre).map_err(Some)
    }

    /// The draw to reckon with: the one that is wanted, or else the one the tyre has.
    ///
    /// # Errors
    /// Why there is none.
    pub fn draw(&self) -> Reckoned<Draw> {
        match self.said.draw {
            Some(draw) => Ok(Draw(draw)),
            None => drawing(self.taken()?.draw).map_err(Some),
        }
    }

    /// The heat, with a room of 3 mm, a carry of 30 s and air of 15 °C where these are not said.
    ///
    /// # Errors
    /// Why there is none.
    pub fn heat(&self) -> Reckoned<Heat> {
        let (sole, draw) = (self.round(Ran::Sole).ok_or(None)?, self.draw()?);
        let [Some(width), Some(thickness)] = self.iron else {
            return Err(None);
        };
        self.hot(sole, draw, [width, thickness]).map_err(Some)
    }

    fn hot(&self, sole: Round, draw: Draw, [width, thick]: [Length; 2]) -> Result<Heat, Refusal> {
        let said = &self.said;
        let iron = said.iron.unwrap_or(Iron::NotKnown);
        let inside = Circumference(sole.round.0 - draw.0);
        let tyre = HotTyre::of(iron, inside, width, thick)?;
        let room = said.clearance.unwrap_or(millimetres(3.0));
        let over = Over::of(
            sole.round,
            self.oval,
            said.oval.unwrap_or(millimetres(0.0)),
            room,
        )?;
        let wind = said.wind.map(|it| metres_per_second(it.into()));
        let air = celsius(said.air.unwrap_or(15).into());
        let carry = Carry::of(air, wind, time::seconds(said.carry.unwrap_or(30).into()))?;
        Heat::of(tyre, over, &carry)
    }

    /// What charring takes of the round.
    ///
    /// # Errors
    /// Why there is nothing to say.
    pub fn charred(&self) -> Reckoned<Length> {
        cut::lost_to_char(self.said.charred.ok_or(None)?).map_err(Some)
    }

    /// The proof: the round over the tyre as it lies, brought to its inside.
    ///
    /// # Errors
    /// Why there is none.
    pub fn lies(&self) -> Reckoned<Round> {
        let thick = self.iron[1].ok_or(None)?;
        let thick = Measured::new(thick, millimetres(IRON_WITHIN)).map_err(|it| Some(it.into()))?;
        let lying = self.round(Ran::Lying).ok_or(None)?;
        lying.inside(thick).map_err(Some)
    }
}

/// Width and thickness of a wheel's tyre.
pub fn iron_of(wheel: &Wheel) -> [Option<Length>; 2] {
    [Size::TyreWidth, Size::TyreThickness].map(|size| wheel.sizes.get(size))
}

/// The entries of a wheel's tyring in one examination: the rounds in the order of [`Ran::ALL`], then what was chosen.
pub fn entries<'a>(
    vehicle: &VehicleView<'_, 'a>,
    visit: EntryId,
    position: Position,
) -> Vec<&'a Entry> {
    let mut all = Vec::new();
    for ran in Ran::ALL {
        all.extend(vehicle.round_entry(visit, position, ran));
    }
    all.extend(vehicle.tyring_entry(visit, position));
    all
}
