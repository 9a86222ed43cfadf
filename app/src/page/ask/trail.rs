//! What outlives the page of one question: the steps taken, so that undo reaches over the last page, and the questions
//! that were passed.

use cartside_core::daybook::EntryId;
use cartside_core::survey::Question;
use cartside_core::wheel::Position;
use leptos::prelude::*;

use super::writing::Put;

/// A second tap sooner than this is a trembling hand, in milliseconds.
const TREMBLE: f64 = 250.0;

/// What was put, and the entries that answering it wrote.
pub type Step = (Put, Vec<EntryId>);

/// What was done on the pages of questions since the app was opened. Copies are the same; its signals live as long as
/// the app.
#[derive(Clone, Copy)]
pub struct Trail {
    /// The last step last.
    steps: RwSignal<Vec<Step>>,
    passed: RwSignal<Vec<Put>>,
    tapped: StoredValue<(&'static str, f64)>,
    went: StoredValue<f64>,
}

impl Trail {
    /// Nothing done yet.
    pub fn new() -> Trail {
        Trail {
            steps: RwSignal::new(Vec::new()),
            passed: RwSignal::new(Vec::new()),
            tapped: StoredValue::new(("", f64::NEG_INFINITY)),
            went: StoredValue::new(f64::NEG_INFINITY),
        }
    }

    /// The last step, if it was taken on this wheel.
    pub fn last(self, wheel: (EntryId, Position)) -> Option<Step> {
        self.steps.with(|steps| last(steps, wheel))
    }

    /// As [`Trail::last`], for a tap.
    pub fn last_untracked(self, wheel: (EntryId, Position)) -> Option<Step> {
        self.steps.with_untracked(|steps| last(steps, wheel))
    }

    /// Keeps a step. A question that is answered is not passed any more.
    pub fn keep(self, put: Put, step: Vec<EntryId>) {
        self.steps.update(|steps| steps.push((put, step)));
        self.passed
            .update(|passed| passed.retain(|passed| *passed != put));
    }

    /// Drops the last step: it is taken back, or cannot be.
    pub fn drop_last(self) {
        self.steps.update(|steps| drop(steps.pop()));
    }

    /// Passes a question until the app is opened anew, or until it is answered after all.
    pub fn pass(self, put: Put) {
        self.passed.update(|passed| {
            if !passed.contains(&put) {
                passed.push(put);
            }
        });
    }

    /// The questions of this wheel that were passed.
    pub fn passed(self, wheel: (EntryId, Position)) -> Vec<Question> {
        let here = |passed: &&Put| passed.wheel() == wheel;
        self.passed
            .with_untracked(|passed| passed.iter().filter(here).map(|put| put.question).collect())
    }

    /// Marks that the app goes on to another question by itself, at this time in milliseconds.
    pub fn goes_on(self, when: f64) {
        self.went.set_value(when);
    }

    /// Whether this tap is one of a trembling hand: the same key as just now, or a key that came under the finger
    /// just now. `when` is the event's own time, in milliseconds.
    pub fn trembles(self, code: &'static str, when: f64) -> bool {
        let (last, then) = self.tapped.get_value();
        self.tapped.set_value((code, when));
        (last == code && when - then < TREMBLE) || when - self.went.get_value() < TREMBLE
    }
}

fn last(steps: &[Step], wheel: (EntryId, Position)) -> Option<Step> {
    let last = steps.last();
    last.filter(|(of, _)| of.wheel() == wheel).cloned()
}
