//! What a tyre is shrunk on by: the rounds as they were taken, and what was chosen for the wheel.

use super::entry::{Entry, EntryId};
use super::vehicle_view::VehicleView;
use crate::material::timber::Grain;
use crate::material::{Iron, Species};
use crate::mechanics::Stand;
use crate::quantity::temperature::{celsius, kelvins};
use crate::quantity::{Length, Measured};
use crate::tyring::Refusal;
use crate::tyring::cut::{Job, hot_weld_reads_long};
use crate::tyring::round::{Care, Gauge, Line, Round, Run, TapeClass, Warmth};
use crate::wheel::{Part, Place, Position};

/// The field of a slot under which the choices stand; before the word of what was run in those of rounds.
const FIELD: &str = "tyring";
const ROUND: &str = "round-";

/// What a traveller or a tape was run along.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Ran {
    /// The sole of the wheel, without its tyre.
    Sole,
    /// The inside of the tyre as it came.
    Tyre,
    /// The inside of the tyre after it was cut and welded, or upset.
    Welded,
    /// The outside of the tyre as it lies on the wheel, cold.
    Lying,
}

impl Ran {
    /// All, in the order in which they are run.
    pub const ALL: [Ran; 4] = [Ran::Sole, Ran::Tyre, Ran::Welded, Ran::Lying];

    /// The word that stands for it on paper.
    pub fn code(self) -> &'static str {
        match self {
            Ran::Sole => "sole",
            Ran::Tyre => "tyre",
            Ran::Welded => "welded",
            Ran::Lying => "lying",
        }
    }
}

/// What a round was taken with, by a number of the shop's own: the same one errs alike each time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TakenWith {
    /// A traveller, and once round itself.
    Traveller(u16, Measured),
    /// A tape.
    Tape(u16, TapeClass),
}

/// How warm a tyre was as its round was taken, in whole °C, and to how many kelvins either side that is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Warm {
    /// In °C.
    pub at: i16,
    /// In kelvins.
    pub within: u16,
}

/// A round as it was taken.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundTaken {
    /// The wheel.
    pub position: Position,
    /// What was run along.
    pub ran: Ran,
    /// With what.
    pub with: TakenWith,
    /// On which marked line.
    pub line: Line,
    /// Each run.
    pub runs: Vec<Run>,
    /// How warm the iron was; `None`: as cold as the yard.
    pub warm: Option<Warm>,
    /// Whether the weld was still hot.
    pub hot_weld: bool,
    /// What was typed.
    pub written: String,
}

impl RoundTaken {
    /// The slot of such a round: `near/whole/round-sole`.
    pub fn slot(&self) -> String {
        RoundTaken::slot_of(self.position, self.ran)
    }

    /// The slot of rounds of this wheel, run along that.
    pub fn slot_of(position: Position, ran: Ran) -> String {
        let whole = Part::At(position, Place::Whole).code();
        format!("{whole}/{ROUND}{}", ran.code())
    }

    /// The wheel and what was run along, by a slot.
    pub fn of_slot(slot: &str) -> Option<(Position, Ran)> {
        let (position, field) = whole(slot)?;
        let code = field.strip_prefix(ROUND)?;
        let ran = Ran::ALL.into_iter().find(|it| it.code() == code)?;
        Some((position, ran))
    }

    /// Whether another says the same, in whatever words it was typed.
    pub(super) fn agrees_with(&self, other: &RoundTaken) -> bool {
        let written = other.written.clone();
        RoundTaken {
            written,
            ..self.clone()
        } == *other
    }

    /// The round with its doubt, at 20 °C; iron is what the tyre is of.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where what was said cannot be so.
    pub fn reckoned(&self, iron: Iron, care: Care) -> Result<Round, Refusal> {
        let gauge = match self.with {
            TakenWith::Traveller(number, own) => Gauge::traveller(number, own)?,
            TakenWith::Tape(number, class) => Gauge::tape(number, class),
        };
        let mut round = Round::taken(gauge, &self.runs, self.line, care)?;
        if self.hot_weld {
            round.round.0 -= hot_weld_reads_long();
        }
        match self.warm {
            None => Ok(round),
            Some(warm) => round.brought_to_20(Warmth {
                iron,
                at: celsius(f64::from(warm.at)),
                within: kelvins(f64::from(warm.within)),
            }),
        }
    }
}

/// The air of one month: humidity in percent, and °C.
pub type MonthSaid = (u8, i16);

/// What is chosen for the tyring of one wheel; what is not said is `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct TyringSaid {
    /// The wheel.
    pub position: Position,
    /// The draw that is wanted.
    pub draw: Option<Length>,
    /// The joints together with the rim cramped.
    pub cramped: Option<Length>,
    /// The piece that was cut out of the tyre.
    pub cut: Option<Length>,
    /// How deep the sole charred.
    pub charred: Option<Length>,
    /// How oval the tyre is: its widest less its narrowest across.
    pub oval: Option<Length>,
    /// Room as it drops, across the wheel.
    pub clearance: Option<Length>,
    /// Whole seconds from the fire to the wheel.
    pub carry: Option<u16>,
    /// Whole seconds from the fire until it lay, as the clock had them.
    pub lay: Option<u16>,
    /// Wind on the day of the fire, in whole m/s.
    pub wind: Option<u16>,
    /// Air on that day, in whole °C.
    pub air: Option<i16>,
    /// What the tyre is of.
    pub iron: Option<Iron>,
    /// The timbers of nave, spokes and felloes.
    pub timbers: [Option<Species>; 3],
    /// How hard the side grain of each is, as whoever has the wood in hand says; it counts where the timber asks for it.
    pub grains: [Option<Grain>; 3],
    /// Where the cart stands.
    pub stand: Option<Stand>,
    /// The air there, January first; it counts in the place of what is known of such a stand.
    pub months: Option<[MonthSaid; 12]>,
}

impl TyringSaid {
    /// Nothing said of the wheel at this position.
    pub fn of(position: Position) -> TyringSaid {
        TyringSaid {
            position,
            draw: None,
            cramped: None,
            cut: None,
            charred: None,
            oval: None,
            clearance: None,
            carry: None,
            lay: None,
            wind: None,
            air: None,
            iron: None,
            timbers: [None; 3],
            grains: [None; 3],
            stand: None,
            months: None,
        }
    }

    /// The slot of the wheel's choices: `near/whole/tyring`.
    pub fn slot(position: Position) -> String {
        format!("{}/{FIELD}", Part::At(position, Place::Whole).code())
    }

    /// The wheel, by a slot.
    pub fn position(slot: &str) -> Option<Position> {
        let (position, field) = whole(slot)?;
        (field == FIELD).then_some(position)
    }
}

/// The tyres of a vehicle that were cut and welded with a round before and after, examination by examination, each with
/// its wheel.
pub fn jobs<'a>(vehicle: &VehicleView<'_, 'a>) -> Vec<(Job, &'a Entry, Position)> {
    let mut jobs = Vec::new();
    for visit in vehicle.visits() {
        for (position, _) in vehicle.wheels() {
            let job = job(vehicle, visit.id, position);
            jobs.extend(job.map(|job| (job, visit, position)));
        }
    }
    jobs
}

fn job(vehicle: &VehicleView<'_, '_>, visit: EntryId, position: Position) -> Option<Job> {
    let said = vehicle.tyring(visit, position)?;
    let iron = said.iron.unwrap_or(Iron::NotKnown);
    let round = |ran| {
        let taken = vehicle.round(visit, position, ran)?;
        Some(taken.reckoned(iron, Care::default()).ok()?.round)
    };
    Some(Job {
        before: round(Ran::Tyre)?,
        cut: said.cut?,
        after: round(Ran::Welded)?,
    })
}

/// The wheel and the field of a slot that is about a whole wheel.
fn whole(slot: &str) -> Option<(Position, &str)> {
    let (part, field) = slot.rsplit_once('/')?;
    match Part::from_code(part)? {
        Part::At(position, Place::Whole) => Some((position, field)),
        _ => None,
    }
}
