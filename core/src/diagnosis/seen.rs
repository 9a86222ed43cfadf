//! What was seen at each place of one row: several readings of one place come down to the worst of
//! them, so that of a disputed reading the more cautious side counts.

use crate::daybook::EntryId;
use crate::quantity::length::millimetres;
use crate::quantity::{Length, Measured, Percent};
use crate::survey::{Answer, Crack, Pad, Places, Play, Question, Reading, Ring};
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
    /// The lengths that were given; of *over* the least it can be.
    pub lengths: Vec<Measured>,
    /// The worst verdict of the hand, if any was given.
    pub play: Option<Play>,
    /// The worst sound, if any was given.
    pub ring: Option<Ring>,
    /// The worst crack, if any was given.
    pub crack: Option<Crack>,
    /// The shares that were given.
    pub shares: Vec<Percent>,
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
        match answer {
            Answer::Length(measured) => self.lengths.push(*measured),
            Answer::Over(least) => self.lengths.extend(Measured::new(*least, millimetres(0.0))),
            Answer::Play(play) => self.play = self.play.max(Some(*play)),
            Answer::Ring(ring) => self.ring = self.ring.max(Some(*ring)),
            Answer::Crack(crack) => self.crack = self.crack.max(Some(*crack)),
            Answer::Share(share) => self.shares.push(*share),
            _ => {}
        }
        self.bad |= is_bad(question, answer);
        self.gone |= *answer == Answer::NotThere;
        self.looked |= answers(question, answer);
        self.entries.push(taken.entry);
    }

    /// The greatest length, if any was given.
    pub fn greatest(&self) -> Option<Length> {
        let lengths = self.lengths.iter().map(|measured| measured.value());
        lengths.reduce(Length::max)
    }

    /// The least length, if any was given.
    pub fn least(&self) -> Option<Length> {
        let lengths = self.lengths.iter().map(|measured| measured.value());
        lengths.reduce(Length::min)
    }
}

/// Whether an answer is one to its question; any other is kept and is no look. *Looked, nothing
/// found* is one only where a fault was looked for, *not there* only where the part can be missing.
fn answers(question: Question, answer: &Answer) -> bool {
    let pad = question.pad();
    match answer {
        Answer::Length(_) | Answer::Over(_) => {
            matches!(pad, Pad::Gauge(_) | Pad::Size(_) | Pad::Verdict(_))
        }
        Answer::Play(_) => matches!(pad, Pad::Verdict(_) | Pad::Fastening),
        Answer::Ring(_) => pad == Pad::Ring,
        Answer::Crack(_) => pad == Pad::Crack,
        Answer::Share(_) => pad == Pad::Share,
        Answer::Yes | Answer::No => pad == Pad::YesNo,
        Answer::NothingFound => match pad {
            Pad::Gauge(_) | Pad::Verdict(_) | Pad::Crack => true,
            // No dish and no iron left are not nothing.
            Pad::Size(_) => !matches!(question, Question::Dish | Question::TyreLeft),
            Pad::YesNo => !question.sound_is_yes(),
            Pad::Fastening | Pad::Ring | Pad::Share => false,
        },
        Answer::NotThere => {
            question.places() == Places::Spokes
                || matches!(
                    question,
                    Question::Bonds | Question::Strake | Question::StrakeCracked
                )
                || (pad == Pad::YesNo && question.sound_is_yes())
        }
        Answer::CannotSee => false,
    }
}

/// Whether an answer is the bad one for its question.
pub(super) fn is_bad(question: Question, answer: &Answer) -> bool {
    if question.pad() != Pad::YesNo {
        return false;
    }
    match answer {
        Answer::Yes => !question.sound_is_yes(),
        Answer::No => question.sound_is_yes(),
        Answer::NotThere => question.sound_is_yes() || question == Question::SpokeBroken,
        _ => false,
    }
}

/// What was seen at each place of one row, in the order of the places.
pub fn seen_at(readings: &[&Taken], question: Question) -> Vec<(Place, Seen)> {
    let mut places: Vec<(Place, Seen)> = Vec::new();
    for taken in readings
        .iter()
        .filter(|taken| taken.reading.slot.question == question)
    {
        let place = taken.reading.slot.place;
        let at = places.partition_point(|(before, _)| *before < place);
        match places.get_mut(at) {
            Some((here, seen)) if *here == place => seen.add(taken),
            _ => {
                let mut seen = Seen::default();
                seen.add(taken);
                places.insert(at, (place, seen));
            }
        }
    }
    for (_, seen) in &mut places {
        seen.entries.sort_unstable();
        seen.entries.dedup();
    }
    places
}
