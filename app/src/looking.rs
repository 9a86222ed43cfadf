//! One wheel as the book has it now: how it is built, what its latest examination has answered, what that comes to,
//! and what is still to be asked.

use std::collections::BTreeMap;

use cartside_core::daybook::{Entry, EntryId, VehicleView};
use cartside_core::diagnosis::{Beside, Grade, Judgement, examined, judge};
use cartside_core::survey::{Answer, Places, Question};
use cartside_core::wheel::{Place, Position, Wheel};
use cartside_core::words;

use leptos::prelude::*;

use crate::workshop::Workshop;

/// One examination.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Examination {
    /// The entry that began it.
    pub id: EntryId,
    /// The day it was begun, as claimed: `2026-11-25`.
    pub day: String,
    /// The same day, as it is shown.
    pub shown: String,
}

impl Examination {
    fn of(entry: &Entry) -> Examination {
        Examination {
            id: entry.id,
            day: entry.at.day().to_owned(),
            shown: words::when::day(&entry.at),
        }
    }

    /// The latest of the vehicle in hand.
    pub fn latest(vehicle: &VehicleView<'_, '_>) -> Option<Examination> {
        vehicle.visits().last().map(|entry| Examination::of(entry))
    }
}

/// How one place looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// Nobody has looked.
    Open,
    /// Somebody has looked, and no limit is reached.
    Sound,
    /// It has part in a finding of this grade.
    Found(Grade),
}

/// One wheel as the book has it now.
#[derive(Clone, Debug, PartialEq)]
pub struct Looking {
    /// The wheel.
    pub wheel: Wheel,
    /// The entry that describes it.
    pub described_by: EntryId,
    /// The latest examination, if there was one.
    pub examination: Option<Examination>,
    /// What it has answered.
    pub answers: BTreeMap<(Question, Place), Vec<Answer>>,
    /// What that comes to.
    pub judgement: Judgement,
}

impl Looking {
    /// The wheel at this position of the vehicle in hand, if one is described there. Whoever reads it reads it again
    /// after each step.
    pub fn at(shop: Workshop, position: Position) -> Option<Looking> {
        let opened = shop.opened.get()?;
        let view = opened.book.view();
        Looking::of(&view.vehicle(opened.vehicle), position, shop)
    }

    fn of(vehicle: &VehicleView<'_, '_>, position: Position, shop: Workshop) -> Option<Looking> {
        let (wheel, described_by) = vehicle.wheel(position).filter(|_| !vehicle.struck())?;
        let examination = Examination::latest(vehicle);
        let limits = shop.limits();
        let judged = examination
            .as_ref()
            .and_then(|latest| examined(vehicle, latest.id, position, &limits));
        Some(Looking {
            wheel: wheel.clone(),
            described_by,
            answers: answers(vehicle, examination.as_ref(), position),
            examination,
            judgement: judged.unwrap_or_else(|| judge(wheel, &[], &limits, &Beside::default())),
        })
    }

    /// What is asked of this wheel, in order.
    pub fn questions(&self) -> impl Iterator<Item = Question> {
        Question::all().filter(|question| question.asked_of(&self.wheel))
    }

    /// Whether the question was answered here, be it by *can't see*.
    pub fn answered(&self, question: Question, place: Place) -> bool {
        self.answers.contains_key(&(question, place))
    }

    /// The places where a question is still open. Round the tyre any places will do, as long as they are enough.
    pub fn left(&self, question: Question) -> Vec<Place> {
        let asked = question.places_on(&self.wheel);
        let done = self
            .answers
            .keys()
            .filter(|(of, _)| *of == question)
            .count();
        let most = match question.places() {
            Places::RoundTheTyre => asked.len().saturating_sub(done),
            _ => asked.len(),
        };
        let open = |place: &Place| !self.answered(question, *place);
        asked.into_iter().filter(open).take(most).collect()
    }

    /// How many places are answered, and of how many.
    pub fn progress(&self, question: Question) -> (usize, usize) {
        let all = question.places_on(&self.wheel).len();
        (all.saturating_sub(self.left(question).len()), all)
    }

    /// The next question with an open place after this one, or from the beginning.
    pub fn next_question(&self, after: Option<Question>) -> Option<Question> {
        let open = |question: &Question| !self.left(*question).is_empty();
        let later = |question: &Question| after.is_none_or(|after| *question > after);
        self.questions()
            .filter(later)
            .find(open)
            .or_else(|| self.questions().find(open))
    }

    /// The next open place after this one, or from the mark on.
    pub fn next_place(&self, question: Question, after: Option<Place>) -> Option<Place> {
        let left = self.left(question);
        let later = left
            .iter()
            .find(|place| after.is_none_or(|after| **place > after));
        later.or(left.first()).copied()
    }

    /// How a place looks.
    pub fn look(&self, place: Place) -> Look {
        let here = self
            .judgement
            .findings
            .iter()
            .filter(|finding| finding.places.contains(&place));
        match here.map(|finding| finding.grade).max() {
            Some(grade) => Look::Found(grade),
            None if self.seen(place) => Look::Sound,
            None => Look::Open,
        }
    }

    fn seen(&self, place: Place) -> bool {
        let looked = |answers: &Vec<Answer>| answers.iter().any(Answer::looked);
        self.answers
            .iter()
            .any(|((_, at), answers)| *at == place && looked(answers))
    }

    /// Every place worth naming: the whole, the nave, each spoke, joint and felloe, and where the tyre was measured.
    pub fn places(&self) -> Vec<Place> {
        let felloes = &self.wheel.felloes;
        let (spokes, rim) = (felloes.spokes(), felloes.felloes());
        let mut places = vec![Place::Whole, Place::Nave];
        places.extend((1..=spokes).map(Place::Spoke));
        places.extend(self.round_the_tyre());
        places.extend((1..=rim).map(Place::Joint));
        places.extend((1..=rim).map(Place::Felloe));
        places
    }

    /// The places between spokes that are asked about or were answered.
    pub fn round_the_tyre(&self) -> Vec<Place> {
        let asked = Question::TyreGap.places_on(&self.wheel);
        let asked = asked
            .into_iter()
            .filter(|_| Question::TyreGap.asked_of(&self.wheel));
        let answered = self.answers.keys().map(|(_, place)| *place);
        let between = |place: &Place| matches!(place, Place::Between(_));
        let mut places: Vec<Place> = asked.chain(answered).filter(between).collect();
        places.sort_unstable();
        places.dedup();
        places
    }
}

fn answers(
    vehicle: &VehicleView<'_, '_>,
    examination: Option<&Examination>,
    position: Position,
) -> BTreeMap<(Question, Place), Vec<Answer>> {
    let mut answers: BTreeMap<(Question, Place), Vec<Answer>> = BTreeMap::new();
    for (_, reading) in examination
        .iter()
        .flat_map(|latest| vehicle.readings(latest.id))
    {
        let slot = reading.slot;
        if slot.position == position {
            answers
                .entry((slot.question, slot.place))
                .or_default()
                .push(reading.answer);
        }
    }
    answers
}
