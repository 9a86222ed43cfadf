//! How one wheel is built: what each felloe carries, rim, tyre, arm and keeper. What is saved corrects what was
//! written, and every reading keeps the description it was taken against.

mod felloe_keys;
mod writing;

use cartside_core::daybook::EntryId;
use cartside_core::wheel::{Arm, Felloes, Keeper, Position, Rim, Tyre, Wheel};
use cartside_core::words::{self, term};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::looking::Looking;
use crate::route::Route;
use crate::workshop::{Workshop, workshop};
use felloe_keys::FelloeKeys;

/// What is set so far and not yet saved. Copies are the same; its signals live as long as the page.
#[derive(Clone, Copy)]
pub struct Setting {
    /// Spokes of each felloe.
    pub carried: RwSignal<Vec<u16>>,
    rim: RwSignal<Option<Rim>>,
    tyre: RwSignal<Option<Tyre>>,
    arm: RwSignal<Option<Arm>>,
    keeper: RwSignal<Option<Keeper>>,
}

impl Setting {
    fn of(wheel: Option<&Wheel>) -> Setting {
        let carried = wheel.map_or_else(|| vec![2; 6], |wheel| wheel.felloes.carried().to_vec());
        Setting {
            carried: RwSignal::new(carried),
            rim: RwSignal::new(wheel.and_then(|wheel| wheel.rim)),
            tyre: RwSignal::new(wheel.and_then(|wheel| wheel.tyre)),
            arm: RwSignal::new(wheel.and_then(|wheel| wheel.arm)),
            keeper: RwSignal::new(wheel.and_then(|wheel| wheel.keeper)),
        }
    }

    /// The wheel as it is set, or why its numbers make none.
    fn wheel(self) -> Result<Wheel, String> {
        let felloes =
            Felloes::new(self.carried.get_untracked()).map_err(|refusal| refusal.to_string())?;
        Ok(Wheel {
            felloes,
            rim: self.rim.get_untracked(),
            tyre: self.tyre.get_untracked(),
            arm: self.arm.get_untracked(),
            keeper: self.keeper.get_untracked(),
        })
    }
}

/// How one wheel is built.
#[component]
pub fn BuildPage(
    /// The vehicle.
    id: EntryId,
    /// Where the wheel stands.
    position: Position,
) -> impl IntoView {
    let shop = workshop();
    let looking = Memo::new(move |_| Looking::at(shop, position));
    // Taken once, so that nothing resets a key while somebody is setting them.
    let setting = Setting::of(
        looking
            .get_untracked()
            .map(|looking| looking.wheel)
            .as_ref(),
    );
    view! {
        <main class="page" data-page="build">
            <h1 class="capital">{words::place::wheel_at(position)}": how it is built"</h1>
            <FelloeKeys setting />
            <Choices setting />
            <Save id position setting described=Signal::derive(move || looking.get().is_some()) />
            <a class="key key-plain" href=Route::Wheel(id, position).href()>"To the wheel"</a>
        </main>
    }
}

/// Rim, tyre, arm and keeper; a second tap on what is chosen leaves it open again.
#[component]
fn Choices(setting: Setting) -> impl IntoView {
    let style = workshop().style();
    let rims: Vec<_> = Rim::ALL
        .into_iter()
        .map(|rim| (rim, rim.code(), term::rim(rim, style)))
        .collect();
    let tyres: Vec<_> = Tyre::ALL
        .into_iter()
        .map(|tyre| (tyre, tyre.code(), term::tyre(tyre, style)))
        .collect();
    let arms: Vec<_> = Arm::ALL
        .into_iter()
        .map(|arm| (arm, arm.code(), term::arm(arm).to_owned()))
        .collect();
    let keepers: Vec<_> = Keeper::ALL
        .into_iter()
        .map(|keeper| {
            (
                keeper,
                keeper.code(),
                term::keeper(keeper, style).to_owned(),
            )
        })
        .collect();
    view! {
        {one_of("rim", "Rim", rims, setting.rim)}
        {one_of("tyre", "Tyre", tyres, setting.tyre)}
        {one_of("arm", "Arm", arms, setting.arm)}
        {one_of("keeper", "What keeps it on", keepers, setting.keeper)}
    }
}

fn one_of<T>(
    code: &'static str,
    heading: &'static str,
    choices: Vec<(T, &'static str, String)>,
    chosen: RwSignal<Option<T>>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let key = move |(value, code, label): (T, &'static str, String)| {
        let pressed = move || {
            if chosen.get() == Some(value) {
                "true"
            } else {
                "false"
            }
        };
        let tap = move |_| {
            chosen.update(|now| {
                *now = if *now == Some(value) {
                    None
                } else {
                    Some(value)
                }
            })
        };
        view! {
            <button type="button" class="key" data-choice=code aria-pressed=pressed on:click=tap>
                <span class="capital">{label}</span>
            </button>
        }
    };
    view! {
        <section class="stack" data-step=code>
            <h2>{heading}</h2>
            <div class="choices">{choices.into_iter().map(key).collect_view()}</div>
        </section>
    }
}

/// The key that saves, and what it does to what was written.
#[component]
fn Save(
    id: EntryId,
    position: Position,
    setting: Setting,
    described: Signal<bool>,
) -> impl IntoView {
    let shop = workshop();
    let refusal = RwSignal::new(String::new());
    let save = move |_| match setting.wheel() {
        Err(said) => refusal.set(said),
        Ok(wheel) => {
            refusal.set(String::new());
            store(shop, id, position, wheel);
        }
    };
    view! {
        <section class="stack">
            <Show when=move || described.get()>
                <p>"Saving corrects what was written of this wheel. The earlier description stays in the book, and readings taken against it are kept."</p>
            </Show>
            <p class="refusal" role="alert">{refusal}</p>
            <button type="button" class="key key-main" data-key="save" on:click=save>"Save how it is built"</button>
        </section>
    }
}

fn store(shop: Workshop, id: EntryId, position: Position, wheel: Wheel) {
    spawn_local(async move {
        if writing::write(shop, id, position, wheel).await.is_ok() {
            Route::Wheel(id, position).go();
        }
    });
}
