//! Who and what for: what the vehicle is to be used for, asked before anything is looked at; then how far the wheels
//! are taken apart, where, and under which conditions.

use cartside_core::daybook::{EntryId, Visit};
use cartside_core::survey::{Stage, Use};
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::component::examination::{GoingOn, begin_examination, current};
use crate::examining;
use crate::looking::Examination;
use crate::markup::{Piece, afresh, heard, live, sheet, tap, typed};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// What the examination in hand is for; where none is, the card that begins one.
pub fn page(id: EntryId) -> Piece {
    let shop = workshop();
    let going_on = expect_context::<GoingOn>();
    let latest = Examination::follow(shop);
    // Another examination is another form; a correction of this one leaves what is being typed alone.
    let in_hand = Memo::new(move |_| {
        let latest = latest.get()?;
        current(&latest, going_on).then_some(latest.id)
    });
    sheet!(
        "<main class=page data-page=examination><h1>Who and what for</h1>{}\
         <a class=\"key key-plain\" data-key=skip href={}>Not now: to the vehicle</a></main>",
        afresh(move || match in_hand.get() {
            Some(_) => form(shop, id, latest.get_untracked()),
            None => begin_examination(id, latest.get()),
        }),
        Route::Vehicle(id).href()
    )
}

fn form(shop: Workshop, id: EntryId, latest: Option<Examination>) -> Piece {
    let said = RwSignal::new(latest.map(|latest| latest.said).unwrap_or_default());
    let Visit {
        place, conditions, ..
    } = said.get_untracked();
    sheet!(
        "<a class=\"key key-plain\" data-key=skip href={}>Skip this</a>{}{}\
         <section class=stack><label class=field>Place\
         <input type=text autocomplete=off maxlength=200 value={} on:input={}/></label>\
         <label class=field>Light, weather, what is in the way\
         <input type=text autocomplete=off maxlength=400 value={} on:input={}/></label></section>{}\
         <button type=button class=\"key key-main\" data-key=save-examination on:click={}>Save and look</button>",
        Route::FirstLook(id).href(),
        live(move || uses(said)),
        live(move || stages(said, shop.style())),
        place,
        heard(move |event| {
            let words = typed(&event).trim().to_owned();
            said.update_untracked(|said| said.place = words);
        }),
        conditions,
        heard(move |event| {
            let words = typed(&event).trim().to_owned();
            said.update_untracked(|said| said.conditions = words);
        }),
        live(move || who(shop)),
        tap(move || save(shop, id, said.get_untracked()))
    )
}

fn save(shop: Workshop, id: EntryId, said: Visit) {
    let next = match said.stage {
        Stage::OnTheArm => Route::FirstLook(id),
        _ => Route::Vehicle(id),
    };
    examining::say(shop, id, said, move |stored| {
        if stored {
            next.go();
        }
    });
}

fn uses(said: RwSignal<Visit>) -> Piece {
    let now = said.with(|said| said.used_for.clone());
    let keys = Use::ALL.into_iter().map(|it| {
        choice(
            it.code(),
            now.contains(&it),
            words::visit::used_for(it).into(),
            tap(move || said.update(|said| toggle(&mut said.used_for, it))),
        )
    });
    let people = now.iter().any(|it| it.carries_people());
    sheet!(
        "<section class=stack data-step=use><h2>What is it to be used for?</h2>\
         <p class=dim>One or several. Every standing is one against this use.</p>\
         <div class=choices>{}</div>{}</section>",
        keys.collect::<Vec<Piece>>(),
        people.then(|| sheet!(
            "<p class=warning data-people>{}</p>",
            words::standing::people()
        ))
    )
}

fn toggle(uses: &mut Vec<Use>, it: Use) {
    match uses.iter().position(|other| *other == it) {
        Some(at) => drop(uses.remove(at)),
        None => {
            uses.push(it);
            uses.sort_unstable();
        }
    }
}

fn stages(said: RwSignal<Visit>, style: Style) -> Piece {
    let now = said.with(|said| said.stage);
    let keys = Stage::ALL.into_iter().map(|stage| {
        choice(
            stage.code(),
            now == stage,
            words::question::stage(stage, style).into(),
            tap(move || said.update(|said| said.stage = stage)),
        )
    });
    sheet!(
        "<section class=stack data-step=stage><h2>How far is the wheel taken apart?</h2>\
         <p class=dim>Change it as the work goes on: each reading keeps the stage it was taken at.</p>\
         <div class=choices>{}</div>{}</section>",
        keys.collect::<Vec<Piece>>(),
        words::visit::stage_means(now, style).map(|means| sheet!("<p>{}</p>", means))
    )
}

/// Who is looking, and where that is said.
fn who(shop: Workshop) -> Piece {
    let person = shop.preferences.with(|kept| kept.person.clone());
    let said = if person.is_empty() {
        "No name is given; entries are written without one.".to_owned()
    } else {
        format!("{person} is looking.")
    };
    sheet!(
        "<p class=row><span>{}</span><a class=\"key key-plain\" href=#/preferences>Another name</a></p>",
        said
    )
}
