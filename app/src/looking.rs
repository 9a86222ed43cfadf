//! One wheel as the book has it now: how it is built, what its latest examination has answered, what that comes to,
//! and what is still to be asked.

use cartside_core::daybook::{EntryId, VehicleView, Visit};
use cartside_core::diagnosis::{
    Beside, Grade, Judgement, Standing, carries_people, examined, held, judge,
};
use cartside_core::survey::{Answer, Places, Question, Stage, is_lifted_for};
use cartside_core::wheel::{Place, Position, Wheel};
use cartside_core::words::{self, Examined};

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
    /// What is said of it now.
    pub said: Visit,
}

impl Examination {
    /// The latest of a vehicle.
    pub fn latest(vehicle: &VehicleView<'_, '_>) -> Option<Examination> {
        let entry = *vehicle.visits().last()?;
        let said = vehicle.visit(entry.id).map(|(said, _)| said.clone());
        Some(Examination {
            id: entry.id,
            day: entry.at.day().to_owned(),
            shown: words::when::day(&entry.at),
            said: said.unwrap_or_default(),
        })
    }

    /// The latest of the vehicle in hand. Whoever reads it reads it again after each step.
    pub fn now(shop: Workshop) -> Option<Examination> {
        let opened = shop.opened.get()?;
        let view = opened.book.view();
        Examination::latest(&view.vehicle(opened.vehicle))
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

/// The answers to questions at places, in the order of those; each has one answer, or several in dispute.
pub type Answers = Vec<((Question, Place), Vec<Answer>)>;

/// One wheel as the book has it now.
#[derive(Clone, Debug, PartialEq)]
pub struct Looking {
    /// The wheel.
    pub wheel: Wheel,
    /// The entry that describes it.
    pub described_by: EntryId,
    /// The latest examination, if there was one.
    pub examination: Option<Examination>,
    /// What it has answered, by question and place.
    pub answers: Answers,
    /// What that comes to.
    pub judgement: Judgement,
    /// Whether people are to be carried.
    pub people: bool,
    /// What still holds of an earlier examination, and its day as it is shown.
    pub held: Option<(Standing, String)>,
}

impl Looking {
    /// The wheel at this position of the vehicle in hand, if one is described there. Whoever reads it reads it again
    /// after each step.
    pub fn at(shop: Workshop, position: Position) -> Option<Looking> {
        let opened = shop.opened.get()?;
        let view = opened.book.view();
        Looking::of(&view.vehicle(opened.vehicle), position, shop)
    }

    /// The wheel at this position, followed as the book grows.
    pub fn follow(shop: Workshop, position: Position) -> Memo<Option<Looking>> {
        Memo::new(move |_| Looking::at(shop, position))
    }

    /// The wheel at this position of a vehicle, if one is described there.
    pub fn of(
        vehicle: &VehicleView<'_, '_>,
        position: Position,
        shop: Workshop,
    ) -> Option<Looking> {
        let (wheel, described_by) = vehicle.wheel(position).filter(|_| !vehicle.struck())?;
        let examination = Examination::latest(vehicle);
        let limits = shop.limits();
        let judged = examination
            .as_ref()
            .and_then(|latest| examined(vehicle, latest.id, position, &limits));
        let people = |latest: &Examination| carries_people(vehicle, latest.id);
        let held = examination
            .as_ref()
            .and_then(|latest| held(vehicle, latest.id, position, &limits))
            .map(|(standing, entry)| (standing, words::when::day(&entry.at)));
        Some(Looking {
            held,
            people: examination.as_ref().is_some_and(people),
            wheel: wheel.clone(),
            described_by,
            answers: answers(vehicle, examination.as_ref(), position),
            examination,
            judgement: judged.unwrap_or_else(|| judge(wheel, &[], &limits, &Beside::default())),
        })
    }

    /// How far the wheel is taken apart.
    pub fn stage(&self) -> Stage {
        let latest = self.examination.as_ref();
        latest.map_or_else(Stage::default, |latest| latest.said.stage)
    }

    /// What the examination of this day has covered.
    pub fn examined<'a>(&self, day: &'a str) -> Examined<'a> {
        let said = self.examination.as_ref().map(|latest| &latest.said);
        let use_said = said.is_some_and(|said| !said.used_for.is_empty());
        Examined::of(day, &self.wheel, &self.judgement.missing, use_said)
    }

    /// What is asked of this wheel at its stage, in order.
    pub fn questions(&self) -> impl Iterator<Item = Question> {
        let stage = self.stage();
        let asked = move |it: &Question| it.asked_of(&self.wheel) && it.asked_when(stage);
        Question::all().filter(asked)
    }

    /// Why the wheel is not to be lifted for this question, if it would be.
    pub fn barred(&self, question: Question) -> Option<&'static str> {
        let said = self.examination.as_ref()?.said.safe_to_lift;
        words::visit::not_lifted(said).filter(|_| is_lifted_for(question, self.stage()))
    }

    /// What was answered here, if anything was.
    pub fn answer(&self, question: Question, place: Place) -> Option<&[Answer]> {
        let at = find(&self.answers, question, place).ok()?;
        self.answers.get(at).map(|(_, answers)| answers.as_slice())
    }

    /// Whether the question was answered here, be it by *can't see*.
    pub fn answered(&self, question: Question, place: Place) -> bool {
        self.answer(question, place).is_some()
    }

    /// The places where a question is still open. Round the tyre any places will do, as long as they are enough.
    pub fn left(&self, question: Question) -> Vec<Place> {
        let asked = question.places_on(&self.wheel);
        let done = self
            .answers
            .iter()
            .filter(|((of, _), _)| *of == question)
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

    /// The next question with an open place after this one, or from the beginning, without those that were passed.
    pub fn next_question(&self, after: Option<Question>, passed: &[Question]) -> Option<Question> {
        let open = |question: &Question| {
            !passed.contains(question)
                && !self.left(*question).is_empty()
                && self.barred(*question).is_none()
        };
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

    /// How bad what was answered here is, where it reaches a limit that sets a standing.
    pub fn grade(&self, question: Question, place: Place) -> Option<Grade> {
        let here = self.judgement.findings.iter();
        let here = here.filter(|it| it.question == question && it.places.contains(&place));
        let grade = here.map(|finding| finding.grade).max();
        grade.filter(|grade| grade.proposes().is_some())
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
        let answered = self.answers.iter().map(|((_, place), _)| *place);
        let between = |place: &Place| matches!(place, Place::Between(_));
        let mut places: Vec<Place> = asked.chain(answered).filter(between).collect();
        places.sort_unstable();
        places.dedup();
        places
    }
}

/// The place of the answers here, or where they would go in.
fn find(answers: &Answers, question: Question, place: Place) -> Result<usize, usize> {
    answers.binary_search_by(|(asked, _)| asked.cmp(&(question, place)))
}

fn answers(
    vehicle: &VehicleView<'_, '_>,
    examination: Option<&Examination>,
    position: Position,
) -> Answers {
    let mut answers = Answers::new();
    for (_, reading) in examination
        .iter()
        .flat_map(|latest| vehicle.readings(latest.id))
    {
        let slot = reading.slot;
        if slot.position == position {
            let at = find(&answers, slot.question, slot.place).unwrap_or_else(|at| {
                answers.insert(at, ((slot.question, slot.place), Vec::new()));
                at
            });
            if let Some((_, given)) = answers.get_mut(at) {
                given.push(reading.answer);
            }
        }
    }
    answers
}
