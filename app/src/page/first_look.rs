//! The first look, standing: two minutes for the whole vehicle, by eye. One tap is an answer, stored, and what it
//! comes to stands above the questions at once.

use cartside_core::daybook::EntryId;
use cartside_core::diagnosis::Standing;
use cartside_core::survey::{Answer, Group, Question, SafeToLift, Slot};
use cartside_core::wheel::{Place, Position};
use cartside_core::words::{self, caution};
use leptos::prelude::*;

use crate::component::caution_card::folded_card;
use crate::component::examination::{GoingOn, begin_examination, current};
use crate::component::mark::{self, grade_mark, standing_mark};
use crate::examining;
use crate::looking::{Examination, Looking};
use crate::markup::{Piece, live, nothing, sheet, tap};
use crate::page::ask::given::{Given, Key, keys};
use crate::page::ask::writing::{Put, answer, answer_all};
use crate::page::wheel::standing::still_held;
use crate::route::Route;
use crate::scribe::Scribe;
use crate::workshop::{Notice, Step, Workshop, workshop};

/// What answers for every row still open.
const REST: &str = "The rest: looked, nothing found";

/// The first look in hand. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
struct FirstLook {
    shop: Workshop,
    id: EntryId,
    saving: RwSignal<bool>,
}

impl FirstLook {
    /// Saves a step. While one is being stored a further tap could only say it twice.
    fn save(self, step: Step<(Scribe, String)>) {
        match step {
            Err(said) => self.shop.notice.set(Notice::Trouble(said)),
            Ok((scribe, what)) => {
                self.saving.set(true);
                self.shop.save_then(scribe, what, move |_| self.stored());
            }
        }
    }

    fn stored(self) {
        // The page may be gone by now, and its signals with it.
        let _ = self.saving.try_set(false);
    }

    fn answer(self, put: Put, given: &Given, given_already: bool) {
        if !given_already && !self.saving.get_untracked() {
            self.save(answer(self.shop, put, &[Place::Whole], given));
        }
    }

    /// Writes one reading for each row of a wheel that is still open.
    fn rest(self, slots: &[Slot]) {
        let given = Given {
            answer: Answer::Yes,
            written: REST.to_owned(),
        };
        if self.saving.get_untracked() {
            return;
        }
        let step = answer_all(self.shop, self.id, slots, &given);
        self.save(step.map(|(scribe, _)| {
            let count = crate::wording::counted(slots.len(), "answer", "answers");
            (scribe, format!("first look, nothing found: {count}"))
        }));
    }

    fn lift(self, it: SafeToLift, latest: &Examination) {
        if self.saving.get_untracked() {
            return;
        }
        self.saving.set(true);
        let mut said = latest.said.clone();
        said.safe_to_lift = Some(it);
        examining::say(self.shop, self.id, said, move |_| self.stored());
    }
}

/// The first look at all wheels of a vehicle.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let first = FirstLook {
        shop,
        id,
        saving: RwSignal::new(false),
    };
    sheet!(
        "<main class=page data-page=first-look><h1>First look</h1>{}\
         <a class=\"key key-main\" href={}>To the vehicle</a></main>",
        live(move || match Examination::now(shop) {
            Some(latest) if current(&latest, going_on) => look(first, &latest),
            latest => begin_examination(id, latest),
        }),
        Route::Vehicle(id).href()
    )
}

fn look(first: FirstLook, latest: &Examination) -> Piece {
    let wheels = first.shop.opened.get().map(|opened| {
        let view = opened.book.view();
        let wheels = view.vehicle(opened.vehicle).wheels().into_iter();
        wheels.map(|(position, _)| position).collect::<Vec<_>>()
    });
    let looked = wheels.unwrap_or_default().into_iter();
    let looked: Vec<(Position, Looking)> = looked
        .filter_map(|position| Some((position, Looking::at(first.shop, position)?)))
        .collect();
    let worst = looked
        .iter()
        .filter_map(|(_, looking)| looking.judgement.so_far())
        .max();
    let all = looked.iter().map(|(_, looking)| looking);
    let proposed = all.clone().map(|it| it.judgement.proposed()).max();
    let proposed = proposed.unwrap_or(Standing::NotJudged);
    let wheels = looked
        .iter()
        .map(|(position, looking)| wheel(first, *position, looking));
    sheet!(
        "<section class=card data-cart-so-far={}><h2>The vehicle</h2>{}<p class=dim>{}</p></section>{}{}",
        worst.map_or("none", Standing::code),
        stands(proposed, mark::so_far_of_all(proposed, all)),
        words::standing::vehicle(),
        wheels.collect::<Vec<Piece>>(),
        lift(first, latest)
    )
}

fn stands(standing: Standing, so_far: Option<Piece>) -> Piece {
    sheet!("{}{}", standing_mark(standing), so_far)
}

/// One wheel: its rows, and the key for those still open.
fn wheel(first: FirstLook, position: Position, looking: &Looking) -> Piece {
    let (proposed, so_far) = (looking.judgement.proposed(), looking.judgement.so_far());
    let bites = words::standing::people_bite(so_far).filter(|_| looking.people);
    let asked = looking
        .questions()
        .filter(|question| question.group() == Group::FirstLook);
    let asked: Vec<Question> = asked.collect();
    let rows = asked.iter().map(|it| row(first, position, looking, *it));
    let rows = rows.collect::<Vec<Piece>>();
    let open = asked.iter().filter(|it| !looking.left(**it).is_empty());
    let slots: Vec<Slot> = open
        .map(|question| Slot {
            position,
            place: Place::Whole,
            question: *question,
        })
        .collect();
    let rest = (!slots.is_empty()).then(|| {
        let count = slots.len().to_string();
        sheet!(
            "<button type=button class=key data-key=rest on:click={}>{} ({})</button>",
            tap(move || first.rest(&slots)),
            REST,
            count
        )
    });
    let not_now = asked
        .is_empty()
        .then(|| words::visit::not_asked(looking.stage(), first.shop.style()));
    sheet!(
        "<section class=card data-first-look={} data-so-far={}><h2 class=capital>{}</h2>{}{}\
         <ul class=stack>{}</ul>{}<a class=key href={}>To this wheel</a></section>",
        position.code(),
        so_far.map_or("none", Standing::code),
        words::place::wheel_at(position),
        sheet!(
            "{}{}{}",
            still_held(looking),
            stands(proposed, mark::so_far(proposed, looking)),
            bites.map(|said| sheet!("<p class=warning data-people>{}</p>", said))
        ),
        not_now.map(|said| sheet!("<p class=warning>{}</p>", said)),
        rows,
        rest,
        Route::Wheel(first.id, position).href()
    )
}

/// One question with its three keys; a bad answer shows its mark.
fn row(first: FirstLook, position: Position, looking: &Looking, question: Question) -> Piece {
    let style = first.shop.style();
    let now = looking.answer(question, Place::Whole).unwrap_or_default();
    let findings = looking.judgement.findings.iter();
    let found = findings.filter(|finding| finding.question == question);
    let found = found.map(|finding| finding.grade).max();
    let put = Put {
        id: first.id,
        position,
        question,
    };
    let keys = keys(question, style).into_iter().map(|key| {
        let Key { code, label, given } = key;
        let chosen = now == [given.answer];
        three_key(code, label, chosen, move || {
            first.answer(put, &given, chosen);
        })
    });
    sheet!(
        "<li class=stack data-question={}><p>{}</p>{}<div class=\"pad digits thirds\">{}</div></li>",
        question.code(),
        words::question::asks(question, style),
        found.map(grade_mark),
        keys.collect::<Vec<Piece>>()
    )
}

fn three_key(code: &'static str, label: String, chosen: bool, ear: impl Fn() + 'static) -> Piece {
    sheet!(
        "<button type=button class=key data-answer={} aria-pressed={} on:click={}>{}</button>",
        code,
        if chosen { "true" } else { "false" },
        tap(ear),
        label
    )
}

/// Whether it is safe to lift, and what comes before lifting.
fn lift(first: FirstLook, latest: &Examination) -> Piece {
    let now = latest.said.safe_to_lift;
    let labels = ["Yes", "No", "Can't see"];
    let keys = SafeToLift::ALL.into_iter().zip(labels).map(|(it, label)| {
        let latest = latest.clone();
        three_key(it.code(), label.to_owned(), now == Some(it), move || {
            first.lift(it, &latest);
        })
    });
    let barred = words::visit::stays_down(now);
    sheet!(
        "<section class=card data-lift={}><h2>Before lifting</h2><p>{}</p>\
         <div class=\"pad digits thirds\">{}</div>{}{}</section>",
        now.map_or("unsaid", SafeToLift::code),
        words::visit::asks_lift(),
        keys.collect::<Vec<Piece>>(),
        barred.map_or_else(nothing, |said| sheet!("<p class=warning>{}</p>", said)),
        folded_card(caution::before_lifting())
    )
}
