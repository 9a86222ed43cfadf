//! The one evaluator: readings of one wheel against the table of limits.

use std::collections::{BTreeMap, BTreeSet};

use super::finding::{Finding, Measure, Missing};
use super::limit::{Limit, Test};
use super::needs::{needs, questions};
use super::seen::{Seen, Taken, seen_at};
use super::standing::{Grade, Standing};
use crate::daybook::EntryId;
use crate::quantity::Length;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::survey::{Need, Play, Question};
use crate::wheel::{Place, Wheel};

/// What the readings of one wheel come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// What was found, worst first.
    pub findings: Vec<Finding>,
    /// What must be recorded before the wheel is judged.
    pub missing: Vec<Missing>,
    /// Readings of places the wheel has not, or of questions not asked of it: listed, not judged.
    pub elsewhere: Vec<EntryId>,
}

impl Judgement {
    /// The harshest standing any finding proposes, whatever is still missing.
    pub fn so_far(&self) -> Option<Standing> {
        self.findings
            .iter()
            .filter_map(|finding| finding.grade.proposes())
            .max()
    }

    /// The standing proposed: *not judged* while anything is missing and nothing found is worse.
    pub fn proposed(&self) -> Standing {
        let silent = if self.missing.is_empty() {
            Standing::NoFaultFound
        } else {
            Standing::NotJudged
        };
        self.so_far().map_or(silent, |found| found.max(silent))
    }
}

/// Judges one wheel by its readings. The order of the readings makes no difference.
pub fn judge(wheel: &Wheel, readings: &[Taken], limits: &[Limit]) -> Judgement {
    let here = |taken: &&Taken| {
        let slot = taken.reading.slot;
        wheel.has(slot.place) && slot.question.asked_of(wheel)
    };
    let (mine, others): (Vec<&Taken>, Vec<&Taken>) = readings.iter().partition(here);
    let mine: Vec<Taken> = mine.into_iter().cloned().collect();
    let rows = Rows::new(wheel, &mine, limits);
    let mut findings: Vec<Finding> = Question::all()
        .flat_map(|question| rows.findings(question))
        .collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.grade));
    let mut elsewhere: Vec<EntryId> = others.into_iter().map(|taken| taken.entry).collect();
    elsewhere.sort_unstable();
    Judgement {
        findings,
        missing: rows.missing(),
        elsewhere,
    }
}

/// The places that reach a limit, and how far.
struct Reached {
    places: Vec<Place>,
    measure: Measure,
    /// The answers it rests on, where they are not those of its own row at its places.
    beyond: Vec<(Question, Place)>,
}

impl Reached {
    fn at(places: Vec<Place>, measure: impl FnOnce(&[Place]) -> Measure) -> Option<Reached> {
        (!places.is_empty()).then(|| Reached {
            measure: measure(&places),
            places,
            beyond: Vec::new(),
        })
    }
}

/// Whether a length reaches a limit as both stand on paper, so that a limit reached by adding up is
/// reached whatever the order.
fn reaches(length: Length, least: Length) -> bool {
    to_paper_mm(length) >= to_paper_mm(least)
}

struct Rows<'a> {
    wheel: &'a Wheel,
    limits: &'a [Limit],
    seen: BTreeMap<Question, BTreeMap<Place, Seen>>,
}

impl<'a> Rows<'a> {
    fn new(wheel: &'a Wheel, readings: &[Taken], limits: &'a [Limit]) -> Rows<'a> {
        let seen = Question::all()
            .map(|question| (question, seen_at(readings, question)))
            .collect();
        Rows {
            wheel,
            limits,
            seen,
        }
    }

    fn row(&self, question: Question) -> impl Iterator<Item = (Place, &Seen)> {
        self.seen
            .get(&question)
            .into_iter()
            .flatten()
            .map(|(place, seen)| (*place, seen))
    }

    /// The worst limits this row reaches, in the order of the table: one that names no place of its
    /// own beside those before it adds nothing and is left out.
    fn findings(&self, question: Question) -> Vec<Finding> {
        let mut worst: Vec<(&Limit, Reached)> = Vec::new();
        for limit in self
            .limits
            .iter()
            .filter(|limit| limit.question == question)
        {
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
            .filter_map(|(row, place)| self.seen.get(&row)?.get(&place))
            .flat_map(|seen| seen.entries.clone())
            .collect();
        entries.sort_unstable();
        entries.dedup();
        entries
    }

    fn reached(&self, question: Question, test: &Test) -> Option<Reached> {
        match test {
            Test::Any => self.longest(question, |length| length > millimetres(0.0)),
            Test::Anywhere(least) => self.longest(question, |length| reaches(length, *least)),
            Test::AtPlacesAndAQuarter { each, places } => {
                let reach = self.where_length(question, |length| reaches(length, *each));
                let of = self.looked(question).count();
                let enough = reach.len() >= *places && reach.len() * 4 >= of;
                if enough {
                    Reached::at(reach, |reach| Measure::Places {
                        reach: reach.len(),
                        of,
                    })
                } else {
                    None
                }
            }
            Test::Sum(least) => self
                .sum(question)
                .filter(|(_, sum)| reaches(*sum, *least))
                .and_then(|(places, sum)| Reached::at(places, |_| Measure::Sum(sum))),
            Test::Felt(play) => Reached::at(self.felt(question, *play), |_| Measure::Said),
            Test::Answered(times) => {
                let bad = self.answered_badly(question);
                if bad.len() >= *times {
                    Reached::at(bad, |_| Measure::Said).map(|reached| Reached {
                        beyond: self.gone(question),
                        ..reached
                    })
                } else {
                    None
                }
            }
            Test::Neighbours => self.neighbours(question),
            Test::AQuarter => self.a_quarter(question),
            Test::BesideALooseOne => self.beside_a_loose_one(question),
        }
    }

    fn looked(&self, question: Question) -> impl Iterator<Item = Place> {
        self.row(question)
            .filter(|(_, seen)| seen.looked)
            .map(|(place, _)| place)
    }

    fn where_length(&self, question: Question, holds: impl Fn(Length) -> bool) -> Vec<Place> {
        self.row(question)
            .filter(|(_, seen)| seen.length.is_some_and(&holds))
            .map(|(place, _)| place)
            .collect()
    }

    fn longest(&self, question: Question, holds: impl Fn(Length) -> bool) -> Option<Reached> {
        let places = self.where_length(question, holds);
        let lengths = self
            .row(question)
            .filter(|(place, _)| places.contains(place))
            .filter_map(|(_, seen)| seen.length);
        let longest =
            lengths.reduce(|longest, length| if length > longest { length } else { longest })?;
        Reached::at(places, |_| Measure::Greatest(longest))
    }

    fn sum(&self, question: Question) -> Option<(Vec<Place>, Length)> {
        let places = self.where_length(question, |length| length > millimetres(0.0));
        let sum = self
            .row(question)
            .filter(|(place, _)| places.contains(place))
            .filter_map(|(_, seen)| seen.length)
            .sum();
        (!places.is_empty()).then_some((places, sum))
    }

    fn felt(&self, question: Question, least: Play) -> Vec<Place> {
        self.row(question)
            .filter(|(_, seen)| seen.play >= Some(least))
            .map(|(place, _)| place)
            .collect()
    }

    fn answered_badly(&self, question: Question) -> Vec<Place> {
        let mut places: BTreeSet<Place> = self
            .row(question)
            .filter(|(_, seen)| seen.bad)
            .map(|(place, _)| place)
            .collect();
        places.extend(self.gone(question).into_iter().map(|(_, place)| place));
        places.into_iter().collect()
    }

    /// Where a foot or a rim end was not there to be felt: such a spoke is as good as broken.
    fn gone(&self, question: Question) -> Vec<(Question, Place)> {
        let ends: &[Question] = match question {
            Question::SpokeBroken => &[Question::SpokeFoot, Question::SpokeRimEnd],
            _ => &[],
        };
        let gone = |row: Question| self.row(row).filter(|(_, seen)| seen.gone);
        ends.iter()
            .flat_map(|row| gone(*row).map(|(place, _)| (*row, place)))
            .collect()
    }

    /// The places of a row that reach *light work only* by a limit that looks at one place.
    fn loose(&self, question: Question) -> Vec<Place> {
        let single = |test: &Test| matches!(test, Test::Any | Test::Anywhere(_) | Test::Felt(_));
        let mut places: BTreeSet<Place> = BTreeSet::new();
        for limit in self
            .limits
            .iter()
            .filter(|limit| limit.question == question && limit.grade >= Grade::LightWorkOnly)
        {
            if single(&limit.test) {
                places.extend(
                    self.reached(question, &limit.test)
                        .into_iter()
                        .flat_map(|reached| reached.places),
                );
            }
        }
        places.into_iter().collect()
    }

    fn beside(&self, one: Place, other: Place) -> bool {
        matches!((one, other), (Place::Spoke(one), Place::Spoke(other)) if self.wheel.neighbours(one, other))
    }

    fn neighbours(&self, question: Question) -> Option<Reached> {
        let loose = self.loose(question);
        let of = self.looked(question).count();
        let paired = loose
            .iter()
            .copied()
            .filter(|one| loose.iter().any(|other| self.beside(*one, *other)))
            .collect();
        Reached::at(paired, |paired| Measure::Places {
            reach: paired.len(),
            of,
        })
    }

    fn a_quarter(&self, question: Question) -> Option<Reached> {
        let loose = self.loose(question);
        let of = usize::from(self.wheel.felloes.spokes());
        if loose.len() * 4 >= of {
            Reached::at(loose, |loose| Measure::Places {
                reach: loose.len(),
                of,
            })
        } else {
            None
        }
    }

    fn beside_a_loose_one(&self, question: Question) -> Option<Reached> {
        let loose: Vec<(Question, Place)> = [Question::SpokeFoot, Question::SpokeRimEnd]
            .into_iter()
            .flat_map(|row| self.loose(row).into_iter().map(move |place| (row, place)))
            .collect();
        let (mut beside, mut beyond) = (Vec::new(), Vec::new());
        for broken in self.answered_badly(question) {
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
        Reached::at(beside, |_| Measure::Said).map(|reached| Reached { beyond, ..reached })
    }

    /// The places of this wheel that a row asks for and that were not looked at.
    fn not_looked(&self, question: Question) -> Vec<Place> {
        let looked: BTreeSet<Place> = self.looked(question).collect();
        let asked = question.places_on(self.wheel);
        // Round the tyre any four places will do.
        let left = if question == Question::TyreGap {
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

    fn missing(&self) -> Vec<Missing> {
        needs(self.wheel)
            .filter_map(|need| self.missing_of(need))
            .collect()
    }

    fn missing_of(&self, need: Need) -> Option<Missing> {
        let rows = questions(need);
        let left: BTreeSet<Place> = rows.iter().flat_map(|row| self.not_looked(*row)).collect();
        // A need without a question of its own can only be missing.
        (rows.is_empty() || !left.is_empty()).then(|| Missing {
            need,
            places: left
                .into_iter()
                .filter(|place| *place != Place::Whole)
                .collect(),
        })
    }
}

#[cfg(test)]
mod tests;
