//! Begin a vehicle in four taps: its kind, which wheels, how many spokes, how many felloes. The fourth saves the
//! vehicle, its wheels and the first examination as one step.

mod choices;
mod writing;

use std::rc::Rc;

use cartside_core::wheel::VehicleKind;
use cartside_core::words::{self, Style};
use leptos::prelude::*;

use crate::component::choice::choice;
use crate::markup::{Piece, live, sheet, tap};
use crate::route::Route;
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
    fn new(shop: Workshop) -> Beginning {
        Beginning {
            chosen: RwSignal::new(Chosen::default()),
            spokes: Pad::closed(shop, "number/spokes"),
            felloes: Pad::closed(shop, "number/felloes"),
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
        let begun = Begun {
            kind,
            positions: wheels.positions(kind),
            spokes,
            felloes,
        };
        match writing::beginning(shop, &begun) {
            Err(refusal) => self.refusal.set(refusal),
            Ok((scribe, what, id)) => {
                self.saving.set(true);
                shop.save_then(scribe, what, move |stored| {
                    if stored {
                        Route::Vehicle(id).go_instead();
                    }
                    // The page may be gone by now, and its signals with it.
                    let _ = self.refusal.try_set(String::new());
                    let _ = self.saving.try_set(false);
                });
            }
        }
    }
}

/// Begin a vehicle in four taps.
pub fn page() -> Piece {
    let shop = workshop();
    let beginning = Beginning::new(shop);
    let take_spokes: Take = Rc::new(move |spokes| beginning.take_spokes(spokes));
    let finish: Take = Rc::new(move |felloes| beginning.finish(shop, felloes));
    live(move || {
        let now = beginning.chosen.get();
        let spokes = now.wheels.map(|_| {
            sheet!(
                "<section class=stack data-step=spokes><h2>How many spokes a wheel?</h2>{}</section>",
                counts(&SPOKES, now.spokes, beginning.spokes, &take_spokes)
            )
        });
        let felloes = now.wheels.and(now.spokes).map(|_| {
            sheet!(
                "<section class=stack data-step=felloes><h2>How many felloes a wheel?</h2>\
                 <p class=dim>The spokes are dealt out evenly; what each felloe carries can be put right later. \
                 A bent rim: its lengths.</p>{}</section>",
                counts(&FELLOES, now.felloes, beginning.felloes, &finish)
            )
        });
        sheet!(
            "<main class=page data-page=begin><h1>Begin a vehicle</h1>{}{}{}{}\
             <p class=refusal role=alert>{}</p></main>",
            kinds(beginning, now, shop.style()),
            now.kind.map(|kind| which_wheels(beginning, now, kind)),
            spokes,
            felloes,
            beginning.refusal.get()
        )
    })
}

fn kinds(beginning: Beginning, now: Chosen, style: Style) -> Piece {
    let keys = VehicleKind::ALL.into_iter().map(|kind| {
        choice(
            kind.code(),
            now.kind == Some(kind),
            words::term::vehicle_kind(kind, style).into(),
            tap(move || beginning.take_kind(kind)),
        )
    });
    sheet!(
        "<section class=stack data-step=kind><h2>What is it?</h2><div class=choices>{}</div></section>",
        keys.collect::<Vec<Piece>>()
    )
}

fn which_wheels(beginning: Beginning, now: Chosen, kind: VehicleKind) -> Piece {
    let keys = wheel_choices(kind).into_iter().map(|wheels| {
        choice(
            wheels.code(),
            now.wheels == Some(wheels),
            wheels.words().into(),
            tap(move || beginning.take_wheels(wheels)),
        )
    });
    sheet!(
        "<section class=stack data-step=wheels><h2>Which wheels?</h2>\
         <p class=dim>Near is the left as the driver sits, off the right.</p>\
         <div class=choices>{}</div></section>",
        keys.collect::<Vec<Piece>>()
    )
}
