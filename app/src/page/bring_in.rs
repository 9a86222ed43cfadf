//! Bring a file in, after showing what it would add.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::bringing::{self, Brought, Incoming, Plan};
use crate::markup::{Piece, heard, live, nothing, picked_file, sheet, tap};
use crate::storage::Which;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// How far the bringing in is.
enum Stage {
    Choose,
    Busy(&'static str),
    Foreseen(Rc<Incoming>, Rc<Plan>),
    Done(Brought),
    Refused(String),
}

type StageSignal = RwSignal<Stage, LocalStorage>;

/// Bring a file in, after showing what it would add.
pub fn page() -> Piece {
    let shop = workshop();
    let stage: StageSignal = RwSignal::new_local(Stage::Choose);
    live(move || match shop.which.get() {
        Which::Own => sheet!(
            "<main class=page data-page=bring-in><h1>Bring in</h1>\
             <p>Choose a file that was carried out of Cartside, here or on another device. \
             First you see what it would add; nothing is stored before you say so.</p>\
             <label class=\"key key-main\">Choose a file\
             <input type=file accept=.zip,application/zip on:change={}/></label>{}</main>",
            heard(move |event| {
                if let Some(file) = picked_file(&event) {
                    spawn_local(look(shop, file, stage));
                }
            }),
            stage.with(|now| at_stage(now, shop, stage))
        ),
        Which::Demonstration => sheet!(
            "<main class=page data-page=bring-in><h1>Bring in</h1><p class=refusal data-refused>\
             Nothing can be brought into the demonstration. Go back to your own book first.</p></main>"
        ),
    })
}

fn at_stage(now: &Stage, shop: Workshop, stage: StageSignal) -> Piece {
    match now {
        Stage::Choose => nothing(),
        Stage::Busy(what) => sheet!("<p role=status>{}</p>", *what),
        Stage::Foreseen(incoming, plan) => foreseen(incoming, plan, shop, stage),
        Stage::Done(brought) => done(*brought),
        Stage::Refused(sentence) => sheet!(
            "<p class=refusal role=alert data-refused>{}</p>",
            sentence.clone()
        ),
    }
}

async fn look(shop: Workshop, file: web_sys::File, stage: StageSignal) {
    stage.try_set(Stage::Busy("Reading the file…"));
    let foreseen = async {
        let incoming = bringing::read(&file).await?;
        let plan = bringing::plan(shop, &incoming).await?;
        Ok((Rc::new(incoming), Rc::new(plan)))
    };
    stage.try_set(match foreseen.await {
        Ok((incoming, plan)) => Stage::Foreseen(incoming, plan),
        Err(sentence) => Stage::Refused(sentence),
    });
}

async fn accept(shop: Workshop, incoming: Rc<Incoming>, stage: StageSignal) {
    stage.try_set(Stage::Busy("Bringing it in…"));
    let brought = bringing::bring_in(shop, &incoming).await;
    stage.try_set(match brought {
        Ok(brought) => Stage::Done(brought),
        Err(sentence) => Stage::Refused(sentence),
    });
}

/// What the file would do, and the key that does it.
fn foreseen(incoming: &Rc<Incoming>, plan: &Plan, shop: Workshop, stage: StageSignal) -> Piece {
    let from: String = incoming.device.chars().take(8).collect();
    let adds = bringing::foreseen(plan).into_iter();
    let warnings = incoming
        .warnings
        .iter()
        .map(|said| sheet!("<p class=warning data-warning>{}</p>", said.clone()));
    let kept = Rc::clone(incoming);
    sheet!(
        "<section class=card data-would-add={} data-would-add-pictures={} data-would-dispute={}>\
         <h2>What it would add</h2><p class=dim>Made {} by device {}.</p><ul class=stack>{}</ul>{}\
         <button type=button class={} on:click={}>Bring it in</button></section>",
        plan.entries.len().to_string(),
        plan.pictures.len().to_string(),
        plan.disputes.to_string(),
        wording::moment(&incoming.made_at),
        from,
        adds.map(|said| sheet!("<li>{}</li>", said))
            .collect::<Vec<Piece>>(),
        warnings.collect::<Vec<Piece>>(),
        if plan.nothing() {
            "key"
        } else {
            "key key-main"
        },
        tap(move || spawn_local(accept(shop, Rc::clone(&kept), stage)))
    )
}

/// What the bringing in came to.
fn done(brought: Brought) -> Piece {
    let came_of = bringing::came_of(brought).into_iter();
    sheet!(
        "<section class=card data-added={} data-added-pictures={} data-renamed={}><h2>Brought in</h2>{}\
         <a class=key href=\"#/\">To the day book</a></section>",
        brought.entries.to_string(),
        brought.pictures.to_string(),
        if brought.renamed { "true" } else { "false" },
        came_of
            .map(|said| sheet!("<p>{}</p>", said))
            .collect::<Vec<Piece>>()
    )
}
