//! The choices of a beginning: which wheels, and counts with any other number beside the usual ones.

use cartside_core::wheel::{Position, VehicleKind};
use cartside_core::words;
use leptos::prelude::*;

use crate::component::number_pad::{DIGITS, NumberPad};

/// Which wheels are looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WheelChoice {
    /// All that such a vehicle has.
    All,
    /// One.
    One(Position),
}

impl WheelChoice {
    /// The word that stands for it in the state of the page.
    pub fn code(self) -> &'static str {
        match self {
            WheelChoice::All => "all",
            WheelChoice::One(position) => position.code(),
        }
    }

    /// What stands on its key.
    pub fn words(self) -> String {
        match self {
            WheelChoice::All => "all wheels".to_owned(),
            WheelChoice::One(position) => words::place::wheel_at(position),
        }
    }

    /// Where these wheels stand.
    pub fn positions(self, kind: VehicleKind) -> Vec<Position> {
        match self {
            WheelChoice::All => kind.positions().to_vec(),
            WheelChoice::One(position) => vec![position],
        }
    }
}

/// What can be chosen of the wheels of such a vehicle.
pub fn wheel_choices(kind: VehicleKind) -> Vec<WheelChoice> {
    let each = kind.positions().iter().copied().map(WheelChoice::One);
    match kind.positions() {
        [_] => each.collect(),
        _ => [WheelChoice::All].into_iter().chain(each).collect(),
    }
}

/// One of the four steps.
#[component]
pub fn Step(
    /// The word that stands for it in the state of the page.
    code: &'static str,
    /// What is asked.
    heading: &'static str,
    /// The keys.
    children: Children,
) -> impl IntoView {
    view! {
        <section class="stack" data-step=code>
            <h2>{heading}</h2>
            {children()}
        </section>
    }
}

/// The usual counts as keys, and a number pad for any other.
#[component]
pub fn Counts(
    /// The usual counts.
    usual: &'static [u16],
    /// The count chosen.
    chosen: RwSignal<Option<u16>>,
    /// Takes a count.
    take: Callback<u16>,
) -> impl IntoView {
    let typing = RwSignal::new(false);
    let pressed = |yes: bool| if yes { "true" } else { "false" };
    let key = move |count: u16| {
        view! {
            <button type="button" class="key" data-choice=count.to_string() aria-pressed=move || pressed(chosen.get() == Some(count)) on:click=move |_| take.run(count)>
                {count}
            </button>
        }
    };
    let unusual = move || chosen.get().filter(|count| !usual.contains(count));
    view! {
        <div class="numbers">
            {usual.iter().copied().map(key).collect_view()}
            <button type="button" class="key" data-choice="other" aria-pressed=move || pressed(unusual().is_some()) on:click=move |_| typing.update(|on| *on = !*on)>
                {move || unusual().map_or_else(|| "Other".to_owned(), |count| count.to_string())}
            </button>
        </div>
        <Show when=move || typing.get()>
            <OtherCount typing take />
        </Show>
    }
}

#[component]
fn OtherCount(typing: RwSignal<bool>, take: Callback<u16>) -> impl IntoView {
    let typed = RwSignal::new(String::new());
    let refusal = RwSignal::new(String::new());
    let accept = move |()| match typed.get_untracked().trim().parse::<u16>() {
        Ok(count) => {
            typing.set(false);
            take.run(count);
        }
        Err(_) => refusal.set(format!(
            "“{}” was typed; a whole number such as 18 is wanted. Nothing was changed.",
            typed.get_untracked()
        )),
    };
    view! {
        <NumberPad
            label="Another number".to_owned()
            keys=&DIGITS
            typed
            refusal
            accept=Callback::new(accept)
            leave=Callback::new(move |()| typing.set(false))
        />
    }
}
