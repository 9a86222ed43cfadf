//! What was seen at each place of one row: several readings of one place come down to the worst of
//! them, so that of a disputed reading the more cautious side counts.

use std::collections::BTreeMap;

use crate::daybook::EntryId;
use crate::quantity::Length;
use crate::survey::{Answer, Pad, Play, Question, Reading};
use crate::wheel::Place;

/// A reading with the entry it stands in.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// The entry.
    pub entry: EntryId,
    /// The reading.
    pub reading: Reading,
}

/// What was seen at one place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// The greatest length, if any was given.
    pub length: Option<Length>,
    /// The worst verdict of the hand, if any was given.
    pub play: Option<Play>,
    /// The answer was the bad one: *no* of a keeper, *yes* of a break.
    pub bad: bool,
    /// The part was not there.
    pub gone: bool,
    /// The place was looked at, and an answer to the question given.
    pub looked: bool,
    /// The entries this rests on.
    pub entries: Vec<EntryId>,
}

impl Seen {
    fn add(&mut self, taken: &Taken) {
        let (answer, question) = (&taken.reading.answer, taken.reading.slot.question);
        if let Some(length) = answer.length() {
            self.length =
                Some(self.length.map_or(
                    length,
                    |longest| if length > longest { length } else { longest },
                ));
        }
        if let Answer::Play(play) = answer {
            self.play = self.play.max(Some(*play));
        }
        self.bad |= is_bad(question, answer);
        self.gone |= *answer == Answer::NotThere;
        self.looked |= answer.looked() && answers(question, answer);
        self.entries.push(taken.entry);
    }
}

/// Whether an answer is one to its question; any other is kept and is no look. *Looked, nothing
/// found* says nothing good of a keeper that was looked for.
fn answers(question: Question, answer: &Answer) -> bool {
    match answer {
        Answer::Length(_) | Answer::Over(_) => {
            matches!(question.pad(), Pad::Gauge(_) | Pad::Verdict(_))
        }
        Answer::Play(_) => matches!(question.pad(), Pad::Verdict(_)),
        Answer::Yes | Answer::No => question.pad() == Pad::YesNo,
        Answer::NothingFound => !is_keeper(question),
        Answer::NotThere | Answer::CannotSee => true,
    }
}

fn is_keeper(question: Question) -> bool {
    matches!(
        question,
        Question::KeeperPresent | Question::KeeperRight | Question::KeeperSecured
    )
}

/// Whether an answer is the bad one for its question.
fn is_bad(question: Question, answer: &Answer) -> bool {
    match question {
        Question::KeeperPresent | Question::KeeperRight | Question::KeeperSecured => {
            matches!(answer, Answer::No | Answer::NotThere)
        }
        Question::SpokeBroken => matches!(answer, Answer::Yes | Answer::NotThere),
        Question::TyreShifts => *answer == Answer::Yes,
        _ => false,
    }
}

/// What was seen at each place of one row, in the order of the places.
pub fn seen_at(readings: &[Taken], question: Question) -> BTreeMap<Place, Seen> {
    let mut places: BTreeMap<Place, Seen> = BTreeMap::new();
    for taken in readings
        .iter()
        .filter(|taken| taken.reading.slot.question == question)
    {
        places
            .entry(taken.reading.slot.place)
            .or_default()
            .add(taken);
    }
    for seen in places.values_mut() {
        seen.entries.sort_unstable();
        seen.entries.dedup();
    }
    places
}
