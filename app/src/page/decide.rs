//! What is decided of one wheel: the worst finding proposes, the examiner chooses, gives a reason where the choice is
//! kinder, sets a day to look again, and signs.

use cartside_core::daybook::{Day, Decision, EntryId, Kind, Says, Thread, Unwritten};
use cartside_core::diagnosis::{DecisionRefusal, Finding, Standing, decided, stands_at};
use cartside_core::wheel::Position;
use cartside_core::words;
use leptos::prelude::*;

use crate::clock;
use crate::component::choice::plain_choice;
use crate::component::examination::begin_examination;
use crate::component::mark::{self, standing_mark};
use crate::looking::Looking;
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::page::wheel::decided::decided_cards;
use crate::page::wheel::no_wheel;
use crate::page::wheel::standing::still_held;
use crate::route::Route;
use crate::typing;
use crate::workshop::{Notice, Step, Workshop, workshop};

/// A decision in the making. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
struct Deciding {
    shop: Workshop,
    id: EntryId,
    position: Position,
    looking: Memo<Option<Looking>>,
    /// The code of the standing chosen; empty while none is. As text, since each sort of signal is code of its own.
    standing: RwSignal<String>,
    reason: RwSignal<String>,
    day: RwSignal<String>,
    signed: RwSignal<String>,
    refusal: RwSignal<String>,
}

/// How many months ahead the quick keys look again, with what stands on them.
const MONTHS: [(&str, u32, &str); 3] = [
    ("3-months", 3, "In 3 months"),
    ("6-months", 6, "In 6 months"),
    ("a-year", 12, "In a year"),
];

/// The label of the day to look again.
const LOOK_AGAIN: &str = "Look again by";

impl Deciding {
    /// Begins with what is decided already, if anything is.
    fn new(shop: Workshop, id: EntryId, position: Position) -> Deciding {
        let looking = Looking::follow(shop, position);
        let before = before(shop, position, looking.get_untracked().as_ref());
        let day = before.as_ref().and_then(|before| before.look_again.clone());
        Deciding {
            shop,
            id,
            position,
            looking,
            standing: RwSignal::new(
                before
                    .as_ref()
                    .map(|before| before.standing.code().to_owned())
                    .unwrap_or_default(),
            ),
            day: RwSignal::new(day.map(|day| day.as_str().to_owned()).unwrap_or_default()),
            reason: RwSignal::new(before.map(|before| before.reason).unwrap_or_default()),
            signed: RwSignal::new(shop.preferences.get_untracked().person),
            refusal: RwSignal::new(String::new()),
        }
    }

    /// Why the reason is needed, while it is missing.
    fn wants_reason(self) -> Option<String> {
        let (standing, looking) = (
            Standing::from_code(&self.standing.get())?,
            self.looking.get()?,
        );
        let proposed = looking.judgement.proposed();
        let missing = standing < proposed && self.reason.with(|reason| reason.trim().is_empty());
        missing.then(|| words::refusal::decision(DecisionRefusal::NoReason { standing, proposed }))
    }

    /// Signs and saves, or says why not; what was typed stays.
    fn sign(self) {
        match self.prepared() {
            Err(sentence) => {
                // What was saved before is not what this tap came to.
                self.shop.notice.set(Notice::Quiet);
                self.refusal.set(sentence);
            }
            Ok(entry) => {
                self.refusal.set(String::new());
                let Says::Decision(decision) = &entry.says else {
                    return;
                };
                let what = words::outcome::decision(decision);
                let wheel = Route::Wheel(self.id, self.position);
                self.shop.write_then(&entry, what, move |stored| {
                    if stored {
                        wheel.go();
                    }
                });
            }
        }
    }

    fn prepared(self) -> Step<Unwritten> {
        let looking = self.looking.get_untracked();
        let looking = looking.ok_or("No wheel is described here any more. Nothing was changed.")?;
        let latest = looking
            .examination
            .as_ref()
            .ok_or("No examination is begun. Nothing was changed; begin one and decide then.")?;
        let decision = self.decision(&looking)?;
        stands_at(&decision, decision.proposed, looking.people, &latest.day)
            .map_err(words::refusal::decision)?;
        let replaced = replaced(self.shop, latest.id, self.position);
        let entry = Unwritten::new(Some(self.id), Says::Decision(decision))
            .ok_or("This is no decision. Nothing was changed.")?;
        Ok(entry.in_visit(latest.id).replacing(replaced))
    }

    fn decision(self, looking: &Looking) -> Step<Decision> {
        let standing = Standing::from_code(&self.standing.get_untracked())
            .ok_or("No standing is chosen yet: choose one, then sign. Nothing was changed.")?;
        let look_again = match self.day.get_untracked().as_str() {
            "" => None,
            day => Some(Day::read(day).ok_or_else(|| {
                format!("“{day}” is no day to look again: a day of the calendar is, such as 2027-05-01, or none. Nothing was changed.")
            })?),
        };
        Ok(Decision {
            position: self.position,
            standing,
            proposed: looking.judgement.proposed(),
            reason: self.reason.get_untracked().trim().to_owned(),
            look_again,
            signed: self.signed.get_untracked().trim().to_owned(),
        })
    }
}

/// What the latest examination has decided of this wheel.
fn before(shop: Workshop, position: Position, looking: Option<&Looking>) -> Option<Decision> {
    let latest = looking?.examination.as_ref()?;
    let opened = shop.in_hand()?;
    let view = opened.book.view();
    decided(&view.vehicle(opened.vehicle), latest.id, position).cloned()
}

/// What decides anew replaces all that was decided of this wheel at this examination, struck out or not.
fn replaced(shop: Workshop, visit: EntryId, position: Position) -> Vec<EntryId> {
    let Some(opened) = shop.in_hand() else {
        return Vec::new();
    };
    let view = opened.book.view();
    let slot = Decision::slot(position);
    let threads = view.vehicle(opened.vehicle).threads(&Kind::Decision);
    let here = threads.into_iter().filter(|thread| {
        let first = thread.entries().first();
        first.is_some_and(|entry| entry.slot == slot && entry.visit == Some(visit))
    });
    here.flat_map(Thread::to_replace).collect()
}

/// What is decided of one wheel.
pub fn page(id: EntryId, position: Position) -> Piece {
    let shop = workshop();
    let deciding = Deciding::new(shop, id, position);
    let looking = deciding.looking;
    sheet!(
        "<main class=page data-page=decide><h1>Decide: {}</h1>{}\
         <a class=\"key key-plain\" href={}>To the wheel</a></main>",
        words::place::wheel_at(position),
        live(move || match looking.get() {
            None => no_wheel(),
            Some(looking) if looking.examination.is_none() => begin_examination(id, None),
            Some(looking) => form(deciding, &looking),
        }),
        Route::Wheel(id, position).href()
    )
}

fn form(deciding: Deciding, looking: &Looking) -> Piece {
    let marks = Standing::ALL.map(|it| {
        let latest = looking.examination.as_ref();
        let day = latest.map_or("no day yet", |latest| latest.shown.as_str());
        let examined = looking.examined(day);
        match it {
            Standing::NoFaultFound if looking.judgement.so_far().is_some() => {
                words::standing::passed().to_owned()
            }
            _ => words::standing::standing(it, &examined, deciding.shop.style()),
        }
    });
    sheet!(
        "{}{}{}{}{}{}<p class=refusal role=alert>{}</p>\
         <button type=button class=\"key key-main\" data-key=sign on:click={}>Sign and save</button>",
        still_held(looking),
        proposed(deciding.shop, looking),
        decided_cards(deciding.id, deciding.position, looking, false),
        live(move || standings(deciding, &marks)),
        reason(deciding),
        look_again_and_name(deciding),
        live(move || deciding.refusal.get()),
        tap(move || deciding.sign())
    )
}

/// What is proposed, with the findings that propose it.
fn proposed(shop: Workshop, looking: &Looking) -> Piece {
    let proposed = looking.judgement.proposed();
    let findings = &looking.judgement.findings;
    let worst = findings.iter().map(|finding| finding.grade).max();
    let worst = findings.iter().filter(|it| Some(it.grade) == worst);
    let said = |finding: &Finding| {
        let said = words::finding::finding(finding, &looking.wheel, shop.style());
        sheet!(
            "<li class=item>{}: {}, {}</li>",
            said.heading,
            said.where_,
            said.how_much
        )
    };
    let so_far = looking.judgement.so_far();
    let bites = words::standing::people_bite(so_far).filter(|_| looking.people);
    sheet!(
        "<section class=card data-proposed={}><h2>Proposed</h2>{}{}<ul class=list>{}</ul>{}</section>",
        proposed.code(),
        standing_mark(proposed),
        mark::so_far(proposed, looking),
        worst.map(said).collect::<Vec<Piece>>(),
        bites.map(|said| sheet!("<p class=warning data-people>{}</p>", said))
    )
}

/// The standings to choose from; of the one that is chosen, what it means, so that the key to sign with stays near.
fn standings(deciding: Deciding, means: &[String]) -> Piece {
    let chosen = deciding.standing.get();
    let mut rows: Vec<Piece> = Vec::new();
    for (it, means) in Standing::ALL.into_iter().zip(means) {
        let key = plain_choice(
            it.code().into(),
            chosen == it.code(),
            standing_mark(it).into(),
            tap(move || deciding.standing.set(it.code().to_owned())),
        );
        rows.push(sheet!(
            "<li class=stack data-standing-choice={}><div class=\"row evenly\">{}</div>{}</li>",
            it.code(),
            key,
            (chosen == it.code()).then(|| sheet!("<p>{}</p>", means.clone()))
        ));
    }
    sheet!(
        "<section class=stack data-step=standing><h2>Your decision</h2><ul class=stack>{}</ul></section>",
        rows
    )
}

fn reason(deciding: Deciding) -> Piece {
    sheet!(
        "<section class=stack>{}<label class=field>Reason\
         <textarea maxlength=2000 value={} on:input={}/></label></section>",
        live(move || deciding
            .wants_reason()
            .map(|said| sheet!("<p class=warning data-wants-reason>{}</p>", said))),
        deciding.reason.get_untracked(),
        heard(move |event| deciding.reason.set(typed(&event)))
    )
}

fn look_again_and_name(deciding: Deciding) -> Piece {
    let today = clock::now();
    let today = today.get(..10).and_then(Day::read);
    let keys = MONTHS.into_iter().filter_map(|(code, months, label)| {
        let day = today.as_ref()?.months_later(months).as_str().to_owned();
        let ear = tap(move || typing::choose(LOOK_AGAIN, &day));
        Some(plain_choice(code.into(), false, label.into(), ear))
    });
    let none = plain_choice(
        "no-day".into(),
        false,
        "No day".into(),
        tap(|| typing::choose(LOOK_AGAIN, "")),
    );
    sheet!(
        "<section class=stack data-step=day><label class=field>{}{}</label>\
         <div class=choices>{}{}</div><label class=field>Signed, name\
         <input type=text autocomplete=name maxlength=80 value={} on:input={}/></label></section>",
        LOOK_AGAIN,
        live(move || sheet!(
            "<input type=date value={} on:input={}/>",
            deciding.day.get(),
            heard(move |event| deciding.day.set(typed(&event)))
        )),
        keys.collect::<Vec<Piece>>(),
        none,
        deciding.signed.get_untracked(),
        heard(move |event| deciding.signed.set(typed(&event)))
    )
}
