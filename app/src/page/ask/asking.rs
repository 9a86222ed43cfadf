//! What is being asked at this moment, and what each tap does. The next place is in hand only when the answer to
//! this one is stored.

use cartside_core::daybook::EntryId;
use cartside_core::survey::Question;
use cartside_core::wheel::{Place, Position};
use cartside_core::words;
use leptos::prelude::*;

use super::given::{self, Given};
use super::writing::{self, Put};
use crate::component::history_plot::earlier;
use crate::looking::Looking;
use crate::markup::Piece;
use crate::preferences::Preferences;
use crate::scribe::Scribe;
use crate::workshop::{Notice, Workshop};

/// A second tap on the same key sooner than this is a trembling hand, in milliseconds.
const TREMBLE: f64 = 250.0;

/// What stands below the place in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Showing {
    /// The keys that answer.
    Keys,
    /// The number pad.
    Numbers,
    /// The places to choose from.
    Places,
    /// Every place is answered, and none is being chosen.
    Nothing,
}

/// A question being put to a wheel. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
pub struct Asking {
    /// The workshop.
    pub shop: Workshop,
    /// The question.
    pub question: Question,
    /// The wheel as it is now.
    pub looking: Memo<Option<Looking>>,
    /// The place in hand; `None` when every place is answered.
    pub at: RwSignal<Option<Place>>,
    /// The entries of each step of this page, for undo.
    pub steps: RwSignal<Vec<Vec<EntryId>>>,
    /// Whether the number pad is open.
    pub measuring: RwSignal<bool>,
    /// Whether the list of places is open.
    pub choosing: RwSignal<bool>,
    /// What is typed on the number pad.
    pub typed: RwSignal<String>,
    /// Why what was typed is not taken.
    pub refusal: RwSignal<String>,
    put: Put,
    saving: RwSignal<bool>,
    last: StoredValue<(&'static str, f64)>,
}

impl Asking {
    /// Begins at this place, if the wheel has it, or at the first that has no answer.
    pub fn new(
        shop: Workshop,
        id: EntryId,
        position: Position,
        question: Question,
        place: Option<Place>,
        looking: Memo<Option<Looking>>,
    ) -> Asking {
        let now = looking.get_untracked();
        let has = |place: &Place| {
            question.fits(*place) && now.as_ref().is_some_and(|now| now.wheel.has(*place))
        };
        let first = || now.as_ref().and_then(|now| now.next_place(question, None));
        Asking {
            shop,
            question,
            looking,
            at: RwSignal::new(place.filter(has).or_else(first)),
            steps: RwSignal::new(Vec::new()),
            measuring: RwSignal::new(false),
            choosing: RwSignal::new(false),
            typed: RwSignal::new(String::new()),
            refusal: RwSignal::new(String::new()),
            put: Put {
                id,
                position,
                question,
            },
            saving: RwSignal::new(false),
            last: StoredValue::new(("", f64::NEG_INFINITY)),
        }
    }

    /// What stands below the place in hand.
    pub fn showing(self) -> Showing {
        match self.at.get() {
            _ if self.choosing.get() => Showing::Places,
            None => Showing::Nothing,
            Some(_) if self.measuring.get() => Showing::Numbers,
            Some(_) => Showing::Keys,
        }
    }

    /// The vehicle and where the wheel stands.
    pub fn wheel(self) -> (EntryId, Position) {
        (self.put.id, self.put.position)
    }

    /// Takes a key in hand: the answer for the place in hand. `when` is the event's own time, in milliseconds.
    pub fn tap(self, code: &'static str, given: Given, when: f64) {
        if let Some(place) = self.at.get_untracked()
            && !self.trembles(code, when)
        {
            self.take(vec![place], given);
        }
    }

    /// Answers for every place that is still open.
    pub fn tap_rest(self, code: &'static str, given: Given, when: f64) {
        let left = self.rest_untracked();
        if !left.is_empty() && !self.trembles(code, when) {
            self.take(left, given);
        }
    }

    fn trembles(self, code: &'static str, when: f64) -> bool {
        let (last, then) = self.last.get_value();
        self.last.set_value((code, when));
        last == code && when - then < TREMBLE
    }

    /// While a step is being stored its place is still in hand, so a further tap could only say it twice.
    fn take(self, places: Vec<Place>, given: Given) {
        if self.saving.get_untracked() {
            return;
        }
        match writing::answer(self.shop, self.put, &places, &given) {
            Err(said) => self.shop.notice.set(Notice::Trouble(said)),
            Ok((scribe, what)) => {
                let step = scribe.entries.iter().map(|entry| entry.id).collect();
                self.save(scribe, what, move || {
                    self.stored(step, places.last().copied());
                });
            }
        }
    }

    /// Saves a step, then goes on if it is stored.
    fn save(self, scribe: Scribe, what: String, then: impl FnOnce() + 'static) {
        self.saving.set(true);
        self.shop.save_then(scribe, what, move |stored| {
            // The page may be gone by now, and its signals with it.
            let _ = self.saving.try_set(false);
            if stored {
                then();
            }
        });
    }

    fn stored(self, step: Vec<EntryId>, last: Option<Place>) {
        let _ = self.steps.try_update(|steps| steps.push(step));
        let next = self.looking.try_get_untracked().flatten();
        let next = next.and_then(|looking| looking.next_place(self.question, last));
        let _ = self.at.try_set(next);
        let _ = self.measuring.try_set(false);
        let _ = self.choosing.try_set(false);
        let _ = self.typed.try_set(String::new());
        let _ = self.refusal.try_set(String::new());
    }

    /// Takes the last step of this page back.
    pub fn undo(self) {
        let Some(step) = self.steps.with_untracked(|steps| steps.last().cloned()) else {
            return;
        };
        if self.saving.get_untracked() {
            return;
        }
        match writing::undo(self.shop, self.put, &step) {
            Err(said) => self.shop.notice.set(Notice::Trouble(said)),
            Ok((scribe, what, place)) => self.save(scribe, what, move || {
                let _ = self.steps.try_update(|steps| drop(steps.pop()));
                let _ = self.at.try_set(place);
            }),
        }
    }

    /// Takes what is typed on the number pad, or says why not; what was typed stays.
    pub fn accept(self) {
        let style = self.shop.preferences.with_untracked(Preferences::style);
        match given::typed(&self.typed.get_untracked(), self.question, style) {
            Err(refusal) => self.refusal.set(refusal.to_string()),
            Ok(given) => {
                self.refusal.set(String::new());
                if let Some(place) = self.at.get_untracked() {
                    self.take(vec![place], given);
                }
            }
        }
    }

    /// Takes another place in hand.
    pub fn go_to(self, place: Place) {
        self.at.set(Some(place));
        self.choosing.set(false);
        self.measuring.set(false);
    }

    /// The places still open.
    pub fn rest(self) -> Vec<Place> {
        self.looking
            .get()
            .map(|looking| looking.left(self.question))
            .unwrap_or_default()
    }

    fn rest_untracked(self) -> Vec<Place> {
        self.looking
            .get_untracked()
            .map(|looking| looking.left(self.question))
            .unwrap_or_default()
    }

    /// How far one has come: `2 of 4 answered`.
    pub fn progress(self) -> String {
        let (done, all) = self
            .looking
            .get()
            .map_or((0, 0), |looking| looking.progress(self.question));
        format!("{done} of {all} answered")
    }

    /// What the place in hand was answered in earlier examinations.
    pub fn earlier(self) -> Option<Piece> {
        let (looking, place) = (self.looking.get()?, self.at.get()?);
        let opened = self.shop.in_hand()?;
        let view = opened.book.view();
        let slot = self.put.slot(place);
        let visit = looking.examination.map(|examination| examination.id);
        earlier(
            &view.vehicle(opened.vehicle),
            slot,
            visit,
            self.shop.style(),
        )
    }

    /// What the place in hand was answered in this examination, and what one more answer does to it.
    pub fn already(self) -> Option<String> {
        let (looking, place) = (self.looking.get()?, self.at.get()?);
        let said = looking.answer(self.question, place)?;
        let style = self.shop.style();
        let each: Vec<String> = said
            .iter()
            .map(|answer| words::answer::answered(self.question, answer, style))
            .collect();
        Some(format!(
            "Written: {}. A new answer corrects it; the old one stays in the book.",
            each.join("; ")
        ))
    }
}
