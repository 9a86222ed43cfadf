//! What is being asked at this moment, and what each tap does. The next place is in hand only when the answer to
//! this one is stored.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Grade;
use cartside_core::survey::{Group, Places, Question, Slot};
use cartside_core::wheel::{Place, Position, Size};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use super::given::{self, Given};
use super::onward;
use super::sweep::{self, Left};
use super::trail::Trail;
use super::writing::{self, Put};
use crate::component::history_plot::earlier;
use crate::draft;
use crate::looking::Looking;
use crate::markup::Piece;
use crate::preferences::Preferences;
use crate::route::Route;
use crate::scribe::Scribe;
use crate::workshop::{Notice, Workshop};

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
    /// Whether the number pad is open.
    pub measuring: RwSignal<bool>,
    /// Whether the list of places is open.
    pub choosing: RwSignal<bool>,
    /// What is typed on the number pad.
    pub typed: RwSignal<String>,
    /// What was typed and not taken, and why.
    refusal: RwSignal<(String, String)>,
    /// What was given last to this question while the page has been open.
    last: RwSignal<Option<Given>>,
    put: Put,
    trail: Trail,
    saving: RwSignal<bool>,
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
        let asking = Asking {
            shop,
            question,
            looking,
            at: RwSignal::new(place.filter(has).or_else(first)),
            measuring: RwSignal::new(false),
            choosing: RwSignal::new(false),
            typed: RwSignal::new(String::new()),
            refusal: RwSignal::new(Default::default()),
            last: RwSignal::new(None),
            put: Put {
                id,
                position,
                question,
            },
            trail: expect_context(),
            saving: RwSignal::new(false),
        };
        Effect::new(move |_| asking.turn());
        asking
    }

    /// Turns to the place in hand: where something was typed and not taken, the number pad is open.
    fn turn(self) {
        let at = self.at.get();
        self.typed.set(String::new());
        let style = self.shop.preferences.with_untracked(Preferences::style);
        if given::keys(self.question, style).is_empty() {
            return;
        }
        draft::find(self.shop, self.draft(), move |_| {
            if self.at.try_get_untracked() == Some(at) {
                self.measuring.set(true);
            }
        });
    }

    /// The name of the draft of what is typed at the place in hand; none has this name where no place is.
    pub fn draft(self) -> String {
        let at = self.at.get_untracked();
        at.map(|place| draft::of_number(self.put.id, self.put.slot(place)))
            .unwrap_or_default()
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

    /// A question of this wheel at one place.
    pub fn slot(self, question: Question, place: Place) -> Slot {
        Put {
            question,
            ..self.put
        }
        .slot(place)
    }

    /// The vehicle and where the wheel stands.
    pub fn wheel(self) -> (EntryId, Position) {
        self.put.wheel()
    }

    /// Takes a key in hand: the answer for the place in hand. `when` is the event's own time, in milliseconds.
    pub fn tap(self, code: &'static str, given: Given, when: f64) {
        if let Some(place) = self.at.get_untracked()
            && !self.trail.trembles(code, when)
        {
            self.take(vec![place], given);
        }
    }

    /// Answers for every place that is still open.
    pub fn tap_rest(self, code: &'static str, given: Given, when: f64) {
        let left = self.rest_untracked();
        if !left.is_empty() && !self.trail.trembles(code, when) {
            self.take(left, given);
        }
    }

    /// What was given last, where the next place may be given the same.
    pub fn last_given(self) -> Option<Given> {
        self.last
            .get()
            .filter(|_| self.question.places() != Places::Whole)
    }

    /// Answers that all that is left of the group is sound, and passes what is only measured in it.
    pub fn tap_sound(self, left: &[Left], when: f64) {
        if self.saving.get_untracked() || self.trail.trembles("all-sound", when) {
            return;
        }
        match writing::answer_each(self.shop, self.put.id, &sweep::slots(self, left)) {
            Err(said) => self.shop.notice.set(Notice::Trouble(said)),
            Ok((scribe, _)) => {
                let step = scribe.entries.iter().map(|entry| entry.id).collect();
                let group = words::question::group(self.question.group(), self.shop.style());
                let count = crate::wording::counted(scribe.entries.len(), "answer", "answers");
                let wheel = words::place::wheel_at(self.put.position);
                let what = format!("{wheel}, {group}: sound, {count}");
                let missing = self.misses();
                self.save(scribe, what, move || {
                    self.trail.keep(self.put, step);
                    self.swept(missing);
                });
            }
        }
    }

    /// Goes on when all of the group is said to be sound; what is measured and needed is in hand still.
    fn swept(self, missing: bool) {
        let Some(looking) = self.looking.try_get_untracked().flatten() else {
            return;
        };
        let passed = sweep::passed(&looking, self.question.group());
        let done = passed.contains(&self.question) || looking.left(self.question).is_empty();
        for question in passed {
            self.trail.pass(Put {
                question,
                ..self.put
            });
        }
        let judged = missing && looking.judgement.missing.is_empty();
        if done && !judged && self.go_on(&looking) {
            return;
        }
        let _ = self.at.try_set(looking.next_place(self.question, None));
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
                let (open, missing) = (!self.rest_untracked().is_empty(), self.misses());
                let told = what.clone();
                self.save(scribe, what, move || {
                    self.trail.keep(self.put, step);
                    let _ = self.last.try_set(Some(given));
                    self.stored(&places, told, (open, missing));
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

    /// Goes on after a step: to the next place, or from the last one that was open to the next question, unless by this
    /// step nothing is missing any more for a standing. Whoever corrects an answer stays.
    fn stored(self, places: &[Place], told: String, (open, missing): (bool, bool)) {
        let Some(looking) = self.looking.try_get_untracked().flatten() else {
            return;
        };
        let bad = places.iter();
        let bad = bad.filter_map(|place| looking.grade(self.question, *place));
        if let Some(grade) = bad.max() {
            let told = format!("{told} – {}", words::term::grade(grade));
            self.shop.notice.set(Notice::Saved(told));
        }
        let next = looking.next_place(self.question, places.last().copied());
        let judged = missing && looking.judgement.missing.is_empty();
        if next.is_none() && open && !judged && self.go_on(&looking) {
            return;
        }
        let _ = self.at.try_set(next);
        let _ = self.measuring.try_set(false);
        let _ = self.choosing.try_set(false);
        let _ = self.typed.try_set(String::new());
        let _ = self.refusal.try_set(Default::default());
    }

    /// Whether a standing still lacks something.
    fn misses(self) -> bool {
        self.looking
            .get_untracked()
            .is_some_and(|looking| !looking.judgement.missing.is_empty())
    }

    /// Opens the next question at a place, if there is one.
    fn go_on(self, looking: &Looking) -> bool {
        let next = onward::next(self.trail, looking, self.wheel(), Some(self.question));
        let next = next.filter(|next| next.question.group() != Group::FirstLook);
        if let Some(next) = next {
            self.trail.goes_on(since_the_start());
            onward::route(next).go();
        }
        next.is_some()
    }

    /// Leads past this question: to the next one, or to the wheel. Nothing is written.
    pub fn pass(self) {
        self.trail.pass(self.put);
        let looking = self.looking.get_untracked();
        if !looking.is_some_and(|looking| self.go_on(&looking)) {
            Route::Wheel(self.put.id, self.put.position).go();
        }
    }

    /// What undo takes back, as its key says it; none while there is nothing to take back.
    pub fn undoes(self) -> Option<String> {
        let (put, _) = self.trail.last(self.wheel())?;
        Some(if put.question == self.question {
            "Undo".to_owned()
        } else {
            let short = words::question::short(put.question, self.shop.style());
            format!("Undo: {short}")
        })
    }

    /// Takes the last step back, and leads back to where it was taken.
    pub fn undo(self) {
        let Some((put, step)) = self.trail.last_untracked(self.wheel()) else {
            return;
        };
        if self.saving.get_untracked() {
            return;
        }
        match writing::undo(self.shop, put, &step) {
            Err(said) => {
                self.trail.drop_last();
                self.shop.notice.set(Notice::Trouble(said));
            }
            Ok((scribe, what, place)) => self.save(scribe, what, move || {
                self.trail.drop_last();
                // Whoever has left the page meanwhile is not led back.
                if self.at.try_get_untracked().is_none() {
                    return;
                }
                if put.question == self.question {
                    let _ = self.choosing.try_set(false);
                    let _ = self.at.try_set(place);
                } else {
                    Route::Ask(put.id, put.position, put.question, place).go_instead();
                }
            }),
        }
    }

    /// Opens the number pad, from its top: the key that opens it may stand lower than the pad does.
    pub fn measure(self) {
        self.measuring.set(true);
        window().scroll_to_with_x_and_y(0.0, 0.0);
    }

    /// Takes what is typed on the number pad, or says why not; what was typed stays.
    pub fn accept(self) {
        let style = self.shop.preferences.with_untracked(Preferences::style);
        let typed = self.typed.get_untracked();
        match given::typed(&typed, self.question, style) {
            Err(refusal) => self.refusal.set((typed, refusal.to_string())),
            Ok(given) => {
                let asks = (typed, self.other_way(&given, style).unwrap_or_default());
                if !asks.1.is_empty() && self.refusal.get_untracked() != asks {
                    self.refusal.set(asks);
                } else if let Some(place) = self.at.get_untracked() {
                    self.take(vec![place], given);
                }
            }
        }
    }

    /// What is asked once of a dish the other way than it was built: a minus is lost or typed easily, and what follows
    /// of it is grave.
    fn other_way(self, given: &Given, style: Style) -> Option<String> {
        if self.question != Question::Dish {
            return None;
        }
        let built = self.looking.get_untracked()?.wheel.sizes.get(Size::Dish)?;
        let other = given.answer.length()?.value * built.value < 0.0;
        other.then(|| {
            format!(
                "It was built with a dish of {}, and this is dished the other way. Nothing is taken yet: if it is so, take it again.",
                style.size(built)
            )
        })
    }

    /// Why what stands there now is not taken; empty as soon as something else is typed.
    pub fn refused(self) -> String {
        let (typed, why) = self.refusal.get();
        if typed == self.typed.get() {
            why
        } else {
            String::new()
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

    /// What this place was answered in this examination, in a few words.
    pub fn said(self, looking: &Looking, place: Place) -> Option<String> {
        let said = looking.answer(self.question, place)?;
        let style = self.shop.style();
        let each = said.iter();
        let each = each.map(|answer| words::answer::answered(self.question, answer, style));
        Some(each.collect::<Vec<String>>().join("; "))
    }

    /// What the place in hand was answered in this examination, how bad that is, and what one more answer does to it.
    pub fn already(self) -> Option<(String, Option<Grade>)> {
        let (looking, place) = (self.looking.get()?, self.at.get()?);
        let said = self.said(&looking, place)?;
        let said =
            format!("Written: {said}. A new answer corrects it; the old one stays in the book.");
        Some((said, looking.grade(self.question, place)))
    }
}

/// The time since the page was opened in milliseconds, as events have it.
fn since_the_start() -> f64 {
    window()
        .performance()
        .map_or(f64::NEG_INFINITY, |performance| performance.now())
}
