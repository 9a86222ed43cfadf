//! Bring a file in, after showing what it would add.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::bringing::{self, Brought, Incoming, Plan};
use crate::component::plain::{key, link, refusal};
use crate::markup::{Piece, Tag, live, nothing, picked_file, tag};
use crate::route::Route;
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
    live(move || {
        let page = tag("main")
            .class("page")
            .set("data-page", "bring-in")
            .put(tag("h1").put("Bring in"));
        let how = "Choose a file that was carried out of Cartside, here or on another device. First you see what it would add; nothing is stored before you say so.";
        let not_here =
            "Nothing can be brought into the demonstration. Go back to your own book first.";
        match shop.which.get() {
            Which::Own => page
                .put(tag("p").put(how))
                .put(choose(shop, stage))
                .put(stage.with(|now| at_stage(now, shop, stage))),
            Which::Demonstration => page.put(
                tag("p")
                    .class("refusal")
                    .flag("data-refused", true)
                    .put(not_here),
            ),
        }
    })
}

fn choose(shop: Workshop, stage: StageSignal) -> Tag {
    let field = tag("input")
        .set("type", "file")
        .set("accept", ".zip,application/zip")
        .on("change", move |event| {
            if let Some(file) = picked_file(&event) {
                spawn_local(look(shop, file, stage));
            }
        });
    tag("label")
        .class("key key-main")
        .put("Choose a file")
        .put(field)
}

fn at_stage(now: &Stage, shop: Workshop, stage: StageSignal) -> Piece {
    match now {
        Stage::Choose => nothing(),
        Stage::Busy(what) => tag("p").set("role", "status").put(*what).into(),
        Stage::Foreseen(incoming, plan) => foreseen(incoming, plan, shop, stage).into(),
        Stage::Done(brought) => done(*brought).into(),
        Stage::Refused(sentence) => refusal(sentence.clone()).flag("data-refused", true).into(),
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
fn foreseen(incoming: &Rc<Incoming>, plan: &Plan, shop: Workshop, stage: StageSignal) -> Tag {
    let from: String = incoming.device.chars().take(8).collect();
    let made = wording::moment(&incoming.made_at);
    let adds = bringing::foreseen(plan).into_iter();
    let warnings = incoming.warnings.iter().map(|said| {
        tag("p")
            .class("warning")
            .flag("data-warning", true)
            .put(said.clone())
    });
    let incoming = Rc::clone(incoming);
    tag("section")
        .class("card")
        .set("data-would-add", plan.entries.len().to_string())
        .set("data-would-add-pictures", plan.pictures.len().to_string())
        .set("data-would-dispute", plan.disputes.to_string())
        .put(tag("h2").put("What it would add"))
        .put(
            tag("p")
                .class("dim")
                .put(format!("Made {made} by device {from}.")),
        )
        .put(
            tag("ul")
                .class("stack")
                .each(adds.map(|said| tag("li").put(said))),
        )
        .each(warnings)
        .put(
            key("Bring it in")
                .class_if(!plan.nothing(), "key-main")
                .tap(move || spawn_local(accept(shop, Rc::clone(&incoming), stage))),
        )
}

/// What the bringing in came to.
fn done(brought: Brought) -> Tag {
    let came_of = bringing::came_of(brought).into_iter();
    tag("section")
        .class("card")
        .set("data-added", brought.entries.to_string())
        .set("data-added-pictures", brought.pictures.to_string())
        .is("data-renamed", brought.renamed)
        .put(tag("h2").put("Brought in"))
        .each(came_of.map(|said| tag("p").put(said)))
        .put(link(Route::Book.href(), "To the day book"))
}
