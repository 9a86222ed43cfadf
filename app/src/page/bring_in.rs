//! Bring a file in, after showing what it would add.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::bringing::{self, Brought, Incoming, Plan};
use crate::markup::{Hole, Piece, heard, live, nothing, picked_file, sheet, tap};
use crate::progress::{Progress, STOPPED};
use crate::storage::Which;
use crate::wording;
use crate::workshop::{Workshop, workshop};

/// How far the bringing in is.
enum Stage {
    Choose,
    Busy,
    Foreseen(Rc<Incoming>, Rc<Plan>),
    Done(Brought),
    Refused(String),
    Stopped,
}

type StageSignal = RwSignal<Stage, LocalStorage>;

/// Bring a file in, after showing what it would add.
pub fn page() -> Piece {
    let shop = workshop();
    let stage: StageSignal = RwSignal::new_local(Stage::Choose);
    let progress = Progress::new();
    live(move || match shop.which.get() {
        Which::Own => sheet!(
            "<main class=page data-page=bring-in><h1>Bring in</h1>\
             <p>Choose a file that was carried out of Cartside, here or on another device. \
             First you see what it would add; nothing is stored before you say so.</p>\
             {}{}</main>",
            stage.with(|now| {
                // One file at a time.
                (!matches!(now, Stage::Busy)).then(|| choose(shop, stage, progress))
            }),
            stage.with(|now| at_stage(now, shop, stage, progress))
        ),
        Which::Demonstration => sheet!(
            "<main class=page data-page=bring-in><h1>Bring in</h1><p class=refusal data-refused>\
             Nothing can be brought into the demonstration. Go back to your own book first.</p></main>"
        ),
    })
}

fn choose(shop: Workshop, stage: StageSignal, progress: Progress) -> Piece {
    sheet!(
        "<label class=\"key key-main\">Choose a file\
         <input type=file accept=.zip,application/zip on:change={}/></label>",
        heard(move |event| {
            if let Some(file) = picked_file(&event) {
                spawn_local(look(shop, file, stage, progress));
            }
        })
    )
}

fn at_stage(now: &Stage, shop: Workshop, stage: StageSignal, progress: Progress) -> Piece {
    match now {
        Stage::Choose => nothing(),
        Stage::Busy => progress.shown(),
        Stage::Foreseen(incoming, plan) => {
            let bring = (Rc::clone(incoming), Rc::clone(plan));
            let bring = move || {
                let (incoming, plan) = bring.clone();
                spawn_local(accept(shop, incoming, plan, stage, progress));
            };
            foreseen(incoming, plan, tap(bring))
        }
        Stage::Stopped => sheet!("<p role=status data-stopped>{}</p>", STOPPED),
        Stage::Done(brought) => done(*brought),
        Stage::Refused(sentence) => sheet!(
            "<p class=refusal role=alert data-refused>{}</p>",
            sentence.clone()
        ),
    }
}

async fn look(shop: Workshop, file: web_sys::File, stage: StageSignal, progress: Progress) {
    stage.try_set(Stage::Busy);
    let foreseen = async {
        let incoming = bringing::read(file, progress).await?;
        let plan = bringing::plan(shop, &incoming).await?;
        Ok(Stage::Foreseen(Rc::new(incoming), Rc::new(plan)))
    };
    stage.try_set(foreseen.await.unwrap_or_else(not_done));
}

async fn accept(
    shop: Workshop,
    incoming: Rc<Incoming>,
    plan: Rc<Plan>,
    stage: StageSignal,
    progress: Progress,
) {
    stage.try_set(Stage::Busy);
    let brought = bringing::bring_in(shop, &incoming, plan, progress).await;
    stage.try_set(brought.map_or_else(not_done, Stage::Done));
}

fn not_done(sentence: String) -> Stage {
    if sentence == STOPPED {
        return Stage::Stopped;
    }
    Stage::Refused(sentence)
}

/// What the file would do, and the key that does it.
fn foreseen(incoming: &Incoming, plan: &Plan, bring: Hole) -> Piece {
    let manifest = incoming.holds.manifest();
    let from: String = manifest.device.chars().take(8).collect();
    let adds = bringing::foreseen(plan).into_iter();
    let warnings = incoming.holds.warnings().iter();
    let warnings =
        warnings.map(|said| sheet!("<p class=warning data-warning>{}</p>", said.to_string()));
    sheet!(
        "<section class=card data-would-add={} data-would-add-pictures={} data-would-dispute={}>\
         <h2>What it would add</h2><p class=dim>Made {} by device {}.</p><ul class=stack>{}</ul>{}\
         <button type=button class={} on:click={}>Bring it in</button></section>",
        plan.entries.len().to_string(),
        plan.pictures.len().to_string(),
        plan.disputes.to_string(),
        wording::moment(&manifest.made_at),
        from,
        adds.map(|said| sheet!("<li>{}</li>", said))
            .collect::<Vec<Piece>>(),
        warnings.collect::<Vec<Piece>>(),
        if plan.nothing() {
            "key"
        } else {
            "key key-main"
        },
        bring
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
