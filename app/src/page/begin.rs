//! Begin a vehicle in four taps: its kind, which wheels, how many spokes, how many felloes. The fourth saves the
//! vehicle, its wheels and the first examination as one step.

mod choices;
mod writing;

use cartside_core::wheel::VehicleKind;
use cartside_core::words;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::workshop::{Workshop, workshop};
use choices::{Counts, Step, WheelChoice, wheel_choices};
use writing::Begun;

/// The spokes most wheels have; common practice, no source.
const SPOKES: [u16; 5] = [8, 10, 12, 14, 16];
/// The felloes most rims have; two are the halves of a bent rim. Common practice, no source.
const FELLOES: [u16; 6] = [2, 4, 5, 6, 7, 8];

/// What is chosen so far. Copies are the same; its signals live as long as the page.
#[derive(Clone, Copy)]
struct Chosen {
    kind: RwSignal<Option<VehicleKind>>,
    wheels: RwSignal<Option<WheelChoice>>,
    spokes: RwSignal<Option<u16>>,
    felloes: RwSignal<Option<u16>>,
    saving: RwSignal<bool>,
    refusal: RwSignal<String>,
}

impl Chosen {
    fn nothing() -> Chosen {
        Chosen {
            kind: RwSignal::new(None),
            wheels: RwSignal::new(None),
            spokes: RwSignal::new(None),
            felloes: RwSignal::new(None),
            saving: RwSignal::new(false),
            refusal: RwSignal::new(String::new()),
        }
    }

    /// Another kind has its wheels elsewhere, so that they are to be chosen again.
    fn take_kind(self, kind: VehicleKind) {
        if self.kind.get_untracked() != Some(kind) {
            self.kind.set(Some(kind));
            self.wheels.set(None);
        }
    }

    /// The fourth tap: writes it all down.
    fn finish(self, shop: Workshop, felloes: u16) {
        self.felloes.set(Some(felloes));
        let (kind, wheels) = (self.kind.get_untracked(), self.wheels.get_untracked());
        let (Some(kind), Some(wheels), Some(spokes)) = (kind, wheels, self.spokes.get_untracked())
        else {
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
#[component]
pub fn BeginPage() -> impl IntoView {
    let shop = workshop();
    let chosen = Chosen::nothing();
    let has_wheels = move || chosen.wheels.get().is_some();
    let has_spokes = move || has_wheels() && chosen.spokes.get().is_some();
    view! {
        <main class="page" data-page="begin">
            <h1>"Begin a vehicle"</h1>
            <Kinds chosen />
            <Show when=move || chosen.kind.get().is_some()>
                <WhichWheels chosen />
            </Show>
            <Show when=has_wheels>
                <Step code="spokes" heading="How many spokes a wheel?">
                    <Counts usual=&SPOKES chosen=chosen.spokes take=Callback::new(move |n| chosen.spokes.set(Some(n))) />
                </Step>
            </Show>
            <Show when=has_spokes>
                <Step code="felloes" heading="How many felloes a wheel?">
                    <p class="dim">"The spokes are dealt out evenly; what each felloe carries can be put right later. A bent rim: its lengths."</p>
                    <Counts usual=&FELLOES chosen=chosen.felloes take=Callback::new(move |n| chosen.finish(shop, n)) />
                </Step>
            </Show>
            <p class="refusal" role="alert">{chosen.refusal}</p>
        </main>
    }
}

#[component]
fn Kinds(chosen: Chosen) -> impl IntoView {
    let style = workshop().style();
    let key = move |kind: VehicleKind| {
        let pressed = move || {
            if chosen.kind.get() == Some(kind) {
                "true"
            } else {
                "false"
            }
        };
        view! {
            <button type="button" class="key" data-choice=kind.code() aria-pressed=pressed on:click=move |_| chosen.take_kind(kind)>
                <span class="capital">{words::term::vehicle_kind(kind, style)}</span>
            </button>
        }
    };
    view! {
        <Step code="kind" heading="What is it?">
            <div class="choices">{VehicleKind::ALL.into_iter().map(key).collect_view()}</div>
        </Step>
    }
}

#[component]
fn WhichWheels(chosen: Chosen) -> impl IntoView {
    let key = move |choice: WheelChoice| {
        let pressed = move || {
            if chosen.wheels.get() == Some(choice) {
                "true"
            } else {
                "false"
            }
        };
        view! {
            <button type="button" class="key" data-choice=choice.code() aria-pressed=pressed on:click=move |_| chosen.wheels.set(Some(choice))>
                <span class="capital">{choice.words()}</span>
            </button>
        }
    };
    let keys = move || {
        chosen
            .kind
            .get()
            .map(|kind| wheel_choices(kind).into_iter().map(key).collect_view())
    };
    view! {
        <Step code="wheels" heading="Which wheels?">
            <p class="dim">"Near is the left as the driver sits, off the right."</p>
            <div class="choices">{keys}</div>
        </Step>
    }
}
