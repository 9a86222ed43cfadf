//! What the tyring sheet reckons with: what is typed on the page, what is chosen, and what the book has of the wheel.

use cartside_core::daybook::RoundTaken;
use cartside_core::daybook::tyred::{self, Tyred, iron_of};
use cartside_core::daybook::tyring::Ran;
use cartside_core::material::MoistureContent;
use cartside_core::mechanics::{Build, Feet, Fitting, Year};
use cartside_core::quantity::circumference::Draw;
use cartside_core::quantity::length::{millimetres, to_paper_mm};
use cartside_core::quantity::{Length, Measured};
use cartside_core::survey::{Answer, Play, Question};
use cartside_core::tyring::Refusal;
use cartside_core::tyring::advice;
use cartside_core::tyring::draw::{Joints, together};
use cartside_core::tyring::round::Round;
use cartside_core::wheel::{Place, Position, Size};
use cartside_core::words::{self, Style};

use super::chosen::Chosen;
use super::field::Typed;
use super::reader::Reader;
use crate::looking::Looking;

/// Either a value, or why it is not there: nothing typed yet, or a sentence.
pub type Said<T> = Result<T, Option<String>>;

/// What the sheet reckons with.
pub struct Given {
    /// How lengths are written, and whose words are spoken.
    pub style: Style,
    /// Rounds and choices as they are reckoned with; no round while something was typed that cannot be kept.
    pub tyred: Tyred,
    /// The rounds as they are kept, each that can be.
    pub rounds: Vec<RoundTaken>,
    /// Whatever was typed and cannot be kept, a sentence each.
    pub refused: Vec<String>,
    /// The year where the cart stands.
    pub year: Option<Year>,
    /// The joints, from the readings, and cramped.
    pub joints: Said<Joints>,
    /// Their sum as they stand.
    pub open: Measured,
    /// The stand-offs that were measured.
    pub stand_offs: Vec<Measured>,
    /// Moisture of the felloes, and whether it was measured.
    pub moisture: (MoistureContent, bool),
    /// What the trade prints for such a wheel.
    pub printed: Said<Vec<&'static advice::Row>>,
    /// The sizes that are not said yet.
    pub missing: Vec<Size>,
    /// The wheel for the fit, once every size is said.
    pub build: Option<Build>,
    /// What is chosen.
    pub chosen: Chosen,
}

/// The sizes without which nothing is reckoned of the fit.
const SIZES: [Size; 6] = [
    Size::Height,
    Size::Dish,
    Size::TyreWidth,
    Size::TyreThickness,
    Size::FelloeDepth,
    Size::SpokeDepth,
];

impl Given {
    /// Reads what is typed and what the book has.
    pub fn of(
        (looking, position): (&Looking, Position),
        typed: &Typed,
        chosen: Chosen,
        style: Style,
    ) -> Given {
        let mut reader = Reader::new(typed, style, chosen);
        let said = reader.tyring(position);
        let taken = Ran::ALL.map(|ran| reader.round(position, ran));
        let mut rounds = taken
            .each_ref()
            .map(|taken| reader.reckoned(taken.as_ref()));
        let open = gaps(looking, Question::JointGap);
        let sum = together(&open).unwrap_or_default();
        let joints = reader.joints(sum, said.cramped);
        let year = reader.year(&said);
        if !reader.refused.is_empty() {
            rounds = [None; 4];
        }
        let sizes = &looking.wheel.sizes;
        Given {
            style,
            tyred: Tyred {
                rounds,
                said,
                iron: iron_of(&looking.wheel),
                oval: longest(looking, Question::OutOfRound),
            },
            rounds: taken.into_iter().flatten().collect(),
            joints,
            open: sum,
            stand_offs: gaps(looking, Question::StandOff),
            moisture: moisture(looking),
            year,
            printed: printed(looking, style),
            missing: SIZES
                .into_iter()
                .filter(|it| sizes.get(*it).is_none())
                .collect(),
            build: build(looking, chosen),
            chosen,
            refused: reader.refused,
        }
    }

    /// The draw to reckon with.
    pub fn draw(&self) -> Said<Draw> {
        self.said(self.tyred.draw())
    }

    /// The lengths in words, to be written down; nothing while no round is typed.
    pub fn told(&self) -> String {
        let style = self.style;
        let mut told = Vec::new();
        let round = |name: &str, round: Option<Round>| {
            round.map(|it| format!("{name} {}", words::tyring::measure::round(&it, style)))
        };
        told.extend(round("wheel round", self.tyred.round(Ran::Sole)));
        told.extend(round(&style.fill("{tyre} round"), self.tyred.tyre()));
        if told.is_empty() {
            return String::new();
        }
        let wanted = self.tyred.said.draw;
        told.extend(wanted.map(|draw| format!("draw wanted {}", style.size(draw))));
        told.push(format!("joints {}", style.gap(self.open.value())));
        words::capital(&(told.join("; ") + "."))
    }

    /// How the tyre is fitted.
    pub fn fitting(&self) -> Said<Fitting> {
        let draw = self.draw()?;
        let doubt = self
            .tyred
            .taken()
            .map_or(millimetres(2.0), |it| it.doubt.to_either_side());
        let mean = self
            .stand_offs
            .iter()
            .fold(millimetres(0.0), |sum, it| sum + it.value());
        let count = self.stand_offs.len().max(1) as f64;
        let draw = match self.tyred.charred() {
            Ok(lost) => Draw(draw.0 - lost),
            Err(_) => draw,
        };
        Ok(Fitting {
            draw,
            doubt: doubt.min(draw.0 / 2.0),
            joints: self.open.value(),
            stand_off: mean / count,
            moisture: self.moisture.0,
        })
    }

    /// What comes of the sheet, a refusal as a sentence.
    pub fn said<T>(&self, it: tyred::Reckoned<T>) -> Said<T> {
        it.map_err(|why| why.map(|it| words::tyring::refusal(&it, self.style)))
    }

    /// A refusal as a sentence.
    pub fn refused<T>(&self, result: Result<T, Refusal>) -> Said<T> {
        refused(result, self.style)
    }
}

pub fn refused<T>(result: Result<T, Refusal>, style: Style) -> Said<T> {
    result.map_err(|refusal| Some(words::tyring::refusal(&refusal, style)))
}

/// Every answer to one question, wherever it was given.
fn answers(looking: &Looking, question: Question) -> impl Iterator<Item = &Answer> {
    let here = looking
        .answers
        .iter()
        .filter(move |((of, _), _)| *of == question);
    here.flat_map(|(_, answers)| answers)
}

/// The gaps of one question that were measured, wherever they were.
fn gaps(looking: &Looking, question: Question) -> Vec<Measured> {
    let measured = |answer: &Answer| match answer {
        Answer::Length(measured) => Some(*measured),
        Answer::Over(least) => Measured::new(*least, millimetres(0.0)).ok(),
        _ => None,
    };
    answers(looking, question).filter_map(measured).collect()
}

fn longest(looking: &Looking, question: Question) -> Length {
    let each = gaps(looking, question).into_iter().map(Measured::value);
    each.fold(millimetres(0.0), |most, it| most.max(it))
}

/// The mean moisture of the felloes; 14 % where none was measured.
fn moisture(looking: &Looking) -> (MoistureContent, bool) {
    let each = answers(looking, Question::Moisture).filter_map(|answer| match answer {
        Answer::Share(share) => Some(share.to_paper()),
        _ => None,
    });
    let all: Vec<f64> = each.collect();
    let mean = all.iter().sum::<f64>() / all.len() as f64;
    match MoistureContent::from_percent(mean) {
        Ok(mean) => (mean, true),
        Err(_) => (
            MoistureContent::from_percent(14.0).unwrap_or(MoistureContent::WETTEST),
            false,
        ),
    }
}

/// The answers of one question that say something bad; nothing while it is open.
fn any_bad(looking: &Looking, question: Question) -> Option<bool> {
    let bad = |answer: &Answer| match answer {
        Answer::Play(play) => *play != Play::Tight,
        Answer::Length(measured) => measured.value() > millimetres(0.0),
        Answer::Over(_) => true,
        answer => *answer == Answer::Yes,
    };
    let open = !looking.left(question).is_empty();
    let found = answers(looking, question).any(bad);
    (found || !open).then_some(found)
}

fn printed(looking: &Looking, style: Style) -> Said<Vec<&'static advice::Row>> {
    let size = |size: Size| looking.wheel.sizes.get(size).map(to_paper_mm);
    let dish = looking.answer(Question::Dish, Place::Whole);
    let dish = dish
        .and_then(|answers| answers.first()?.length())
        .map(to_paper_mm);
    let built = size(Size::Dish);
    let dished = dish.or(built).map(|mm| match mm.abs() {
        // By so little a straight wheel may read either way.
        5.0.. if built.is_some_and(|built| built * mm < 0.0) => advice::Dished::Backwards,
        mm if mm < 10.0 => advice::Dished::Straight,
        mm if mm < 60.0 => advice::Dished::Dished,
        _ => advice::Dished::Much,
    });
    // By the iron: house, common practice, no source.
    let weight = match size(Size::TyreWidth) {
        Some(mm) if mm < 40.0 => advice::Weight::Light,
        Some(mm) if mm > 75.0 => advice::Weight::Heavy,
        _ => advice::Weight::Common,
    };
    let wheel = advice::Wheel {
        loose_feet: any_bad(looking, Question::SpokeFoot),
        proud_tongues: any_bad(looking, Question::TongueProud),
        dished,
        weight,
    };
    refused(advice::advice(&wheel), style)
}

fn build(looking: &Looking, chosen: Chosen) -> Option<Build> {
    let mut wheel = looking.wheel.clone();
    // Sawn felloes are the rule; whoever has bent ones has said so.
    wheel.rim = wheel.rim.or(Some(cartside_core::wheel::Rim::Sawn));
    let loose = any_bad(looking, Question::SpokeFoot) == Some(true);
    let mut build = Build::of(&wheel)?;
    build.feet = if loose { Feet::Slack } else { Feet::Sound };
    build.iron = chosen.iron;
    [build.nave_timber, build.spoke_timber, build.felloe_timber] = chosen.wood();
    Some(build)
}
