//! The rows of readings of one wheel: which limits each reaches and where, and what was not looked at.

mod missing;
mod signs;

use super::finding::{Finding, Measure};
use super::judge::Beside;
use super::limit::{Limit, Test};
use super::reach::{at_one_place, reaches, worse};
use super::seen::{Seen, Taken, seen_at};
use super::standing::Grade;
use crate::daybook::EntryId;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::{Length, Measured};
use crate::survey::{Answer, Crack, Places, Play, Question, Ring};
use crate::wheel::{Place, Size, Wheel};

/// The places that reach a limit, and how far.
struct Reached {
    places: Vec<Place>,
    measure: Measure,
    /// The answers it rests on, where they are not those of its own row at its places.
    beyond: Vec<(Question, Place)>,
    /// The entries it rests on that are not of this wheel.
    others: Vec<EntryId>,
}

impl Reached {
    fn at(places: Vec<Place>, measure: Measure) -> Option<Reached> {
        (!places.is_empty()).then_some(Reached {
            places,
            measure,
            beyond: Vec::new(),
            others: Vec::new(),
        })
    }

    fn with(self, beyond: Vec<(Question, Place)>) -> Reached {
        Reached { beyond, ..self }
    }
}

/// The places in their order, each once.
fn each_once(mut places: Vec<Place>) -> Vec<Place> {
    places.sort_unstable();
    places.dedup();
    places
}

/// The rows of one wheel.
pub(super) struct Rows<'a> {
    wheel: &'a Wheel,
    limits: &'a [Limit],
    beside: &'a Beside,
    seen: Vec<(Question, Vec<(Place, Seen)>)>,
}

impl<'a> Rows<'a> {
    pub(super) fn new(
        wheel: &'a Wheel,
        readings: &[&Taken],
        limits: &'a [Limit],
        beside: &'a Beside,
    ) -> Rows<'a> {
        let seen = Question::all()
            .map(|question| (question, seen_at(readings, question)))
            .collect();
        Rows {
            wheel,
            limits,
            beside,
            seen,
        }
    }

    fn row(&self, question: Question) -> impl Iterator<Item = (Place, &Seen)> {
        let of = self.seen.iter().filter(move |(row, _)| *row == question);
        of.flat_map(|(_, seen)| seen)
            .map(|(place, seen)| (*place, seen))
    }

    fn seen_in(&self, question: Question, place: Place) -> Option<&Seen> {
        let (_, seen) = self.row(question).find(|(at, _)| *at == place)?;
        Some(seen)
    }

    fn limits_of(&self, question: Question) -> impl Iterator<Item = &'a Limit> {
        self.limits
            .iter()
            .filter(move |limit| limit.question == question)
    }

    /// The worst limits this row reaches, in the order of the table: one that names no place of its
    /// own beside those before it adds nothing and is left out.
    pub(super) fn findings(&self, question: Question) -> Vec<Finding> {
        let mut worst: Vec<(&Limit, Reached)> = Vec::new();
        for limit in self.limits_of(question) {
            let grade = worst.first().map(|(reached, _)| reached.grade);
            if grade.is_none_or(|grade| limit.grade >= grade)
                && let Some(reached) = self.reached(question, &limit.test)
            {
                if grade.is_some_and(|grade| limit.grade > grade) {
                    worst.clear();
                }
                let named = |place| worst.iter().any(|(_, other)| other.places.contains(place));
                if !reached.places.iter().all(named) {
                    worst.push((limit, reached));
                }
            }
        }
        worst
            .into_iter()
            .map(|(limit, reached)| Finding {
                question,
                grade: limit.grade,
                limit: *limit,
                entries: self.entries(question, &reached),
                not_looked: self.not_looked(question),
                places: reached.places,
                measure: reached.measure,
            })
            .collect()
    }

    fn entries(&self, question: Question, reached: &Reached) -> Vec<EntryId> {
        let own = reached.places.iter().map(|place| (question, *place));
        let beyond = reached.beyond.iter().copied();
        let mut entries: Vec<EntryId> = own
            .chain(beyond)
            .filter_map(|(row, place)| self.seen_in(row, place))
            .flat_map(|seen| seen.entries.clone())
            .chain(reached.others.iter().copied())
            .collect();
        entries.sort_unstable();
        entries.dedup();
        entries
    }

    fn reached(&self, question: Question, test: &Test) -> Option<Reached> {
        match test {
            Test::AtPlacesAndAQuarter { each, places } => {
                let reach = self.anywhere(question, &Test::Anywhere(*each))?.places;
                let of = self.looked(question).count();
                let enough = reach.len() >= *places && reach.len() * 4 >= of;
                let measure = self.counted(question, &reach, of);
                enough.then(|| Reached::at(reach, measure))?
            }
            Test::Sum(least) => {
                let reached = self.anywhere(question, &Test::Any)?;
                let sum = self.lengths_at(question, &reached.places).sum();
                let measure = Measure::Sum(sum);
                reaches(sum, *least).then_some(Reached { measure, ..reached })
            }
            Test::Answered(times) => {
                let bad = self.with_the_gone(question, |seen| seen.bad);
                let enough = bad.len() >= *times;
                let reached = enough.then(|| Reached::at(bad, Measure::Said))??;
                Some(reached.with(self.gone(question)))
            }
            Test::NotThere => {
                let gone = self.with_the_gone(question, |seen| seen.gone);
                let reached = Reached::at(gone, Measure::Said)?;
                Some(reached.with(self.gone(question)))
            }
            Test::DeadAllRound => self.dead_all_round(question),
            Test::CrackedWithLooseBond(crack) => self.with_a_loose_bond(question, *crack),
            Test::PairDiffers(least) => self.pair_differs(question, *least),
            Test::FelloeBound if self.beside.tyre_off => None,
            Test::FelloeBound => self.felloe_bound(question),
            Test::Neighbours => self.neighbours(question),
            Test::AQuarter => self.a_quarter(question),
            Test::BesideALooseOne => self.beside_a_loose_one(question),
            single => self.anywhere(question, single),
        }
    }

    /// The places that reach a limit which looks at one place at a time.
    fn anywhere(&self, question: Question, test: &Test) -> Option<Reached> {
        let mut places = Vec::new();
        let mut worst: Option<Measure> = None;
        for (place, seen) in self.row(question) {
            if let Some(measure) = at_one_place(self.wheel, question, test, seen) {
                places.push(place);
                worst = Some(worst.map_or(measure, |worst| worse(worst, measure)));
            }
        }
        Reached::at(places, worst?)
    }

    fn looked(&self, question: Question) -> impl Iterator<Item = Place> {
        self.row(question)
            .filter(|(_, seen)| seen.looked)
            .map(|(place, _)| place)
    }

    fn lengths_at(&self, question: Question, places: &[Place]) -> impl Iterator<Item = Length> {
        self.row(question)
            .filter(|(place, _)| places.contains(place))
            .filter_map(|(_, seen)| seen.greatest())
    }

    fn counted(&self, question: Question, places: &[Place], of: usize) -> Measure {
        let greatest = self.lengths_at(question, places).reduce(Length::max);
        Measure::Places {
            reach: places.len(),
            of,
            greatest,
        }
    }

    /// The places of a row of which this holds, and those where the part is known to be gone.
    fn with_the_gone(&self, question: Question, holds: fn(&Seen) -> bool) -> Vec<Place> {
        let own = self.row(question).filter(|(_, seen)| holds(seen));
        let mut places: Vec<Place> = own.map(|(place, _)| place).collect();
        places.extend(self.gone(question).into_iter().map(|(_, place)| place));
        each_once(places)
    }

    /// Where another question found the part that this row asks for not there: of a spoke that
    /// cannot be felt, pricked or looked along nothing is left.
    fn gone(&self, question: Question) -> Vec<(Question, Place)> {
        let rows: Vec<Question> = match question {
            Question::SpokeBroken => Question::all()
                .filter(|row| row.places() == Places::Spokes && *row != question)
                .collect(),
            Question::Strake => vec![Question::StrakeCracked],
            Question::KeeperPresent => vec![Question::KeeperWorn],
            _ => Vec::new(),
        };
        let gone = |row: Question| self.row(row).filter(|(_, seen)| seen.gone);
        rows.into_iter()
            .flat_map(|row| gone(row).map(move |(place, _)| (row, place)))
            .collect()
    }

    fn dead_all_round(&self, question: Question) -> Option<Reached> {
        let dead = self.anywhere(question, &Test::Sounds(Ring::Dead))?;
        let all = self.looked(question).count() == dead.places.len();
        (all && self.not_looked(question).is_empty()).then_some(dead)
    }

    fn with_a_loose_bond(&self, question: Question, crack: Crack) -> Option<Reached> {
        let cracked = self.anywhere(question, &Test::Cracked(crack))?;
        let loose = self.anywhere(Question::Bonds, &Test::Felt(Play::JustMoves));
        let bonds = loose.or_else(|| self.anywhere(Question::Bonds, &Test::NotThere))?;
        let beyond = bonds.places.iter().map(|place| (Question::Bonds, *place));
        Some(cracked.with(beyond.collect()))
    }

    fn pair_differs(&self, question: Question, least: Length) -> Option<Reached> {
        let mut worst: Option<(Length, EntryId, Length)> = None;
        let mine = || self.row(question).flat_map(|(_, seen)| &seen.lengths);
        for other in &self.beside.dish {
            let answer = &other.reading.answer;
            let dish = answer.length();
            for (own, dish) in mine().filter_map(|own| Some((own.value(), dish?))) {
                let this = ((own - dish).abs(), other.entry, own);
                if reaches(this.0, least)
                    && !self.other_left(question, answer)
                    && worst.is_none_or(|worst| this > worst)
                {
                    worst = Some(this);
                }
            }
        }
        let (by, other, now) = worst?;
        let places = self.row(question).map(|(place, _)| place).collect();
        Some(Reached {
            others: vec![other],
            ..Reached::at(places, Measure::Apart { by, now })?
        })
    }

    /// Whether it is plainly the other wheel that has left its dish as built: this one lies nearer to
    /// its own by more than the doubts of both readings.
    fn other_left(&self, question: Question, other: &Answer) -> bool {
        let (own, built) = (self.wheel.sizes.get(Size::Dish), self.beside.built);
        let (Some(own), Some(built), Answer::Length(other)) = (own, built, other) else {
            return false;
        };
        let off = |now: &Measured, built: Length| ((now.value() - built).abs(), now.doubt());
        let mine = self.row(question).flat_map(|(_, seen)| &seen.lengths);
        let mine = mine.map(|now| off(now, own)).collect::<Vec<_>>();
        let (theirs, doubt) = off(other, built);
        let nearer = |(mine, own): &(Length, Length)| *mine + *own + doubt < theirs;
        !mine.is_empty() && mine.iter().all(nearer)
    }

    /// Every place of a row with its length, nought where nothing was found; `None` unless every
    /// place was looked at.
    fn every(
        &self,
        question: Question,
        pick: fn(&Seen) -> Option<Length>,
    ) -> Option<Vec<(Place, Length)>> {
        let nought = millimetres(0.0);
        let at = |place: Place| {
            let seen = self.seen_in(question, place);
            let seen = seen.filter(|seen| seen.looked && !seen.gone)?;
            Some((place, pick(seen).unwrap_or(nought).max(nought)))
        };
        question.places_on(self.wheel).into_iter().map(at).collect()
    }

    /// Of several readings of one joint the narrowest counts, of one shoulder the widest: the rim
    /// is then bound by most.
    fn felloe_bound(&self, question: Question) -> Option<Reached> {
        let off = self.every(question, Seen::greatest)?;
        let joints = self.every(Question::JointGap, Seen::least)?;
        let mean: Length = off.iter().map(|(_, length)| *length).sum::<Length>() / off.len() as f64;
        let open: Length = joints.iter().map(|(_, length)| *length).sum();
        let ease = mean * std::f64::consts::TAU - open;
        if to_paper_mm(ease) <= 0.0 {
            return None;
        }
        let standing = off.iter().filter(|(_, length)| *length > millimetres(0.0));
        let places = standing.map(|(place, _)| *place).collect();
        let beyond = off.iter().map(|(place, _)| (question, *place));
        let joints = joints.iter().map(|(place, _)| (Question::JointGap, *place));
        Some(Reached::at(places, Measure::Ease(ease))?.with(beyond.chain(joints).collect()))
    }

    /// The places of a row that reach *light work only* by a limit that looks at one place.
    fn loose(&self, question: Question) -> Vec<Place> {
        let single = |test: &Test| matches!(test, Test::Any | Test::Anywhere(_) | Test::Felt(_));
        let limits = self.limits_of(question);
        let places = limits
            .filter(|limit| limit.grade >= Grade::LightWorkOnly && single(&limit.test))
            .filter_map(|limit| self.anywhere(question, &limit.test))
            .flat_map(|reached| reached.places)
            .collect();
        each_once(places)
    }

    fn beside(&self, one: Place, other: Place) -> bool {
        matches!((one, other), (Place::Spoke(one), Place::Spoke(other)) if self.wheel.neighbours(one, other))
    }

    fn neighbours(&self, question: Question) -> Option<Reached> {
        let loose = self.loose(question);
        let of = self.looked(question).count();
        let paired: Vec<Place> = loose
            .iter()
            .copied()
            .filter(|one| loose.iter().any(|other| self.beside(*one, *other)))
            .collect();
        let measure = self.counted(question, &paired, of);
        Reached::at(paired, measure)
    }

    fn a_quarter(&self, question: Question) -> Option<Reached> {
        let loose = self.loose(question);
        let of = usize::from(self.wheel.felloes.spokes());
        let measure = self.counted(question, &loose, of);
        (loose.len() * 4 >= of).then(|| Reached::at(loose, measure))?
    }

    fn beside_a_loose_one(&self, question: Question) -> Option<Reached> {
        let loose: Vec<(Question, Place)> = [Question::SpokeFoot, Question::SpokeRimEnd]
            .into_iter()
            .flat_map(|row| self.loose(row).into_iter().map(move |place| (row, place)))
            .collect();
        let (mut beside, mut beyond) = (Vec::new(), Vec::new());
        for broken in self.with_the_gone(question, |seen| seen.bad) {
            let next = loose
                .iter()
                .filter(|(_, place)| self.beside(broken, *place));
            let before = beyond.len();
            beyond.extend(next);
            if beyond.len() > before {
                beside.push(broken);
            }
        }
        let gone = self.gone(question).into_iter();
        beyond.extend(gone.filter(|(_, place)| beside.contains(place)));
        Some(Reached::at(beside, Measure::Said)?.with(beyond))
    }

    /// The places of this wheel that a row asks for and that were not looked at.
    fn not_looked(&self, question: Question) -> Vec<Place> {
        let looked: Vec<Place> = self.looked(question).collect();
        let asked = question.places_on(self.wheel);
        // Round the tyre any four places will do.
        let left = if question.places() == Places::RoundTheTyre {
            asked.len().saturating_sub(looked.len())
        } else {
            asked.len()
        };
        asked
            .into_iter()
            .filter(|place| !looked.contains(place))
            .take(left)
            .collect()
    }
}
