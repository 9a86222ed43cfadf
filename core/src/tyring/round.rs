//! A round by traveller or tape, once or several times, with its doubt; a tyre that is warm is brought back to 20 °C.
//!
//! A traveller runs on one marked line: on a coned sole a line further in is shorter, so wheel and tyre are run on the
//! same one. Its own error grows with its turns. In a draw it falls out again when the same traveller ran both.

use super::doubt::Doubt;
use super::refusal::Refusal;
use crate::material::iron::Iron;
use crate::quantity::circumference::Circumference;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::temperature::{TemperatureRange, in_celsius};
use crate::quantity::{End, Length, LengthRange, Measured, Temperature, TemperatureRise};

/// The most runs that are counted.
pub const MOST_RUNS: usize = 20;

/// The line that was run, as it is marked on sole and tyre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// At the face of the wheel, which looks outward.
    Face,
    /// In the middle of the sole.
    Middle,
    /// At the back.
    Back,
}

impl Line {
    /// Every line.
    pub const ALL: [Line; 3] = [Line::Face, Line::Middle, Line::Back];

    /// The word that stands for it on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Line::Face => "face",
            Line::Middle => "middle",
            Line::Back => "back",
        }
    }

    /// The line a word stands for.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Line> {
        Line::ALL.into_iter().find(|it| it.code() == code)
    }
}

/// What a round is taken with. Its number tells whether it was the same one twice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gauge {
    number: u16,
    /// The traveller's own round in mm; `None` of a tape.
    turn: Option<f64>,
    /// The standard uncertainty in mm that a tape has whatever it measures; a traveller has none.
    fixed: f64,
    /// The standard uncertainty in mm for each turn of a traveller, or for each metre of a tape.
    each: f64,
}

/// How good a tape is: Directive 2014/32/EU, annex X, chapter I, measures of length, in whole metres begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TapeClass {
    /// Within 0.1 mm and 0.1 mm more for each metre.
    I,
    /// Within 0.3 mm and 0.2 mm more for each metre.
    II,
    /// Within 0.6 mm and 0.4 mm more for each metre; taken where no class is marked.
    III,
}

impl TapeClass {
    /// Every class.
    pub const ALL: [TapeClass; 3] = [TapeClass::I, TapeClass::II, TapeClass::III];

    /// The class as it is marked on a tape, and on paper.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            TapeClass::I => "I",
            TapeClass::II => "II",
            TapeClass::III => "III",
        }
    }

    /// The class so marked.
    #[must_use]
    pub fn from_code(code: &str) -> Option<TapeClass> {
        TapeClass::ALL.into_iter().find(|it| it.code() == code)
    }
}

/// One run: whole turns, and what is left over after them. A tape has no turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Whole turns of the traveller.
    pub turns: u16,
    /// What is left over; with a tape, all of it.
    pub past: Length,
}

/// How carefully it is run. As it comes this is common practice, no source: ±1 mm in reading what is left over, ±1 mm in
/// chalk marks, and a slip of ±0.02 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Care {
    /// How far a reading of what is left over may lie to either side.
    pub reading: Length,
    /// How far the marks may.
    pub mark: Length,
    /// How much of its way a traveller may slip, or a tape sag, to either side: a part of one.
    pub slip: f64,
}

impl Default for Care {
    fn default() -> Care {
        Care {
            reading: millimetres(1.0),
            mark: millimetres(1.0),
            slip: 2e-4,
        }
    }
}

/// A tyre's warmth as its round was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmth {
    /// What it is of.
    pub iron: Iron,
    /// How warm it was.
    pub at: Temperature,
    /// To how many kelvins either side that is known.
    pub within: TemperatureRise,
}

/// A round with its doubt: cold, on its line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Round {
    /// The round, at 20 °C if it is a tyre's.
    pub round: Circumference,
    /// The line it was taken on.
    pub line: Line,
    gauge: Gauge,
    /// What the gauge's own error is multiplied by: turns, or whole metres of tape, the last begun one counted.
    leans: f64,
    /// The doubt without the gauge's own.
    apart: Doubt,
}

impl Gauge {
    /// A traveller of this number whose own round is known so well.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] for a round that no traveller has, or a doubt of more than a twentieth of it.
    pub fn traveller(number: u16, round: Measured) -> Result<Gauge, Refusal> {
        let range = LengthRange::TravellerRound;
        let turn = range.check(round.value())?;
        range.check(round.value() + round.doubt() * 20.0)?;
        Ok(Gauge {
            number,
            turn: Some(to_paper_mm(turn)),
            fixed: 0.0,
            each: to_paper_mm(round.doubt()) / 3_f64.sqrt(),
        })
    }

    /// A traveller of this number, rolled so many turns along a measured line: its doubt is parted among them.
    ///
    /// # Errors
    ///
    /// As [`Gauge::traveller`]; no turns leave a round without end.
    pub fn rolled(number: u16, turns: u16, along: Measured) -> Result<Gauge, Refusal> {
        let turns = f64::from(turns);
        let round = Measured::new(along.value() / turns, along.doubt() / turns)?;
        Gauge::traveller(number, round)
    }

    /// A tape of this number and class.
    #[must_use]
    pub fn tape(number: u16, class: TapeClass) -> Gauge {
        let (least, each_metre) = match class {
            TapeClass::I => (0.1, 0.1),
            TapeClass::II => (0.3, 0.2),
            TapeClass::III => (0.6, 0.4),
        };
        Gauge {
            number,
            turn: None,
            fixed: least / 3_f64.sqrt(),
            each: each_metre / 3_f64.sqrt(),
        }
    }

    /// The standard uncertainty in mm of what it is good for, over so many turns or metres.
    fn own(&self, leans: f64) -> f64 {
        self.fixed + self.each * leans
    }

    /// The length of one run in mm.
    fn length(&self, run: &Run) -> Result<f64, Refusal> {
        let past = to_paper_mm(LengthRange::General.check(run.past)?);
        let Some(turn) = self.turn else {
            return Ok(past);
        };
        if past > turn {
            return Err(Refusal::PastATurn {
                past: run.past,
                turn: millimetres(turn),
            });
        }
        Ok(f64::from(run.turns) * turn + past)
    }
}

/// The mean of these runs, how they scatter, and how many turns they took.
struct Mean {
    of: f64,
    scatter: f64,
    turns: f64,
}

fn mean(gauge: &Gauge, runs: &[Run]) -> Result<Mean, Refusal> {
    let count = runs.len();
    if count == 0 {
        return Err(Refusal::NoRuns);
    }
    if count > MOST_RUNS {
        return Err(Refusal::TooManyRuns {
            given: count,
            allowed: MOST_RUNS,
        });
    }
    let (mut sum, mut turns) = (0.0, 0.0);
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    for run in runs {
        let length = gauge.length(run)?;
        sum += length;
        turns += f64::from(run.turns);
        (least, most) = (least.min(length), most.max(length));
    }
    if let Some(turn) = gauge.turn.filter(|turn| most - least >= turn / 2.0) {
        return Err(Refusal::Miscounted {
            apart: millimetres(most - least),
            turn: millimetres(turn),
        });
    }
    let of = sum / count as f64;
    let mut squares = 0.0;
    for run in runs {
        let off = gauge.length(run)? - of;
        squares += off * off;
    }
    Ok(Mean {
        of,
        scatter: squares / count.saturating_sub(1).max(1) as f64,
        turns: turns / count as f64,
    })
}

impl Round {
    /// The round of a wheel over its sole, by these runs on one line.
    ///
    /// The scatter of several runs stands in the place of what [`Care`] says of reading and marks, never below it.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where the runs, or the care, cannot be so.
    pub fn taken(gauge: Gauge, runs: &[Run], line: Line, care: Care) -> Result<Round, Refusal> {
        for half in [care.reading, care.mark] {
            LengthRange::RunOut.check(half)?;
        }
        let mean = mean(&gauge, runs)?;
        let round = LengthRange::Round.check(millimetres(mean.of))?;
        let (reading, mark) = (to_paper_mm(care.reading), to_paper_mm(care.mark));
        let by_hand = Doubt::within(reading).and(Doubt::within(mark)).variance();
        let scatter = if mean.scatter > by_hand && runs.len() > 1 {
            Doubt::of_a_mean(mean.scatter, runs.len())
        } else {
            Doubt::standard_of((by_hand / runs.len() as f64).sqrt())
        };
        let slip = care.slip.abs().min(0.1) * mean.of;
        Ok(Round {
            round: Circumference(round),
            line,
            gauge,
            leans: gauge.turn.map_or((mean.of / 1000.0).ceil(), |_| mean.turns),
            apart: scatter.and(Doubt::within(slip)),
        })
    }

    /// The round on the inside of a tyre over whose outside it was taken: 2π times its thickness less.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] where nothing is left of it.
    pub fn inside(self, thickness: Measured) -> Result<Round, Refusal> {
        let turn = std::f64::consts::TAU;
        let iron = LengthRange::TyreThickness.check(thickness.value())?;
        let round = LengthRange::Round.check(self.round.0 - iron * turn)?;
        Ok(Round {
            round: Circumference(round),
            apart: self
                .apart
                .and(Doubt::within(to_paper_mm(thickness.doubt()) * turn)),
            ..self
        })
    }

    /// The round that a tyre read warm has at 20 °C.
    ///
    /// # Errors
    ///
    /// [`Refusal::Given`] where it is too hot to be measured, or colder than a yard.
    pub fn brought_to_20(self, warmth: Warmth) -> Result<Round, Refusal> {
        let c = in_celsius(TemperatureRange::Measured.check(warmth.at)?);
        let grown = |c: f64, end| warmth.iron.grown(c, end);
        let [low, middle, high] = End::ALL.map(|end| grown(c, end));
        let (warm, within) = (
            to_paper_mm(self.round.0),
            warmth.within.value.abs().min(100.0),
        );
        let by_degrees = (grown(c + within, End::Middle) - grown(c - within, End::Middle)) / 2.0;
        let of_iron = (high - middle).abs().max((middle - low).abs());
        Ok(Round {
            round: Circumference(millimetres(warm / (1.0 + middle))),
            apart: self
                .apart
                .and(Doubt::within(warm * by_degrees))
                .and(Doubt::within(warm * of_iron)),
            ..self
        })
    }

    /// How far the truth may lie from it, the gauge's own error and all.
    #[must_use]
    pub fn doubt(&self) -> Doubt {
        self.apart
            .and(Doubt::standard_of(self.gauge.own(self.leans)))
    }

    /// Whether both were taken with the same traveller or tape: then what is wrong with it falls out of their difference.
    #[must_use]
    pub fn same_gauge(&self, other: &Round) -> bool {
        self.gauge == other.gauge
    }

    /// How far the truth may lie from this round less the other: what is wrong with a gauge falls out as far as it ran
    /// both alike (JCGM 100:2008, 5.2.2, with a correlation of 1).
    pub(super) fn doubt_of_less(&self, other: &Round) -> Doubt {
        if self.same_gauge(other) {
            let leans = self.leans - other.leans;
            let gauge = Doubt::standard_of(leans * self.gauge.each);
            self.apart.and(other.apart).and(gauge)
        } else {
            self.doubt().and(other.doubt())
        }
    }
}

#[cfg(test)]
mod tests;
