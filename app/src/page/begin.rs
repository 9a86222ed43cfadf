//! Begin a vehicle in four taps: its kind, which wheels, how many spokes, how many felloes. The fourth saves the
//! vehicle, its wheels and the first examination as one step.

mod choices;
mod writing;

use std::rc::Rc;

use cartside_core::wheel::VehicleKind;
use cartside_core::words::{self, Style};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::component::choice::{choice, step};
use crate::component::plain::refusal;
use crate::markup::{Piece, Tag, live, tag};
use crate::workshop::{Workshop, workshop};
use choices::{Pad, Take, WheelChoice, counts, wheel_choices};
use writing::Begun;

/// The spokes most wheels have; common practice, no source.
const SPOKES: [u16; 5] = [8, 10, 12, 14, 16];
/// The felloes most rims have; two are the halves of a bent rim. Common practice, no source.
const FELLOES: [u16; 6] = [2, 4, 5, 6, 7, 8];

/// What is chosen so far.
#[derive(Clone, Copy, Default)]
struct Chosen {
    kind: Option<VehicleKind>,
    wheels: Option<WheelChoice>,
    spokes: Option<u16>,
    felloes: Option<u16>,
}

/// The beginning as it goes on. Copies are the same; its signals live as long as the page.
#[derive(Clone, Copy)]
struct Beginning {
    chosen: RwSignal<Chosen>,
    spokes: Pad,
    felloes: Pad,
    saving: RwSignal<bool>,
    refusal: RwSignal<String>,
}

impl Beginning {
    fn new() -> Beginning {
        Beginning {
            chosen: RwSignal::new(Chosen::default()),
            spokes: Pad::closed(),
            felloes: Pad::closed(),
            saving: RwSignal::new(false),
            refusal: RwSignal::new(String::new()),
        }
    }

    /// Another kind has its wheels elsewhere, so that they are to be chosen again.
    fn take_kind(self, kind: VehicleKind) {
        let now = self.chosen.get_untracked();
        if now.kind != Some(kind) {
            self.chosen.set(Chosen {
                kind: Some(kind),
                wheels: None,
                ..now
            });
            self.spokes.close();
            self.felloes.close();
        }
    }

    fn take_wheels(self, wheels: WheelChoice) {
        self.chosen.set(Chosen {
            wheels: Some(wheels),
            ..self.chosen.get_untracked()
        });
    }

    fn take_spokes(self, spokes: u16) {
        self.chosen.set(Chosen {
            spokes: Some(spokes),
            ..self.chosen.get_untracked()
        });
    }

    /// The fourth tap: writes it all down.
    fn finish(self, shop: Workshop, felloes: u16) {
        let now = self.chosen.get_untracked();
        self.chosen.set(Chosen {
            felloes: Some(felloes),
            ..now
        });
        let (Some(kind), Some(wheels), Some(spokes)) = (now.kind, now.wheels, now.spokes) else {
            return;
        };
        if self.saving.get_untracked() {
            return;
        }
        self.saving.set(true);
        let begun = Begun {
            kind,
            positions: wheels.positions(kind),
            spokes,
            felloes,
        };
        spawn_local(async move {
            let refusal = writing::write(shop, &begun).await.err().unwrap_or_default();
            // The page may be gone by now, and its signals with it.
            let _ = self.refusal.try_set(refusal);
            let _ = self.saving.try_set(false);
        });
    }
}

/// Begin a vehicle in four taps.
pub fn page() -> Piece {
    let shop = workshop();
    let beginning = Beginning::new();
    let take_spokes: Take = Rc::new(move |spokes| beginning.take_spokes(spokes));
    let finish: Take = Rc::new(move |felloes| beginning.finish(shop, felloes));
    live(move || {
        let now = beginning.chosen.get();
        let spokes = now.wheels.map(|_| {
            let step = step("spokes", "How many spokes a wheel?");
            counts(step, &SPOKES, now.spokes, beginning.spokes, &take_spokes)
        });
        let felloes = now.wheels.and(now.spokes).map(|_| {
            let dealt = "The spokes are dealt out evenly; what each felloe carries can be put right later. A bent rim: its lengths.";
            let step = step("felloes", "How many felloes a wheel?")
                .put(tag("p").class("dim").put(dealt));
            counts(step, &FELLOES, now.felloes, beginning.felloes, &finish)
        });
        tag("main")
            .class("page")
            .set("data-page", "begin")
            .put(tag("h1").put("Begin a vehicle"))
            .put(kinds(beginning, now, shop.style()))
            .put(now.kind.map(|kind| which_wheels(beginning, now, kind)))
            .put(spokes)
            .put(felloes)
            .put(refusal(beginning.refusal.get()))
    })
}

fn kinds(beginning: Beginning, now: Chosen, style: Style) -> Tag {
    let keys = VehicleKind::ALL.into_iter().map(|kind| {
        let words = words::term::vehicle_kind(kind, style);
        choice(kind.code(), now.kind == Some(kind), words).tap(move || beginning.take_kind(kind))
    });
    step("kind", "What is it?").put(tag("div").class("choices").each(keys))
}

fn which_wheels(beginning: Beginning, now: Chosen, kind: VehicleKind) -> Tag {
    let keys = wheel_choices(kind).into_iter().map(|wheels| {
        choice(wheels.code(), now.wheels == Some(wheels), wheels.words())
            .tap(move || beginning.take_wheels(wheels))
    });
    let sides = "Near is the left as the driver sits, off the right.";
    step("wheels", "Which wheels?")
        .put(tag("p").class("dim").put(sides))
        .put(tag("div").class("choices").each(keys))
}
