//! Who and what for: what the vehicle is to be used for, asked before anything is looked at; then how far the wheels
//! are taken apart, where, and under which conditions.

use cartside_core::daybook::{EntryId, Visit};
use cartside_core::survey::{Stage, Use};
use cartside_core::words::{self, within};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::component::examination::{GoingOn, begin_examination, current};
use crate::examining;
use crate::looking::Examination;
use crate::markup::{Piece, heard, live, sheet, tap, typed};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// What is being said. Copies are the same; its signals live as long as their page. Uses and stage by their codes,
/// since each sort of signal is code of its own.
#[derive(Clone, Copy)]
struct Form {
    shop: Workshop,
    id: EntryId,
    uses: RwSignal<String>,
    stage: RwSignal<String>,
    place: RwSignal<String>,
    conditions: RwSignal<String>,
}

impl Form {
    fn of(shop: Workshop, id: EntryId, said: Visit) -> Form {
        let mut uses = String::new();
        for it in said.used_for {
            toggle(&mut uses, it);
        }
        Form {
            shop,
            id,
            uses: RwSignal::new(uses),
            stage: RwSignal::new(said.stage.code().to_owned()),
            place: RwSignal::new(said.place),
            conditions: RwSignal::new(said.conditions),
        }
    }

    fn save(self) {
        let uses = self.uses.get_untracked();
        let stage = Stage::from_code(&self.stage.get_untracked()).unwrap_or_default();
        let now = untrack(|| Examination::now(self.shop));
        let said = Visit {
            place: self.place.get_untracked().trim().to_owned(),
            used_for: Use::ALL
                .into_iter()
                .filter(|it| holds(&uses, *it))
                .collect(),
            stage,
            conditions: self.conditions.get_untracked().trim().to_owned(),
            safe_to_lift: now.and_then(|now| now.said.safe_to_lift),
        };
        let next = match stage {
            Stage::OnTheArm => Route::FirstLook(self.id),
            _ => Route::Vehicle(self.id),
        };
        examining::say(self.shop, self.id, said, move |stored| {
            if stored {
                next.go();
            }
        });
    }
}

fn holds(uses: &str, it: Use) -> bool {
    uses.split(' ').any(|code| code == it.code())
}

/// Adds a use, or takes it away.
fn toggle(uses: &mut String, it: Use) {
    let code = format!("{} ", it.code());
    if !(holds(uses, it) && within::take_out(uses, &code)) {
        uses.push_str(&code);
    }
}

/// What the examination in hand is for; where none is, the card that begins one.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let latest = untrack(|| Examination::now(shop).filter(|latest| current(latest, going_on)));
    let form = Form::of(
        shop,
        id,
        latest.map(|latest| latest.said).unwrap_or_default(),
    );
    sheet!(
        "<main class=page data-page=examination><h1>Who and what for</h1>{}\
         <a class=\"key key-plain\" href={}>To the vehicle</a></main>",
        live(move || match Examination::now(shop) {
            Some(latest) if current(&latest, going_on) => fields(form),
            latest => begin_examination(id, latest),
        }),
        Route::Vehicle(id).href()
    )
}

fn fields(form: Form) -> Piece {
    let text = |signal: RwSignal<String>| heard(move |event| signal.set(typed(&event)));
    sheet!(
        "<a class=\"key key-plain\" data-key=skip href={}>Skip this</a>{}{}\
         <section class=stack><label class=field>Place\
         <input type=text autocomplete=off maxlength=200 value={} on:input={}/></label>\
         <label class=field>Light, weather, what is in the way\
         <input type=text autocomplete=off maxlength=400 value={} on:input={}/></label>\
         <label class=field>Who is looking\
         <input type=text autocomplete=name maxlength=80 value={} on:input={}/></label>\
         <p class=dim>The name is written into each entry from now on. It may stay empty.</p></section>\
         <button type=button class=\"key key-main\" data-key=save-examination on:click={}>Save and look</button>",
        Route::FirstLook(form.id).href(),
        live(move || uses(form)),
        live(move || stages(form)),
        form.place.get_untracked(),
        text(form.place),
        form.conditions.get_untracked(),
        text(form.conditions),
        form.shop.preferences.get_untracked().person,
        heard(move |event| {
            let name = typed(&event).trim().to_owned();
            form.shop.preferences.update(|kept| kept.person = name);
        }),
        tap(move || form.save())
    )
}

fn uses(form: Form) -> Piece {
    let now = form.uses.get();
    let mut keys: Vec<Piece> = Vec::new();
    for it in Use::ALL {
        keys.push(choice(
            it.code(),
            holds(&now, it),
            words::visit::used_for(it).into(),
            tap(move || form.uses.update(|uses| toggle(uses, it))),
        ));
    }
    let people = holds(&now, Use::People);
    sheet!(
        "<section class=stack data-step=use><h2>What is it to be used for?</h2>\
         <p class=dim>One or several. Every standing is one against this use.</p>\
         <div class=choices>{}</div>{}</section>",
        keys,
        people.then(|| sheet!(
            "<p class=warning data-people>{}</p>",
            words::standing::people()
        ))
    )
}

fn stages(form: Form) -> Piece {
    let (now, style) = (form.stage.get(), form.shop.style());
    let mut keys: Vec<Piece> = Vec::new();
    for stage in Stage::ALL {
        keys.push(choice(
            stage.code(),
            now == stage.code(),
            words::question::stage(stage, style).into(),
            tap(move || form.stage.set(stage.code().to_owned())),
        ));
    }
    let means = Stage::from_code(&now).and_then(|now| words::visit::stage_means(now, style));
    sheet!(
        "<section class=stack data-step=stage><h2>How far is the wheel taken apart?</h2>\
         <p class=dim>Change it as the work goes on: each reading keeps the stage it was taken at.</p>\
         <div class=choices>{}</div>{}</section>",
        keys,
        means.map(|means| sheet!("<p>{}</p>", means))
    )
}
